package quarterfold.papers;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import quarterfold.period.BoxFigure;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;

/**
 * A return as JSON, a stable shape for programs: period, status, boxes, direction, open queries.
 */
public final class ReturnJson {

    private ReturnJson() {}

    /**
     * One line of JSON, without a line end. Figures are texts, as the form has them; days are ISO
     * 8601; {@code direction} is {@code pay}, {@code reclaim} or {@code nil}; {@code queries}
     * counts the open ones.
     */
    public static String of(VatReturn vatReturn) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            Period period = vatReturn.period();
            json.writeStartObject();
            json.writeObjectFieldStart("period");
            json.writeStringField("start", period.start().toString());
            json.writeStringField("end", period.end().toString());
            json.writeStringField("due", period.due().toString());
            json.writeEndObject();
            json.writeStringField("status", vatReturn.status().code());
            json.writeObjectFieldStart("boxes");
            for (BoxFigure box : vatReturn.boxes()) {
                json.writeStringField(box.box().id(), box.text());
            }
            json.writeEndObject();
            json.writeStringField("direction", vatReturn.direction().code());
            json.writeNumberField("queries", vatReturn.queries().size());
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}

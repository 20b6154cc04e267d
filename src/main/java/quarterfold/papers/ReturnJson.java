package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import quarterfold.money.Amount;
import quarterfold.period.Adjustment;
import quarterfold.period.BoxFigure;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;

/**
 * A return as JSON, a stable shape for programs: period, status, boxes, what it takes up beside its
 * entries, direction, open queries.
 */
public final class ReturnJson {

    private ReturnJson() {}

    /**
     * One line of JSON, without a line end. Figures are texts, as the form has them; days are ISO
     * 8601; {@code direction} is {@code pay}, {@code reclaim} or {@code nil}; {@code queries}
     * counts the open ones.
     */
    public static String of(VatReturn vatReturn) {
        return JsonLine.of(
                json -> {
                    period(json, vatReturn.period());
                    json.writeStringField("status", vatReturn.status().code());
                    json.writeObjectFieldStart("boxes");
                    for (BoxFigure box : vatReturn.boxes()) {
                        json.writeStringField(box.box().id(), box.text());
                    }
                    json.writeEndObject();
                    json.writeArrayFieldStart("adjustments");
                    for (Adjustment adjustment : vatReturn.adjustments()) {
                        adjustment(json, adjustment);
                    }
                    json.writeEndArray();
                    json.writeStringField("direction", vatReturn.direction().code());
                    json.writeNumberField("queries", vatReturn.openQueries().size());
                    if (!vatReturn.corrections().isEmpty()) {
                        json.writeFieldName("corrections");
                        CorrectionJson.summary(json, vatReturn.corrections());
                    }
                });
    }

    private static void adjustment(JsonGenerator json, Adjustment adjustment) throws IOException {
        json.writeStartObject();
        json.writeStringField("name", adjustment.treatment());
        json.writeStringField("about", adjustment.about());
        json.writeStringField("why", adjustment.why());
        json.writeStringField("authority", adjustment.authority());
        json.writeStringField("net", adjustment.net().toString());
        json.writeStringField("vat", adjustment.vat().toString());
        json.writeStringField("claim", adjustment.claim().toString());
        json.writeObjectFieldStart("boxes");
        for (Map.Entry<String, Amount> box : new TreeMap<>(adjustment.boxes()).entrySet()) {
            json.writeStringField(box.getKey(), box.getValue().toString());
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    static void period(JsonGenerator json, Period period) throws IOException {
        json.writeObjectFieldStart("period");
        json.writeStringField("start", period.start().toString());
        json.writeStringField("end", period.end().toString());
        json.writeStringField("due", period.due().toString());
        json.writeEndObject();
    }
}

package quarterfold.papers;

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
        return JsonLine.of(
                json -> {
                    Period period = vatReturn.period();
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
                    if (!vatReturn.corrections().isEmpty()) {
                        json.writeFieldName("corrections");
                        CorrectionJson.summary(json, vatReturn.corrections());
                    }
                });
    }
}

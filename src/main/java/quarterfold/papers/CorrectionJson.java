package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import quarterfold.money.Amount;
import quarterfold.period.Correction;
import quarterfold.period.CorrectionSheet;
import quarterfold.period.VatReturn;
import quarterfold.treatment.TakenUp;

/**
 * The worksheet of corrections as JSON, a stable shape for programs. Amounts are texts of plain
 * digits; differences carry their sign.
 */
final class CorrectionJson {

    private CorrectionJson() {}

    /** The whole worksheet, one line without a line end. */
    static String of(VatReturn vatReturn) {
        CorrectionSheet sheet = vatReturn.corrections();
        return JsonLine.of(
                json -> {
                    json.writeStringField("period", vatReturn.period().name().toString());
                    json.writeFieldName("summary");
                    summary(json, sheet);
                    json.writeArrayFieldStart("rows");
                    for (Correction row : sheet.rows()) {
                        row(json, sheet, row);
                    }
                    json.writeEndArray();
                });
    }

    /**
     * For each way of being taken up that occurs, the count, both sides and the net; and the limit.
     */
    static void summary(JsonGenerator json, CorrectionSheet sheet) throws IOException {
        json.writeStartObject();
        for (TakenUp how : TakenUp.values()) {
            List<Correction> rows = sheet.rows(how);
            if (!rows.isEmpty()) {
                json.writeObjectFieldStart(how.code());
                json.writeNumberField("entries", rows.size());
                json.writeStringField("output", sheet.output(rows).toString());
                json.writeStringField("input", sheet.input(rows).toString());
                json.writeStringField("net", sheet.net(rows).toString());
                boxes(json, "boxes", sheet.boxes(rows));
                json.writeEndObject();
            }
        }
        if (sheet.limit().isPresent()) {
            json.writeObjectFieldStart("limit");
            json.writeStringField("amount", sheet.limit().get().amount().toString());
            json.writeStringField("why", sheet.limit().get().why());
            json.writeStringField("authority", sheet.limit().get().authority());
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private static void row(JsonGenerator json, CorrectionSheet sheet, Correction row)
            throws IOException {
        json.writeStartObject();
        json.writeStringField("of", row.of().toString());
        json.writeNumberField("entry", row.entry());
        json.writeStringField("day", row.day().toString());
        json.writeStringField("taken_up", row.takenUp().code());
        boxes(json, "declared", row.declared());
        boxes(json, "right", row.right());
        boxes(json, "difference", row.difference());
        json.writeStringField("output", sheet.output(row).toString());
        json.writeStringField("input", sheet.input(row).toString());
        boxes(json, "boxes", row.boxes());
        json.writeStringField("why", row.why());
        json.writeEndObject();
    }

    private static void boxes(JsonGenerator json, String name, Map<String, Amount> boxes)
            throws IOException {
        json.writeObjectFieldStart(name);
        for (Map.Entry<String, Amount> box : new TreeMap<>(boxes).entrySet()) {
            json.writeStringField(box.getKey(), box.getValue().toString());
        }
        json.writeEndObject();
    }
}

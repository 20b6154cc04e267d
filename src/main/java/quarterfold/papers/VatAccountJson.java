package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import quarterfold.money.Amount;
import quarterfold.period.VatAccount;
import quarterfold.period.VatReturn;

/** A VAT account as JSON: each portion's lines, its total, and the boxes it feeds. */
public final class VatAccountJson {

    private VatAccountJson() {}

    /** One line of JSON, without a line end. Amounts are texts, before the boxes' rounding. */
    public static String of(VatAccount account) {
        return JsonLine.of(
                json -> {
                    VatReturn vatReturn = account.vatReturn();
                    ReturnJson.period(json, vatReturn.period());
                    json.writeStringField("status", vatReturn.status().code());
                    half(json, account.payable(), vatReturn);
                    half(json, account.allowable(), vatReturn);
                });
    }

    private static void half(JsonGenerator json, VatAccount.Half half, VatReturn vatReturn)
            throws IOException {
        json.writeObjectFieldStart(half.portion().code());
        json.writeArrayFieldStart("lines");
        for (VatAccount.Line line : half.lines()) {
            json.writeStartObject();
            json.writeStringField("account", line.line().account());
            json.writeStringField("label", line.line().label());
            json.writeStringField("source", line.source());
            json.writeNumberField("entries", line.entries());
            json.writeNumberField("adjustments", line.adjustments());
            json.writeObjectFieldStart("boxes");
            for (Map.Entry<String, Amount> box : new TreeMap<>(line.boxes()).entrySet()) {
                json.writeStringField(box.getKey(), box.getValue().toString());
            }
            json.writeEndObject();
            json.writeStringField("amount", line.amount().toString());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeStringField("total", half.total().toString());
        json.writeObjectFieldStart("boxes");
        for (String box : half.boxes()) {
            json.writeStringField(box, vatReturn.box(box).text());
        }
        json.writeEndObject();
        json.writeEndObject();
    }
}

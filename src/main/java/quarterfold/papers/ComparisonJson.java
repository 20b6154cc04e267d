package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Optional;
import quarterfold.period.Comparison;
import quarterfold.period.VatReturn;

/** A return beside earlier ones as JSON; a comparison that cannot be made is left out. */
public final class ComparisonJson {

    private ComparisonJson() {}

    /** One line of JSON, without a line end. Changes are texts, before the boxes' rounding. */
    public static String of(
            VatReturn now, Optional<Comparison> before, Optional<Comparison> lastYear) {
        return JsonLine.of(
                json -> {
                    json.writeStringField("period", now.period().name().toString());
                    json.writeStringField("status", now.status().code());
                    json.writeStringField("direction", now.direction().code());
                    if (before.isPresent()) {
                        comparison(json, "before", before.get());
                    }
                    if (lastYear.isPresent()) {
                        comparison(json, "last_year", lastYear.get());
                    }
                });
    }

    private static void comparison(JsonGenerator json, String name, Comparison comparison)
            throws IOException {
        json.writeObjectFieldStart(name);
        json.writeStringField("period", comparison.then().period().name().toString());
        json.writeStringField("status", comparison.then().status().code());
        json.writeStringField("direction", comparison.then().direction().code());
        json.writeObjectFieldStart("boxes");
        for (Comparison.BoxChange box : comparison.boxes()) {
            json.writeObjectFieldStart(box.now().box().id());
            json.writeStringField("now", box.now().text());
            json.writeStringField("then", box.then().text());
            json.writeStringField("difference", box.now().box().text(box.difference()));
            json.writeArrayFieldStart("treatments");
            for (Comparison.TreatmentChange change : box.treatments()) {
                json.writeStartObject();
                json.writeStringField("treatment", change.treatment());
                json.writeStringField("difference", change.difference().toString());
                json.writeNumberField("entries_now", change.entriesNow());
                json.writeNumberField("entries_then", change.entriesThen());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("largest");
            for (Comparison.Large large : box.largest()) {
                json.writeStartObject();
                json.writeNumberField("entry", large.treated().entry().number());
                json.writeStringField("period", large.of().period().name().toString());
                json.writeStringField("adds", large.adds().toString());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndObject();
        json.writeEndObject();
    }
}

package quarterfold.papers;

import java.util.List;
import quarterfold.ledger.Finding;

/** What a check of a book found, as JSON: what was looked at, and every difference. */
public final class VerifyJson {

    private VerifyJson() {}

    /** One line of JSON, without a line end. */
    public static String of(
            long sources,
            long documents,
            long entries,
            List<String> closed,
            List<Finding> findings) {
        return JsonLine.of(
                json -> {
                    json.writeBooleanField("well", findings.isEmpty());
                    json.writeNumberField("sources", sources);
                    if (documents > 0) {
                        json.writeNumberField("documents", documents);
                    }
                    json.writeNumberField("entries", entries);
                    json.writeArrayFieldStart("returns");
                    for (String period : closed) {
                        json.writeString(period);
                    }
                    json.writeEndArray();
                    json.writeArrayFieldStart("differences");
                    for (Finding finding : findings) {
                        json.writeStartObject();
                        json.writeStringField("check", finding.check().code());
                        json.writeStringField("place", finding.place());
                        json.writeStringField("text", finding.text());
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                });
    }
}

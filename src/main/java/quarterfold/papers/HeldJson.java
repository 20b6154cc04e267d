package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.function.Function;
import quarterfold.period.VatReturn;
import quarterfold.treatment.Query;

/** A refused close as JSON: the period, and the queries that hold it or are open beside. */
public final class HeldJson {

    private HeldJson() {}

    /**
     * One line of JSON, without a line end.
     *
     * @param command the command that answers a query
     */
    public static String of(VatReturn draft, Function<Query, String> command) {
        return JsonLine.of(
                json -> {
                    ReturnJson.period(json, draft.period());
                    json.writeStringField("status", "held");
                    json.writeArrayFieldStart("queries");
                    queries(json, draft.openQueries(), command);
                    json.writeEndArray();
                });
    }

    private static void queries(
            JsonGenerator json, List<Query> queries, Function<Query, String> command)
            throws IOException {
        for (Query query : queries) {
            json.writeStartObject();
            QueryJson.fields(json, query);
            json.writeStringField("decide", command.apply(query));
            json.writeEndObject();
        }
    }
}

package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import quarterfold.treatment.Query;

/**
 * A query as JSON: id, entry (absent where it is about none), place, question, money; whether it
 * holds the close; its state, {@code open} or {@code set-aside}, and then who set it aside.
 */
public final class QueryJson {

    private QueryJson() {}

    /** One line of JSON, without a line end. */
    public static String of(Query query) {
        return JsonLine.of(json -> fields(json, query));
    }

    static void fields(JsonGenerator json, Query query) throws IOException {
        json.writeStringField("id", query.id());
        if (query.entry().isPresent()) {
            json.writeNumberField("entry", query.entry().getAsLong());
        }
        json.writeStringField("place", query.place());
        json.writeStringField("question", query.question());
        json.writeStringField("money", query.money().toString());
        json.writeBooleanField("holds_close", query.holdsClose());
        json.writeStringField("state", query.isOpen() ? "open" : "set-aside");
        if (!query.isOpen()) {
            json.writeStringField("answer", query.answer());
        }
    }
}

package quarterfold.papers;

import quarterfold.treatment.Query;

/** A query as JSON: id, entry (absent where it is about none), place, question, money. */
public final class QueryJson {

    private QueryJson() {}

    /** One line of JSON, without a line end. */
    public static String of(Query query) {
        return JsonLine.of(
                json -> {
                    json.writeStringField("id", query.id());
                    if (query.entry().isPresent()) {
                        json.writeNumberField("entry", query.entry().getAsLong());
                    }
                    json.writeStringField("place", query.place());
                    json.writeStringField("question", query.question());
                    json.writeStringField("money", query.money().toString());
                });
    }
}

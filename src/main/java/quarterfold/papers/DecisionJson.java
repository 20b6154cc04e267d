package quarterfold.papers;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Decision;
import quarterfold.period.Deciding.Decided;
import quarterfold.period.Effect;
import quarterfold.treatment.Query;

/** Decisions as JSON, a stable shape for programs. */
public final class DecisionJson {

    private DecisionJson() {}

    /** A decision as it is recorded: one line of JSON, without a line end. */
    public static String of(Decision decision, Optional<Long> undoneBy) {
        return JsonLine.of(
                json -> {
                    fields(json, decision);
                    json.writeBooleanField("undone", undoneBy.isPresent());
                    if (undoneBy.isPresent()) {
                        json.writeNumberField("undone_by", undoneBy.get());
                    }
                });
    }

    /**
     * A decision just recorded, with what it changes: one line of JSON, without a line end.
     *
     * @param layout what became of the layout that asked, where one did
     */
    public static String of(Decided decided, Optional<String> layout) {
        return JsonLine.of(
                json -> {
                    fields(json, decided.decision());
                    json.writeArrayFieldStart("changes");
                    for (Effect effect : decided.effects()) {
                        effect(json, effect);
                    }
                    json.writeEndArray();
                    json.writeArrayFieldStart("closed");
                    for (Map.Entry<YearMonth, Long> closed : decided.closed().entrySet()) {
                        json.writeStartObject();
                        json.writeStringField("period", closed.getKey().toString());
                        json.writeNumberField("entries", closed.getValue());
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                    numbers(json, "own", decided.told().own());
                    numbers(json, "against", decided.told().against());
                    if (layout.isPresent()) {
                        json.writeStringField("layout", layout.get());
                    }
                });
    }

    private static void fields(JsonGenerator json, Decision decision) throws IOException {
        json.writeNumberField("id", decision.id());
        json.writeStringField("target", decision.target().code());
        json.writeStringField("about", decision.about());
        json.writeStringField("action", decision.action().code());
        json.writeStringField("value", decision.value());
        json.writeStringField("why", decision.why());
        json.writeStringField("who", decision.who());
        json.writeStringField("day", decision.day().toString());
    }

    private static void effect(JsonGenerator json, Effect effect) throws IOException {
        json.writeStartObject();
        json.writeStringField("period", effect.period().name().toString());
        json.writeObjectFieldStart("boxes");
        for (Effect.Move move : effect.moves()) {
            json.writeArrayFieldStart(move.after().box().id());
            json.writeString(move.before().text());
            json.writeString(move.after().text());
            json.writeEndArray();
        }
        json.writeEndObject();
        ids(json, "answered", effect.answered());
        ids(json, "asked", effect.asked());
        json.writeNumberField("queries", effect.stillOpen());
        json.writeEndObject();
    }

    /** Nothing where there are none. */
    private static void numbers(JsonGenerator json, String field, List<Long> numbers)
            throws IOException {
        if (!numbers.isEmpty()) {
            json.writeArrayFieldStart(field);
            for (long number : numbers) {
                json.writeNumber(number);
            }
            json.writeEndArray();
        }
    }

    private static void ids(JsonGenerator json, String field, List<Query> queries)
            throws IOException {
        json.writeArrayFieldStart(field);
        for (Query query : queries) {
            json.writeString(query.id());
        }
        json.writeEndArray();
    }
}

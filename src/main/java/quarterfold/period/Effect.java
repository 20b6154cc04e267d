package quarterfold.period;

import java.util.ArrayList;
import java.util.List;
import quarterfold.treatment.Query;

/**
 * What a decision changes in the draft of an open period.
 *
 * @param moves the boxes whose figure is another now
 * @param answered the queries that are open no more
 * @param asked the queries that are open now and were not
 */
public record Effect(
        Period period, List<Move> moves, List<Query> answered, List<Query> asked, int stillOpen) {

    /** A box's figure before and after. */
    public record Move(BoxFigure before, BoxFigure after) {}

    public Effect {
        moves = List.copyOf(moves);
        answered = List.copyOf(answered);
        asked = List.copyOf(asked);
    }

    static Effect between(VatReturn before, VatReturn after) {
        List<Move> moves = new ArrayList<>();
        for (BoxFigure box : before.boxes()) {
            BoxFigure now = after.box(box.box().id());
            if (!now.figure().equals(box.figure())) {
                moves.add(new Move(box, now));
            }
        }
        return new Effect(
                before.period(),
                moves,
                without(before.openQueries(), after.openQueries()),
                without(after.openQueries(), before.openQueries()),
                after.openQueries().size());
    }

    private static List<Query> without(List<Query> queries, List<Query> others) {
        List<String> ids = others.stream().map(Query::id).toList();
        return queries.stream().filter(q -> !ids.contains(q.id())).toList();
    }

    /** Whether nothing of the period is another now. */
    public boolean isNothing() {
        return moves.isEmpty() && answered.isEmpty() && asked.isEmpty();
    }
}

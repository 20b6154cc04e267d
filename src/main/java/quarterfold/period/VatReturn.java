package quarterfold.period;

import java.util.List;
import quarterfold.treatment.Query;

/**
 * The boxes of one period: a draft worked out from the ledger as it stands, or a close, frozen.
 *
 * @param boxes in the order of the form
 * @param adjustments what it takes up beside the entries
 * @param queries every question about the period, open or set aside
 * @param corrections what it takes up of earlier periods
 */
public record VatReturn(
        Period period,
        Status status,
        List<BoxFigure> boxes,
        Direction direction,
        List<Adjustment> adjustments,
        List<Query> queries,
        CorrectionSheet corrections) {

    /** Whether the figures can still move. */
    public enum Status {
        DRAFT("draft"),
        CLOSED("closed");

        private final String code;

        Status(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    public VatReturn {
        boxes = List.copyOf(boxes);
        adjustments = List.copyOf(adjustments);
        queries = List.copyOf(queries);
    }

    /** A return that takes up nothing of earlier periods. */
    public VatReturn(
            Period period,
            Status status,
            List<BoxFigure> boxes,
            Direction direction,
            List<Adjustment> adjustments,
            List<Query> queries) {
        this(period, status, boxes, direction, adjustments, queries, CorrectionSheet.NONE);
    }

    /** The questions that are still open. */
    public List<Query> openQueries() {
        return queries.stream().filter(Query::isOpen).toList();
    }

    /** The open questions that a close waits for. */
    public List<Query> holdingClose() {
        return openQueries().stream().filter(Query::holdsClose).toList();
    }

    /** The questions that decisions left as they are. */
    public List<Query> setAsideQueries() {
        return queries.stream().filter(q -> !q.isOpen()).toList();
    }

    /** Refuses a box the form does not have. */
    public BoxFigure box(String id) {
        return boxes.stream()
                .filter(b -> b.box().id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the form has no box " + id));
    }
}

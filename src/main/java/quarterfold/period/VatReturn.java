package quarterfold.period;

import java.util.List;
import quarterfold.treatment.Query;

/**
 * The boxes of one period: a draft worked out from the ledger as it stands, or a close, frozen.
 *
 * @param boxes in the order of the form
 * @param queries every open question about the period
 */
public record VatReturn(
        Period period,
        Status status,
        List<BoxFigure> boxes,
        Direction direction,
        List<Query> queries) {

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
        queries = List.copyOf(queries);
    }

    /** Refuses a box the form does not have. */
    public BoxFigure box(String id) {
        return boxes.stream()
                .filter(b -> b.box().id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the form has no box " + id));
    }
}

package quarterfold.period;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import quarterfold.ledger.Decision.Target;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.KindDecisions;

/**
 * What a person should know of entries once their kind is decided.
 *
 * @param own the numbers of those that stay what a decision on them alone says
 * @param against the numbers of those whose money goes the other way than that of their kind, so
 *     that they are reversals
 */
public record KindTold(List<Long> own, List<Long> against) {

    /** Money of these goes either way. */
    private static final Set<Kind> EITHER =
            EnumSet.of(Kind.RESERVE, Kind.TRANSFER, Kind.BANK_LINE, Kind.OTHER_MONEY);

    static final KindTold NOTHING = new KindTold(List.of(), List.of());

    public KindTold {
        own = List.copyOf(own);
        against = List.copyOf(against);
    }

    /** Looks at entries one after another. */
    static final class Looking {
        private final KindDecisions kinds;
        private final boolean ofQuery;
        private final List<Long> own = new ArrayList<>();
        private final List<Long> against = new ArrayList<>();

        /** {@code ofQuery}: whether the decision is on the question, and not on an entry. */
        Looking(KindDecisions kinds, boolean ofQuery) {
            this.kinds = kinds;
            this.ofQuery = ofQuery;
        }

        void see(Entry entry) {
            boolean alone =
                    kinds.of(entry.number()).filter(d -> d.target() == Target.ENTRY).isPresent();
            if (ofQuery && alone) {
                own.add(entry.number());
            } else if (!EITHER.contains(entry.kind()) && entry.amounts().money().signum() < 0) {
                against.add(entry.number());
            }
        }

        KindTold told() {
            return new KindTold(own, against);
        }
    }
}

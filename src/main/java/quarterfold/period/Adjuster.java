package quarterfold.period;

import java.util.List;
import java.util.stream.Stream;
import quarterfold.treatment.Query;
import quarterfold.treatment.Treated;

/**
 * Works out what one return takes up beside its entries. Made anew for each return; is shown every
 * entry of the period as treated, and holds sums alone. For one thread.
 */
interface Adjuster {

    /** Takes note of an entry of the period. */
    void see(Treated treated);

    /** What follows, once every entry was seen. */
    Found found();

    /** What a return takes up, and what a person must answer about it. */
    record Found(List<Adjustment> adjustments, List<Query> queries) {

        static final Found NOTHING = new Found(List.of(), List.of());

        public Found {
            adjustments = List.copyOf(adjustments);
            queries = List.copyOf(queries);
        }

        Found with(Found more) {
            return new Found(
                    Stream.concat(adjustments.stream(), more.adjustments.stream()).toList(),
                    Stream.concat(queries.stream(), more.queries.stream()).toList());
        }
    }

    /** Makes the adjuster of a return. */
    interface Maker {
        Adjuster begin(Basis basis);
    }
}

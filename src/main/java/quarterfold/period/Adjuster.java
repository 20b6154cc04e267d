package quarterfold.period;

import java.util.List;
import java.util.Map;
import quarterfold.money.Amount;

/** Works out what a return takes up beside its entries. */
interface Adjuster {

    /**
     * The adjustments of a period.
     *
     * @param sums the exact sum each box has so far, by box id
     */
    List<Adjustment> of(Period period, Map<String, Amount> sums);
}

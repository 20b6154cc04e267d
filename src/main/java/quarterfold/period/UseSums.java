package quarterfold.period;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.law.Measure;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.money.Amount;
import quarterfold.treatment.Context;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/**
 * What partial exemption adds up over a span of time: input tax by what its purchases are used for,
 * and supplies by whether they are exempt (VAT Regulations 1995 reg 101(2)). Holds no entry.
 */
final class UseSums {

    private static final String EXEMPT_SUPPLIES = "exempt-supplies";
    private static final String UNSTATED = "unstated";
    private static final int EXAMPLES = 5;

    private final Context context;
    private final Map<String, Set<String>> claimBoxes = new HashMap<>();
    private final Map<String, Amount> input = new HashMap<>();
    private final List<Long> examples = new ArrayList<>();
    private long unstatedEntries;
    private long entries;
    private Amount supplies = Amount.ZERO;
    private Amount exempt = Amount.ZERO;
    private Amount suppliesInShare = Amount.ZERO;
    private Amount exemptInShare = Amount.ZERO;

    UseSums(Context context) {
        this.context = context;
    }

    /**
     * Corrections of earlier periods, and VAT from before the registration, are no input tax of
     * this one.
     */
    void see(Treated treated) {
        if (treated.takenUp() != TakenUp.IN_ITS_PERIOD && treated.takenUp() != TakenUp.LATE_CLAIM) {
            return;
        }
        entries++;
        switch (treated.entry().kind().side()) {
            case SALES -> supply(treated);
            case PURCHASES, IMPORTS -> purchase(treated);
            case MONEY -> {}
        }
    }

    private void supply(Treated treated) {
        if (treated.boxes().isEmpty()) {
            return;
        }
        Kind kind = treated.entry().kind();
        Amount value = treated.net().times(kind.direction() < 0 ? -1 : 1);
        Amount free = treated.boxes().getOrDefault(EXEMPT_SUPPLIES, Amount.ZERO);
        supplies = supplies.plus(value);
        exempt = exempt.plus(free);
        if (!context.law()
                .counts(
                        "left-out-of-share",
                        treated.entry().profile().category(),
                        treated.occasion().day())) {
            suppliesInShare = suppliesInShare.plus(value);
            exemptInShare = exemptInShare.plus(free);
        }
    }

    private void purchase(Treated treated) {
        Amount claimed = Amount.ZERO;
        for (String box : claimBoxes(treated)) {
            claimed = claimed.plus(treated.boxes().getOrDefault(box, Amount.ZERO));
        }
        if (claimed.isZero()) {
            return;
        }
        Entry entry = context.answers().stated(treated.entry());
        String use = entry.line().particulars().word(Particular.USE).orElse(UNSTATED);
        input.merge(use, claimed, Amount::plus);
        if (use.equals(UNSTATED)) {
            unstatedEntries++;
            if (examples.size() < EXAMPLES) {
                examples.add(entry.number());
            }
        }
    }

    /** The boxes that what is claimed of such a treatment goes to. */
    private Set<String> claimBoxes(Treated treated) {
        return claimBoxes.computeIfAbsent(
                treated.treatment(),
                treatment ->
                        context
                                .law()
                                .boxes(
                                        treatment,
                                        context.settings().schemeOn(treated.occasion().day()),
                                        treated.occasion().day())
                                .stream()
                                .filter(d -> d.value().measure() == Measure.CLAIM)
                                .map(d -> d.value().box())
                                .collect(Collectors.toSet()));
    }

    void add(UseSums other) {
        other.input.forEach((use, amount) -> input.merge(use, amount, Amount::plus));
        other.examples.stream().limit(EXAMPLES - (long) examples.size()).forEach(examples::add);
        unstatedEntries += other.unstatedEntries;
        entries += other.entries;
        supplies = supplies.plus(other.supplies);
        exempt = exempt.plus(other.exempt);
        suppliesInShare = suppliesInShare.plus(other.suppliesInShare);
        exemptInShare = exemptInShare.plus(other.exemptInShare);
    }

    private Amount input(String use) {
        return input.getOrDefault(use, Amount.ZERO);
    }

    boolean isEmpty() {
        return entries == 0;
    }

    /** Whether there are exempt supplies, or purchases to be used for such. */
    boolean isPartlyExempt() {
        return !exempt.isZero() || !input("exempt").isZero() || !input("both").isZero();
    }

    Amount allInput() {
        return input.values().stream().reduce(Amount.ZERO, Amount::plus);
    }

    Amount forTaxable() {
        return input("taxable");
    }

    Amount forExempt() {
        return input("exempt");
    }

    /** Input tax used, or to be used, for taxable and exempt supplies alike. */
    Amount residual() {
        return input("both");
    }

    Amount unstated() {
        return input(UNSTATED);
    }

    /** The first entries without a stated use, such as {@code entries 3, 9 and 40 more}. */
    String unstatedWords() {
        String numbers = examples.stream().map(String::valueOf).collect(Collectors.joining(", "));
        long more = unstatedEntries - examples.size();
        return (unstatedEntries == 1 ? "entry " : "entries ")
                + numbers
                + (more > 0 ? " and " + more + " more" : "");
    }

    /** The value of all supplies. */
    Amount supplies() {
        return supplies;
    }

    Amount exemptSupplies() {
        return exempt;
    }

    /** The value of the supplies that the share of taxable ones is taken of: reg 101(3). */
    Amount suppliesInShare() {
        return suppliesInShare;
    }

    Amount taxableInShare() {
        return suppliesInShare.minus(exemptInShare);
    }
}

package quarterfold.intake;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.PayoutQuestion;
import quarterfold.ledger.Profile;
import quarterfold.ledger.RaisedQuery;
import quarterfold.money.Amount;

/**
 * Ties the settlements of one file: the payout each states against the sum of its other rows. A
 * settlement is a name and a currency; rows without a name are together the settlement the file is.
 */
final class Payouts {
    private record Key(String settlement, String currency) {}

    /** Sums in ten-thousandths, positive where money comes to the business. */
    private static final class Settlement {
        private long rows;
        private long runs;
        private long sum;
        private long paidOut;
        private boolean hasPayout;
        private Optional<Amount> stated = Optional.empty();
    }

    private final Map<Key, Settlement> settlements = new LinkedHashMap<>();
    private String lastName = "";
    private String lastCurrency = "";
    private Optional<Settlement> first = Optional.empty();
    private Settlement current = new Settlement();
    private Optional<Amount> whole = Optional.empty();

    void add(Line line) {
        Profile profile = line.profile();
        String name = profile.settlement();
        if (!name.equals(lastName) || !profile.currency().equals(lastCurrency)) {
            lastName = name;
            lastCurrency = profile.currency();
            current = settlement(name, lastCurrency);
            current.runs++;
        }
        if (first.isEmpty()) {
            first = Optional.of(current);
        }
        long money = line.signedMoney().tenThousandths();
        if (profile.kind() == Kind.PAYOUT) {
            current.hasPayout = true;
            current.paidOut = Math.subtractExact(current.paidOut, money);
        } else {
            current.rows++;
            current.sum = Math.addExact(current.sum, money);
        }
    }

    /** Notes the payout a row states for its settlement; gives an earlier, different one. */
    Optional<Amount> state(Profile profile, Amount payout) {
        Settlement settlement = settlement(profile.settlement(), profile.currency());
        if (settlement.stated.isEmpty()) {
            settlement.stated = Optional.of(payout);
        }
        return settlement.stated.filter(earlier -> !earlier.equals(payout));
    }

    /** Notes the payout that a line above the rows states for all of them. */
    void stateWhole(Amount payout) {
        whole = Optional.of(payout);
    }

    private Settlement settlement(String name, String currency) {
        return settlements.computeIfAbsent(new Key(name, currency), key -> new Settlement());
    }

    /**
     * How many settlements state a payout that their other rows sum to, and what they pay out by
     * currency.
     */
    record Tied(int settlements, Map<String, Amount> paid) {}

    Tied tied() {
        int tied = 0;
        Map<String, Amount> paid = new TreeMap<>();
        for (Map.Entry<Key, Settlement> each : settlements.entrySet()) {
            Settlement settlement = each.getValue();
            boolean states = settlement.hasPayout || settlement.stated.isPresent();
            Amount stated = settlement.stated.orElse(new Amount(settlement.paidOut));
            if (states && settlement.rows > 0 && stated.equals(new Amount(settlement.sum))) {
                tied++;
                paid.merge(each.getKey().currency(), stated, Amount::plus);
            }
        }
        return new Tied(tied, paid);
    }

    /** Who is told of a settlement that does not tie; see {@link RaisedQuery}. */
    interface Raise {
        void query(String code, String about, String question);
    }

    /**
     * Raises a query for each settlement that does not tie.
     *
     * @param whole whether the file is a channel's own report, so that a payout must have its rows
     * @param file the name of a settlement that has none
     */
    void tie(boolean whole, String file, Raise raise) {
        this.whole.ifPresent(stated -> tieWhole(stated, file, raise));
        settlements.forEach(
                (key, settlement) -> {
                    boolean named = !key.settlement().isEmpty();
                    boolean states = settlement.hasPayout || settlement.stated.isPresent();
                    if (!states || (!whole && (!named || settlement.rows == 0))) {
                        return;
                    }
                    Amount stated = settlement.stated.orElse(new Amount(settlement.paidOut));
                    Amount summed = new Amount(settlement.sum);
                    if (!stated.equals(summed)) {
                        String name = named ? key.settlement() : file;
                        raise.query(
                                settlement.stated.isPresent()
                                        ? RaisedQuery.STATED_PAYOUT_DOES_NOT_TIE
                                        : RaisedQuery.PAYOUT_DOES_NOT_TIE,
                                name,
                                PayoutQuestion.words(
                                                name,
                                                key.currency(),
                                                stated,
                                                settlement.rows,
                                                summed)
                                        + elsewhere(settlement));
                    }
                });
    }

    private void tieWhole(Amount stated, String file, Raise raise) {
        long rows = 0;
        long sum = 0;
        for (Settlement settlement : settlements.values()) {
            rows += settlement.rows;
            sum = Math.addExact(sum, settlement.sum);
        }
        Amount summed = new Amount(sum);
        if (!stated.equals(summed)) {
            raise.query(
                    RaisedQuery.STATED_PAYOUT_DOES_NOT_TIE,
                    file,
                    "a line above the rows states a payout of %s; the rows but payouts, %d of them, sum to %s; the difference is %s: which rows are missing, or which are not of this payout?"
                            .formatted(
                                    stated,
                                    rows,
                                    summed,
                                    PayoutQuestion.difference(stated, summed)));
        }
    }

    /** What an export of days says of the settlements its first and last day cut. */
    private String elsewhere(Settlement settlement) {
        boolean begins = first.filter(f -> f == settlement).isPresent();
        boolean ends = settlement == current;
        return settlement.runs == 1 && begins != ends
                ? " The file %s with it, so others of its rows may be in another export; %s once all of them are entered and tie."
                        .formatted(
                                begins ? "begins" : "ends",
                                settlement.stated.isPresent()
                                        ? "set this question aside"
                                        : "this question goes")
                : "";
    }
}

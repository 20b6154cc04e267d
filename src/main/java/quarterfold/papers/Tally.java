package quarterfold.papers;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.Kind.Side;
import quarterfold.money.Amount;
import quarterfold.period.Adjustment;
import quarterfold.period.Pack;
import quarterfold.period.VatAccount;
import quarterfold.period.VatAccountMaker;
import quarterfold.treatment.Treated;

/**
 * What one reading of a period's entries and adjustments counts and adds up, before anything is
 * written: how many rows each sheet will have and what stands above its columns, what feeds each
 * box, and which rows of the law's table were used. Holds nothing per entry.
 */
final class Tally {

    /** Entries of one treatment at one rate, and what they add. */
    record Feed(long entries, Amount amount) {
        private static final Feed NONE = new Feed(0, Amount.ZERO);

        private Feed plus(Amount more) {
            return new Feed(entries + 1, amount.plus(more));
        }
    }

    /** A treatment at a rate. */
    record How(String treatment, String rate) implements Comparable<How> {
        @Override
        public int compareTo(How other) {
            int first = treatment.compareTo(other.treatment);
            return first != 0 ? first : rate.compareTo(other.rate);
        }

        String words() {
            return rate.isEmpty()
                    ? Words.treatment(treatment)
                    : Words.treatment(treatment) + ", " + rate;
        }
    }

    /** A row of the treatment table that decided an entry. */
    record Rule(String rule, String treatment, String why, String citation)
            implements Comparable<Rule> {
        @Override
        public int compareTo(Rule other) {
            int first = rule.compareTo(other.rule);
            return first != 0 ? first : toString().compareTo(other.toString());
        }
    }

    private final long rowsInSheet;
    private final Map<Side, Long> rows = new EnumMap<>(Side.class);
    private final Map<Side, List<Map<String, Amount>>> sheetTotals = new EnumMap<>(Side.class);
    private final Map<String, Map<How, Feed>> feeds = new HashMap<>();
    private final Map<How, Feed> inNoBox = new TreeMap<>();
    private final Map<Side, Amount> largest = new EnumMap<>(Side.class);
    private final Map<HeldRate, Long> rates = new TreeMap<>(Comparator.comparing(HeldRate::id));
    private final Map<Rule, Long> rules = new TreeMap<>();

    private final VatAccountMaker account;

    private Tally(Pack pack, long rowsInSheet) {
        this.rowsInSheet = rowsInSheet;
        this.account = new VatAccountMaker(pack);
    }

    /** Reads every entry of the period once; a sheet has room for {@code rowsInSheet} of them. */
    static Tally of(Pack pack, long rowsInSheet) {
        Tally tally = new Tally(pack, rowsInSheet);
        pack.forEachTreated(tally::add);
        pack.vatReturn().adjustments().forEach(tally::add);
        return tally;
    }

    private void add(Adjustment adjustment) {
        How how = new How(adjustment.treatment(), "");
        adjustment
                .boxes()
                .forEach(
                        (box, amount) ->
                                count(
                                        feeds.computeIfAbsent(box, b -> new TreeMap<>()),
                                        how,
                                        amount));
    }

    private void add(Treated treated) {
        account.add(treated);
        Side side = EntrySheets.sideOf(treated);
        long before = rows.merge(side, 1L, Long::sum) - 1;
        treated.conversion()
                .ifPresent(c -> c.held().forEach(rate -> rates.merge(rate, 1L, Long::sum)));
        Amount money = treated.entry().amounts().money().abs();
        largest.merge(side, money, (a, b) -> a.compareTo(b) > 0 ? a : b);
        Map<String, Amount> totals = totalsOfSheet(side, before / rowsInSheet);
        How how = new How(treated.treatment(), treated.rate());
        treated.boxes()
                .forEach(
                        (box, amount) -> {
                            totals.merge(box, amount, Amount::plus);
                            count(feeds.computeIfAbsent(box, b -> new TreeMap<>()), how, amount);
                        });
        if (treated.boxes().isEmpty()) {
            count(inNoBox, how, treated.money().times(treated.entry().kind().direction()));
        }
        rules.merge(
                new Rule(treated.rule(), treated.treatment(), treated.why(), treated.citation()),
                1L,
                Long::sum);
    }

    private static void count(Map<How, Feed> feeds, How how, Amount amount) {
        feeds.put(how, feeds.getOrDefault(how, Feed.NONE).plus(amount));
    }

    private Map<String, Amount> totalsOfSheet(Side side, long page) {
        List<Map<String, Amount>> pages = sheetTotals.computeIfAbsent(side, s -> new ArrayList<>());
        while (pages.size() <= page) {
            pages.add(new HashMap<>());
        }
        return pages.get((int) page);
    }

    long rows(Side side) {
        return rows.getOrDefault(side, 0L);
    }

    long rows() {
        return rows.values().stream().mapToLong(Long::longValue).sum();
    }

    /** The VAT account of the period. */
    VatAccount account() {
        return account.account();
    }

    /** What the rows of one sheet of a side add to a box. */
    Amount sheetTotal(Side side, int page, String box) {
        List<Map<String, Amount>> pages = sheetTotals.getOrDefault(side, List.of());
        return page < pages.size() ? pages.get(page).getOrDefault(box, Amount.ZERO) : Amount.ZERO;
    }

    /** The largest sum of money that any row of the side moves. */
    Amount largest(Side side) {
        return largest.getOrDefault(side, Amount.ZERO);
    }

    /** The largest total of a box on any sheet of the side; empty where no row touches it. */
    Optional<Amount> largestTotal(Side side, String box) {
        return sheetTotals.getOrDefault(side, List.of()).stream()
                .flatMap(page -> Optional.ofNullable(page.get(box)).stream())
                .map(Amount::abs)
                .max(Amount::compareTo);
    }

    /** What feeds a box or a total, by treatment and rate. */
    Map<How, Feed> feeds(String box) {
        return Collections.unmodifiableMap(feeds.getOrDefault(box, new TreeMap<>()));
    }

    /** Entries that touch no box, by treatment and rate, with the money that moved. */
    Map<How, Feed> inNoBox() {
        return Collections.unmodifiableMap(inNoBox);
    }

    /** The exchange rates that were used, and for how many entries each. */
    Map<HeldRate, Long> rates() {
        return Collections.unmodifiableMap(rates);
    }

    /** The rows of the treatment table that were used, and how many entries each decided. */
    Map<Rule, Long> rules() {
        return Collections.unmodifiableMap(rules);
    }
}

package quarterfold.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import quarterfold.law.AccountLine;
import quarterfold.law.AccountLine.Portion;
import quarterfold.law.BoxRule;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/**
 * The VAT account of one period: the VAT payable portion and the VAT allowable portion, line by
 * line (VAT Regulations 1995 reg 32). Each portion adds up to the boxes of the return it feeds (reg
 * 39(2) and (3)), exactly, before their rounding. Sterling, to four decimals.
 *
 * @param vatReturn the return whose boxes it feeds
 */
public record VatAccount(VatReturn vatReturn, Half payable, Half allowable) {

    /** Where a box's part of the account has no line of its own in the tables. */
    private static final String OTHER = "adjustment";

    private static final String CORRECTION = "correction";

    /**
     * A portion of the account.
     *
     * @param boxes the boxes of the return it feeds, by id
     */
    public record Half(Portion portion, List<String> boxes, List<Line> lines) {

        public Half {
            boxes = List.copyOf(boxes);
            lines = List.copyOf(lines);
        }

        public Amount total() {
            return lines.stream().map(Line::amount).reduce(Amount.ZERO, Amount::plus);
        }
    }

    /**
     * A line of a portion.
     *
     * @param source the text the line rests on
     * @param entries how many occasions of entries are on it
     * @param adjustments how many adjustments beside entries are on it
     * @param boxes what of it is in each box, by id
     */
    public record Line(
            AccountLine line,
            String source,
            long entries,
            long adjustments,
            Map<String, Amount> boxes) {

        public Amount amount() {
            return boxes.values().stream().reduce(Amount.ZERO, Amount::plus);
        }
    }

    /** The account of a draft or of a closed period. */
    public static VatAccount of(Pack pack) {
        Maker maker = new Maker(pack);
        pack.forEachTreated(maker::add);
        pack.vatReturn().adjustments().forEach(maker::add);
        return new VatAccount(
                pack.vatReturn(), maker.half(Portion.PAYABLE), maker.half(Portion.ALLOWABLE));
    }

    /** What is on one line so far. */
    private static final class Sum {
        private long entries;
        private long adjustments;
        private final Map<String, Amount> boxes = new TreeMap<>();
    }

    private record Key(String account, Portion portion) {}

    private record Place(String treatment, String box, String scheme, LocalDate day) {}

    private static final class Maker {
        private final Law law;
        private final Settings settings;
        private final Period period;
        private final Map<String, Portion> portions;
        private final Map<Key, Sum> sums = new LinkedHashMap<>();
        private final Map<Place, String> known = new HashMap<>();

        Maker(Pack pack) {
            law = pack.law();
            settings = pack.settings();
            period = pack.vatReturn().period();
            portions = Portions.of(law.form(period.end()));
            law.account(period.end())
                    .forEach(
                            l ->
                                    sums.put(
                                            new Key(l.value().account(), l.value().portion()),
                                            new Sum()));
        }

        void add(Treated treated) {
            boolean corrects = treated.takenUp() == TakenUp.ERROR;
            treated.boxes()
                    .forEach(
                            (box, amount) -> {
                                Portion portion = portions.get(box);
                                if (portion != null) {
                                    String account =
                                            corrects
                                                    ? CORRECTION
                                                    : account(
                                                            treated.treatment(),
                                                            box,
                                                            settings.schemeOn(
                                                                    treated.occasion().day()),
                                                            treated.entry().taxPoint());
                                    Sum sum = sum(account, portion);
                                    sum.entries++;
                                    sum.boxes.merge(box, amount, Amount::plus);
                                }
                            });
        }

        void add(Adjustment adjustment) {
            adjustment
                    .boxes()
                    .forEach(
                            (box, amount) -> {
                                Portion portion = portions.get(box);
                                if (portion != null) {
                                    Sum sum =
                                            sum(
                                                    account(
                                                            adjustment.treatment(),
                                                            box,
                                                            settings.schemeOn(period.end()),
                                                            period.end()),
                                                    portion);
                                    sum.adjustments++;
                                    sum.boxes.merge(box, amount, Amount::plus);
                                }
                            });
        }

        private Sum sum(String account, Portion portion) {
            return sums.computeIfAbsent(new Key(account, portion), k -> new Sum());
        }

        /** The account's line by the treatment's row of {@code boxes.csv}. */
        private String account(String treatment, String box, String scheme, LocalDate day) {
            return known.computeIfAbsent(
                    new Place(treatment, box, scheme, day),
                    place ->
                            law.boxes(treatment, scheme, day).stream()
                                    .map(Dated::value)
                                    .filter(rule -> rule.box().equals(box))
                                    .map(BoxRule::account)
                                    .filter(account -> !account.isEmpty())
                                    .findFirst()
                                    .orElse(OTHER));
        }

        Half half(Portion portion) {
            List<Line> lines = new ArrayList<>();
            sums.forEach(
                    (key, sum) -> {
                        if (key.portion() == portion && sum.entries + sum.adjustments > 0) {
                            Dated<AccountLine> line = line(key);
                            lines.add(
                                    new Line(
                                            line.value(),
                                            line.source(),
                                            sum.entries,
                                            sum.adjustments,
                                            Map.copyOf(sum.boxes)));
                        }
                    });
            return new Half(portion, Portions.boxes(law.form(period.end()), portion), lines);
        }

        /** A line the tables do not word, as in a close older than they are, has its own name. */
        private Dated<AccountLine> line(Key key) {
            return law.account(period.end()).stream()
                    .filter(l -> l.value().account().equals(key.account()))
                    .filter(l -> l.value().portion() == key.portion())
                    .findFirst()
                    .orElse(
                            new Dated<>(
                                    new AccountLine(key.account(), key.portion(), key.account()),
                                    LocalDate.MIN,
                                    LocalDate.MAX,
                                    ""));
        }
    }
}

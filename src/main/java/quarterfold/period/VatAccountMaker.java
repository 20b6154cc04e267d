package quarterfold.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import quarterfold.law.AccountLine;
import quarterfold.law.AccountLine.Portion;
import quarterfold.law.BoxRule;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.period.VatAccount.Half;
import quarterfold.period.VatAccount.Line;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/**
 * Makes the VAT account of a period from its occasions, which are added one by one, so that a
 * single reading of the period may serve for more than the account. The adjustments of the return
 * are in it from the beginning.
 */
public final class VatAccountMaker {

    /** Where a box's part of the account has no line of its own in the tables. */
    private static final String OTHER = "adjustment";

    private static final String CORRECTION = "correction";

    /** What is on one line so far. */
    private static final class Sum {
        private long entries;
        private long adjustments;
        private final Map<String, Amount> boxes = new TreeMap<>();
    }

    private record Key(String account, Portion portion) {}

    private record Place(String treatment, String box, String scheme, LocalDate day) {}

    private final Law law;
    private final Settings settings;
    private final VatReturn vatReturn;
    private final Map<String, Portion> portions;
    private final Map<Key, Sum> sums = new LinkedHashMap<>();
    private final Map<Place, String> known = new HashMap<>();

    /** An account of the adjustments alone, so far. */
    public VatAccountMaker(Pack pack) {
        law = pack.law();
        settings = pack.settings();
        vatReturn = pack.vatReturn();
        LocalDate end = vatReturn.period().end();
        portions = Portions.of(law.form(end));
        law.account(end)
                .forEach(
                        l ->
                                sums.put(
                                        new Key(l.value().account(), l.value().portion()),
                                        new Sum()));
        vatReturn.adjustments().forEach(this::add);
    }

    /** Takes up an occasion of the period. */
    public void add(Treated treated) {
        boolean corrects = treated.takenUp() == TakenUp.ERROR;
        treated.boxes()
                .forEach(
                        (box, amount) ->
                                on(
                                                box,
                                                amount,
                                                () ->
                                                        corrects
                                                                ? CORRECTION
                                                                : account(
                                                                        treated.treatment(),
                                                                        box,
                                                                        settings.schemeOn(
                                                                                treated.occasion()
                                                                                        .day()),
                                                                        treated.entry().taxPoint()))
                                        .ifPresent(sum -> sum.entries++));
    }

    private void add(Adjustment adjustment) {
        LocalDate day = vatReturn.period().end();
        adjustment
                .boxes()
                .forEach(
                        (box, amount) ->
                                on(
                                                box,
                                                amount,
                                                () ->
                                                        account(
                                                                adjustment.treatment(),
                                                                box,
                                                                settings.schemeOn(day),
                                                                day))
                                        .ifPresent(sum -> sum.adjustments++));
    }

    /** The line that takes up an amount of a box, with it; none where no portion feeds the box. */
    private Optional<Sum> on(String box, Amount amount, Supplier<String> account) {
        return Optional.ofNullable(portions.get(box))
                .map(
                        portion -> {
                            Sum sum = sum(account.get(), portion);
                            sum.boxes.merge(box, amount, Amount::plus);
                            return sum;
                        });
    }

    /** The account of what was added. */
    public VatAccount account() {
        return new VatAccount(vatReturn, half(Portion.PAYABLE), half(Portion.ALLOWABLE));
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

    private Half half(Portion portion) {
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
        return new Half(
                portion, Portions.boxes(law.form(vatReturn.period().end()), portion), lines);
    }

    /** A line the tables do not word, as in a close older than they are, has its own name. */
    private Dated<AccountLine> line(Key key) {
        return law.account(vatReturn.period().end()).stream()
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

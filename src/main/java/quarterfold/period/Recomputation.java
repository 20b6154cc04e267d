package quarterfold.period;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import quarterfold.law.Law;
import quarterfold.ledger.Book;
import quarterfold.ledger.Close;
import quarterfold.ledger.ClosedEntry;
import quarterfold.ledger.Finding;
import quarterfold.ledger.Finding.Check;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.TableText;
import quarterfold.money.Amount;
import quarterfold.treatment.Treated;

/**
 * Works a closed return out again, with the tables, settings, products, decisions and entries it
 * was closed with, and compares every entry and every box with what the close froze.
 */
public final class Recomputation {

    private final Ledger ledger;
    private final Close close;
    private final Returns returns;
    private final Consumer<Finding> found;

    /**
     * Tells of each difference. A close whose tables are not those of their digests is not worked
     * out again.
     *
     * @param close one of the ledger's
     * @return how many occasions of entries were worked out again
     */
    public static long check(Book book, Ledger ledger, Close close, Consumer<Finding> found) {
        List<TableText> altered =
                close.tables().stream()
                        .filter(t -> !Law.file(t.name(), bytes(t)).sha256().equals(t.sha256()))
                        .toList();
        altered.forEach(
                t ->
                        found.accept(
                                new Finding(
                                        Check.RETURNS,
                                        close.period() + " " + t.name(),
                                        "its text is not that of its SHA-256, %s; the return cannot be worked out again"
                                                .formatted(t.sha256()))));
        return altered.isEmpty() ? new Recomputation(book, ledger, close, found).check() : 0;
    }

    private static byte[] bytes(TableText table) {
        return table.text().getBytes(StandardCharsets.UTF_8);
    }

    private Recomputation(Book book, Ledger ledger, Close close, Consumer<Finding> found) {
        this.ledger = ledger;
        this.close = close;
        this.returns =
                new Returns(
                        book.asOf(
                                close.settings(),
                                ClosedReturn.products(close),
                                ClosedReturn.bundles(close)),
                        ledger.asOf(close),
                        ClosedReturn.law(close));
        this.found = found;
    }

    /** A frozen occasion. */
    private record Key(long number, LocalDate day, String cause) {
        static Key of(ClosedEntry closed) {
            return new Key(closed.number(), closed.day(), closed.cause());
        }
    }

    private long check() {
        Period period = new Period(close.period(), close.start(), close.end(), close.due());
        long[] seen = {0, 0};
        VatReturn[] again = new VatReturn[1];
        ledger.lookUpClosed(
                frozen ->
                        again[0] =
                                returns.draft(
                                        period,
                                        treated -> {
                                            seen[0]++;
                                            if (compare(treated, frozen)) {
                                                seen[1]++;
                                            }
                                        }));
        if (frozenEntries() != seen[1]) {
            missing(period);
        }
        boxes(again[0]);
        account();
        return seen[0];
    }

    /** Whether the close froze it at all. */
    private boolean compare(Treated treated, Ledger.ClosedEntries frozen) {
        ClosedEntry now = Closing.frozen(close.period(), treated);
        for (ClosedEntry then : frozen.of(now.number())) {
            if (Key.of(then).equals(Key.of(now))) {
                differences(then, now);
                return true;
            }
        }
        tell(
                "entry " + now.number(),
                "found nothing frozen; worked out again it is %s on %s"
                        .formatted(now.treatment(), now.day()));
        return false;
    }

    private void differences(ClosedEntry then, ClosedEntry now) {
        if (then.equals(now)) {
            return;
        }
        String entry = "entry " + now.number();
        differ(entry + " [treatment]", then.treatment(), now.treatment());
        differ(entry + " [rule]", then.rule(), now.rule());
        differ(entry + " [rate]", then.rate(), now.rate());
        differ(entry + " [taken up]", then.takenUp(), now.takenUp());
        differ(entry + " [net]", then.net().toString(), now.net().toString());
        differ(entry + " [vat]", then.vat().toString(), now.vat().toString());
        differ(entry + " [claim]", then.claim().toString(), now.claim().toString());
        differ(entry + " [exchange]", then.exchange(), now.exchange());
        Set<String> boxes = new TreeSet<>(then.boxes().keySet());
        boxes.addAll(now.boxes().keySet());
        for (String box : boxes) {
            differ(
                    entry + " [box " + box + "]",
                    then.boxes().getOrDefault(box, Amount.ZERO).toString(),
                    now.boxes().getOrDefault(box, Amount.ZERO).toString());
        }
    }

    private long frozenEntries() {
        long[] count = {0};
        ledger.forEachClosed(close.period(), (entry, closed) -> count[0]++);
        return count[0];
    }

    /** What was frozen and does not come out again. */
    private void missing(Period period) {
        Set<Key> now = new HashSet<>();
        returns.draft(period, treated -> now.add(Key.of(Closing.frozen(close.period(), treated))));
        ledger.forEachClosed(
                close.period(),
                (entry, closed) -> {
                    if (!now.contains(Key.of(closed))) {
                        tell(
                                "entry " + closed.number(),
                                "found %s on %s frozen; worked out again it is not in the period"
                                        .formatted(closed.treatment(), closed.day()));
                    }
                });
    }

    private void boxes(VatReturn again) {
        Map<String, Amount> sums = new HashMap<>();
        ledger.forEachClosed(
                close.period(),
                (entry, closed) ->
                        closed.boxes().forEach((box, a) -> sums.merge(box, a, Amount::plus)));
        close.adjustments()
                .forEach(c -> c.boxes().forEach((box, a) -> sums.merge(box, a, Amount::plus)));
        for (BoxFigure box : again.boxes()) {
            String id = box.box().id();
            Amount exact = close.exact().getOrDefault(id, Amount.ZERO);
            Amount figure = close.figures().getOrDefault(id, Amount.ZERO);
            differ("box " + id, box.box().text(figure), box.text());
            differ("box " + id + " before rounding", exact.toString(), box.exact().toString());
            Amount sum = sums.getOrDefault(id, Amount.ZERO);
            if (!box.box().isComputed() && !sum.equals(exact)) {
                tell(
                        "box " + id,
                        "found %s frozen before rounding; its frozen entries and adjustments add up to %s"
                                .formatted(exact, sum));
            }
        }
        List<Adjustment> now = again.adjustments();
        List<Adjustment> then = close.adjustments().stream().map(Adjustment::of).toList();
        if (!now.equals(then)) {
            tell(
                    "adjustments",
                    "found %d frozen; worked out again they are %d, or others"
                            .formatted(then.size(), now.size()));
        }
    }

    /** The VAT account of the close is the boxes it feeds. */
    private void account() {
        VatAccount account = VatAccount.of(new ClosedPack(ledger, close));
        for (VatAccount.Half half : List.of(account.payable(), account.allowable())) {
            Amount boxes =
                    half.boxes().stream()
                            .map(id -> close.exact().getOrDefault(id, Amount.ZERO))
                            .reduce(Amount.ZERO, Amount::plus);
            if (!boxes.equals(half.total())) {
                tell(
                        "VAT account, %s portion".formatted(half.portion().code()),
                        "found %s; expected the %s of the boxes it feeds, %s"
                                .formatted(
                                        half.total(), boxes, String.join(" and ", half.boxes())));
            }
        }
    }

    private void differ(String place, String then, String now) {
        if (!then.equals(now)) {
            tell(place, "found '%s' frozen; worked out again it is '%s'".formatted(then, now));
        }
    }

    private void tell(String place, String text) {
        found.accept(new Finding(Check.RETURNS, close.period() + " " + place, text));
    }
}

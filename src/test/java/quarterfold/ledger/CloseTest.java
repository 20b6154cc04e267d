package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.money.Amount;

class CloseTest {
    static final Close CLOSE = closeOf(YearMonth.of(2026, 9));

    @TempDir Path folder;
    private Ledger ledger;

    @BeforeEach
    void open() {
        ledger = Samples.newLedger(folder);
        Samples.enter(ledger, "a", Samples.FULL, Samples.FULL);
        Samples.enter(ledger, "b", Samples.FULL);
    }

    @AfterEach
    void leave() {
        ledger.close();
    }

    private static final ClosedCorrection CORRECTION =
            new ClosedCorrection(
                    1,
                    LocalDate.of(2026, 5, 1),
                    "supply",
                    YearMonth.of(2026, 6),
                    "error",
                    boxes("1", "0.0001"),
                    boxes("1", "20", "6", "100"),
                    boxes("1", "19.9999"),
                    "came late");

    private static Close closeOf(YearMonth period) {
        return new Close(
                period,
                period.minusMonths(2).atDay(1),
                period.atEndOfMonth(),
                LocalDate.of(2026, 11, 7),
                "pay",
                Samples.SETTINGS,
                7,
                3,
                2,
                boxes("10", "0.0001", "9", "-1.5"),
                boxes("10", "0", "9", "-1.50"),
                boxes("10", "0.01", "9", "-1.51"),
                List.of(
                        new ClosedAdjustment(
                                "partial-exemption",
                                "2026-09",
                                "So much",
                                "reg 101",
                                Amount.ZERO,
                                Amount.of("1.0001"),
                                Amount.of("-2.5"),
                                boxes("10", "-2.5"))),
                List.of(
                        new ClosedQuery(
                                "Z", 0, "a.csv:2", "First?", Amount.of("12.3456"), true, ""),
                        new ClosedQuery("E1/x", 1, "", "Second?", Amount.ZERO, false, "set aside")),
                List.of(
                        new TableText("rates.csv", "aa", "from,value\n2011-01-04,20\n"),
                        new TableText("copy-of-rates.csv", "aa", "from,value\n2011-01-04,20\n"),
                        new TableText("boxes.csv", "bb", "")));
    }

    private static Map<String, Amount> boxes(String... pairs) {
        Map<String, Amount> boxes = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            boxes.put(pairs[i], Amount.of(pairs[i + 1]));
        }
        return boxes;
    }

    private static ClosedEntry closed(long number, String treatment, Map<String, Amount> boxes) {
        return new ClosedEntry(
                YearMonth.of(2026, 9),
                number,
                LocalDate.of(2026, 7, 1),
                "supply",
                "in-its-period",
                treatment,
                "S01",
                "20%",
                Amount.of("100.1"),
                Amount.of("-20.0200"),
                Amount.of("0.0001"),
                boxes);
    }

    static void close(Ledger ledger, Close close, ClosedEntry... entries) {
        List<ClosedEntry> all = new ArrayList<>(List.of(closed(1, "uk-sale", boxes("1", "20"))));
        all.addAll(List.of(entries));
        freeze(ledger, close, all);
    }

    private static void freeze(Ledger ledger, Close close, List<ClosedEntry> entries) {
        try (CloseWriter writer = ledger.beginClose(close.period())) {
            for (ClosedEntry entry : entries) {
                writer.add(entry);
            }
            writer.add(CORRECTION);
            writer.commit(close);
        }
    }

    @Test
    void correctionsComeBackByPeriodAndByEntry() {
        close(ledger, CLOSE);
        assertThat(ledger.corrections(YearMonth.of(2026, 9))).containsExactly(CORRECTION);
        assertThat(ledger.corrections(YearMonth.of(2026, 12))).isEmpty();
        assertThat(ledger.corrections(1)).containsExactly(CORRECTION);
        assertThat(ledger.corrections(2)).isEmpty();
        assertThat(ledger.isClosed(1, LocalDate.of(2026, 7, 1), "supply")).isTrue();
        assertThat(ledger.isClosed(1, LocalDate.of(2026, 7, 1), "corrected")).isFalse();
        assertThat(ledger.isClosed(1, LocalDate.of(2026, 7, 2), "supply")).isFalse();
        assertThat(ledger.isClosed(2, LocalDate.of(2026, 7, 1), "supply")).isFalse();
    }

    /** What entries are by later decisions they were not when the period was closed. */
    @Test
    void aCloseKeepsTheKindsItHad() {
        kind(1, Decision.Action.STATE, "kind=sale");
        kind(2, Decision.Action.STATE, "kind=fee");
        kind(2, Decision.Action.UNDO, "2");
        close(ledger, CLOSE, closed(2, "b", boxes()));
        kind(1, Decision.Action.STATE, "kind=expense");
        kind(2, Decision.Action.STATE, "kind=payout");
        List<Kind> frozen = new ArrayList<>();
        ledger.forEachClosed(CLOSE.period(), (entry, closed) -> frozen.add(entry.kind()));
        assertThat(frozen).containsExactly(Kind.SALE, Kind.PURCHASE_CREDIT);
        assertThat(Samples.entries(ledger.asOf(CLOSE)))
                .extracting(Entry::kind)
                .containsExactly(Kind.SALE, Kind.PURCHASE_CREDIT, Kind.PURCHASE_CREDIT);
        assertThat(Samples.entries(ledger))
                .extracting(Entry::kind)
                .containsExactly(Kind.EXPENSE, Kind.PAYOUT, Kind.PURCHASE_CREDIT);
    }

    private void kind(long entry, Decision.Action action, String value) {
        ledger.decide(
                new Decision(
                        0,
                        Decision.Target.ENTRY,
                        Long.toString(entry),
                        action,
                        value,
                        "why",
                        "who",
                        LocalDate.of(2026, 10, 5)));
    }

    /** Of two closes each entry knows the one that froze it. */
    @Test
    void anEntryKnowsItsClose() {
        close(ledger, CLOSE);
        freeze(ledger, closeOf(YearMonth.of(2026, 12)), List.of(closed(2, "b", boxes())));
        assertThat(ledger.closedEntry(1).get(0).closedIn()).isEqualTo(YearMonth.of(2026, 9));
        assertThat(ledger.closedEntry(2).get(0).closedIn()).isEqualTo(YearMonth.of(2026, 12));
    }

    @Test
    void everythingFrozenComesBack() {
        ClosedEntry second = closed(3, "outside", boxes());
        ClosedEntry third = closed(2, "uk-purchase", boxes("7", "100.1", "4", "-20.0200"));
        close(ledger, CLOSE, second, third);

        assertThat(ledger.close(CLOSE.period())).contains(CLOSE);
        assertThat(ledger.closes()).containsExactly(CLOSE);
        assertThat(ledger.closes().get(0).figures().keySet()).containsExactly("10", "9");
        List<Entry> entries = new ArrayList<>();
        List<ClosedEntry> closed = new ArrayList<>();
        ledger.forEachClosed(
                CLOSE.period(),
                (e, c) -> {
                    entries.add(e);
                    closed.add(c);
                });
        assertThat(entries)
                .containsExactly(
                        new Entry(1, 1, Samples.FULL),
                        new Entry(3, 2, Samples.FULL),
                        new Entry(2, 1, Samples.FULL));
        assertThat(closed).containsExactly(closed(1, "uk-sale", boxes("1", "20")), second, third);
        assertThat(closed.get(2).boxes().keySet()).containsExactly("7", "4");
    }

    @Test
    void eachCloseHasItsOwnEntries() {
        Close next = closeOf(YearMonth.of(2026, 12));
        freeze(ledger, next, List.of(closed(2, "b", boxes()), closed(3, "b", boxes())));
        close(ledger, CLOSE);

        assertThat(ledger.closes()).containsExactly(CLOSE, next);
        assertThat(numbers(CLOSE.period())).containsExactly(1L);
        assertThat(numbers(next.period())).containsExactly(2L, 3L);
        assertThat(numbers(YearMonth.of(2027, 3))).isEmpty();
        assertThat(ledger.close(YearMonth.of(2027, 3))).isEmpty();
    }

    @Test
    void anEntryIsClosedOnce() {
        close(ledger, CLOSE);

        Close next = closeOf(YearMonth.of(2026, 12));
        assertThatThrownBy(() -> freeze(ledger, next, List.of(closed(1, "b", boxes()))))
                .hasMessageContaining("closed_entry.number");
        assertThat(ledger.close(next.period())).isEmpty();
    }

    private List<Long> numbers(YearMonth period) {
        List<Long> numbers = new ArrayList<>();
        ledger.forEachClosed(period, (e, c) -> numbers.add(e.number()));
        return numbers;
    }

    @Test
    void aClosedPeriodIsNotClosedAgain() {
        close(ledger, CLOSE);

        assertThatThrownBy(() -> ledger.beginClose(CLOSE.period()))
                .isInstanceOfSatisfying(
                        LedgerException.class,
                        e -> {
                            assertThat(e.fault()).isEqualTo(Fault.REFUSED);
                            assertThat(e.fault().exitCode()).isEqualTo(1);
                        })
                .hasMessage(
                        "2026-09 is closed already, and a closed period never changes; nothing was"
                                + " changed");
        Samples.enter(ledger, "later", Samples.FULL);
    }

    @Test
    void aCloseThatIsNotCommittedLeavesNothing() {
        try (CloseWriter writer = ledger.beginClose(CLOSE.period())) {
            writer.add(closed(1, "uk-sale", boxes()));
        }

        assertThat(ledger.closes()).isEmpty();
        close(ledger, CLOSE);
        assertThat(numbers(CLOSE.period())).containsExactly(1L);
    }

    /** The period room writes while it reads. */
    @Test
    void entriesAreFrozenWhileTheyAreRead() {
        try (CloseWriter writer = ledger.beginClose(CLOSE.period())) {
            ledger.forEach(e -> writer.add(closed(e.number(), "t" + e.number(), boxes())));
            writer.commit(CLOSE);
        }

        assertThat(numbers(CLOSE.period())).containsExactly(1L, 2L, 3L);
    }

    @Test
    void anotherPeriodsCloseIsRefused() {
        try (CloseWriter writer = ledger.beginClose(YearMonth.of(2026, 6))) {
            assertThatThrownBy(() -> writer.commit(CLOSE))
                    .hasMessage("closing 2026-06, found the close of 2026-09");
        }
    }

    @Test
    void figuresAreForTheSameBoxes() {
        assertThatThrownBy(
                        () ->
                                new Close(
                                        CLOSE.period(),
                                        CLOSE.start(),
                                        CLOSE.end(),
                                        CLOSE.due(),
                                        "pay",
                                        Samples.SETTINGS,
                                        7,
                                        0,
                                        0,
                                        boxes("1", "2"),
                                        boxes("2", "2"),
                                        boxes("1", "2"),
                                        List.of(),
                                        List.of(),
                                        List.of()))
                .hasMessage("boxes differ: exact [1], figures [2], other rounding [1]");
    }
}

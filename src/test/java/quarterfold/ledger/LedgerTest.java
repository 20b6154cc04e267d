package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.money.Amount;

class LedgerTest {
    private static final LocalDate JULY = LocalDate.of(2026, 7, 1);

    @TempDir Path folder;
    private Ledger ledger;

    @BeforeEach
    void open() {
        ledger = Samples.newLedger(folder);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    @Test
    void everyFieldComesBack() {
        Line bare = Samples.sale(2, LocalDate.of(1900, 1, 1), "0");
        Samples.enter(ledger, "a", Samples.FULL, bare);

        assertThat(Samples.entries(ledger))
                .containsExactly(new Entry(1, 1, Samples.FULL), new Entry(2, 1, bare));
        assertThat(ledger.entry(1)).contains(new Entry(1, 1, Samples.FULL));
        assertThat(ledger.entry(2)).contains(new Entry(2, 1, bare));
        assertThat(ledger.entry(0)).isEmpty();
        assertThat(ledger.entry(3)).isEmpty();
    }

    /** Nothing a box depends on is left out of a scan for figures. */
    @Test
    void figuresComeBackWithoutWhatOnlyPeopleRead() {
        Line bare = Samples.sale(2, LocalDate.of(1900, 1, 1), "0");
        Samples.enter(ledger, "a", Samples.FULL, bare);

        List<Entry> entries = new ArrayList<>();
        ledger.forEachFigured(EntryReader.EARLIEST, EntryReader.LATEST, entries::add);

        Line full = Samples.FULL;
        assertThat(entries)
                .containsExactly(
                        new Entry(
                                1,
                                1,
                                new Line(
                                        full.row(),
                                        full.taxPoint(),
                                        full.profile(),
                                        full.item(),
                                        full.document(),
                                        full.order(),
                                        full.amounts(),
                                        full.paid(),
                                        full.particulars(),
                                        "",
                                        "")),
                        new Entry(2, 1, bare));
    }

    /** Each field alone stated, so that none is taken for its neighbour. */
    @Test
    void everyFieldComesBackAlone() {
        Line f = Samples.FULL;
        Optional<Amount> one = Optional.of(Amount.of("1"));
        Optional<Amount> no = Optional.empty();
        Optional<LocalDate> day = f.paid();
        List<Line> lines =
                List.of(
                        line("d", "", new Amounts(one, no, no), Optional.empty(), "", ""),
                        line("", "o", new Amounts(no, one, no), Optional.empty(), "", ""),
                        line("", "", new Amounts(no, no, one), day, "", ""),
                        line("", "", new Amounts(one, no, one), Optional.empty(), "x", ""),
                        line("", "", new Amounts(no, one, one), Optional.empty(), "", "n"));
        Samples.enter(ledger, "a", lines.toArray(Line[]::new));

        assertThat(Samples.entries(ledger)).extracting(Entry::line).isEqualTo(lines);
    }

    private static Line line(
            String document,
            String order,
            Amounts amounts,
            Optional<LocalDate> paid,
            String original,
            String notes) {
        return new Line(
                2, JULY, Samples.SALE, Item.NONE, document, order, amounts, paid, original, notes);
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void everyKindComesBack(Kind kind) {
        Line line = Samples.sale(2, JULY, "1");
        Line of =
                new Line(
                        2,
                        JULY,
                        Profile.of(kind, "GBP"),
                        Item.NONE,
                        "",
                        "",
                        line.amounts(),
                        Optional.empty(),
                        "",
                        "");
        Samples.enter(ledger, "a", of);

        assertThat(Samples.entries(ledger).get(0).kind()).isEqualTo(kind);
    }

    @ParameterizedTest
    @ValueSource(longs = {Long.MIN_VALUE, -3_000_000_000L, -1, 0, 3_000_000_000L, Long.MAX_VALUE})
    void moneyOfAnySizeComesBack(long tenThousandths) {
        Amount amount = new Amount(tenThousandths);
        Line line = line("", "", Amounts.ofGross(amount), Optional.empty(), "", "");
        try (FileEntry file = ledger.begin("a", "a.csv", "plain-sheet")) {
            file.add(line);
            file.commit(1, 1, amount, amount);
        }

        assertThat(Samples.entries(ledger).get(0).amounts().gross()).contains(amount);
        assertThat(ledger.sources().get(0).moneyIn()).isEqualTo(amount);
    }

    @Test
    void numbersRunWithoutGapsOverFilesAndRollbacks() {
        Source first = Samples.enter(ledger, "a", Samples.FULL, Samples.FULL);
        try (FileEntry abandoned = ledger.begin("b", "b.csv", "plain-sheet")) {
            assertThat(abandoned.add(Samples.FULL)).isEqualTo(3);
            abandoned.setAside(9, "no amount");
            abandoned.raise("code", "about", "question");
        }
        Source none = Samples.enter(ledger, "c");
        Source last = Samples.enter(ledger, "d", Samples.FULL);

        assertThat(Samples.numbers(Samples.entries(ledger))).containsExactly(1L, 2L, 3L);
        assertThat(ledger.sources()).containsExactly(first, none, last);
        assertThat(ledger.sources()).extracting(Source::id).containsExactly(1L, 2L, 3L);
        assertThat(ledger.sources()).extracting(Source::firstEntry).containsExactly(1L, 0L, 3L);
        assertThat(ledger.raised()).isEmpty();
        assertThat(ledger.setAside(2)).isEmpty();
    }

    /** An item or profile remembered from a rolled back file would be a row that is not there. */
    @Test
    void whatARolledBackFileSharedIsStoredAgain() {
        try (FileEntry abandoned = ledger.begin("a", "a.csv", "plain-sheet")) {
            for (int i = 0; i < 2_000; i++) {
                abandoned.add(Samples.FULL);
            }
        }
        Samples.enter(ledger, "a", Samples.FULL);

        assertThat(Samples.entries(ledger)).containsExactly(new Entry(1, 1, Samples.FULL));
    }

    @Test
    void aSourceComesBackWithItsTotals() {
        Source source;
        try (FileEntry file = ledger.begin("ab12", "July – sales.csv", "quaylark-statement")) {
            file.add(Samples.sale(3, JULY.plusDays(3), "10"));
            file.add(Samples.sale(2, JULY, "20"));
            file.setAside(4, "information only, no money");
            file.setAside(5, "no amount");
            file.raise("payout-does-not-tie", "QL-0003", "What about the 3.00?");
            source = file.commit(4, 2, Amount.of("30"), Amount.of("30.00"));
        }

        assertThat(source)
                .isEqualTo(
                        new Source(
                                1,
                                "ab12",
                                "July – sales.csv",
                                "quaylark-statement",
                                1,
                                2,
                                4,
                                2,
                                Amount.of("30"),
                                Amount.of("30"),
                                Optional.of(new Source.Dates(JULY, JULY.plusDays(3)))));
        assertThat(ledger.sources()).containsExactly(source);
        assertThat(ledger.source("ab12")).contains(source);
        assertThat(ledger.source("ab13")).isEmpty();
        assertThat(ledger.setAside(1))
                .containsExactly(
                        new SetAside(1, 4, "information only, no money"),
                        new SetAside(1, 5, "no amount"));
        assertThat(ledger.raised())
                .containsExactly(
                        new RaisedQuery(
                                1, "payout-does-not-tie", "QL-0003", "What about the 3.00?"));
    }

    @Test
    void theSameFileIsRefusedAndNothingChanges() {
        Samples.enter(ledger, "a", Samples.FULL);

        assertThatThrownBy(() -> ledger.begin("a", "again.csv", "plain-sheet"))
                .isInstanceOfSatisfying(
                        LedgerException.class, e -> assertThat(e.fault()).isEqualTo(Fault.REFUSED))
                .hasMessage(
                        "again.csv: this file is in the book already, as source 1, 'a.csv'; nothing"
                                + " was entered");
        Samples.enter(ledger, "b", Samples.FULL);
        assertThat(Samples.numbers(Samples.entries(ledger))).containsExactly(1L, 2L);
    }

    @Test
    void totalsThatDoNotHoldTogetherEnterNothing() {
        try (FileEntry file = ledger.begin("a", "a.csv", "plain-sheet")) {
            file.add(Samples.FULL);
            assertThatThrownBy(() -> file.commit(2, 1, Amount.ZERO, Amount.ZERO))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("a.csv: 2 rows read, 1 entered and 0 set aside");
            assertThatThrownBy(() -> file.commit(1, 1, Amount.of("1"), Amount.of("1.01")))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("a.csv: money in 1.00, money entered 1.01");
        }

        assertThat(Samples.entries(ledger)).isEmpty();
        assertThat(ledger.sources()).isEmpty();
    }

    @Test
    void aPeriodsEntriesAreThoseWithATaxPointInIt() {
        LocalDate august = JULY.plusMonths(1);
        Samples.enter(ledger, "a", Samples.sale(2, JULY.minusDays(1), "1"), at(JULY));
        Samples.enter(ledger, "b", at(august), at(JULY.minusYears(1)), at(august.minusDays(1)));
        Samples.enter(ledger, "c", at(august), at(august.plusYears(1)));
        Samples.enter(ledger, "d", at(JULY));

        assertThat(between(JULY, august.minusDays(1))).containsExactly(2L, 5L, 8L);
        assertThat(between(august, august)).containsExactly(3L, 6L);
        assertThat(between(august.plusYears(2), august.plusYears(3))).isEmpty();
    }

    private static Line at(LocalDate day) {
        return Samples.sale(2, day, "1");
    }

    private List<Long> between(LocalDate first, LocalDate last) {
        List<Entry> found = new ArrayList<>();
        ledger.forEach(first, last, found::add);
        return Samples.numbers(found);
    }

    /** More different profiles and items than are remembered, met in and out of order. */
    @Test
    void manyDifferentItemsComeBack() {
        int many = ById.MANY + 10_000;
        Line[] lines = new Line[many * 2];
        for (int i = 0; i < lines.length; i++) {
            int which = i < many ? i : (int) ((i - many) * 7_919L % many);
            lines[i] = item("P" + which);
        }
        Samples.enter(ledger, "a", lines);

        List<Entry> entries = Samples.entries(ledger);
        assertThat(entries).hasSize(lines.length);
        for (Entry entry : entries) {
            assertThat(entry.line()).isEqualTo(lines[(int) entry.number() - 1]);
        }
        assertThat(ledger.entry(many)).contains(entries.get(many - 1));
    }

    /**
     * Entries are written several with one statement: both sides of one whole statement and two.
     */
    @ParameterizedTest
    @ValueSource(ints = {1, 49, 50, 51, 99, 100, 101})
    void linesOfAnyCountComeBack(int count) {
        Line[] lines = new Line[count];
        for (int i = 0; i < count; i++) {
            Line sale = Samples.sale(i + 2L, JULY.plusDays(i), i + ".25");
            lines[i] = i % 3 == 0 ? sale : i % 3 == 1 ? Samples.FULL : item("P" + i);
        }
        Samples.enter(ledger, "a", lines);
        Samples.enter(ledger, "b", Samples.FULL);

        List<Entry> entries = Samples.entries(ledger);
        assertThat(entries).extracting(Entry::line).startsWith(lines).hasSize(count + 1);
        assertThat(entries.get(count)).isEqualTo(new Entry(count + 1L, 2, Samples.FULL));
        assertThat(Samples.numbers(entries))
                .isEqualTo(LongStream.rangeClosed(1, count + 1L).boxed().toList());
    }

    private static Line item(String product) {
        Line l = Samples.FULL;
        return new Line(
                l.row(),
                l.taxPoint(),
                l.profile(),
                new Item(product, "about " + product),
                "",
                "",
                l.amounts(),
                l.paid(),
                "",
                "");
    }

    @Test
    void readingMayBeStoppedAndTheLedgerUsedAgain() {
        Samples.enter(ledger, "a", Samples.FULL, Samples.FULL, Samples.FULL);

        assertThatThrownBy(
                        () ->
                                ledger.forEach(
                                        e -> {
                                            throw new IllegalStateException("enough");
                                        }))
                .hasMessage("enough");
        Samples.enter(ledger, "b", Samples.FULL);
        assertThat(Samples.entries(ledger)).hasSize(4);
    }

    @Test
    void theLedgerMayBeAskedWhileItIsRead() {
        Samples.enter(ledger, "a", Samples.FULL, Samples.FULL);

        ledger.forEach(e -> assertThat(ledger.entry(e.number())).contains(e));
    }
}

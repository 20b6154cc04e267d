package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Decision.Action;
import quarterfold.ledger.Decision.Target;
import quarterfold.money.Amount;

/** What people say that entries are holds wherever the ledger gives them, and moves no money. */
class KindDecisionsTest {
    private static final String BONUS = "S1/kind-unknown/Type: Bonus";
    private static final LocalDate DAY = LocalDate.of(2026, 8, 1);

    @TempDir private Path folder;
    private Optional<Ledger> open = Optional.empty();

    /** Entries 1, 2 and 4 are asked about as one kind of row, 5 as another; 3 is a sale. */
    @BeforeEach
    void rowsNobodyKnows() {
        Ledger ledger = Samples.newLedger(folder);
        open = Optional.of(ledger);
        try (FileEntry file = ledger.begin("a", "a.csv", "stall")) {
            file.readWith("layout: stall\n");
            file.add(other(2, "-24.00"));
            file.asked("Type: Bonus");
            file.add(other(3, "-36.00"));
            file.asked("Type: Bonus");
            file.add(Samples.sale(4, DAY, "100.00"));
            file.add(other(5, "5.00"));
            file.asked("Type: Bonus");
            file.add(other(6, "7.00"));
            file.asked("Type: Other");
            file.commit(5, 5, Amount.of("52.00"), Amount.of("52.00"));
        }
    }

    @AfterEach
    void close() {
        ledger().close();
    }

    private Ledger ledger() {
        return open.orElseThrow();
    }

    private static Line other(long row, String gross) {
        return SampleLine.of("other-money").gross(gross).line(row);
    }

    private Decision decide(Target target, String about, Action action, String value) {
        return ledger().decide(new Decision(0, target, about, action, value, "why", "who", DAY));
    }

    private List<String> all() {
        return Samples.entries(ledger()).stream().map(KindDecisionsTest::text).toList();
    }

    private static String text(Entry entry) {
        return "%d %s %s"
                .formatted(entry.number(), entry.kind().code(), entry.amounts().money().toString());
    }

    @Test
    void runsOfEntriesAreNoted() {
        assertThat(ledger().asked(1))
                .containsExactly(
                        new AskedEntries("Type: Bonus", 1, 2),
                        new AskedEntries("Type: Bonus", 4, 4),
                        new AskedEntries("Type: Other", 5, 5));
        assertThat(ledger().asked(2)).isEmpty();
        assertThat(ledger().kinds().isAny()).isFalse();
    }

    @Test
    void theTextOfALayoutIsKeptOnce() {
        try (FileEntry file = ledger().begin("b", "b.csv", "stall")) {
            file.readWith("layout: stall\n");
            file.commit(0, 0, Amount.ZERO, Amount.ZERO);
        }
        Samples.enter(ledger(), "c", Samples.sale(2, DAY, "1.00"));
        assertThat(ledger().sources())
                .extracting(source -> ledger().layoutText(source))
                .containsExactly(
                        Optional.of("layout: stall\n"),
                        Optional.of("layout: stall\n"),
                        Optional.empty());
    }

    /** Each way to entries gives them as they are now; as they were entered one alone. */
    @Test
    void aDecisionOnTheQuestionHoldsForItsEntries() {
        decide(Target.QUERY, BONUS, Action.STATE, "kind=fee");
        assertThat(all())
                .containsExactly(
                        "1 fee 24.00",
                        "2 fee 36.00",
                        "3 sale 100.00",
                        "4 fee -5.00",
                        "5 other-money 7.00");
        assertThat(ledger().entry(2).map(KindDecisionsTest::text)).contains("2 fee 36.00");
        assertThat(ofKind(Kind.FEE)).containsExactly("1 fee 24.00", "2 fee 36.00", "4 fee -5.00");
        assertThat(ofKind(Kind.OTHER_MONEY)).containsExactly("5 other-money 7.00");
        assertThat(found(Kind.FEE)).containsExactly(1L, 2L, 4L);
        assertThat(found(Kind.OTHER_MONEY)).containsExactly(5L);
        assertThat(found(Kind.PAYOUT)).isEmpty();
        assertThat(ledger().search().hasKind(Kind.FEE)).isTrue();
        assertThat(ledger().search().hasKind(Kind.PAYOUT)).isFalse();
        assertThat(asked("Type: Bonus")).containsExactly(1L, 2L, 4L);
        assertThat(asked("Type: Nothing")).isEmpty();
        assertThat(ledger().entries(ledger().sources().get(0), 1, 2))
                .extracting(KindDecisionsTest::text)
                .containsExactly("1 other-money -24.00", "2 other-money -36.00");
    }

    private List<String> ofKind(Kind kind) {
        List<String> found = new ArrayList<>();
        ledger().forEachOfKind(kind, entry -> found.add(text(entry)));
        return found;
    }

    private List<Long> found(Kind kind) {
        List<Entry> found = new ArrayList<>();
        ledger().search().forEach(profile -> profile.kind() == kind, found::add);
        return Samples.numbers(found);
    }

    private List<Long> asked(String about) {
        List<Entry> found = new ArrayList<>();
        ledger().search()
                .forEachAsked(new RaisedQuery.Name(1, RaisedQuery.KIND_UNKNOWN, about), found::add);
        return Samples.numbers(found);
    }

    /** What only the gates of rare work ask may be said too often, and never too seldom. */
    @Test
    void whatThereMayBe() {
        EntrySearch before = ledger().search();
        assertThat(before.hasStatedSaleRates()).isFalse();
        assertThat(before.hasOtherEvidence(Kind.FEE, Evidence.INVOICE)).isFalse();
        decide(Target.ENTRY, "1", Action.STATE, "kind=sale");
        decide(Target.ENTRY, "2", Action.STATE, "kind=fee");
        EntrySearch after = ledger().search();
        assertThat(after.hasStatedSaleRates()).isTrue();
        assertThat(after.hasOtherEvidence(Kind.FEE, Evidence.INVOICE)).isTrue();
        assertThat(after.hasExemptSales()).isFalse();
        Samples.enter(
                ledger(), "e", SampleLine.of("other-money").rate("exempt").gross("1").line(2));
        assertThat(ledger().search().hasExemptSales()).isTrue();
    }

    /** An entry's own decision goes before that on the question; of several the last holds. */
    @Test
    void whichDecisionHolds() {
        decide(Target.ENTRY, "2", Action.STATE, "kind=expense");
        Decision query = decide(Target.QUERY, BONUS, Action.STATE, "kind=fee");
        assertThat(all()).startsWith("1 fee 24.00", "2 expense 36.00").contains("4 fee -5.00");
        Decision later = decide(Target.ENTRY, "2", Action.STATE, "kind=purchase");
        assertThat(all()).contains("2 purchase 36.00");
        decide(Target.QUERY, BONUS, Action.STATE, "kind=sale");
        assertThat(all()).startsWith("1 sale -24.00", "2 purchase 36.00").contains("4 sale 5.00");
        assertThat(ledger().kinds().of(2)).contains(later);
        assertThat(ledger().kinds().of(1).map(Decision::target)).contains(Target.QUERY);
        assertThat(ledger().kinds().of(3)).isEmpty();
        assertThat(ledger().kinds().of(5)).isEmpty();
        decide(Target.ENTRY, "2", Action.UNDO, Long.toString(later.id()));
        assertThat(all()).contains("2 expense 36.00");
        decide(Target.QUERY, BONUS, Action.UNDO, "4");
        assertThat(ledger().kinds().of(1)).contains(query);
    }

    /** Money is the same whatever it is called; what goes the other way turns its sign. */
    @Test
    void noKindMovesOtherMoney() {
        Amount before = money();
        for (Kind kind : Kind.values()) {
            if (kind.direction() != 0) {
                decide(Target.QUERY, BONUS, Action.STATE, "kind=" + kind.code());
                assertThat(money()).as(kind.code()).isEqualTo(before);
                assertThat(ledger().entry(1).orElseThrow().amounts().money().signum())
                        .isEqualTo(-kind.direction());
            }
        }
    }

    private Amount money() {
        return Samples.entries(ledger()).stream()
                .map(entry -> entry.line().signedMoney())
                .reduce(Amount.ZERO, Amount::plus);
    }

    /** The amount on a certificate is its VAT: VAT Notice 702, section 8 (from memory). */
    @Test
    void theMoneyOfACustomsEntryIsItsVat() {
        decide(Target.ENTRY, "1", Action.STATE, "kind=import-vat-paid");
        assertThat(ledger().entry(1).orElseThrow().amounts())
                .isEqualTo(
                        new Amounts(
                                Optional.empty(),
                                Optional.of(Amount.of("24.00")),
                                Optional.empty()));
        Samples.enter(ledger(), "d", SampleLine.of("import-vat-paid").vat("9.00").line(2));
        decide(Target.ENTRY, "6", Action.STATE, "kind=expense");
        assertThat(ledger().entry(6).orElseThrow().amounts())
                .isEqualTo(Amounts.ofGross(Amount.of("9.00")));
        Samples.enter(ledger(), "f", SampleLine.of("expense").printed("10.00", "2.00").line(2));
        decide(Target.ENTRY, "7", Action.STATE, "kind=import-vat-paid");
        assertThat(ledger().entry(7).orElseThrow().amounts().net()).contains(Amount.of("10.00"));
    }

    /** Of a document in two currencies both amounts of VAT turn. */
    @Test
    void theSterlingVatTurnsToo() {
        Samples.enter(
                ledger(),
                "g",
                SampleLine.of("expense")
                        .printed("10.00", "2.00")
                        .particular(Particular.STERLING_VAT, "1.75")
                        .particular(Particular.COST, "3.00")
                        .line(2));
        decide(Target.ENTRY, "6", Action.STATE, "kind=expense-credit");
        Line turned = ledger().entry(6).orElseThrow().line();
        assertThat(turned.amounts().vat()).contains(Amount.of("-2.00"));
        assertThat(turned.particulars().amount(Particular.STERLING_VAT))
                .contains(Amount.of("-1.75"));
        assertThat(turned.particulars().amount(Particular.COST)).contains(Amount.of("3.00"));
    }

    /** Where many entries have a kind of their own the search still finds each. */
    @Test
    void manyDecisions() {
        Line[] lines =
                IntStream.rangeClosed(2, 302)
                        .mapToObj(row -> other(row, "-1.00"))
                        .toArray(Line[]::new);
        Samples.enter(ledger(), "h", lines);
        for (long number = 6; number < 306; number++) {
            decide(Target.ENTRY, Long.toString(number), Action.STATE, "kind=fee");
        }
        assertThat(found(Kind.FEE)).hasSize(300).startsWith(6L).endsWith(305L);
        assertThat(ofKind(Kind.OTHER_MONEY)).hasSize(5).endsWith("306 other-money -1.00");
    }

    @Test
    void namesOfQuestions() {
        RaisedQuery.Name name = RaisedQuery.Name.parse("S12/kind-unknown/A: b/c").orElseThrow();
        assertThat(name).isEqualTo(new RaisedQuery.Name(12, "kind-unknown", "A: b/c"));
        assertThat(name).hasToString("S12/kind-unknown/A: b/c");
        assertThat(name.isOfKind()).isTrue();
        assertThat(RaisedQuery.Name.parse("S1/rows-repeated/rows").orElseThrow().isOfKind())
                .isFalse();
        assertThat(RaisedQuery.Name.parse("E4/evidence-missing")).isEmpty();
        assertThat(RaisedQuery.Name.parse("S/kind-unknown/x")).isEmpty();
    }
}

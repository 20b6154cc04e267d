package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Book;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Decision;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/** What a decision is told to change, in open periods and of closed ones, and what is refused. */
class DecidingTest {

    @TempDir private Path folder;
    private TempBook book;

    @BeforeEach
    void twoQuarters() {
        book = new TempBook(folder, SampleSettings.GB);
        book.enter(
                "a.csv",
                purchase("2026-02-01", "100"),
                sale("2026-03-02").goods("GB", "US"),
                purchase("2026-03-31", "20"),
                purchase("2026-05-01", "40"),
                sale("2026-05-01").product("KETTLE").channel("Quaylark", "no"));
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine purchase(String day, String vat) {
        return SampleLine.of("purchase")
                .on(day)
                .printed(Amount.of(vat).netOfVat(Percent.of("20")).toString(), vat)
                .rate("20")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    private static SampleLine sale(String day) {
        return SampleLine.of("sale").on(day).gross("120");
    }

    private Deciding.Decided decide(String target, String about, String action, String value) {
        return decide(target, about, action, value, "2026-10-01");
    }

    private Deciding.Decided decide(
            String target, String about, String action, String value, String day) {
        return new Deciding(Book.open(folder), book.ledger(), TempBook.LAW)
                .decide(
                        new Decision(
                                0,
                                Coded.find(Decision.Target.class, target).orElseThrow(),
                                about,
                                Coded.find(Decision.Action.class, action).orElseThrow(),
                                value,
                                "seen",
                                "a person",
                                LocalDate.parse(day)));
    }

    /** Each period it changes, with the boxes before and after. */
    private static List<String> told(Deciding.Decided decided) {
        List<String> told = new ArrayList<>();
        for (Effect effect : decided.effects()) {
            StringBuilder words = new StringBuilder(effect.period().name().toString());
            for (Effect.Move move : effect.moves()) {
                words.append(
                        ", box %s %s to %s"
                                .formatted(
                                        move.before().box().id(),
                                        move.before().text(),
                                        move.after().text()));
            }
            told.add(words.toString());
        }
        return told;
    }

    @Test
    void openPeriodsAreTold() {
        Deciding.Decided decided = decide("party", "Example supplier", "disallow", "");
        assertThat(told(decided))
                .containsExactly(
                        "2026-03, box 4 120.00 to 0.00, box 5 120.00 to 0.00",
                        "2026-06, box 4 40.00 to 0.00, box 5 0.00 to 40.00");
        assertThat(decided.closed()).isEmpty();
        assertThat(decided.next()).isEmpty();
        assertThat(decided.decision().id()).isEqualTo(1);
    }

    /** A decision may change nothing at all; then nothing is told. */
    @Test
    void nothingIsToldOfWhatStaysAsItWas() {
        assertThat(told(decide("product", "KETTLE", "state", "rate=20"))).isEmpty();
    }

    /** What it is about is counted in the closed return; the correction in the next. */
    @Test
    void closedPeriodsAreCountedAndTheNextOneTold() {
        book.close("2026-03");
        Deciding.Decided decided = decide("party", "Example supplier", "disallow", "");
        assertThat(decided.closed()).isEqualTo(Map.of(YearMonth.of(2026, 3), 2L));
        assertThat(decided.next()).contains(book.period("2026-06"));
        assertThat(told(decided))
                .singleElement()
                .asString()
                .startsWith("2026-06, box 4 40.00 to -120.00, ");
    }

    /** The last entry of the ledger at the close is in it; one that came later is not. */
    @Test
    void whatCameLateIsInNoClosedReturn() {
        book.close("2026-03");
        book.close("2026-06");
        assertThat(decide("entry", "5", "state", "rate=5").closed())
                .isEqualTo(Map.of(YearMonth.of(2026, 6), 1L));
        book.enter("late.csv", sale("2026-05-02"));
        Deciding.Decided late = decide("entry", "6", "state", "rate=5");
        assertThat(late.closed()).isEmpty();
        assertThat(told(late))
                .as("2026-09 holds no entry of its own, but takes up what is late")
                .singleElement()
                .asString()
                .startsWith("2026-09, box 1 ");
    }

    /** A question the close left open may still be set aside, and no other. */
    @Test
    void aQuestionThatACloseKept() {
        book.close("2026-03");
        book.enter("more.csv", sale("2026-08-01"));
        book.close("2026-06");
        assertThat(decide("query", "E2/export-evidence", "set-aside", "").effects()).isEmpty();
        assertThatThrownBy(() -> decide("query", "E3/export-evidence", "set-aside", ""))
                .isInstanceOf(LedgerException.class)
                .hasMessage(
                        "--query: found 'E3/export-evidence'; expected the name of a query that is asked, as the command queries lists it");
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    party   | Zebra  | --party: found 'Zebra'; expected a party or channel as the ledger has it, such as Example supplier
                    party   | quay   | --party: found 'quay'; expected a party or channel as the ledger has it, such as Quaylark
                    product | KETTEL | --product: found 'KETTEL'; expected a product's code as the ledger has it, such as KETTLE
                    """)
    void namesTheLedgerDoesNotHave(String target, String about, String message) {
        assertThatThrownBy(() -> decide(target, about, "set-aside", ""))
                .isInstanceOf(LedgerException.class)
                .hasMessage(message);
        assertThat(book.ledger().decisions()).isEmpty();
    }

    /** Rows of the table that are not in force on the entry's day are no treatment of it. */
    @Test
    void aTreatmentOfAnotherTime() {
        book.enter("old.csv", sale("2020-06-01"));
        assertThatThrownBy(() -> decide("entry", "6", "treat-as", "deemed-supply"))
                .isInstanceOf(LedgerException.class)
                .hasMessage(
                        "--treat-as: found 'deemed-supply'; expected a treatment of treatments.csv for a row of kind sale on 2020-06-01: awaiting-payment, before-registration-sale, debt-unpaid, exempt-sale, export, export-awaited, export-evidenced, export-overdue, margin-sale, no-vat-later, outside-sale, reverse-charge-supplied, sale-abroad, uk-sale, undecided, vat-shown, such as awaiting-payment");
        assertThat(decide("entry", "5", "treat-as", "deemed-supply").decision().id()).isOne();
    }

    /** Postponed accounting began on 1 January 2021: its statement is no evidence before. */
    @Test
    void evidenceOfAnotherTime() {
        assertThatThrownBy(
                        () ->
                                decide(
                                        "entry",
                                        "1",
                                        "evidence-seen",
                                        "postponed-statement",
                                        "2020-12-31"))
                .isInstanceOf(LedgerException.class)
                .hasMessage(
                        "--evidence-seen: found 'postponed-statement'; expected a kind of evidence.csv: invoice, simplified, none-needed, import-certificate, export, self-billed, alternative, such as invoice");
    }

    /** Only what is a duplicate itself cannot be the one that counts. */
    @Test
    void duplicatesOfWhatIsDecidedOtherwise() {
        decide("entry", "1", "duplicate-of", "3");
        decide("entry", "4", "state", "use=taxable");
        assertThat(decide("entry", "3", "duplicate-of", "4").decision().id()).isEqualTo(3);
        assertThatThrownBy(() -> decide("entry", "4", "duplicate-of", "1"))
                .isInstanceOf(LedgerException.class)
                .hasMessage(
                        "--duplicate-of: found 1, which decision 1 calls a duplicate of 3 itself, so that neither would count; expected the entry that counts, such as 3");
    }
}

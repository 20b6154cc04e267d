package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.NotifiedPeriod;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;
import quarterfold.treatment.Query;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/** What the first return takes up from before the registration, and the last at its end. */
class RegistrationEdgesTest {

    private static final LocalDate REGISTERED = LocalDate.of(2026, 4, 1);

    @TempDir private Path folder;
    private Optional<TempBook> opened = Optional.empty();

    @AfterEach
    void close() {
        opened.ifPresent(TempBook::close);
    }

    private TempBook book(Settings settings) {
        TempBook book = new TempBook(folder, settings);
        opened = Optional.of(book);
        return book;
    }

    private TempBook registered() {
        return book(SampleSettings.registered(REGISTERED, "3 6 9 12"));
    }

    private static SampleLine bought(String kind, String day, String document) {
        return SampleLine.of(kind)
                .on(day)
                .party("Example supplier", "GB", "GB101747696")
                .rate("20")
                .document(document)
                .evidence("invoice")
                .printed("100", "20");
    }

    private static SampleLine goods(String day, String onHand) {
        return bought("purchase", day, "S-" + day).particular(Particular.ON_HAND, onHand);
    }

    /**
     * T-405: registered from 1 April 2026; VAT Regulations 1995 reg 111(2) as amended by SI
     * 2009/586, HMRC manual VIT32000.
     */
    @ParameterizedTest(name = "{0} of {1}, {2}% held: box 4 {3}")
    @CsvSource({
        "purchase, 2022-04-01, 100, 20.00",
        "purchase, 2022-03-31, 100, 0.00",
        "purchase, 2025-06-01, 0, 0.00",
        "purchase, 2025-06-01, 60, 12.00",
        "purchase, 2026-03-31, 100, 20.00",
        "expense, 2025-10-01, , 20.00",
        "expense, 2025-09-30, , 0.00",
        "expense, 2026-03-31, 0, 0.00"
    })
    void whatTheFirstReturnTakesUp(String kind, String day, String onHand, String box4) {
        TempBook book = registered();
        SampleLine line = bought(kind, day, "S-1");
        book.enter("old.csv", onHand == null ? line : line.particular(Particular.ON_HAND, onHand));
        VatReturn first = book.of("2026-06");
        assertThat(first.box("4").text()).isEqualTo(box4);
        assertThat(first.box("7").text()).isEqualTo("0");
        assertThat(first.queries()).isEmpty();
        assertThat(book.of("2026-09").box("4").text()).isEqualTo("0.00");
    }

    /** SI 2009/586 reg 8: nothing bought before 1 April 2006, whatever the four years say. */
    @ParameterizedTest(name = "bought {0}: {1}")
    @CsvSource({"2006-04-01, 17.50", "2006-03-31, 0.00"})
    void nothingFromBeforeApril2006(String day, String box4) {
        TempBook book = book(SampleSettings.registered(LocalDate.of(2009, 6, 1), "3 6 9 12"));
        book.enter("old.csv", goods(day, "100").rate("17.5").printed("100", "17.50"));
        assertThat(book.of("2009-06").box("4").text()).isEqualTo(box4);
    }

    /** T-406: HMRC manual VIT32000: a vehicle still used counts in full, with no wear taken off. */
    @Test
    void nothingIsTakenOffForUse() {
        TempBook book = registered();
        book.enter("old.csv", goods("2023-04-01", "100").category("van").printed("75000", "15000"));
        assertThat(book.of("2026-06").box("4").text()).isEqualTo("15000.00");
        assertThat(TempBook.treated(book.returns().pack(book.period("2026-06"))))
                .extracting(Treated::takenUp, Treated::rule, t -> t.occasion().day())
                .containsExactly(tuple(TakenUp.BEFORE_REGISTRATION, "B11a", REGISTERED));
    }

    @Test
    void goodsOfWhichNothingIsSaidAreAskedAbout() {
        TempBook book = registered();
        book.enter("old.csv", bought("purchase", "2025-06-01", "S-1"));
        assertThat(book.of("2026-06").box("4").text()).isEqualTo("0.00");
        assertThat(book.of("2026-06").queries())
                .extracting(Query::question)
                .containsExactly(
                        "Goods of 120.00 were bought on 2025-06-01, before the registration. The VAT of"
                                + " 20.00 on those still held when it began may be reclaimed on the"
                                + " first return; it is not stated how much was. Enter on_hand, the"
                                + " share still held from 0 to 100.");
        book.ledger()
                .decide(
                        new Decision(
                                0,
                                Decision.Target.ENTRY,
                                "1",
                                Decision.Action.STATE,
                                "on_hand=25",
                                "counted",
                                "Ada Fern",
                                REGISTERED));
        assertThat(book.of("2026-06").box("4").text()).isEqualTo("5.00");
        assertThat(book.of("2026-06").queries()).isEmpty();
    }

    /** Box 7 is settled by no text read: the book's choice. */
    @Test
    void theValueInBoxSevenByChoice() {
        Settings by = SampleSettings.choosing(Map.of("pre-registration-in-box-7", "yes"));
        TempBook book =
                book(
                        SampleSettings.of(
                                by,
                                Periods.of(REGISTERED, SampleSettings.months("3 6 9 12")),
                                by.schemes()));
        book.enter("old.csv", goods("2025-06-01", "60"));
        assertThat(book.of("2026-06").box("7").text()).isEqualTo("60");
        assertThat(book.of("2026-06").box("4").text()).isEqualTo("12.00");
    }

    /** VATA 1994 s.8 and s.15; VAT Regulations 1995 reg 111(1). */
    @Test
    void importsAndServicesFromAbroad() {
        TempBook book = registered();
        book.enter(
                "old.csv",
                SampleLine.of("import-vat-paid")
                        .on("2026-02-01")
                        .vat("50")
                        .document("26GB01")
                        .evidence("import-certificate")
                        .particular(Particular.ON_HAND, "50"),
                SampleLine.of("expense")
                        .on("2026-03-01")
                        .party("Example platform", "IE", "")
                        .evidence("invoice")
                        .gross("800"),
                SampleLine.of("fee").on("2026-03-01").gross("3").settlement("QL-1"));
        assertThat(TempBook.figures(book.of("2026-06")))
                .containsExactly("0.00", "0.00", "0.00", "25.00", "25.00", "0", "0", "0", "0");
        assertThat(book.of("2026-06").queries()).isEmpty();
    }

    /** VAT Regulations 1995 reg 29(2): without its document nothing is reclaimed. */
    @Test
    void withoutEvidenceItIsAsked() {
        TempBook book = registered();
        book.enter("old.csv", goods("2025-06-01", "100").evidence("missing"));
        assertThat(TempBook.figures(book.of("2026-06"))).startsWith("0.00").contains("0.00");
        assertThat(TempBook.queries(book.of("2026-06")))
                .containsExactly("E1/pre-registration-evidence");
    }

    /** VATA 1994 Sch 9ZA has no part in it: a return dated by its first day, also a long one. */
    @Test
    void aLongFirstPeriod() {
        LocalDate from = LocalDate.of(2026, 2, 15);
        TempBook book =
                book(
                        SampleSettings.on(
                                new Periods(
                                        from,
                                        Optional.empty(),
                                        SampleSettings.months("3 6 9 12"),
                                        List.of(
                                                new NotifiedPeriod(
                                                        from,
                                                        LocalDate.of(2026, 6, 30),
                                                        Optional.empty())),
                                        Optional.empty(),
                                        Optional.empty(),
                                        Optional.empty())));
        book.enter("old.csv", goods("2025-06-01", "100"), goods("2026-06-30", "100"));
        assertThat(book.period("2026-06").start()).isEqualTo(from);
        assertThat(book.of("2026-06").box("4").text()).isEqualTo("40.00");
        assertThat(book.of("2026-06").box("7").text()).isEqualTo("100");
    }

    /** VR7220: what the first return missed is not lost, and not silent. */
    @Test
    void whatTheFirstReturnMissedIsAskedAbout() {
        TempBook book = registered();
        book.enter("own.csv", SampleLine.of("sale").on("2026-05-01").gross("120"));
        book.close("2026-06");
        book.enter("old.csv", goods("2025-06-01", "100"));
        assertThat(book.of("2026-06").box("4").text()).isEqualTo("0.00");
        assertThat(TempBook.queries(book.of("2026-09"))).containsExactly("E2/late-purchase");
    }

    /** A purchase from before the registration makes the first return one to be closed first. */
    @Test
    void theFirstReturnIsClosedBeforeTheNext() {
        TempBook book = registered();
        book.enter("old.csv", goods("2025-06-01", "100"));
        book.enter("own.csv", SampleLine.of("sale").on("2026-08-01").gross("120"));
        assertThat(book.closing().openBefore(book.period("2026-09")))
                .contains(book.period("2026-06"));
    }

    @Test
    void aCloseKeepsHowItWasTakenUpAndTheGrade() {
        TempBook book = registered();
        book.enter("old.csv", goods("2025-06-01", "60"));
        List<Treated> draft = TempBook.treated(book.returns().pack(book.period("2026-06")));
        book.close("2026-06");
        List<Treated> closed = TempBook.treated(book.returns().pack(book.period("2026-06")));
        assertThat(closed)
                .extracting(Treated::takenUp, t -> t.claim().toString(), Treated::evidence)
                .containsExactly(
                        tuple(TakenUp.BEFORE_REGISTRATION, "12.00", draft.get(0).evidence()));
        assertThat(closed.get(0).evidence()).isPresent();
        assertThat(book.returns().pack(book.period("2026-06")).sources()).hasSize(1);
    }

    private TempBook ended() {
        return book(
                SampleSettings.on(
                        new Periods(
                                LocalDate.of(2024, 1, 1),
                                Optional.of(LocalDate.of(2026, 8, 15)),
                                SampleSettings.months("3 6 9 12"),
                                List.of(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty())));
    }

    private static SampleLine stock(String net) {
        return SampleLine.of("stock-on-hand").on("2026-08-15").net(net);
    }

    /**
     * T-1009: VATA 1994 Sch 4 para 8(1)(c) as amended by SI 2000/266, HMRC manual VATDREG16050: not
     * where the VAT on all of it would not be more than 1,000.
     */
    @ParameterizedTest(name = "{0} and {1}: {2}")
    @CsvSource({
        "4900, 0.01, 0.00, 0",
        "2500, 2500, 0.00, 0",
        "2500, 2500.05, 1000.01, 5000",
        "5100, 0.01, 1020.00, 5100"
    })
    void stockOnHandWhenTheRegistrationEnds(String one, String other, String box1, String box6) {
        TempBook book = ended();
        book.enter("stock.csv", stock(one), stock(other));
        assertThat(book.of("2026-08").box("1").text()).isEqualTo(box1);
        assertThat(book.of("2026-08").box("6").text()).isEqualTo(box6);
        assertThat(book.of("2026-08").queries()).isEmpty();
    }

    @Test
    void stockOnAnotherDayIsAskedAbout() {
        TempBook book = ended();
        book.enter("stock.csv", stock("5100").on("2026-08-14"));
        assertThat(book.of("2026-08").box("1").text()).isEqualTo("0.00");
        assertThat(TempBook.queries(book.of("2026-08"))).containsExactly("E1/stock-day");
    }

    /** VATA 1994 s.3: after the registration nobody charges VAT or returns it. */
    @Test
    void afterTheRegistration() {
        TempBook book = ended();
        book.enter(
                "august.csv",
                SampleLine.of("sale").on("2026-08-15").gross("120"),
                SampleLine.of("sale").on("2026-08-16").gross("60"),
                SampleLine.of("payout").on("2026-08-20").gross("100"));
        VatReturn last = book.of("2026-08");
        assertThat(last.box("1").text()).isEqualTo("20.00");
        assertThat(last.queries())
                .extracting(Query::id, Query::question)
                .containsExactly(
                        tuple(
                                "E2/after-registration",
                                "60.00 is dated 2026-08-16, after the registration ended, so it is in"
                                        + " no box. If the date is right, there is nothing to return;"
                                        + " services bought after it for the registered business may be"
                                        + " claimed from the tax authority apart."));
        assertThat(book.returns().treated(2))
                .extracting(Treated::rule, t -> t.boxes().size())
                .containsExactly(tuple("B19", 0));
    }
}

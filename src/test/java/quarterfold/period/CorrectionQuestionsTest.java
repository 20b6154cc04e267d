package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.law.Tables;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/** Which of what comes late is asked about, and where else it counts: VAT Regulations reg 34. */
class CorrectionQuestionsTest {

    @TempDir private Path folder;
    private TempBook book;

    @BeforeEach
    void closedQuarter() {
        open(SampleSettings.GB);
    }

    private void open(Settings settings) {
        book = new TempBook(folder.resolve("book" + settings.hashCode()), settings);
        book.enter("first.csv", SampleLine.of("sale").on("2026-02-01").gross("12"));
        book.close("2026-03");
    }

    private void reopen(Settings settings) {
        book.close();
        open(settings);
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine bought(String kind, String net, String vat) {
        return SampleLine.of(kind)
                .on("2026-02-02")
                .printed(net, vat)
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    private static SampleLine statement(String vat) {
        return SampleLine.of("import-vat-postponed")
                .on("2026-02-10")
                .document("24GB0009")
                .vat(vat)
                .evidence("postponed-statement");
    }

    private List<String> asked() {
        return book.of("2026-06").queries().stream().map(Query::question).toList();
    }

    private static List<TakenUp> ways(VatReturn vatReturn) {
        return vatReturn.corrections().rows().stream().map(Correction::takenUp).toList();
    }

    /**
     * An import the same in boxes 1 and 4 needs no telling apart, even by a book that tells all.
     */
    @Test
    void nothingIsToldApartWhereNothingIsAnError() {
        reopen(SampleSettings.choosing(Map.of("errors-told-separately", "yes")));
        book.enter("late.csv", statement("50"));
        assertThat(ways(book.of("2026-06"))).containsExactly(TakenUp.NIL_NET);
        assertThat(asked()).isEmpty();
        book.enter("more.csv", SampleLine.of("sale").on("2026-02-03").gross("120"));
        assertThat(asked())
                .containsExactly(
                        "Errors of closed returns that come to 20.00 are in no box: the book tells errors separately whatever their amount. Tell the tax authority separately, with the worksheet of corrections. They are not on any return.");
    }

    /** Without VAT there is no claim, late or not: only its value was missing. */
    @Test
    void aLatePurchaseWithoutVat() {
        book.enter("late.csv", bought("purchase", "100", "0").rate("0"));
        assertThat(asked()).isEmpty();
        assertThat(book.of("2026-06").box("7").text()).isEqualTo("0");
    }

    /** For import VAT paid the document is the import VAT certificate: reg 29(2)(d). */
    @Test
    void aLateImportMayBeALateClaim() {
        book.enter(
                "late.csv",
                SampleLine.of("import-vat-paid")
                        .on("2026-02-10")
                        .vat("70")
                        .evidence("import-certificate"));
        assertThat(TempBook.queries(book.of("2026-06"))).containsExactly("E2/late-purchase");
        assertThat(book.of("2026-06").box("4").text()).isEqualTo("70.00");
        book.decide("entry", "2", "state", "held=2026-04-10");
        assertThat(ways(book.of("2026-06"))).containsExactly(TakenUp.LATE_CLAIM);
        assertThat(asked()).isEmpty();
    }

    /** Tables that do not say up to what amount leave every error out of the boxes. */
    @Test
    void noLimitIsKnown() {
        book.enter("late.csv", SampleLine.of("sale").on("2026-02-03").gross("120"));
        VatReturn june =
                book.returns(
                                Tables.with(
                                        "limits.csv",
                                        text ->
                                                text.replace(
                                                        "error-correction-floor,10000,pounds,2008-07-01,,",
                                                        "error-correction-floor,10000,pounds,2008-07-01,2020-12-31,")))
                        .of(book.period("2026-06"));
        assertThat(ways(june)).containsExactly(TakenUp.DISCLOSED);
        assertThat(june.corrections().rows().get(0).why())
                .isEqualTo(
                        "came after the return of 2026-03 was closed; no limit is known for a period that begins on 2026-04-01");
        assertThat(june.corrections().limit()).isEmpty();
    }

    /**
     * A document held in a period closed since: out of its own return, and an error of that one.
     */
    @Test
    void aClaimMovedBetweenClosedReturns() {
        book.enter("may.csv", bought("purchase", "500", "100").rate("20").on("2026-05-01"));
        book.close("2026-06");
        book.enter("august.csv", SampleLine.of("sale").on("2026-08-01").gross("12"));
        book.close("2026-09");
        book.decide("entry", "2", "state", "held=2026-08-05");
        VatReturn december = book.of("2026-12");
        assertThat(december.corrections().rows())
                .extracting(
                        r -> r.of().toString(), r -> r.difference().getOrDefault("4", Amount.ZERO))
                .containsExactlyInAnyOrder(
                        tuple("2026-09", Amount.of("100")), tuple("2026-06", Amount.of("-100")));
        assertThat(december.box("4").text()).isEqualTo("0.00");
        book.close("2026-12");
        assertThat(book.of("2027-03").corrections().isEmpty()).as("once").isTrue();
    }

    /** Reg 111: what was bought before the registration and comes after the first return. */
    @Test
    void aLatePurchaseOfBeforeTheRegistration() {
        reopen(SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"));
        book.enter(
                "late.csv",
                bought("purchase", "100", "20")
                        .rate("20")
                        .document("S-1")
                        .on("2025-11-01")
                        .particular(Particular.ON_HAND, "100"),
                bought("expense", "50", "10").rate("20").document("S-2").on("2025-12-01"));
        assertThat(book.of("2026-06").corrections().rows())
                .extracting(Correction::entry, r -> r.of().toString())
                .containsExactly(tuple(2L, "2026-03"), tuple(3L, "2026-03"));
        assertThat(book.of("2026-06").box("4").text()).isEqualTo("30.00");
    }

    /** Four years from the end of the period: one occasion too old, the later one not (T-506). */
    @Test
    void anEntryWrongInTwoReturns() {
        book.close();
        book = new TempBook(folder.resolve("old"), SampleSettings.GB);
        book.enter("a.csv", SampleLine.of("sale").on("2022-03-10").gross("600").goods("", "US"));
        for (int quarter = 0; quarter < 17; quarter++) {
            LocalDate end = LocalDate.of(2022, 3, 1).plusMonths(3L * quarter);
            book.close(end.toString().substring(0, 7));
        }
        book.decide("entry", "1", "treat-as", "exempt-sale");
        assertThat(ways(book.of("2026-06")))
                .as("where VAT is right and a value alone is wrong there is no time limit")
                .containsExactly(TakenUp.ERROR, TakenUp.ERROR);
        book.decide("entry", "1", "treat-as", "uk-sale");
        VatReturn june = book.of("2026-06");
        assertThat(ways(june)).containsExactly(TakenUp.TOO_OLD, TakenUp.ERROR);
        assertThat(june.box("1").text()).isEqualTo("-100.00");
        List<Treated> shown = TempBook.treated(book.returns().pack(june.period()));
        assertThat(shown).extracting(Treated::takenUp).containsExactly(TakenUp.ERROR);
    }

    /** The limit goes by box 6 with what is claimed late, which is no error: also when closed. */
    @Test
    void aLateClaimIsInTheTurnoverOfTheLimit() {
        book.enter(
                "late.csv",
                SampleLine.of("fee")
                        .on("2026-02-10")
                        .gross("1500000")
                        .party("Adverts Abroad", "IE", "")
                        .evidence("invoice")
                        .particular(Particular.HELD, "2026-04-10"),
                SampleLine.of("sale").on("2026-02-03").gross("120"));
        CorrectionSheet open = book.of("2026-06").corrections();
        assertThat(ways(book.of("2026-06"))).containsExactly(TakenUp.LATE_CLAIM, TakenUp.ERROR);
        assertThat(open.limit().orElseThrow().amount().toString()).isEqualTo("15000.00");
        assertThat(book.close("2026-06").corrections()).isEqualTo(open);
    }

    /** VATA 1994 s.26B: takings under the flat rate are a figure of the whole period. */
    @Test
    void lateUnderTheFlatRate() {
        reopen(SampleSettings.scheme("flat-rate", "044"));
        book.enter(
                "late.csv",
                SampleLine.of("sale").on("2026-02-03").gross("120"),
                bought("purchase", "100", "20").rate("20"));
        assertThat(asked())
                .containsExactly(
                        "120.00 is dated 2026-02-03, in a closed period under the flat-rate scheme, whose VAT is worked out over all takings of a period. What it changes in that return is in no box yet: work it out, and set this question aside when it is put right.");
        book.decide("entry", "1", "state", "rate=5");
        assertThat(asked()).as("what was closed before is no late sale").hasSize(1);
    }
}

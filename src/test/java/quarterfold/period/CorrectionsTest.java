package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/** Errors of closed returns: VAT Regulations 1995 reg 34, in real books. */
class CorrectionsTest {

    @TempDir Path folder;

    private TempBook book;

    @BeforeEach
    void standard() {
        book = new TempBook(folder.resolve("standard"), SampleSettings.GB);
    }

    @AfterEach
    void close() {
        book.close();
    }

    private void open(String registered) {
        open(SampleSettings.registered(LocalDate.parse(registered), "3 6 9 12"));
    }

    private void open(Settings settings) {
        book.close();
        book = new TempBook(folder.resolve("own"), settings);
    }

    private static SampleLine sale(String day, String net, String vat) {
        return SampleLine.of("sale").on(day).printed(net, vat).rate("20");
    }

    /** A sale whose net value alone matters: zero-rated. */
    private static SampleLine turnover(String day, String net) {
        return SampleLine.of("sale").on(day).net(net).rate("0");
    }

    private static SampleLine purchase(String day, String net, String vat) {
        return SampleLine.of("purchase")
                .on(day)
                .printed(net, vat)
                .rate("20")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    private Decision decide(long entry, Decision.Action action, String value) {
        return book.ledger()
                .decide(
                        new Decision(
                                0,
                                Decision.Target.ENTRY,
                                Long.toString(entry),
                                action,
                                value,
                                "looked at again",
                                "A. Owner",
                                LocalDate.of(2026, 7, 1)));
    }

    private static String box(VatReturn vatReturn, String id) {
        return vatReturn.box(id).text();
    }

    private static List<TakenUp> ways(VatReturn vatReturn) {
        return vatReturn.corrections().rows().stream().map(Correction::takenUp).toList();
    }

    // T-501 to T-505: the limit

    /**
     * HMRC manual VAEC7190: a net error of 8,000 in the quarter to 30 June 2008 found in November
     * 2008 is corrected on the return for the quarter to 31 December 2008.
     */
    @Test
    void publishedExampleOfTheLimit() {
        open("2003-01-01");
        book.enter("first.csv", turnover("2008-05-01", "1000"));
        book.close("2008-06");
        book.enter("second.csv", turnover("2008-08-01", "1000"));
        book.close("2008-09");
        book.enter(
                "found.csv",
                turnover("2008-11-01", "1000"),
                SampleLine.of("sale").on("2008-05-02").gross("53714.29").vat("8000").rate("17.5"));
        VatReturn december = book.of("2008-12");
        assertThat(box(december, "1")).as("HMRC manual VAEC7190").isEqualTo("8000.00");
        assertThat(ways(december)).containsExactly(TakenUp.ERROR);
    }

    /** The limit before 1 July 2008 was 2,000, by the period of discovery: VAEC7190. */
    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource(
            textBlock =
                    """
                    2008-06, 2000.00,  ERROR
                    2008-06, 2000.01,  DISCLOSED
                    2008-09, 10000.00, ERROR
                    2008-09, 10000.01, DISCLOSED
                    """)
    void limitGoesByTheFirstDayOfTheDiscovery(String discovery, String vat, TakenUp how) {
        open("2003-01-01");
        String before = discovery.equals("2008-06") ? "2008-03" : "2008-06";
        book.enter("first.csv", turnover(before + "-01", "1000"));
        book.close(before);
        book.enter(
                "late.csv",
                SampleLine.of("sale").on(before + "-02").net("99999").vat(vat).rate("17.5"));
        assertThat(ways(book.of(discovery)))
                .as("VAT Regulations 1995 reg 34(3) before and after SI 2008/1482")
                .containsExactly(how);
    }

    /** T-502: the greater of 10,000 and 1 per cent of box 6, that at most 50,000 (VAEC7190). */
    @ParameterizedTest(name = "box 6 {0}: {1}")
    @CsvSource(
            textBlock =
                    """
                    900000,  10000.00
                    1000000, 10000.00
                    1000100, 10001.00
                    3000000, 30000.00
                    5000000, 50000.00
                    6000000, 50000.00
                    0,       10000.00
                    -50000,  10000.00
                    """)
    void limitByTurnover(String turnover, String limit) {
        assertThat(
                        CorrectionLimit.of(
                                        TempBook.LAW,
                                        Map.of(),
                                        LocalDate.of(2026, 4, 1),
                                        Map.of("6", Amount.of(turnover)))
                                .orElseThrow()
                                .amount())
                .as("T-502, HMRC manual VAEC7190")
                .isEqualTo(Amount.of(limit));
    }

    @Test
    void limitSaysHowItWasWorkedOut() {
        CorrectionLimit limit =
                CorrectionLimit.of(
                                TempBook.LAW,
                                Map.of(),
                                LocalDate.of(2026, 4, 1),
                                Map.of("6", Amount.of("6000000")))
                        .orElseThrow();
        assertThat(limit.why())
                .isEqualTo(
                        "the larger of 10000.00 and 1% of box 6, which is 60000.00 of 6000000.00, at most 50000.00");
        assertThat(limit.authority()).contains("reg 34(3)");
    }

    /**
     * T-503: VAEC7190 and CH81142 say "must not exceed the greater of 10,000"; reg 34(3) says
     * "unless the difference is less than 10,000", which a book may choose to follow.
     */
    @ParameterizedTest(name = "{0}, {1}: {2}")
    @CsvSource(
            textBlock =
                    """
                    on-the-return, 10000.00, ERROR
                    on-the-return, 10000.01, DISCLOSED
                    separately,    9999.99,  ERROR
                    separately,    10000.00, DISCLOSED
                    """)
    void exactlyTenThousand(String choice, String vat, TakenUp how) {
        open(SampleSettings.choosing(Map.of("error-at-the-limit", choice)));
        book.enter("first.csv", turnover("2026-02-01", "1000"));
        book.close("2026-03");
        book.enter("late.csv", turnover("2026-05-01", "200000"), sale("2026-02-02", "50000", vat));
        VatReturn june = book.of("2026-06");
        assertThat(ways(june)).as("T-503").containsExactly(how);
        assertThat(box(june, "1")).isEqualTo(how == TakenUp.ERROR ? vat : "0.00");
        assertThat(box(june, "6")).as("values are left alone").isEqualTo("200000");
    }

    /**
     * T-504: each side is one figure; only the net is held against the limit (reg 34(3) to (5)).
     */
    @Test
    void sidesAreNotSetAgainstEachOther() {
        open("2026-01-01");
        book.enter("first.csv", turnover("2026-02-01", "1000"));
        book.close("2026-03");
        book.enter(
                "late.csv",
                turnover("2026-05-01", "500000"),
                sale("2026-02-02", "70000", "14000"),
                purchase("2026-02-03", "30000", "6000"));
        VatReturn june = book.of("2026-06");
        assertThat(box(june, "1")).as("T-504").isEqualTo("14000.00");
        assertThat(box(june, "4")).as("T-504").isEqualTo("6000.00");
        assertThat(box(june, "6")).isEqualTo("500000");
        assertThat(box(june, "7")).isEqualTo("0");
        CorrectionSheet sheet = june.corrections();
        assertThat(sheet.net(sheet.rows(TakenUp.ERROR))).isEqualTo(Amount.of("8000"));
        assertThat(TempBook.queries(june)).containsExactly("E4/late-purchase");
        assertThat(june.queries().get(0).holdsClose()).isFalse();
    }

    /** T-505: 9,000 output under-declared and 4,000 input over-claimed are 13,000. */
    @ParameterizedTest(name = "box 6 {0}: {1}")
    @CsvSource({"1299900, DISCLOSED", "1300000, ERROR"})
    void bothSidesOwedAddUp(String turnover, TakenUp how) {
        open("2026-01-01");
        book.enter("first.csv", purchase("2026-02-01", "20000", "4000"));
        book.close("2026-03");
        book.enter(
                "late.csv", turnover("2026-05-01", turnover), sale("2026-02-02", "45000", "9000"));
        decide(1, Decision.Action.DISALLOW, "");
        VatReturn june = book.of("2026-06");
        assertThat(ways(june)).as("T-505").containsExactly(how, how);
        assertThat(june.corrections().net(june.corrections().rows(how)))
                .isEqualTo(Amount.of("13000"));
        assertThat(List.of(box(june, "1"), box(june, "4")))
                .isEqualTo(
                        how == TakenUp.ERROR
                                ? List.of("9000.00", "-4000.00")
                                : List.of("0.00", "0.00"));
    }

    @Test
    void aboveTheLimitIsSaidPlainly() {
        open("2026-01-01");
        book.enter("first.csv", turnover("2026-02-01", "1000"));
        book.close("2026-03");
        book.enter("late.csv", sale("2026-02-02", "60000", "12000"));
        VatReturn june = book.of("2026-06");
        assertThat(TempBook.queries(june)).containsExactly("2026-06/errors-told-separately");
        assertThat(june.queries().get(0).question())
                .isEqualTo(
                        "Errors of closed returns that come to 12000.00 are in no box: their net is above the limit of 10000.00, the larger of 10000.00 and 1% of box 6, which is 0.00 of 0.00. Tell the tax authority separately, with the worksheet of corrections. They are not on any return.");
        assertThat(june.queries().get(0).holdsClose()).isFalse();
        assertThat(june.corrections().rows().get(0).why())
                .startsWith("came after the return of 2026-03 was closed; their net is above");
        book.close("2026-06");
        assertThat(book.of("2026-06").corrections()).isEqualTo(june.corrections());
        assertThat(book.of("2026-09").corrections().isEmpty()).as("told once").isTrue();
    }

    // T-506, T-507: the time

    /** T-506: output tax, four years from the END of the period in error (reg 34(1A)). */
    @ParameterizedTest(name = "{0} on {1}: {2}")
    @CsvSource(
            textBlock =
                    """
                    2022-03, 2026-06, TOO_OLD
                    2022-06, 2026-06, ERROR
                    2022-03, 2026-03, ERROR
                    """)
    void outputTaxIsFourYears(String of, String on, TakenUp how) {
        open("2022-01-01");
        closeUpTo(of, on);
        book.enter("late.csv", sale(of + "-02", "500", "100"));
        VatReturn vatReturn = book.of(on);
        assertThat(ways(vatReturn)).as("T-506, HMRC manual VAEC7410").containsExactly(how);
        assertThat(box(vatReturn, "1")).isEqualTo(how == TakenUp.ERROR ? "100.00" : "0.00");
        if (how == TakenUp.TOO_OLD) {
            assertThat(vatReturn.queries().get(0).question())
                    .isEqualTo(
                            "The VAT of 100.00 is an error of the closed return of 2022-03, and the time for putting it right is over (2026-03-31), so it is in no box of any return.");
        }
    }

    /**
     * T-507: input tax under-claimed, four years from the DUE date, 7 May 2022, of the return; on
     * the quarter to 31 March 2026, and no later one.
     */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"2026-03, ERROR", "2026-06, TOO_OLD"})
    void inputTaxIsFourYearsFromTheReturn(String on, TakenUp how) {
        open("2022-01-01");
        closeUpTo("2022-03", on);
        book.enter("late.csv", purchase("2022-03-02", "500", "100"));
        VatReturn vatReturn = book.of(on);
        assertThat(ways(vatReturn)).as("T-507, HMRC manual VAEC7410").containsExactly(how);
        assertThat(box(vatReturn, "4")).isEqualTo(how == TakenUp.ERROR ? "100.00" : "0.00");
        assertThat(TempBook.queries(vatReturn))
                .containsExactlyElementsOf(
                        how == TakenUp.ERROR
                                ? List.of(
                                        id(vatReturn, "late-claim-time"),
                                        id(vatReturn, "late-purchase"))
                                : List.of(id(vatReturn, "error-too-old")));
        if (how == TakenUp.ERROR) {
            assertThat(vatReturn.queries().get(0).question())
                    .contains("made by 2026-05-07 at the latest")
                    .contains("to 2026-04-30");
        }
    }

    private static String id(VatReturn vatReturn, String code) {
        return "E%d/%s".formatted(vatReturn.corrections().rows().get(0).entry(), code);
    }

    /** Input tax over-claimed goes by the end of the period, like output tax: VAEC7410. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"2026-03, ERROR", "2026-06, TOO_OLD"})
    void inputTaxOverClaimedIsFourYearsFromTheEnd(String on, TakenUp how) {
        open("2022-01-01");
        book.enter("first.csv", purchase("2022-03-02", "500", "100"));
        closeUpTo("2022-03", on);
        decide(1, Decision.Action.DISALLOW, "");
        assertThat(ways(book.of(on))).as("HMRC manual VAEC7410").containsExactly(how);
    }

    /** Reg 34(1C): a period that ended on 31 March 2006 is put right no more, the next one is. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"2006-03, TOO_OLD", "2006-06, ERROR"})
    void deadPeriods(String of, TakenUp how) {
        open("2003-01-01");
        book.enter("first.csv", turnover("2006-02-01", "1"), turnover("2006-05-01", "1"));
        book.close("2006-03");
        book.close("2006-06");
        book.enter("later.csv", turnover("2009-02-01", "1"));
        book.close("2009-03");
        book.enter(
                "late.csv",
                SampleLine.of("sale").on(of + "-02").printed("100", "17.50").rate("17.5"));
        assertThat(ways(book.of("2009-06")))
                .as("VAT Regulations 1995 reg 34(1C)")
                .containsExactly(how);
    }

    /**
     * Closes the quarter in error and the one before that of the discovery; the quarters between
     * have no entries and need no close.
     */
    private void closeUpTo(String of, String on) {
        closeQuarters(of, YearMonth.parse(on).minusMonths(3).toString());
    }

    // How they are classed

    /** T-413: a document of a closed period held only now is a late claim (reg 29(1)), no error. */
    @Test
    void documentHeldNowIsALateClaim() {
        open("2026-01-01");
        book.enter("first.csv", turnover("2026-02-01", "1000"));
        book.close("2026-03");
        book.enter(
                "late.csv",
                purchase("2026-03-20", "200", "40").particular(Particular.HELD, "2026-04-08"),
                purchase("2026-03-21", "100", "20"));
        VatReturn june = book.of("2026-06");
        assertThat(ways(june)).as("T-413").containsExactly(TakenUp.LATE_CLAIM, TakenUp.ERROR);
        assertThat(box(june, "4")).isEqualTo("60.00");
        assertThat(box(june, "7")).as("of the late claim alone").isEqualTo("200");

        decide(3, Decision.Action.STATE, "held=2026-04-09");
        VatReturn stated = book.of("2026-06");
        assertThat(ways(stated)).containsExactly(TakenUp.LATE_CLAIM, TakenUp.LATE_CLAIM);
        assertThat(box(stated, "7")).isEqualTo("300");
        assertThat(TempBook.queries(stated)).isEmpty();
    }

    /** A document held in a period that is closed too should have been claimed there. */
    @Test
    void documentHeldInAClosedPeriodIsAnError() {
        open("2026-01-01");
        closeQuarters("2026-03", "2026-06");
        book.enter(
                "late.csv",
                purchase("2026-03-20", "200", "40").particular(Particular.HELD, "2026-04-08"));
        VatReturn september = book.of("2026-09");
        assertThat(ways(september)).containsExactly(TakenUp.ERROR);
        assertThat(september.corrections().rows().get(0).of()).hasToString("2026-06");
        assertThat(TempBook.queries(september)).isEmpty();
    }

    private void closeQuarters(String... quarters) {
        for (String quarter : quarters) {
            book.enter(quarter + ".csv", turnover(quarter + "-15", "1"));
            book.close(quarter);
        }
    }

    /**
     * 2-D: a refund of an earlier quarter's sale of 120 is a price change of the quarter it is
     * repaid in (reg 38(5)), no error; missed in that quarter it is one (reg 38(7)).
     */
    @Test
    void priceChangeMissedInItsPeriodIsAnError() {
        open("2026-01-01");
        book.enter("first.csv", sale("2026-02-01", "100", "20"));
        book.close("2026-03");
        SampleLine refund =
                SampleLine.of("sale-refund").on("2026-04-03").printed("100", "20").rate("20");
        book.enter("second.csv", refund);
        VatReturn june = book.of("2026-06");
        assertThat(List.of(box(june, "1"), box(june, "6")))
                .as("2-D")
                .containsExactly("-20.00", "-100");
        assertThat(june.corrections().isEmpty()).isTrue();
        book.close("2026-06");

        book.enter("third.csv", refund, sale("2026-07-01", "10", "2"));
        VatReturn september = book.of("2026-09");
        assertThat(box(september, "1")).isEqualTo("-18.00");
        assertThat(box(september, "6")).isEqualTo("10");
        assertThat(september.corrections().rows().get(0).why())
                .isEqualTo(
                        "came after the return of 2026-06 was closed; a price change that is missed in its period is an error (VAT Regulations 1995 reg 38(7))");
    }

    /** Acquisition tax has its box of its own, and counts as output tax. */
    @Test
    void acquisitionTaxStaysInItsBox() {
        open(SampleSettings.established("GB", "XI"));
        book.enter("first.csv", turnover("2026-02-01", "1000"));
        book.close("2026-03");
        book.enter(
                "late.csv",
                SampleLine.of("purchase")
                        .on("2026-02-02")
                        .net("1000")
                        .party("Fournisseur", "FR", "FR12345678901")
                        .goods("FR", "XI")
                        .evidence("invoice"));
        VatReturn june = book.of("2026-06");
        assertThat(TempBook.figures(june))
                .containsExactly("0.00", "200.00", "200.00", "200.00", "0.00", "0", "0", "0", "0");
    }

    /** HMRC manuals VAEC7110, VAEC7150: never on a later return, and not in the net. */
    @Test
    void deliberateErrorsAreNeverInTheBoxes() {
        open("2026-01-01");
        closeQuarters("2026-03");
        book.enter(
                "late.csv",
                sale("2026-02-02", "50000", "10000"),
                sale("2026-02-03", "500", "100").particular(Particular.ERROR, "deliberate"));
        VatReturn june = book.of("2026-06");
        assertThat(ways(june)).containsExactly(TakenUp.ERROR, TakenUp.DISCLOSED);
        assertThat(box(june, "1")).isEqualTo("10000.00");
        assertThat(TempBook.queries(june)).containsExactly("E3/error-deliberate");
    }

    /** HMRC manual VAEC7190: separate notification may be chosen for any size; it still counts. */
    @Test
    void anErrorMayBeToldSeparatelyByChoice() {
        open("2026-01-01");
        closeQuarters("2026-03");
        book.enter(
                "late.csv", sale("2026-02-02", "5000", "1000"), sale("2026-02-03", "500", "100"));
        decide(3, Decision.Action.STATE, "error=separate");
        VatReturn june = book.of("2026-06");
        assertThat(ways(june)).containsExactly(TakenUp.ERROR, TakenUp.DISCLOSED);
        assertThat(box(june, "1")).isEqualTo("1000.00");
    }

    @Test
    void aBookMayTellAllSeparately() {
        open(SampleSettings.choosing(Map.of("errors-told-separately", "yes")));
        closeQuarters("2026-03");
        book.enter("late.csv", sale("2026-02-02", "500", "100"));
        assertThat(ways(book.of("2026-06"))).containsExactly(TakenUp.DISCLOSED);
        assertThat(book.of("2026-06").queries().get(0).question())
                .contains("the book tells errors separately whatever their amount");
    }

    @Test
    void aBookMayAlterTheValuesToo() {
        open(SampleSettings.choosing(Map.of("errors-in-boxes-6-to-9", "yes")));
        closeQuarters("2026-03");
        book.enter(
                "late.csv",
                sale("2026-02-02", "1500000", "15000"),
                turnover("2026-05-01", "1500000"));
        VatReturn june = book.of("2026-06");
        assertThat(box(june, "6")).isEqualTo("3000000");
        assertThat(june.corrections().limit().orElseThrow().amount())
                .as("the limit goes by box 6 without what is put right")
                .isEqualTo(Amount.of("15000"));
        book.close("2026-06");
        assertThat(book.of("2026-06").corrections()).isEqualTo(june.corrections());
    }

    // Decisions after a close

    @Test
    void aDecisionAfterTheCloseIsTheDifferenceAndItsUndoingTheReverse() {
        open("2026-01-01");
        book.enter("first.csv", purchase("2026-02-01", "500", "100"));
        book.close("2026-03");
        Decision decision = decide(1, Decision.Action.DISALLOW, "");
        VatReturn june = book.of("2026-06");
        assertThat(box(june, "4")).isEqualTo("-100.00");
        assertThat(box(june, "7")).isEqualTo("0");
        Correction row = june.corrections().rows().get(0);
        assertThat(row.declared()).containsEntry("4", Amount.of("100"));
        assertThat(row.right()).containsOnlyKeys("7");
        assertThat(row.why()).isEqualTo("decided since: looked at again");
        book.close("2026-06");
        assertThat(book.of("2026-09").corrections().isEmpty()).as("taken up once").isTrue();

        decide(1, Decision.Action.UNDO, Long.toString(decision.id()));
        VatReturn september = book.of("2026-09");
        assertThat(box(september, "4")).isEqualTo("100.00");
        assertThat(september.corrections().rows().get(0).why())
                .isEqualTo("the decision it was closed with is undone");
        book.close("2026-09");
        assertThat(book.of("2026-12").corrections().isEmpty()).isTrue();
        assertThat(book.returns().treated(1))
                .extracting(t -> t.occasion().cause().code(), t -> t.boxes().get("4"))
                .containsExactly(
                        tuple("supply", Amount.of("100")),
                        tuple("corrected", Amount.of("-100")),
                        tuple("corrected", Amount.of("100")));
    }

    /** Held later than thought: out of the closed return, and a claim of the period it was held. */
    @Test
    void aDayHeldStatedAfterTheCloseMovesTheClaim() {
        open("2026-01-01");
        book.enter("first.csv", purchase("2026-02-01", "500", "100"));
        book.close("2026-03");
        decide(1, Decision.Action.STATE, "held=2026-04-08");
        VatReturn june = book.of("2026-06");
        assertThat(box(june, "4")).isEqualTo("0.00");
        assertThat(ways(june)).containsExactly(TakenUp.LATE_CLAIM, TakenUp.ERROR);
        book.close("2026-06");
        assertThat(book.of("2026-09").corrections().isEmpty()).isTrue();
    }

    @Test
    void aDecisionOnAPartyReachesItsClosedEntries() {
        open("2026-01-01");
        book.enter(
                "first.csv",
                purchase("2026-02-01", "500", "100"),
                purchase("2026-02-02", "50", "10").party("Another", "GB", "GB101747696"));
        book.close("2026-03");
        book.ledger()
                .decide(
                        new Decision(
                                0,
                                Decision.Target.PARTY,
                                "Example supplier",
                                Decision.Action.DISALLOW,
                                "",
                                "private",
                                "A. Owner",
                                LocalDate.of(2026, 7, 1)));
        assertThat(box(book.of("2026-06"), "4")).isEqualTo("-100.00");
    }

    /** What was told separately is remembered: only what changes since is found again. */
    @Test
    void whatWasDisclosedIsRemembered() {
        open("2026-01-01");
        closeQuarters("2026-03");
        book.enter("late.csv", sale("2026-02-02", "60000", "12000"));
        book.close("2026-06");
        decide(2, Decision.Action.TREAT_AS, "exempt-sale");
        VatReturn september = book.of("2026-09");
        Correction row = september.corrections().rows().get(0);
        assertThat(row.declared()).containsEntry("1", Amount.of("12000"));
        assertThat(row.difference()).containsEntry("1", Amount.of("-12000"));
        assertThat(row.takenUp()).isEqualTo(TakenUp.DISCLOSED);
    }

    // Imports

    /** 1-B: the statement of an estimated import counts by its difference, in its own period. */
    @ParameterizedTest(name = "statement line of {0}")
    @CsvSource({"2026-04-10", "2026-02-10"})
    void estimateTruedUp(String day) {
        open("2026-01-01");
        book.enter("first.csv", estimate("24GB0001", "10000", "2000"));
        VatReturn march = book.close("2026-03");
        assertThat(List.of(box(march, "1"), box(march, "4"), box(march, "7")))
                .as("1-B, first quarter")
                .containsExactly("2000.00", "2000.00", "10000");
        book.enter("statement.csv", statement(day, "24GB0001", "2030.40"));
        VatReturn june = book.of("2026-06");
        assertThat(List.of(box(june, "1"), box(june, "4"), box(june, "7")))
                .as("1-B, GOV.UK, Complete your VAT Return to account for import VAT")
                .containsExactly("30.40", "30.40", "152");
        assertThat(ways(june)).containsExactly(TakenUp.TRUED_UP);
        book.close("2026-06");
        assertThat(book.of("2026-09").corrections().isEmpty()).isTrue();
    }

    private static SampleLine estimate(String document, String net, String vat) {
        return SampleLine.of("import-vat-postponed")
                .on("2026-02-10")
                .document(document)
                .printed(net, vat);
    }

    private static SampleLine statement(String day, String document, String vat) {
        return SampleLine.of("import-vat-postponed")
                .on(day)
                .document(document)
                .vat(vat)
                .evidence("postponed-statement");
    }

    @Test
    void estimateAndStatementInOnePeriodAreTheStatement() {
        open("2026-01-01");
        book.enter(
                "first.csv",
                estimate("24GB0001", "10000", "2000"),
                statement("2026-03-01", "24GB0001", "2030.40"),
                statement("2026-03-01", "24GB0001", "10"),
                statement("2026-03-01", "24GB0002", "5"));
        assertThat(box(book.of("2026-03"), "1")).isEqualTo("2045.40");
    }

    /** The same in boxes 1 and 4: on the next return, whatever the limit (GOV.UK as above). */
    @Test
    void importMissedAltogetherIsOutsideTheLimit() {
        open("2026-01-01");
        closeQuarters("2026-03");
        book.enter(
                "late.csv",
                statement("2026-02-10", "24GB0009", "50000"),
                sale("2026-02-02", "50000", "10000"));
        VatReturn june = book.of("2026-06");
        assertThat(ways(june)).containsExactly(TakenUp.NIL_NET, TakenUp.ERROR);
        assertThat(List.of(box(june, "1"), box(june, "4"))).containsExactly("60000.00", "50000.00");
    }

    // Where it goes

    @Test
    void aLateEntryIsTakenUpOnceByTheEarliestOpenPeriod() {
        open("2026-01-01");
        closeQuarters("2026-03");
        book.enter("late.csv", sale("2026-02-02", "500", "100"), turnover("2026-08-01", "1"));
        assertThat(box(book.of("2026-09"), "1")).isEqualTo("0.00");
        assertThat(book.closing().openBefore(book.period("2026-09")))
                .as("2026-06 has no entries of its own, but takes the late one up")
                .contains(book.period("2026-06"));
        List<Treated> treated = TempBook.treated(book.returns().pack(book.period("2026-06")));
        assertThat(treated).extracting(Treated::takenUp).containsExactly(TakenUp.ERROR);
        assertThat(book.returns().takenUpIn(treated.get(0))).contains(book.period("2026-06"));
        VatReturn june = book.close("2026-06");
        assertThat(box(june, "1")).isEqualTo("100.00");
        assertThat(TempBook.treated(book.returns().pack(book.period("2026-06"))))
                .extracting(Treated::takenUp, Treated::boxes)
                .containsExactly(tuple(TakenUp.ERROR, Map.of("1", Amount.of("100"))));
        assertThat(box(book.of("2026-09"), "1")).isEqualTo("0.00");
        assertThat(book.closing().openBefore(book.period("2026-09"))).isEmpty();
        assertThat(book.returns().pack(book.period("2026-06")).sources())
                .extracting(s -> s.name())
                .containsExactly("late.csv");
    }

    /** Money that is in no box is in no box when it comes late either, and is not found again. */
    @Test
    void lateMoneyChangesNothing() {
        open("2026-01-01");
        closeQuarters("2026-03");
        book.enter("late.csv", SampleLine.of("payout").on("2026-02-02").gross("50"));
        VatReturn june = book.of("2026-06");
        assertThat(june.corrections().isEmpty()).isTrue();
        book.close("2026-06");
        assertThat(book.returns().treated(2))
                .extracting(Treated::takenUp)
                .containsExactly(TakenUp.NOWHERE);
        assertThat(TempBook.treated(book.returns().pack(book.period("2026-09")))).isEmpty();
    }
}

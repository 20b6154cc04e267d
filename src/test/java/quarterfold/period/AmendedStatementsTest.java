package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/**
 * An amended statement replaces the one of its month. GOV.UK, Complete your VAT Return to account
 * for import VAT: what comes to nothing over boxes 1 and 4 is put right on the next return. The
 * amounts are our own.
 */
class AmendedStatementsTest {
    private static final String OURS = "GB101747641000";

    @TempDir Path folder;
    private TempBook book;

    @BeforeEach
    void open() {
        book =
                new TempBook(
                        folder.resolve("book"),
                        SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"));
    }

    @AfterEach
    void close() {
        book.close();
    }

    /** A line of the statement of February 2026. */
    private static SampleLine line(String entry, String vat) {
        return SampleLine.of("import-vat-postponed")
                .on("2026-02-10")
                .document(entry)
                .vat(vat)
                .party("", "", OURS)
                .evidence("postponed-statement")
                .particular(Particular.STATEMENT_MONTH, "2026-02");
    }

    private static SampleLine amended(String entry, String vat) {
        return line(entry, vat).particular(Particular.AMENDED, "yes");
    }

    private void original() {
        book.enter("statement.csv", line("E1", "100"), line("E2", "50"), line("E3", "30"));
    }

    /** E1 as it was, E2 changed, E3 gone, E4 new. */
    private void amendment() {
        book.enter("amended.csv", amended("E1", "100"), amended("E2", "60"), amended("E4", "25"));
    }

    private static List<String> boxes(VatReturn vatReturn, String... ids) {
        return Arrays.stream(ids).map(id -> vatReturn.box(id).text()).toList();
    }

    private static List<TakenUp> ways(VatReturn vatReturn) {
        return vatReturn.corrections().rows().stream().map(Correction::takenUp).toList();
    }

    private List<String> treatments() {
        return Stream.iterate(1L, n -> n + 1)
                .limit(book.ledger().sources().stream().mapToLong(s -> s.entries()).sum())
                .map(n -> book.returns().treated(n).get(0).treatment())
                .toList();
    }

    @Test
    void beforeTheClose() {
        original();
        amendment();
        VatReturn march = book.of("2026-03");
        assertThat(boxes(march, "1", "4", "7")).containsExactly("185.00", "185.00", "925");
        assertThat(TempBook.queries(march)).isEmpty();
        assertThat(treatments())
                .containsExactly(
                        "import-postponed",
                        "replaced",
                        "replaced",
                        "met-again",
                        "import-postponed",
                        "import-postponed");
    }

    @Test
    void whichCameFirstDoesNotMatter() {
        amendment();
        original();
        assertThat(boxes(book.of("2026-03"), "1", "4", "7"))
                .containsExactly("185.00", "185.00", "925");
        assertThat(treatments())
                .containsExactly(
                        "import-postponed",
                        "import-postponed",
                        "import-postponed",
                        "met-again",
                        "replaced",
                        "replaced");
    }

    /** What was closed stays; the differences alone are taken up, once, by the next return. */
    @Test
    void afterTheClose() {
        original();
        assertThat(boxes(book.close("2026-03"), "1", "4", "7"))
                .containsExactly("180.00", "180.00", "900");
        amendment();
        VatReturn june = book.of("2026-06");
        assertThat(boxes(june, "1", "4", "7")).containsExactly("5.00", "5.00", "0");
        assertThat(june.corrections().rows())
                .extracting(Correction::entry, Correction::takenUp, Correction::why)
                .containsExactly(
                        tuple(5L, TakenUp.NIL_NET, "came after the return of 2026-03 was closed"),
                        tuple(6L, TakenUp.NIL_NET, "came after the return of 2026-03 was closed"),
                        tuple(
                                2L,
                                TakenUp.NIL_NET,
                                "replaced by the amended document that begins with entry 4"),
                        tuple(
                                3L,
                                TakenUp.NIL_NET,
                                "replaced by the amended document that begins with entry 4"));
        assertThat(boxes(book.of("2026-03"), "1")).containsExactly("180.00");
        book.close("2026-06");
        assertThat(book.of("2026-09").corrections().isEmpty()).isTrue();
        assertThat(book.differences()).isEmpty();
    }

    /** A second amendment replaces the first: what it takes in again counts again. */
    @Test
    void amendedAgain() {
        original();
        book.close("2026-03");
        amendment();
        book.close("2026-06");
        book.enter(
                "again.csv",
                amended("E1", "100"),
                amended("E2", "60"),
                amended("E3", "30"),
                amended("E4", "20"));
        VatReturn september = book.of("2026-09");
        assertThat(boxes(september, "1", "4")).containsExactly("25.00", "25.00");
        book.close("2026-09");
        assertThat(boxes(book.of("2026-12"), "1", "4")).containsExactly("0.00", "0.00");
        assertThat(book.differences()).isEmpty();
    }

    /** Another month, another importer, and a document that is not amended replace nothing. */
    @Test
    void whatReplacesNothing() {
        original();
        book.enter(
                "other.csv",
                amended("E5", "1").particular(Particular.STATEMENT_MONTH, "2026-03"),
                line("E6", "2"),
                amended("E7", "4").party("", "", "GB101747696000"),
                SampleLine.of("import-vat-paid")
                        .on("2026-02-10")
                        .document("E8")
                        .vat("8")
                        .party("", "", OURS)
                        .evidence("import-certificate")
                        .particular(Particular.STATEMENT_MONTH, "2026-02")
                        .particular(Particular.AMENDED, "yes"));
        assertThat(boxes(book.of("2026-03"), "1", "4")).containsExactly("183.00", "191.00");
    }

    /**
     * The last three digits of the number mark a part of the business, which has documents of its
     * own (from memory): an amended one takes from the others only what it states itself.
     */
    @Test
    void anotherTailHasDocumentsOfItsOwn() {
        original();
        String other = "GB101747641001";
        book.enter("other.csv", line("E5", "200").party("", "", other));
        book.enter("amended.csv", amended("E5", "210").party("", "", other));
        assertThat(boxes(book.of("2026-03"), "1")).containsExactly("390.00");
        book.enter(
                "again.csv",
                amended("E5", "210").party("", "", other),
                amended("E1", "90").party("", "", other));
        assertThat(boxes(book.of("2026-03"), "1")).as("E1, E2, E3, E5").containsExactly("380.00");
    }

    /** A number without a tail is of any part. */
    @Test
    void aNumberWithoutTailIsOfAnyPart() {
        original();
        book.enter("amended.csv", amended("E1", "90").party("", "", "GB101747641"));
        assertThat(boxes(book.of("2026-03"), "1")).containsExactly("90.00");
    }

    private static SampleLine withoutMonth(String entry, String vat) {
        return SampleLine.of("import-vat-postponed")
                .on("2026-02-10")
                .document(entry)
                .vat(vat)
                .party("", "", OURS)
                .evidence("postponed-statement");
    }

    /** A list may be without the month: reference and date say which line is amended. */
    @Test
    void aListWithoutItsMonth() {
        book.enter("list.csv", withoutMonth("E1", "100"));
        book.enter("amended.csv", amended("E1", "90"));
        VatReturn march = book.of("2026-03");
        assertThat(boxes(march, "1", "4", "7")).containsExactly("90.00", "90.00", "450");
        assertThat(TempBook.queries(march)).isEmpty();
        assertThat(treatments()).containsExactly("replaced", "import-postponed");
    }

    @Test
    void aListWithoutItsMonthThatWasClosed() {
        book.enter("list.csv", withoutMonth("E1", "100"));
        book.close("2026-03");
        book.enter("amended.csv", amended("E1", "90"));
        assertThat(boxes(book.of("2026-06"), "1", "4")).containsExactly("-10.00", "-10.00");
        book.close("2026-06");
        assertThat(book.of("2026-09").corrections().isEmpty()).isTrue();
        assertThat(book.differences()).isEmpty();
    }

    /** What stands on a plain sheet too does not come alive when its document strikes it out. */
    @Test
    void aCopyWithoutItsMonthIsStruckOutToo() {
        book.enter("before.csv", withoutMonth("E3", "30"));
        original();
        book.enter("after.csv", withoutMonth("e-2", "50"));
        amendment();
        VatReturn march = book.of("2026-03");
        assertThat(boxes(march, "1", "4")).containsExactly("185.00", "185.00");
        assertThat(TempBook.queries(march)).isEmpty();
    }

    @Test
    void anImportWhoseMonthNobodyKnowsIsAsked() {
        book.enter("list.csv", withoutMonth("E8", "8"), withoutMonth("E9", "9"));
        amendment();
        VatReturn march = book.of("2026-03");
        assertThat(boxes(march, "1")).containsExactly("202.00");
        assertThat(march.queries())
                .extracting(q -> q.id() + ": " + q.question(), q -> q.holdsClose())
                .containsExactly(
                        tuple(
                                "E3/import-month-missing: The month of the certificate or statement of entry 1, entry 2 is not stated, and the amended one of 2026-02, which begins with entry 3, does not have that import. If it was on the document of 2026-02, it no longer counts: decide --entry 1 --state statement_month=2026-02. Else state there the month of its own document.",
                                true));
        book.decide("entry", "1", "state", "statement_month=2026-02");
        book.decide("entry", "2", "state", "statement_month=2026-01");
        march = book.of("2026-03");
        assertThat(boxes(march, "1")).containsExactly("194.00");
        assertThat(TempBook.queries(march)).isEmpty();
    }

    /** What a return has closed is asked of the amended document, which comes after it. */
    @Test
    void anImportWhoseMonthNobodyKnowsAfterTheClose() {
        book.enter("list.csv", withoutMonth("E8", "8"));
        book.close("2026-03");
        book.enter("amended.csv", amended("E1", "100"));
        assertThat(TempBook.queries(book.of("2026-06"))).contains("E2/import-month-missing");
        book.decide("entry", "1", "state", "statement_month=2026-02");
        VatReturn june = book.of("2026-06");
        assertThat(boxes(june, "1", "4")).containsExactly("92.00", "92.00");
        assertThat(TempBook.queries(june)).doesNotContain("E2/import-month-missing");
    }

    /** Another month's line is of no amended document; one that comes after it is asked itself. */
    @Test
    void whatIsAskedOfTheMonth() {
        amendment();
        book.enter("list.csv", withoutMonth("E8", "8"), withoutMonth("E9", "9").on("2026-03-01"));
        assertThat(TempBook.queries(book.of("2026-03"))).containsExactly("E4/import-month-missing");
    }

    /** The same entry and VAT, of another value: box 7 alone changes. */
    @Test
    void theValueAloneAmended() {
        book.enter(
                "statement.csv",
                line("E1", "20").net("100"),
                line("E2", "5").net("25"),
                line("E3", "1"));
        book.enter(
                "amended.csv",
                amended("E1", "20").net("110"),
                amended("E2", "5").net("25"),
                amended("E3", "1").net("5"));
        assertThat(boxes(book.of("2026-03"), "1", "4", "7"))
                .containsExactly("26.00", "26.00", "140");
        assertThat(treatments())
                .containsExactly(
                        "replaced",
                        "import-postponed",
                        "import-postponed",
                        "import-postponed",
                        "met-again",
                        "met-again");
    }

    /** 1-B and on: the estimate, the statement of it, and the statement amended. */
    @Test
    void anEstimateIsTakenOffOnce() {
        book.enter(
                "estimate.csv",
                SampleLine.of("import-vat-postponed")
                        .on("2026-02-10")
                        .document("E1")
                        .printed("10000", "2000"));
        book.close("2026-03");
        book.enter("statement.csv", line("E1", "2030.40"));
        assertThat(boxes(book.of("2026-06"), "1", "4", "7"))
                .as("1-B, GOV.UK, Complete your VAT Return to account for import VAT")
                .containsExactly("30.40", "30.40", "152");
        book.enter("amended.csv", amended("E1", "2010.40"));
        assertThat(boxes(book.of("2026-06"), "1", "4", "7"))
                .containsExactly("10.40", "10.40", "52");
        assertThat(ways(book.of("2026-06"))).containsExactly(TakenUp.TRUED_UP);
    }

    @Test
    void anEstimateThatWasRightIsNoRepetition() {
        book.enter(
                "estimate.csv",
                SampleLine.of("import-vat-postponed").on("2026-02-10").document("E1").vat("100"));
        book.close("2026-03");
        book.enter("statement.csv", line("E1", "100"));
        VatReturn june = book.of("2026-06");
        assertThat(boxes(june, "1", "4", "7")).containsExactly("0.00", "0.00", "0");
        assertThat(TempBook.queries(june)).isEmpty();
    }

    @Test
    void anAmendmentOfATruedUpStatementThatWasClosed() {
        book.enter(
                "estimate.csv",
                SampleLine.of("import-vat-postponed").on("2026-02-10").document("E1").vat("2000"));
        book.close("2026-03");
        book.enter("statement.csv", line("E1", "2030.40"));
        book.close("2026-06");
        book.enter("amended.csv", amended("E1", "2010.40"));
        assertThat(boxes(book.of("2026-09"), "1", "4")).containsExactly("-20.00", "-20.00");
        book.close("2026-09");
        assertThat(book.of("2026-12").corrections().isEmpty()).isTrue();
        assertThat(book.differences()).isEmpty();
    }

    /** A certificate too; in box 4 alone it is an error like any other. */
    @Test
    void aCertificate() {
        SampleLine paid =
                SampleLine.of("import-vat-paid")
                        .on("2026-02-10")
                        .document("E1")
                        .vat("100")
                        .evidence("import-certificate")
                        .particular(Particular.STATEMENT_MONTH, "2026-02");
        book.enter("certificate.csv", paid);
        book.close("2026-03");
        book.enter("amended.csv", paid.vat("80").particular(Particular.AMENDED, "yes"));
        VatReturn june = book.of("2026-06");
        assertThat(boxes(june, "4")).containsExactly("-20.00");
        assertThat(ways(june)).containsExactly(TakenUp.ERROR, TakenUp.ERROR);
    }

    /** The entry reference, the date and the VAT are one import, whatever list they are on. */
    @Test
    void theSameImportInTwoFormsOfOneDocument() {
        book.enter("statement.pdf", line("071 123456A", "100"), line("E2", "50"));
        book.enter("statement.csv", line("071-123456a", "100"), line("E2", "50"), line("E3", "5"));
        VatReturn march = book.of("2026-03");
        assertThat(boxes(march, "1", "4")).containsExactly("155.00", "155.00");
        assertThat(TempBook.queries(march)).isEmpty();
        Treated again = book.returns().treated(3).get(0);
        assertThat(again.treatment()).isEqualTo("met-again");
        assertThat(again.evidence().orElseThrow().reasons())
                .contains("the same import as entry 1: entry reference, date and VAT agree");
    }

    /** In one file it may be two imports: a person says. */
    @Test
    void theSameTwiceInOneFileIsAsked() {
        book.enter("statement.csv", line("E1", "100"), line("E1", "100"));
        assertThat(TempBook.queries(book.of("2026-03"))).containsExactly("E2/likely-duplicate");
        book.enter("statement.pdf", line("E1", "100"), line("E1", "100"));
        VatReturn march = book.of("2026-03");
        assertThat(boxes(march, "1")).containsExactly("100.00");
        assertThat(TempBook.queries(march)).containsExactly("E2/likely-duplicate");
    }
}

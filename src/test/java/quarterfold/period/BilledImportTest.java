package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Book;
import quarterfold.ledger.Decision;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;
import quarterfold.treatment.TakenUp;

/**
 * An import VAT certificate that comes after the close of a return that claimed its VAT on an
 * agent's bill. VAT Regulations 1995 reg 29(4): input tax is never deducted twice. HMRC manual
 * IMPS03100: the certificate is the normal evidence of import VAT paid. The amounts are our own.
 */
class BilledImportTest {
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

    /** An agent's bill of March that charges 100.00 as VAT. */
    private static SampleLine bill() {
        return SampleLine.of("expense")
                .on("2026-03-28")
                .party("Cobble Hare Couriers Ltd", "GB", "GB101747696")
                .rate("20")
                .document("CH-9")
                .evidence("invoice")
                .printed("500", "100");
    }

    private static SampleLine certificate(String day) {
        return SampleLine.of("import-vat-paid")
                .on(day)
                .document("26GB01")
                .vat("100")
                .evidence("import-certificate");
    }

    private static Query asked() {
        return new Query(
                "E2/import-vat-claimed-on-bill",
                OptionalLong.of(2),
                "certificate.csv row 2",
                "The import VAT of 100.00 on 26GB01 seems to be claimed already: entry 1, in the closed"
                        + " return of 2026-03, is a bill of the same amount. Input tax is claimed once,"
                        + " so this one is in no box. To claim on the certificate and put the closed"
                        + " return right: decide --entry 1 --duplicate-of 2. To leave the claim on the"
                        + " bill, which is no evidence of import VAT by itself, while box 7 keeps the"
                        + " value of the goods: decide --entry 2 --disallow. If they are two costs:"
                        + " decide --entry 2 --treat-as import-paid.",
                Amount.of("100"));
    }

    private VatReturn june() {
        return book.of("2026-06");
    }

    private String box4() {
        return june().box("4").text();
    }

    /** Dated in the closed period, or in the one after; 31 days are ours, as for open entries. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "2026-03-27, true",
        "2026-02-25, true",
        "2026-02-24, false",
        "2026-04-02, true",
        "2026-04-28, true",
        "2026-04-29, false"
    })
    void theCertificateWaits(String day, boolean waits) {
        book.enter("bill.csv", bill());
        assertThat(book.close("2026-03").box("4").text()).isEqualTo("100.00");
        book.enter("certificate.csv", certificate(day));
        assertThat(box4()).isEqualTo(waits ? "0.00" : "100.00");
        assertThat(june().holdingClose())
                .filteredOn(q -> q.id().startsWith("E2/import"))
                .isEqualTo(waits ? List.of(asked()) : List.of());
        assertThat(book.differences()).isEmpty();
    }

    @Test
    void itSaysWhy() {
        book.enter("bill.csv", bill());
        book.close("2026-03");
        book.enter("certificate.csv", certificate("2026-04-02"));
        assertThat(book.returns().treated(2).get(0).evidence().orElseThrow().reasons())
                .contains(
                        "its VAT seems to be claimed on entry 1, a bill in the closed return of 2026-03");
    }

    /** The bill is taken back as an error of the closed return, and the certificate claims. */
    @Test
    void claimedOnTheCertificate() {
        book.enter("bill.csv", bill());
        book.close("2026-03");
        book.enter("certificate.csv", certificate("2026-04-02"));
        book.decide("entry", "1", "duplicate-of", "2");
        VatReturn june = june();
        assertThat(june.box("4").text()).isEqualTo("0.00");
        assertThat(june.holdingClose()).isEmpty();
        assertThat(june.corrections().rows())
                .extracting(Correction::entry, Correction::takenUp)
                .containsExactly(tuple(1L, TakenUp.ERROR));
        assertThat(book.returns().treated(2).get(0).claim()).hasToString("100.00");
        book.close("2026-06");
        assertThat(book.differences()).isEmpty();
        assertThat(book.of("2026-09").queries()).isEmpty();
    }

    @Test
    void leftOnTheBill() {
        book.enter("bill.csv", bill());
        book.close("2026-03");
        book.enter("certificate.csv", certificate("2026-04-02"));
        deciding().decide(duplicate("2", "1"));
        assertThat(box4()).isEqualTo("0.00");
        assertThat(june().queries()).isEmpty();
    }

    /** The value of the goods, 100.00 at 20 per cent, stays in box 7: 500. */
    @Test
    void leftOnTheBillWithItsValue() {
        book.enter("bill.csv", bill());
        book.close("2026-03");
        book.enter("certificate.csv", certificate("2026-04-02"));
        assertThat(june().box("7").text()).isEqualTo("0");
        book.decide("entry", "2", "disallow", "");
        assertThat(box4()).isEqualTo("0.00");
        assertThat(june().box("7").text()).isEqualTo("500");
        assertThat(june().queries()).isEmpty();
        assertThat(book.returns().treated(2).get(0).rule()).isEqualTo("D07a");
    }

    /** Postponed VAT is paid to no agent: boxes 1, 4 and 7, in the period of the import. */
    @Test
    void aPostponedImportIsDue() {
        book.enter("bill.csv", bill());
        book.close("2026-03");
        book.enter(
                "statement.csv",
                SampleLine.of("import-vat-postponed")
                        .on("2026-04-02")
                        .document("26GB01")
                        .vat("100")
                        .evidence("postponed-statement"));
        assertThat(TempBook.figures(june()))
                .containsExactly(
                        "100.00", "0.00", "100.00", "100.00", "0.00", "0", "500", "0", "0");
        assertThat(june().queries()).isEmpty();
    }

    private static SampleLine certificateOfApril(String day) {
        return certificate(day).particular(Particular.STATEMENT_MONTH, "2026-04");
    }

    /** The line of 1 April is replaced by that of 2 April, which waits in its place. */
    @Test
    void anAmendedCertificateWaits() {
        book.enter("bill.csv", bill());
        book.close("2026-03");
        book.enter("first.csv", certificateOfApril("2026-04-01"));
        assertThat(TempBook.queries(june())).containsExactly("E2/import-vat-claimed-on-bill");
        book.enter(
                "amended.csv",
                certificateOfApril("2026-04-02").particular(Particular.AMENDED, "yes"));
        assertThat(TempBook.queries(june())).containsExactly("E3/import-vat-claimed-on-bill");
        assertThat(box4()).isEqualTo("0.00");
    }

    /** A bill is asked about with the next import once a person has said that one is another. */
    @Test
    void afterOneOtherCostTheNextImportWaits() {
        book.enter("bill.csv", bill());
        book.close("2026-03");
        book.enter(
                "certificate.csv",
                certificate("2026-04-02"),
                certificate("2026-04-03").document("26GB02"));
        book.decide("entry", "2", "treat-as", "import-paid");
        assertThat(TempBook.queries(june())).containsExactly("E3/import-vat-claimed-on-bill");
        assertThat(box4()).isEqualTo("100.00");
    }

    /** The closed return claimed 20.00, so import VAT of 120.00 is no second claim. */
    @Test
    void aClosedReturnThatClaimedAnotherAmount() {
        book.enter("bill.csv", bill().printed("100", "20"));
        assertThat(book.close("2026-03").box("4").text()).isEqualTo("20.00");
        book.enter("certificate.csv", certificate("2026-04-02").vat("120"));
        assertThat(june().queries()).isEmpty();
        assertThat(box4()).isEqualTo("120.00");
    }

    /** Whatever is decided of the courier later, what the closed return claims stands. */
    @ParameterizedTest(name = "{0} imports of {1}, bill of {2} and {3}")
    @CsvSource({"1, 100, 500, 100", "2, 100, 500, 100", "1, 120, 100, 20"})
    void theClosedBillIsNotCorrectedByItself(int imports, String vat, String net, String billed) {
        book.enter("bill.csv", bill().printed(net, billed));
        book.close("2026-03");
        for (int i = 1; i <= imports; i++) {
            book.enter(
                    "certificate" + i + ".csv",
                    certificate("2026-04-02").document("26GB0" + i).vat(vat));
        }
        book.decide("party", "Cobble Hare Couriers Ltd", "state", "category=postage");
        assertThat(june().corrections().rows()).isEmpty();
        assertThat(book.returns().treated(1))
                .extracting(t -> t.claim().toString())
                .containsExactly(billed + ".00");
    }

    @Test
    void twoCosts() {
        book.enter("bill.csv", bill());
        book.close("2026-03");
        book.enter("certificate.csv", certificate("2026-04-02"));
        book.decide("entry", "2", "treat-as", "import-paid");
        assertThat(box4()).isEqualTo("100.00");
        assertThat(june().queries()).isEmpty();
        book.close("2026-06");
        assertThat(book.differences()).isEmpty();
    }

    /** What a person said of the bill before its close stands. */
    @Test
    void aBillThatWasSaidToBeAnotherCost() {
        book.enter("bill.csv", bill());
        book.decide("entry", "1", "treat-as", "uk-purchase");
        book.close("2026-03");
        book.enter("certificate.csv", certificate("2026-04-02"));
        assertThat(box4()).isEqualTo("100.00");
    }

    /** Of a bill that claimed nothing in its return, nothing is claimed again. */
    @Test
    void aBillThatClaimedNothing() {
        book.enter("bill.csv", bill().evidence("missing"));
        assertThat(book.close("2026-03").box("4").text()).isEqualTo("0.00");
        book.enter("certificate.csv", certificate("2026-04-02"));
        assertThat(box4()).isEqualTo("100.00");
    }

    /**
     * A bill without VAT is in box 7 of its return; when the certificate comes its value is one of
     * two for the same goods, 500 of the certificate and 100 laid out: 500 less 100 in June.
     */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"2026-04-28, 400", "2026-04-29, 500"})
    void aBillWithoutVatThatIsClosed(String day, String box7) {
        Settings withValues = SampleSettings.choosing(Map.of("errors-in-boxes-6-to-9", "yes"));
        Periods periods = Periods.of(LocalDate.of(2026, 1, 1), SampleSettings.months("3 6 9 12"));
        book.close();
        book =
                new TempBook(
                        folder.resolve("values"),
                        SampleSettings.of(withValues, periods, withValues.schemes()));
        book.enter("bill.csv", bill().rate("0").printed("100", "0"));
        assertThat(book.close("2026-03").box("7").text()).isEqualTo("100");
        book.enter("certificate.csv", certificate(day));
        assertThat(june().box("4").text()).isEqualTo("100.00");
        assertThat(june().box("7").text()).isEqualTo(box7);
    }

    /** By the ordinary choice no value of a closed return is put right, but a person is asked. */
    @Test
    void aBillWithoutVatThatIsClosedIsAsked() {
        book.enter("bill.csv", bill().rate("0").printed("100", "0"));
        book.close("2026-03");
        book.enter("certificate.csv", certificate("2026-04-02"));
        assertThat(june().holdingClose())
                .extracting(Query::question)
                .containsExactly(
                        "Document CH-9 charges 100.00, and its amount is the import VAT of entry 2, whose"
                                + " certificate or statement is the evidence for it. Input tax is claimed"
                                + " once, so this one is in no box. If it is that import VAT: decide --entry"
                                + " 1 --duplicate-of 2. If it is another cost: decide --entry 1 --treat-as"
                                + " no-vat-purchase.");
        assertThat(june().corrections().rows())
                .extracting(Correction::entry, Correction::why)
                .containsExactly(
                        tuple(1L, "its amount is the import VAT of an entry that came since"));
        book.decide("entry", "1", "treat-as", "no-vat-purchase");
        assertThat(june().queries()).isEmpty();
        assertThat(june().corrections().rows()).isEmpty();
        book.decide("entry", "1", "duplicate-of", "2");
        assertThat(june().queries()).isEmpty();
        book.close("2026-06");
        assertThat(book.differences()).isEmpty();
        assertThat(book.of("2026-09").queries()).isEmpty();
    }

    /** One bill is for one import; in an open period it is the bill that waits. */
    @Test
    void oneBillAndTwoImports() {
        book.enter("bill.csv", bill());
        book.close("2026-03");
        book.enter(
                "certificate.csv",
                certificate("2026-04-02"),
                certificate("2026-04-03").document("26GB02"));
        assertThat(box4()).isEqualTo("100.00");
        book.enter("bills.csv", bill().on("2026-04-04").document("CH-10"));
        assertThat(TempBook.queries(june()))
                .containsExactly("E2/import-vat-claimed-on-bill", "E4/import-vat-billed");
        assertThat(box4()).isEqualTo("100.00");
    }

    /** Import VAT is no duplicate of a sale or of a credit. */
    @Test
    void whatImportVatMayRepeat() {
        book.enter("bill.csv", bill(), SampleLine.of("sale").gross("600"));
        book.enter("certificate.csv", certificate("2026-04-02"));
        assertThatThrownBy(() -> deciding().decide(duplicate("3", "2")))
                .isInstanceOf(LedgerException.class)
                .hasMessage(
                        "--duplicate-of: found 2, which is of kind sale in GBP; expected the number of another entry of kind fee or purchase or expense or import-vat-paid or import-vat-postponed in GBP, 1 to 3");
    }

    private Deciding deciding() {
        return new Deciding(Book.open(folder.resolve("book")), book.ledger(), TempBook.LAW);
    }

    private static Decision duplicate(String entry, String of) {
        return new Decision(
                0,
                Decision.Target.ENTRY,
                entry,
                Decision.Action.DUPLICATE_OF,
                of,
                "the bill stays",
                "Ada Fern",
                LocalDate.of(2026, 5, 1));
    }
}

package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.money.Amount;

/**
 * Two copies of one document with other amounts or another number. VAT Regulations 1995 reg 29(4):
 * input tax is never deducted twice. The amounts are our own.
 */
class OtherCopiesTest {

    /** Sources 2 and 5 are e-invoices, source 3 a list of receipts, all else lists of purchases. */
    private static final DoubleClaims.Known KNOWN =
            new DoubleClaims.Known() {
                @Override
                public Optional<DoubleClaims.Claim> claimed(long entry) {
                    return Optional.empty();
                }

                @Override
                public String layout(long source) {
                    return source == 2 || source == 5
                            ? "e-invoice"
                            : source == 3 ? "expenses" : "purchases";
                }
            };

    static SampleLine bill(String number, String net, String vat) {
        return SampleLine.of("purchase")
                .party("Cobble Hare Couriers Ltd", "GB", "GB101747696")
                .rate("20")
                .category("stock")
                .document(number)
                .evidence("invoice")
                .printed(net, vat)
                .on("2026-08-10");
    }

    static Entry entry(long number, long source, SampleLine line) {
        return new Entry(number, source, line.line(number + 1));
    }

    static List<Treated> treated(Treating book, Entry... entries) {
        List<Entry> all = List.of(entries);
        TreatmentRun run = new TreatmentRun(book.claimed(KNOWN).context(all));
        return all.stream().map(run::treat).toList();
    }

    static List<String> claims(Entry... entries) {
        return treated(Treating.gb(), entries).stream().map(t -> t.claim().toString()).toList();
    }

    @Test
    void aCopyWithOtherAmountsIsAsked() {
        Treated copy =
                treated(
                                Treating.gb(),
                                entry(1, 1, bill("A1", "100", "20")),
                                entry(2, 4, bill("A1", "110", "22")))
                        .get(1);
        assertThat(copy.boxes()).isEmpty();
        assertThat(copy.rule()).isEqualTo("D17");
        assertThat(copy.queries())
                .containsExactly(
                        new Query(
                                "E2/copy-entered-twice",
                                OptionalLong.of(2),
                                "sheet-4.csv row 3",
                                "Document A1, 132.00 GBP, and the one of entry 1, 120.00 GBP, seem to be two"
                                        + " copies of one document: supplier, number and day agree, the"
                                        + " amounts differ. Input tax is claimed once, so this one is in no"
                                        + " box. To keep entry 1: decide --entry 2 --duplicate-of 1. To keep"
                                        + " this one: decide --entry 1 --duplicate-of 2. To keep both, as two"
                                        + " documents or parts of one: decide --entry 2 --treat-as uk-purchase.",
                                Amount.of("132")));
        assertThat(copy.evidence().orElseThrow().reasons())
                .contains(
                        "seems to be another copy of the document of entry 1: supplier, number and day"
                                + " agree, the amounts differ");
    }

    /** Each of the three answers that the question names. */
    @ParameterizedTest(name = "entry {0} {1} {2}: {3} and {4}")
    @CsvSource({
        "2, DUPLICATE_OF, 1, 20.00, 0.00",
        "1, DUPLICATE_OF, 2, 0.00, 22.00",
        "2, TREAT_AS, uk-purchase, 20.00, 22.00"
    })
    void aPersonSaysWhichCounts(
            String about, Decision.Action action, String value, String first, String second) {
        Decision decision =
                new Decision(
                        1,
                        Decision.Target.ENTRY,
                        about,
                        action,
                        value,
                        "looked at it",
                        "Ada Fern",
                        LocalDate.of(2026, 8, 20));
        List<Treated> both =
                treated(
                        Treating.gb().deciding(decision),
                        entry(1, 1, bill("A1", "100", "20")),
                        entry(2, 4, bill("A1", "110", "22")));
        assertThat(both).extracting(t -> t.claim().toString()).containsExactly(first, second);
        assertThat(both).allSatisfy(t -> assertThat(t.queries()).isEmpty());
    }

    /**
     * A penny is a difference, and so is a currency, on whatever day the copy is dated; another
     * day, supplier or number is another document. EN 16931 has one currency of a document, BT-5.
     */
    @ParameterizedTest(name = "{0} {1} of {2} on {3} in {4}: {5}")
    @CsvSource({
        "A1, 100.01, GB101747696, 2026-08-10, GBP, true",
        "a 01, 110, GB101747696, 2026-08-10, GBP, true",
        "A2, 110, GB101747696, 2026-08-10, GBP, false",
        "A1, 110, GB000480437, 2026-08-10, GBP, false",
        "A1, 110, GB101747696, 2026-08-11, GBP, false",
        "A1, 110, GB101747696, 2026-08-10, EUR, true",
        "A1, 100, GB101747696, 2026-10-11, EUR, true",
        "A2, 110, GB101747696, 2026-08-10, EUR, false",
        "A1, 110, GB000480437, 2026-08-10, EUR, false"
    })
    void whatIsAnotherCopy(
            String number, String net, String supplier, String day, String currency, boolean copy) {
        SampleLine other =
                bill(number, net, "20")
                        .party("Hare " + supplier, "GB", supplier)
                        .on(day)
                        .currency(currency);
        assertThat(
                        treated(
                                        Treating.gb(),
                                        entry(1, 1, bill("A1", "100", "20")),
                                        entry(2, 4, other))
                                .get(1)
                                .rule()
                                .equals("D17"))
                .isEqualTo(copy);
    }

    /** An e-invoice is dated by its delivery, a list by the day of the invoice. */
    @Test
    void theDayOfTheInvoiceIsADayOfIt() {
        SampleLine delivered =
                bill("A1", "110", "22")
                        .on("2026-08-07")
                        .particular(Particular.INVOICED, "2026-08-10");
        assertThat(claims(entry(1, 1, bill("A1", "100", "20")), entry(2, 2, delivered)))
                .containsExactly("20.00", "0.00");
    }

    /** What both files have is no difference: a file with a row more adds that row. */
    @Test
    void aFileWithMoreRows() {
        assertThat(
                        claims(
                                entry(1, 1, bill("A1", "100", "20")),
                                entry(2, 4, bill("A1", "100", "20")),
                                entry(3, 4, bill("A1", "50", "10"))))
                .containsExactly("20.00", "0.00", "10.00");
        assertThat(
                        claims(
                                entry(1, 1, bill("A1", "100", "20")),
                                entry(2, 1, bill("A1", "60", "12")),
                                entry(3, 4, bill("A1", "100", "20")),
                                entry(4, 4, bill("A1", "50", "10"))))
                .as("50.00 in the place of 60.00")
                .containsExactly("20.00", "12.00", "0.00", "0.00");
    }

    /** VAT Regulations 1995 reg 16A: the whole is at most 250.00 for a simplified invoice. */
    @Test
    void theCopyIsNoPartOfTheWhole() {
        assertThat(
                        claims(
                                entry(1, 1, bill("A1", "100", "20").evidence("simplified")),
                                entry(2, 4, bill("A1", "110", "22").evidence("simplified"))))
                .containsExactly("20.00", "0.00");
    }

    /** A corrected invoice names what it corrects: whichever is entered later waits. */
    @ParameterizedTest(name = "corrected {0}, follows {1}: {2}")
    @CsvSource({"yes, A-1, true", "yes, 'A0,A1', true", "no, A1, false", "yes, A2, false"})
    void aCorrectedInvoice(String amended, String follows, boolean copy) {
        SampleLine corrected =
                bill("A9", "110", "22")
                        .on("2026-09-01")
                        .particular(Particular.FOLLOWS, follows)
                        .particular(Particular.AMENDED, amended);
        SampleLine first = bill("A1", "100", "20");
        assertThat(claims(entry(1, 1, first), entry(2, 2, corrected)))
                .containsExactly("20.00", copy ? "0.00" : "22.00");
        assertThat(claims(entry(1, 1, corrected), entry(2, 2, first)))
                .containsExactly("22.00", copy ? "0.00" : "20.00");
    }

    @Test
    void aCorrectedInvoiceSaysWhy() {
        SampleLine corrected =
                bill("A9", "110", "22")
                        .particular(Particular.FOLLOWS, "A1")
                        .particular(Particular.AMENDED, "yes");
        SampleLine first = bill("A1", "100", "20");
        assertThat(reason(entry(1, 1, first), entry(2, 2, corrected)))
                .isEqualTo(
                        "seems to be another copy of the document of entry 1: it says that it corrects that one");
        assertThat(reason(entry(1, 1, corrected), entry(2, 2, first)))
                .isEqualTo(
                        "seems to be another copy of the document of entry 1: that one says that it corrects this one");
    }

    static String reason(Entry... entries) {
        return treated(Treating.gb(), entries).get(1).evidence().orElseThrow().reasons().stream()
                .filter(reason -> reason.contains("copy"))
                .findFirst()
                .orElse("");
    }

    /** A receipt under a list's own number, and the e-invoice of it: two kinds of file. */
    @ParameterizedTest(name = "{0} in source {1}, {2} in source {3}: {4}")
    @CsvSource({
        "R12, 3, 8841, 2, true",
        "8841, 2, R12, 3, true",
        "INV-100, 1, 100, 2, true",
        "R12, 3, INV-7, 1, true",
        "A1, 1, A2, 4, false",
        "A1, 1, A2, 1, false"
    })
    void oneTotalUnderTwoNumbers(String one, long in, String other, long otherIn, boolean copy) {
        assertThat(
                        claims(
                                entry(1, in, bill(one, "100", "20")),
                                entry(2, otherIn, bill(other, "100", "20"))))
                .containsExactly("20.00", copy ? "0.00" : "20.00");
    }

    /** Of two receipts for the same money one e-invoice is a copy of one. */
    @Test
    void oneTotalIsMetOnceByAFile() {
        assertThat(
                        claims(
                                entry(1, 1, bill("A1", "100", "20")),
                                entry(2, 1, bill("A2", "100", "20")),
                                entry(3, 2, bill("8841", "100", "20"))))
                .containsExactly("20.00", "20.00", "0.00");
        List<Entry> two = new ArrayList<>();
        two.add(entry(1, 2, bill("8841", "100", "20")));
        two.add(entry(2, 1, bill("A1", "100", "20")));
        two.add(entry(3, 1, bill("A2", "100", "20")));
        assertThat(claims(two.toArray(Entry[]::new))).containsExactly("20.00", "0.00", "20.00");
    }

    /** Lines of settlements are many for one invoice: they are looked at with it. */
    @Test
    void linesOfSettlementsAreNoCopies() {
        SampleLine line = bill("QS-1", "10", "2").channel("Quaylark", "no").settlement("QL-1");
        SampleLine next = bill("QS-1", "20", "4").channel("Quaylark", "no").settlement("QL-2");
        assertThat(claims(entry(1, 1, line), entry(2, 4, next))).containsExactly("2.00", "4.00");
    }
}

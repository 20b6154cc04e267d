package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.law.Law;
import quarterfold.law.Tables;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.money.Amount;

/**
 * VATA 1994 s.6(4): an advance is taxed when it is invoiced or paid. VAT Regulations 1995 reg
 * 29(4): input tax is never deducted twice.
 */
class AdvancesTest {

    private static SampleLine bill(String document, String net, String vat) {
        return SampleLine.of("purchase")
                .party("Fernmoor Pottery Ltd", "GB", "GB000472729")
                .rate("20")
                .document(document)
                .evidence("invoice")
                .printed(net, vat);
    }

    private static SampleLine advance() {
        return bill("A-1", "300", "60").particular(Particular.ADVANCE, "yes");
    }

    private static SampleLine whole() {
        return bill("F-1", "1000", "200");
    }

    /** The lines as entries 1, 2, 3 …, each of a file of its own. */
    private static List<Treated> files(Treating book, SampleLine... lines) {
        List<Entry> entries = new ArrayList<>();
        for (SampleLine line : lines) {
            long number = entries.size() + 1L;
            entries.add(new Entry(number, number, line.line(number + 1)));
        }
        TreatmentRun run = new TreatmentRun(book.context(entries));
        return entries.stream().map(run::treat).toList();
    }

    private static List<String> claims(List<Treated> all) {
        return all.stream().map(t -> t.claim().toString()).toList();
    }

    /** An invoice that says that 360.00 was paid, or which document it follows, or both. */
    @ParameterizedTest(name = "paid {0}, follows {1}: {2}")
    @CsvSource({
        "360.00, '', true",
        "360.01, '', false",
        "'', A-1, true",
        "'', a1, true",
        "'', A-2, false",
        "'', 'A-0,A-1', true",
        "360.00, A-1, true",
        "400.00, A-1, true",
        "360.00, A-2, false",
        "'', '', false"
    })
    void theInvoiceForTheWhole(String paid, String follows, boolean twice) {
        SampleLine invoice = whole();
        if (!paid.isEmpty()) {
            invoice.particular(Particular.PREPAID, paid);
        }
        if (!follows.isEmpty()) {
            invoice.particular(Particular.FOLLOWS, follows);
        }
        assertThat(claims(files(Treating.gb(), advance(), invoice)))
                .containsExactly("60.00", twice ? "0.00" : "200.00");
        assertThat(claims(files(Treating.gb(), invoice, advance())))
                .containsExactly("200.00", twice ? "0.00" : "60.00");
    }

    /** It names several, in whatever order, and one advance it does not name. */
    @ParameterizedTest
    @CsvSource({"'A-1,A-2'", "'A-2,A-1'", "'X-9,A-2'"})
    void severalAdvances(String follows) {
        SampleLine invoice = whole().particular(Particular.FOLLOWS, follows);
        List<Treated> all =
                files(
                        Treating.gb(),
                        advance(),
                        advance().document("A-3"),
                        advance().document("A-2"),
                        invoice);
        assertThat(claims(all)).containsExactly("60.00", "60.00", "60.00", "0.00");
    }

    /** Where the invoice came first, each advance that it names waits, and no other. */
    @Test
    void severalAdvancesAfterTheInvoice() {
        SampleLine invoice = whole().particular(Particular.FOLLOWS, "A-2,A-1");
        List<Treated> all =
                files(
                        Treating.gb(),
                        invoice,
                        advance(),
                        advance().document("A-3"),
                        advance().document("A-2"));
        assertThat(claims(all)).containsExactly("200.00", "0.00", "60.00", "0.00");
    }

    /** Part invoices are named too: only what was taken off as paid may be charged again. */
    @ParameterizedTest(name = "paid {0}, follows {1}: {2}")
    @CsvSource({"360.00, A-1, true", "400.00, A-1, false", "'', A-1, false", "360.00, '', false"})
    void aDocumentThatIsNotCalledAnAdvance(String paid, String follows, boolean twice) {
        SampleLine invoice = whole();
        if (!paid.isEmpty()) {
            invoice.particular(Particular.PREPAID, paid);
        }
        if (!follows.isEmpty()) {
            invoice.particular(Particular.FOLLOWS, follows);
        }
        assertThat(claims(files(Treating.gb(), bill("A-1", "300", "60"), invoice)).get(1))
                .isEqualTo(twice ? "0.00" : "200.00");
    }

    @Test
    void whatCannotBeCharged() {
        SampleLine invoice = whole().particular(Particular.FOLLOWS, "A-1");
        SampleLine withoutVat = bill("A-1", "360", "0").rate("0");
        withoutVat.particular(Particular.ADVANCE, "yes");
        SampleLine larger = bill("A-1", "1000.01", "200");
        larger.particular(Particular.ADVANCE, "yes");
        SampleLine ofAnother = advance().party("Cobble Hare Couriers Ltd", "GB", "GB101747696");
        SampleLine inEuros = advance().currency("EUR");
        for (SampleLine other : List.of(withoutVat, larger, ofAnother, inEuros)) {
            assertThat(files(Treating.gb(), other, invoice).get(1).claim()).hasToString("200.00");
        }
    }

    /** An advance that follows another is no invoice for the whole, nor is a credit. */
    @Test
    void anAdvanceAfterAnAdvance() {
        SampleLine second = advance().document("A-2").particular(Particular.FOLLOWS, "A-1");
        SampleLine credit =
                SampleLine.of("purchase-credit")
                        .party("Fernmoor Pottery Ltd", "GB", "GB000472729")
                        .rate("20")
                        .document("C-1")
                        .evidence("invoice")
                        .printed("300", "60")
                        .particular(Particular.FOLLOWS, "A-1");
        List<Treated> all = files(Treating.gb(), advance(), second, credit);
        assertThat(claims(all)).containsExactly("60.00", "60.00", "60.00");
        assertThat(all).allSatisfy(t -> assertThat(t.queries()).isEmpty());
    }

    @Test
    void itIsAsked() {
        Treated invoice =
                files(Treating.gb(), advance(), whole().particular(Particular.PREPAID, "360.00"))
                        .get(1);
        assertThat(invoice.rule()).isEqualTo("D14");
        assertThat(invoice.boxes()).isEmpty();
        assertThat(invoice.evidence().orElseThrow().reasons())
                .contains(
                        "it and entry 1 seem to be an advance and the invoice that charges its VAT again");
        assertThat(invoice.queries())
                .containsExactly(
                        new Query(
                                "E2/advance-claimed-twice",
                                OptionalLong.of(2),
                                "sheet-2.csv row 3",
                                "Document F-1 for 1200.00 and entry 1 seem to be an advance and the invoice"
                                        + " for the whole, which charges the VAT of the advance again. Input"
                                        + " tax is claimed once, so this one is in no box. If it does: decide"
                                        + " --entry 1 --duplicate-of 2; where a closed return has claimed"
                                        + " the advance, enter that as a purchase-credit and decide --entry"
                                        + " 2 --treat-as uk-purchase. If the invoice leaves it out: decide"
                                        + " --entry 2 --treat-as uk-purchase.",
                                Amount.of("1200")));
    }

    /** As the question says: the advance is the duplicate, or each is a document of its own. */
    @Test
    void aPersonSays() {
        SampleLine invoice = whole().particular(Particular.PREPAID, "360.00");
        Treating duplicate =
                Treating.gb().deciding(decided("1", Decision.Action.DUPLICATE_OF, "2"));
        assertThat(claims(files(duplicate, advance(), invoice))).containsExactly("0.00", "200.00");
        Treating both =
                Treating.gb().deciding(decided("2", Decision.Action.TREAT_AS, "uk-purchase"));
        assertThat(claims(files(both, advance(), invoice))).containsExactly("60.00", "200.00");
    }

    /** Tables frozen by older closes have no such rule, and their returns stay as they were. */
    @Test
    void tablesWithoutTheRule() {
        Law older = Tables.with("treatments.csv", text -> text.replaceFirst("(?m)^D14,.*\\n", ""));
        assertThat(
                        claims(
                                files(
                                        Treating.gb().under(older),
                                        advance(),
                                        whole().particular(Particular.PREPAID, "360.00"))))
                .containsExactly("60.00", "200.00");
    }

    private static Decision decided(String entry, Decision.Action action, String value) {
        return new Decision(
                1,
                Decision.Target.ENTRY,
                entry,
                action,
                value,
                "looked at it",
                "Ada Fern",
                LocalDate.of(2026, 8, 20));
    }
}

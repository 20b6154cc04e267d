package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;
import static quarterfold.treatment.OtherCopiesTest.bill;
import static quarterfold.treatment.OtherCopiesTest.claims;
import static quarterfold.treatment.OtherCopiesTest.entry;
import static quarterfold.treatment.OtherCopiesTest.reason;
import static quarterfold.treatment.OtherCopiesTest.treated;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;

/**
 * Copies of whole documents, in one currency or two, and where the answers that their questions
 * name end. VAT Regulations 1995 reg 29(4): input tax is never deducted twice. The amounts are our
 * own.
 */
class WholeCopiesTest {

    /**
     * An e-invoice is all of its document: its totals are those of all it charges (EN 16931,
     * BR-CO-14 and BR-CO-15). So a list with a row more states another total of it.
     */
    @Test
    void aListWithARowThatTheEInvoiceHasNot() {
        Entry one = entry(1, 1, bill("A3", "100", "20"));
        Entry two = entry(2, 1, bill("A3", "10", "2"));
        Entry whole = entry(3, 2, bill("A3", "100", "20"));
        Treated waits = treated(Treating.gb(), one, two, whole).get(2);
        assertThat(waits.boxes()).isEmpty();
        assertThat(waits.queries())
                .extracting(Query::question)
                .containsExactly(
                        "Document A3, 120.00 GBP, and the one of entries 1, 2, 132.00 GBP, seem to be two"
                                + " copies of one document: supplier, number and day agree, the amounts"
                                + " differ. Input tax is claimed once, so this one is in no box. To keep"
                                + " entries 1, 2: decide --entry 3 --duplicate-of 1. To keep this one:"
                                + " decide --entry 1 --duplicate-of 3, and so with --entry 2. To keep both,"
                                + " as two documents or parts of one: decide --entry 3 --treat-as uk-purchase.");
        assertThat(decided("1 3, 2 3", one, two, whole)).containsExactly("0.00", "0.00", "20.00");
        assertThat(decided("3 1", one, two, whole)).containsExactly("20.00", "2.00", "0.00");
    }

    /** Each row of the list waits, that which the e-invoice has too: else a part would be left. */
    @Test
    void anEInvoiceAndThenAListWithARowMore() {
        Entry whole = entry(1, 2, bill("A3", "100", "20"));
        Entry one = entry(2, 1, bill("A3", "100", "20"));
        Entry two = entry(3, 1, bill("A3", "10", "2"));
        List<Treated> all = treated(Treating.gb(), whole, one, two);
        assertThat(all).extracting(Treated::rule).containsExactly("U15a", "D17", "D17");
        assertThat(all.get(1).queries())
                .extracting(Query::question)
                .containsExactly(
                        "Document A3, 132.00 GBP, and the one of entry 1, 120.00 GBP, seem to be two copies"
                                + " of one document: supplier, number and day agree, the amounts differ."
                                + " Input tax is claimed once, so this one is in no box. To keep entry 1:"
                                + " decide --entry 2 --duplicate-of 1. To keep this one: decide --entry 1"
                                + " --duplicate-of 2. To keep both, as two documents or parts of one: decide --entry 2"
                                + " --treat-as uk-purchase.");
        assertThat(decided("2 1, 3 1", whole, one, two)).containsExactly("20.00", "0.00", "0.00");
        assertThat(decided("1 2", whole, one, two)).containsExactly("0.00", "20.00", "2.00");
        assertThat(decided("1 3", whole, one, two)).containsExactly("0.00", "20.00", "2.00");
    }

    /** A list that has a part of an e-invoice: what the e-invoice has more is new. */
    @Test
    void aListWithARowOfTheEInvoice() {
        Entry part = entry(1, 1, bill("A3", "100", "20"));
        assertThat(
                        claims(
                                part,
                                entry(2, 2, bill("A3", "100", "20")),
                                entry(3, 2, bill("A3", "10", "2"))))
                .containsExactly("20.00", "0.00", "2.00");
        assertThat(
                        claims(
                                entry(1, 2, bill("A3", "100", "20")),
                                entry(2, 2, bill("A3", "10", "2")),
                                entry(3, 1, bill("A3", "100", "20"))))
                .containsExactly("20.00", "2.00", "0.00");
        assertThat(
                        claims(
                                entry(1, 1, bill("A3", "60", "12")),
                                entry(2, 1, bill("A3", "40", "8")),
                                entry(3, 2, bill("A3", "100", "20"))))
                .as("one total in two rows")
                .containsExactly("12.00", "8.00", "0.00");
    }

    /** What entries come to once some are said to be duplicates, such as {@code 1 3, 2 3}. */
    private static List<String> decided(String duplicates, Entry... entries) {
        List<Decision> decisions = new ArrayList<>();
        for (String duplicate : duplicates.split(", ", -1)) {
            String[] of = duplicate.split(" ", -1);
            decisions.add(duplicate(decisions.size() + 1L, of[0], of[1]));
        }
        List<Treated> all =
                treated(Treating.gb().deciding(decisions.toArray(Decision[]::new)), entries);
        assertThat(all).allSatisfy(t -> assertThat(t.queries()).isEmpty());
        return all.stream().map(t -> t.claim().toString()).toList();
    }

    /** One document has one currency (EN 16931, BT-5): only one of its copies is claimed. */
    @Test
    void aCopyInAnotherCurrency() {
        SampleLine foreign = bill("A1", "115", "23").currency("EUR");
        Treated copy =
                treated(Treating.gb(), entry(1, 1, bill("A1", "100", "20")), entry(2, 1, foreign))
                        .get(1);
        assertThat(copy.boxes()).isEmpty();
        assertThat(copy.queries())
                .extracting(Query::question)
                .containsExactly(
                        "Document A1, 138.00 EUR, and the one of entry 1, 120.00 GBP, seem to be two copies"
                                + " of one document: supplier and number agree, the currencies differ. Input"
                                + " tax is claimed once, so this one is in no box. To keep entry 1: decide"
                                + " --entry 2 --duplicate-of 1. To keep this one: decide --entry 1"
                                + " --duplicate-of 2. To keep both, as two documents or parts of one: decide --entry 2"
                                + " --treat-as uk-purchase.");
        Treating held = Treating.gb().holding(new MonthlyRates());
        assertThat(
                        treated(held, entry(1, 4, foreign), entry(2, 1, bill("A1", "100", "20")))
                                .get(1)
                                .boxes())
                .as("whichever came later waits")
                .isEmpty();
        assertThat(decided("2 1", entry(1, 1, bill("A1", "100", "20")), entry(2, 4, foreign)))
                .containsExactly("20.00", "0.00");
    }

    /**
     * Where the tables cannot tell a treatment, the question says how the fitting ones are found.
     */
    @Test
    void aTreatmentThatThisDocumentDoesNotSettle() {
        SampleLine trip =
                SampleLine.of("expense")
                        .party("Gasthof Beispiel", "DE", "")
                        .category("travel")
                        .document("A1")
                        .evidence("invoice")
                        .gross("80")
                        .on("2026-08-10");
        assertThat(treated(Treating.gb(), entry(1, 1, trip), entry(2, 4, trip)).get(1).queries())
                .extracting(Query::question)
                .containsExactly(
                        "Document A1 for 80.00 seems to be entered already, as entry 1. Input tax is claimed"
                                + " once, so this one is in no box. If it is the same: decide --entry 2"
                                + " --duplicate-of 1. If it is another document: decide --entry 2"
                                + " --treat-as TREATMENT, one of those that --treat-as ? lists.");
    }

    /** A corrected invoice in another currency is one all the same. */
    @Test
    void aCorrectedInvoiceInAnotherCurrency() {
        SampleLine corrected =
                bill("A9", "115", "23")
                        .currency("EUR")
                        .particular(Particular.FOLLOWS, "A1")
                        .particular(Particular.AMENDED, "yes");
        assertThat(reason(entry(1, 1, bill("A1", "100", "20")), entry(2, 2, corrected)))
                .isEqualTo(
                        "seems to be another copy of the document of entry 1: it says that it corrects that one");
    }

    /** Of two that agree the one with the same VAT is named, and one that nothing has met. */
    @Test
    void whichOfTwoLikeOnes() {
        Entry one = entry(1, 1, bill("R1", "100", "20"));
        Entry two = entry(2, 1, bill("R2", "100", "20"));
        Entry first = entry(3, 2, bill("A1", "100", "20"));
        Entry second = entry(4, 5, bill("A2", "100", "20"));
        List<Treated> all = treated(Treating.gb(), one, two, first, second);
        assertThat(all.get(2).evidence().orElseThrow().reasons())
                .contains(
                        "seems to be another copy of the document of entry 1: supplier, day and total"
                                + " agree, the numbers differ, and they are of two kinds of file (so they do"
                                + " with entry 2)");
        assertThat(all.get(3).evidence().orElseThrow().reasons())
                .contains(
                        "seems to be another copy of the document of entry 2: supplier, day and total"
                                + " agree, the numbers differ, and they are of two kinds of file (so they do"
                                + " with entry 1)");
        assertThat(
                        treated(
                                        Treating.gb().deciding(duplicate(1, "3", "1")),
                                        one,
                                        two,
                                        first,
                                        second)
                                .get(3)
                                .queries())
                .as("entry 1 is met")
                .extracting(Query::question)
                .allMatch(question -> question.contains("decide --entry 4 --duplicate-of 2."));
        Entry withoutVat = entry(1, 1, bill("R1", "120", "0"));
        assertThat(treated(Treating.gb(), withoutVat, two, first).get(2).evidence())
                .get()
                .satisfies(
                        grade ->
                                assertThat(grade.reasons())
                                        .contains(
                                                "seems to be another copy of the document of entry 2:"
                                                        + " supplier, day and total agree, the numbers"
                                                        + " differ, and they are of two kinds of file"));
    }

    private static Decision duplicate(long id, String entry, String of) {
        return new Decision(
                id,
                Decision.Target.ENTRY,
                entry,
                Decision.Action.DUPLICATE_OF,
                of,
                "looked at it",
                "Ada Fern",
                LocalDate.of(2026, 8, 20));
    }
}

package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.Particular;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.Publisher;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.treatment.Query;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/** What people decide about entries of closed returns: VAT Regulations 1995 reg 34. */
class ChangedEntriesTest {

    @TempDir private Path folder;
    private TempBook book;

    @BeforeEach
    void open() {
        book = new TempBook(folder, SampleSettings.GB);
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine purchase(String vat) {
        return SampleLine.of("purchase")
                .on("2026-02-01")
                .vat(vat)
                .rate("20")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    private static SampleLine sale(String product) {
        return SampleLine.of("sale").on("2026-02-01").gross("120").product(product);
    }

    private String box(String period, String box) {
        return book.of(period).box(box).text();
    }

    private List<Long> wrong(String period) {
        return book.of(period).corrections().rows().stream().map(Correction::entry).toList();
    }

    /** Disallowed, then not, then disallowed again: each step moves what the returns had so far. */
    @Test
    void anUndoingUndone() {
        book.enter("a.csv", purchase("100").net("500"));
        book.close("2026-03");
        book.decide("entry", "1", "disallow", "");
        assertThat(book.close("2026-06").box("4").text()).isEqualTo("-100.00");
        book.decide("entry", "1", "undo", "1");
        assertThat(book.close("2026-09").box("4").text()).isEqualTo("100.00");
        book.decide("entry", "1", "undo", "2");
        assertThat(box("2026-12", "4")).isEqualTo("-100.00");
        assertThat(book.of("2026-12").corrections().rows())
                .extracting(Correction::why)
                .containsExactly("decided since: seen");
    }

    /** What is undone may have been known to the close, and be about a party. */
    @Test
    void aDecisionOfBeforeTheCloseUndone() {
        book.enter("a.csv", purchase("100").net("500"));
        book.decide("party", "Example supplier", "disallow", "");
        assertThat(book.close("2026-03").box("4").text()).isEqualTo("0.00");
        book.decide("party", "Example supplier", "undo", "1");
        assertThat(box("2026-06", "4")).isEqualTo("100.00");
        assertThat(book.of("2026-06").corrections().rows())
                .extracting(Correction::why)
                .containsExactly("the decision it was closed with is undone");
    }

    @Test
    void aDecisionAboutAProduct() {
        book.enter("a.csv", sale("KETTLE"), sale("BOOK"), sale(""));
        book.close("2026-03");
        book.decide("product", "BOOK", "treat-as", "exempt-sale");
        assertThat(wrong("2026-06")).containsExactly(2L);
        assertThat(box("2026-06", "1")).isEqualTo("-20.00");
    }

    @Test
    void aDecisionAboutAChannel() {
        book.enter("a.csv", sale("").channel("Quaylark", "no"), sale("").channel("Norrowby", "no"));
        book.close("2026-03");
        book.decide("party", "Norrowby", "treat-as", "exempt-sale");
        assertThat(wrong("2026-06")).containsExactly(2L);
    }

    /** The paper shows the difference of net, VAT and claim, beside how it is treated now. */
    @Test
    void theCorrectionShowsTheDifference() {
        book.enter("a.csv", SampleLine.of("sale").on("2026-02-01").gross("120"));
        book.close("2026-03");
        book.decide("entry", "1", "state", "rate=5");
        List<Treated> shown = TempBook.treated(book.returns().pack(book.period("2026-06")));
        assertThat(shown)
                .singleElement()
                .satisfies(
                        t -> {
                            assertThat(t.treatment()).isEqualTo("uk-sale");
                            assertThat(t.rate()).isEqualTo("5%");
                            assertThat(t.takenUp()).isEqualTo(TakenUp.ERROR);
                            assertThat(t.occasion().day()).hasToString("2026-06-30");
                            assertThat(t.net().toString()).isEqualTo("14.2857");
                            assertThat(t.vat().toString()).isEqualTo("-14.2857");
                            assertThat(t.claim().toString()).isEqualTo("0.00");
                        });
    }

    /** A rate of the tax authority for February 2026, made up: 1.20 for a pound. */
    private void rate() {
        try (FileEntry file = book.begin("2026-02.csv")) {
            file.add(
                    new PublishedRate(
                            2,
                            Publisher.TAX_AUTHORITY,
                            "EUR",
                            LocalDate.of(2026, 2, 1),
                            LocalDate.of(2026, 2, 28),
                            new BigDecimal("1.20")));
            TempBook.commit(file, 0);
        }
    }

    /** Closed without a rate, 120.00 EUR was in no box: 100.00 at 20 per cent inside is 16.6667. */
    @Test
    void aRateThatCameSince() {
        book.enter("a.csv", sale("").currency("EUR"), sale("KETTLE"));
        assertThat(book.close("2026-03").box("1").text()).isEqualTo("20.00");
        assertThat(book.of("2026-06").corrections().isEmpty()).isTrue();
        rate();
        assertThat(box("2026-06", "1")).isEqualTo("16.67");
        assertThat(book.of("2026-06").corrections().rows())
                .extracting(Correction::entry, Correction::takenUp, Correction::why)
                .containsExactly(
                        tuple(
                                1L,
                                TakenUp.ERROR,
                                "its exchange rate came after the return of 2026-03 was closed"));
        assertThat(TempBook.treated(book.returns().pack(book.period("2026-06"))))
                .extracting(t -> t.net() + " " + t.vat())
                .containsExactly("83.3333 16.6667");
        book.close("2026-06");
        assertThat(wrong("2026-09")).isEmpty();
        book.decide("entry", "1", "treat-as", "exempt-sale");
        assertThat(book.of("2026-09").corrections().rows())
                .extracting(Correction::why)
                .containsExactly("decided since: seen");
        assertThat(book.differences()).isEmpty();
    }

    /** Under the flat rate its turnover is for a person to work out, as with what comes late. */
    @Test
    void aRateThatCameSinceUnderTheFlatRate() {
        book.close();
        book = new TempBook(folder.resolve("flat"), SampleSettings.scheme("flat-rate", "044"));
        book.enter("a.csv", sale("").currency("EUR"));
        book.close("2026-03");
        rate();
        assertThat(box("2026-06", "1")).isEqualTo("0.00");
        assertThat(TempBook.queries(book.of("2026-06"))).contains("E1/late-under-flat-rate");
    }

    /** The same of turnover that people decide of: the percentage is of all takings of a period. */
    @Test
    void decidedSinceUnderTheFlatRate() {
        book.close();
        book = new TempBook(folder.resolve("flat"), SampleSettings.scheme("flat-rate", "044"));
        book.enter(
                "a.csv",
                sale(""),
                SampleLine.of("other-money").on("2026-02-02").gross("60"),
                sale("").on("2026-02-03"));
        book.close("2026-03");
        book.decide("entry", "1", "treat-as", "outside-sale");
        book.decide("entry", "2", "state", "kind=sale");
        book.decide("entry", "3", "state", "kind=transfer");
        assertThat(box("2026-06", "1")).isEqualTo("0.00");
        assertThat(TempBook.queries(book.of("2026-06")))
                .contains(
                        "E1/late-under-flat-rate",
                        "E2/late-under-flat-rate",
                        "E3/late-under-flat-rate");
        assertThat(wrong("2026-06")).isEmpty();
        book.decide("entry", "2", "set-aside", "");
        assertThat(book.of("2026-06").openQueries().stream().map(Query::id))
                .contains("E1/late-under-flat-rate", "E3/late-under-flat-rate")
                .doesNotContain("E2/late-under-flat-rate");
    }

    private static SampleLine bill(String document, String supplier) {
        return SampleLine.of("expense")
                .on("2026-02-01")
                .party(supplier, "IE", "")
                .document(document)
                .net("0.13")
                .evidence("invoice");
    }

    /**
     * VAT on a document is rounded once for the whole: 0.26 at 20 per cent is 0.05, so that the
     * second line of a bill has 0.02, also when it is looked at again. A decision that changes
     * nothing is no error of the closed return.
     */
    @Test
    void aLineOfADocumentIsStillAPartOfIt() {
        book.enter(
                "a.csv",
                bill("A-1", "Example platform"),
                bill("A-1", "Example platform"),
                bill("A-2", "Example platform"),
                bill("A-1", "Another platform"),
                bill("", "Example platform"));
        book.close("2026-03");
        for (int entry = 1; entry <= 5; entry++) {
            book.decide("entry", Integer.toString(entry), "state", "party_country=IE");
        }
        assertThat(wrong("2026-06")).isEmpty();
        assertThat(box("2026-06", "1")).isEqualTo("0.00");
    }

    /** A line that counts in another period takes no part in the rounding of this one. */
    @Test
    void aLineOfAnotherPeriodIsNoPartOfIt() {
        book.enter(
                "a.csv",
                bill("A-1", "Example platform").particular(Particular.HELD, "2026-04-05"),
                bill("A-1", "Example platform"));
        book.close("2026-03");
        assertThat(book.ledger().closedEntry(2).get(0).vat().toString()).isEqualTo("0.03");
        book.decide("entry", "2", "state", "party_country=IE");
        assertThat(wrong("2026-06")).doesNotContain(2L);
    }
}

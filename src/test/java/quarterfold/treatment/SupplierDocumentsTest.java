package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import quarterfold.ledger.Entry;
import quarterfold.ledger.SampleLine;

/**
 * Which documents seem to be entered twice: VAT Regulations 1995 reg 29(4), never deducted twice.
 */
class SupplierDocumentsTest {

    private static SampleLine bill(String net, String vat) {
        return SampleLine.of("purchase")
                .party("Example supplier", "GB", "GB101747696")
                .rate("20")
                .category("stock")
                .document("S-1")
                .evidence("invoice")
                .printed(net, vat);
    }

    private static SampleLine paid() {
        return SampleLine.of("import-vat-paid")
                .vat("386.42")
                .document("26GB01")
                .evidence("import-certificate");
    }

    /** Files of the same bills: each is met once, also where one file has them in fewer rows. */
    @Test
    void documentsOfTwoFiles() {
        List<Entry> entries =
                List.of(
                        entry(1, 1, bill("100", "20").product("A")),
                        entry(2, 1, bill("50", "10").product("B")),
                        entry(3, 1, bill("100", "20").product("C")),
                        entry(4, 2, bill("100", "20").party("EXAMPLE  Supplier.", "", "")),
                        entry(5, 2, bill("50", "10")),
                        entry(6, 3, bill("250", "50")),
                        entry(7, 3, bill("300", "60").document("S-2")));
        SupplierDocuments documents =
                DoubleClaims.of(
                                entries::forEach,
                                Treating.LAW,
                                Answers.NONE,
                                e -> Optional.empty(),
                                ImportStatements.NONE)
                        .documents();
        assertThat(entries)
                .extracting(e -> documents.earlier(e).orElse(0))
                .containsExactly(0L, 0L, 0L, 1L, 2L, 1L, 0L);
        assertThat(documents.total(entries.get(0), Exchange.of(Treating.gb().context(entries))))
                .hasToString("300.00");
    }

    /** Rows of several files are met one for one, each by no more than one row of another file. */
    @Test
    void rowsAreMetOneForOne() {
        assertThat(
                        earlier(
                                entry(1, 1, bill("100", "20").product("A")),
                                entry(2, 2, bill("100", "20").product("A")),
                                entry(3, 2, bill("100", "20").product("B")),
                                entry(4, 3, bill("100", "20").product("A")),
                                entry(5, 3, bill("100", "20").product("B")),
                                entry(6, 3, bill("100", "20").product("C"))))
                .as("the second and third file have one row and two rows more than the first")
                .containsExactly(0L, 1L, 0L, 1L, 3L, 0L);
    }

    /** Two suppliers may each have a document number one, with a number of their own or none. */
    @Test
    void documentsOfSeveralSuppliers() {
        SampleLine bare = bill("100", "20").party("Example supplier", "GB", "");
        SampleLine other = bill("100", "20").party("Another", "GB", "");
        assertThat(earlier(entry(1, 1, bare), entry(2, 2, other), entry(3, 3, other)))
                .containsExactly(0L, 0L, 2L);
        SampleLine renamed = bill("100", "20").party("Example plc", "GB", "GB101747696");
        assertThat(earlier(entry(1, 1, bill("100", "20")), entry(2, 2, renamed)))
                .as("the same number under another name")
                .containsExactly(0L, 1L);
        SampleLine entered = paid().party("A carrier", "GB", "");
        assertThat(earlier(entry(1, 1, entered), entry(2, 2, paid().party("Another", "GB", ""))))
                .as("an import is known by its entry, whoever sent the list")
                .containsExactly(0L, 1L);
    }

    private static List<Long> earlier(Entry... entries) {
        List<Entry> all = List.of(entries);
        SupplierDocuments documents =
                DoubleClaims.of(
                                all::forEach,
                                Treating.LAW,
                                Answers.NONE,
                                e -> Optional.empty(),
                                ImportStatements.NONE)
                        .documents();
        return all.stream().map(e -> documents.earlier(e).orElse(0)).toList();
    }

    private static Entry entry(long number, long source, SampleLine line) {
        return new Entry(number, source, line.line(number + 1));
    }
}

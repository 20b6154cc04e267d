package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whom an import certificate names, against the book's own number. */
class ImporterTest {

    /**
     * T-902, derived from the shape in the tax authority's own EORI checker (open source): GB and
     * 12 or 15 digits, of which the first nine are the VAT number.
     */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "GB101747696000, OURS",
        "GB101747696001, OURS_OTHER_TAIL",
        "XI101747696000, OURS",
        "GB 101 747 696 000, OURS",
        "gb101747696000, OURS",
        "101747696, OURS",
        "GB101747696, OURS",
        "GB101747696000123, OURS",
        "GB101747641000, ANOTHER",
        "GB025115110987654, ANOTHER",
        "GB10174769600, UNREADABLE",
        "GB1017476960001, UNREADABLE",
        "FR101747696000, UNREADABLE",
        "GB10174769600A, UNREADABLE"
    })
    void importer(String stated, Importer.Match match) {
        assertThat(Importer.match(stated, "GB101747696")).isEqualTo(match);
        assertThat(match.isOurs()).isEqualTo(match.name().startsWith("OURS"));
        assertThat(match.words()).isNotBlank();
    }

    @ParameterizedTest
    @CsvSource({"''", "GB123"})
    void aBookWithoutANumberOwnsNoImport(String vatNumber) {
        assertThat(Importer.match("GB101747696000", vatNumber)).isEqualTo(Importer.Match.ANOTHER);
    }
}

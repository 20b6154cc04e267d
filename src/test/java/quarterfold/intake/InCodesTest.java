package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Line;

/** Countries and rates that reports state in words. */
class InCodesTest {
    @TempDir private Path folder;
    private final List<Line> lines = new ArrayList<>();

    private Learned learn(String text, Map<String, String> answers) throws IOException {
        Path file = Files.writeString(folder.resolve("report.csv"), text);
        lines.clear();
        return new Learner(Desk.settings()).learn(file, "report", answers, lines::add);
    }

    private Learned learn(String text) throws IOException {
        return learn(text, Map.of());
    }

    /**
     * ISO 3166-1 alpha-2 and alpha-3; XI and EL as VAT numbers have them (Directive 2006/112 art.
     * 215).
     */
    @ParameterizedTest
    @CsvSource({
        "GB,GB",
        "gb,GB",
        "UK,GB",
        "GBR,GB",
        "United Kingdom,GB",
        "Scotland,GB",
        "Vereinigtes Königreich,GB",
        "Northern Ireland,XI",
        "XI,XI",
        "EL,GR",
        "GRC,GR",
        "Allemagne,DE",
        "DEU,DE",
        "Niemcy,DE",
        "Jersey,JE",
        "Côte d'Ivoire,CI",
        "Türkiye,TR",
        "Österreich,AT",
        "Atlantis,Atlantis",
        "ZZ,ZZ"
    })
    void countries(String text, String code) {
        assertThat(InCodes.of(Field.TO, text)).isEqualTo(code);
    }

    /** VATA 1994 s2(1) (standard), s29A (reduced), s30 (zero), s31 (exempt). */
    @ParameterizedTest
    @CsvSource({
        "20%,20%",
        "Standard,20",
        "VAT standard rate,20",
        "Standard (20%),20",
        "20.0% VAT,20",
        "Reduced (20%),Reduced (20%)",
        "Reduced,5",
        "'5,0 %',5",
        "ermäßigt,5",
        "Zero-rated,0",
        "Taux zéro,0",
        "Exempt,exempt",
        "zwolniona,exempt",
        "Out of scope,outside",
        "Mixed,Mixed",
        "None,None"
    })
    void rates(String text, String code) {
        assertThat(InCodes.of(Field.RATE, text)).isEqualTo(code);
    }

    @Test
    void countriesAndRatesInWordsAreEntered() throws IOException {
        Learned learned =
                learn(
                        """
                        Date,Type,Amount,Ship country,VAT rate
                        2026-07-13,Sale,12.00,United Kingdom,Standard
                        2026-07-14,Sale,12.00,Germany,Zero
                        2026-07-15,Sale,12.00,FRA,Reduced
                        """);

        assertThat(learned.isProved()).isTrue();
        assertThat(lines.stream().map(l -> l.profile().to() + " " + l.profile().rate().code()))
                .containsExactly("GB 20", "DE 0", "FR 5");
    }

    @Test
    void whatIsNoCountryIsAsked() throws IOException {
        String text =
                "Date,Type,Amount,Ship country\n2026-07-13,Sale,12.00,UK\n2026-07-14,Sale,12.00,Atlantis\n";

        assertThat(learn(text).open())
                .containsExactly(
                        new Question(
                                "column/Ship country",
                                "'Ship country' says 'Atlantis'; expected a country code of ISO 3166, or XI for Northern Ireland, such as GB; correct it in the file, or is the column of no account?",
                                List.of("ignored"),
                                true));
        assertThat(learn(text, Map.of("column/Ship country", "ignored")).isProved()).isTrue();
        assertThat(lines.get(0).notes()).isEqualTo("Ship country: UK");
    }

    @Test
    void whatIsNoRateIsAsked() throws IOException {
        assertThat(
                        learn(
                                        "Date,Type,Amount,VAT rate\n2026-07-13,Sale,12.00,Standard\n2026-07-14,Sale,12.00,Mixed\n")
                                .open())
                .containsExactly(
                        new Question(
                                "column/VAT rate",
                                "'VAT rate' says 'Mixed'; expected a percentage, exempt, outside, margin or reverse-charge, such as 20; correct it in the file, or is the column of no account?",
                                List.of("ignored"),
                                true));
    }

    /** A later month's word for a country is no less understood. */
    @Test
    void importReadsThemToo() throws Exception {
        Learned learned =
                learn(
                        "Date,Type,Amount,Ship country\n2026-07-13,Sale,12.00,GB\n2026-07-14,Sale,12.00,DE\n");
        try (Desk desk = new Desk(folder.resolve("desk"))) {
            desk.layout("report", learned.yaml().orElseThrow());
            Path file =
                    desk.file(
                            "august.csv",
                            "Date,Type,Amount,Ship country\n2026-08-13,Sale,12.00,United Kingdom\n2026-08-14,Sale,12.00,Atlantis\n");

            assertThat(desk.enter(file).problems())
                    .extracting(Problem::toString)
                    .containsExactly(
                            "august.csv:3 [Ship country]: found 'Atlantis'; expected a country code of ISO 3166, or XI for Northern Ireland, such as GB");
        }
    }
}

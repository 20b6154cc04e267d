package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The law is shown without a book, and docs/law-uk.md is what the command shows. */
class LawCommandTest {

    @Test
    void thePageIsWhatTheTablesSayNow() throws IOException {
        Run whole = Run.of("law");
        assertThat(whole.code()).isZero();
        assertThat(whole.err()).isEmpty();
        assertThat(Files.readString(Path.of("docs/law-uk.md")).replace("\r\n", "\n"))
                .as(
                        "docs/law-uk.md is not what the tables say now. Make it again:"
                                + " mvn -q package -Dmaven.test.skip=true"
                                + " && java -jar target/quarterfold.jar law > docs/law-uk.md")
                .isEqualTo(whole.out());
    }

    @Test
    void thePageBeginsWithTheCaution() throws IOException {
        String caution = Files.readString(Path.of("templates/caution.txt")).strip();
        assertThat(Run.of("law").out())
                .startsWith(
                        "# The VAT law of the United Kingdom as the tables state it\n\n> "
                                + caution.replace("\n", "\n> ")
                                + "\n\n");
    }

    @Test
    void oneRule() throws IOException {
        assertThat(Run.of("law", "--rule", "M01"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                ### M01: Compensation

                                Compensation for goods lost or damaged: no supply, so no VAT and no box.

                                - **When:** compensation
                                - **VAT:** none; the value leaves out any tax the document prints
                                - **Boxes:** none
                                - **Reclaimed:** no
                                - **In force:** from 1 April 1973; row %d of the table
                                - **Source:** HMRC manual VATSC61800; box 6 leaves out insurance claims.

                                † from memory, ‡ from a secondary source: in whole, or in the part its source names.
                                """
                                        .formatted(row("M01")),
                                ""));
    }

    /** The row of a rule as a spreadsheet counts it, found in the file: tables grow. */
    private static int row(String rule) throws IOException {
        List<String> lines = Files.readAllLines(Path.of("templates/law/gb/treatments.csv"));
        return 1
                + IntStream.range(0, lines.size())
                        .filter(i -> lines.get(i).startsWith(rule + ","))
                        .findFirst()
                        .orElseThrow();
    }

    @Test
    void asJson() throws IOException {
        Run rates = Run.of("law", "--table", "rates.csv", "--day", "2011-01-03", "--json");
        assertThat(rates.out())
                .isEqualTo(
                        """
                        {"table":"rates.csv","row":7,"cells":{"category":"standard","percent":"17.5","from":"2010-01-01","to":"2011-01-03",\
                        "source":"Finance Act 2009 s.9(1), section from memory; rate and dates from published rate tables (secondary source)"},\
                        "unchecked":["from memory","secondary source"]}
                        {"table":"rates.csv","row":10,"cells":{"category":"reduced","percent":"5","from":"1997-09-01","to":"",\
                        "source":"VATA 1994 s.29A and Sch 7A, since extended to other goods; section from memory, rate and date from published rate tables (secondary source)"},\
                        "unchecked":["from memory","secondary source"]}
                        {"table":"rates.csv","row":13,"cells":{"category":"zero","percent":"0","from":"1973-04-01","to":"",\
                        "source":"VATA 1994 s.30 and Sch 8, and the Finance Act 1972 before it (from memory)"},\
                        "unchecked":["from memory"]}
                        """);
        assertThat(Run.of("law", "--rule", "M01", "--json").out())
                .startsWith("{\"table\":\"treatments.csv\",\"row\":%d,".formatted(row("M01")))
                .endsWith("\"unchecked\":[]}\n");
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            textBlock =
                    """
        --rule S17 => --rule: found 'S17'; expected a rule of treatments.csv, such as S17a
        --rule S18 --day 2021-01-01 => --rule: S18 is not in force on 2021-01-01, which --day asks for; leave --day out to see it
        --day 2026-02-30 => --day: found '2026-02-30'; expected a day such as 2026-09-30
        --day today --table rates => --day: found 'today'; expected a day such as 2026-09-30
        """)
    void wrongUsage(String options, String message) {
        Object[] args = ("law " + options).split(" ");
        assertThat(Run.of(args)).isEqualTo(new Run(2, "", message + "\n"));
    }

    @Test
    void aTableThereIsNot() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("templates/law/gb"))) {
            String tables =
                    files.map(f -> f.getFileName().toString())
                            .filter(n -> !n.equals("words.csv"))
                            .map(n -> n.replace(".csv", ""))
                            .sorted()
                            .collect(Collectors.joining(", "));
            assertThat(Run.of("law", "--table", "speed"))
                    .isEqualTo(
                            new Run(
                                    2,
                                    "",
                                    "--table: found 'speed'; expected one of %s, such as rates\n"
                                            .formatted(tables)));
        }
    }
}

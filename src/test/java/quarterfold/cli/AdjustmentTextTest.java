package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the terminal says of figures that no entry makes. */
class AdjustmentTextTest {

    @TempDir private Path folder;

    /** Sets a setting of a new book, one that is stated or one that waits in a comment. */
    private static void set(Path book, String key, String value) throws IOException {
        Path settings = book.resolve("book.yaml");
        String yaml = Files.readString(settings);
        String changed = yaml.replaceFirst("(?m)^(# )?" + key + ": .*$", key + ": " + value);
        assertThat(changed).isNotEqualTo(yaml);
        Files.writeString(settings, changed);
    }

    private Path flatRate() throws IOException {
        Path book = SmallBook.empty(folder);
        set(book, "scheme", "flat-rate");
        set(book, "flat_rate_sector", "\"044\"");
        SmallBook.enter(book, SmallBook.file(folder, "quarter.csv", SmallBook.QUARTER));
        return book;
    }

    @Test
    void theReturnShowsTheWorkingUnderTheBoxes() throws IOException {
        assertThat(Run.of("--book", flatRate(), "return", "2026-09").out())
                .contains(
                        """

                        flat-rate, 2026-07-01 to 2026-09-30; box 1: 17.82; box 6: 108.00
                          VAT due under the flat-rate scheme: the percentage of the trade sector on
                          the turnover with VAT. Turnover with VAT 108.00 at 16.5% is 17.82. 16.5% for
                          limited-cost traders. Relevant goods with VAT 84.00 are under 250.00, the
                          part of 1000.00 a year for 3 months, and not under 2.16, 2% of the turnover:
                          a limited-cost trader.

                        Pay 23.82 by 7 November 2026.
                        """);
    }

    @Test
    void vouchNamesWhatIsNoEntry() throws IOException {
        assertThat(Run.of("--book", flatRate(), "vouch", "2026-09", "--box", "1").out())
                .contains(
                        "17.82 from flat-rate, 2026-07-01 to 2026-09-30\n      VAT due under the flat-rate scheme")
                .contains("R16a  6.00 from 1 entry");
    }

    @Test
    void anEntrysStoryNamesTheTotal() throws IOException {
        assertThat(Run.of("--book", flatRate(), "vouch", "1").out())
                .contains("  Turnover with VAT      120.00\n");
    }

    /** 6-C: last year 8,000.00, nine of a tenth or three of a quarter; HMRC manual VATAAS5100. */
    @ParameterizedTest
    @CsvSource({
        "monthly, '9 payments are due within the period, together 7,200.00; 1,900.00 is left to pay.'",
        "quarterly, '3 payments are due within the period, together 6,000.00; 3,100.00 is left to pay.'"
    })
    void theBalanceOfAYear(String instalments, String says) throws IOException {
        Path book = SmallBook.empty(folder);
        set(
                book,
                "annual_accounting",
                "{from: 2025-10-01, instalments: %s, last_year_vat: 8000.00}"
                        .formatted(instalments));
        SmallBook.enter(
                book,
                SmallBook.file(
                        folder, "year.csv", "date,kind,gross,rate\n2026-01-05,sale,54600.00,20\n"));
        assertThat(Run.of("--book", book, "return", "2026-09").out())
                .contains("Pay 9,100.00 by 30 November 2026.\n" + says + "\n");
    }
}

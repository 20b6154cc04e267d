package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.ledger.LedgerException.Fault;

class SettingsFileTest {
    private static final String GOOD =
            """
            name: Fernmoor Crafts
            country: GB
            vat_number: GB101747696
            registered_from: 2024-01-01
            period_ends: [3, 6, 9, 12]
            scheme: standard
            zone: Europe/London
            currency: GBP
            rounding: per-box
            northern_ireland: no
            stock: GB
            choices: {}
            """;

    @Test
    void plainYamlIsRead() {
        assertThat(SettingsFile.read("book.yaml", GOOD)).isEqualTo(Samples.SETTINGS);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Fernmoor",
                "no",
                "12",
                "${country}",
                "a: b # c",
                "\"quoted\" 'and' \\back\\",
                "Østgård & Søn – 手作り 🫖",
                "*ref &anchor !!tag %x @y `z`",
                " - {x}: [y]",
                "two\nlines\tand\u0000nul\u0085\u2028\ufeff",
                "$1 \\$"
            })
    void anyTextComesBackAsItWas(String text) {
        Settings settings =
                new Settings(
                        text,
                        "NO",
                        text,
                        LocalDate.of(1999, 2, 28),
                        List.of(Month.JANUARY, Month.DECEMBER),
                        "standard",
                        ZoneId.of("Asia/Tokyo"),
                        "NOK",
                        true,
                        true,
                        "XI",
                        Map.of(text, text, "b", "no"));

        assertThat(SettingsFile.read("book.yaml", SettingsFile.write(settings)))
                .isEqualTo(settings);
    }

    /** The file explains itself: a comment stands above each setting. */
    @Test
    void theTemplatesCommentsStay() {
        String text = SettingsFile.write(Samples.SETTINGS);

        assertThat(text)
                .startsWith("# The settings of this book.")
                .contains("year-month-day.\nregistered_from: 2024-01-01\n")
                .contains("period_ends: [3, 6, 9, 12]\n")
                .endsWith("choices: {}\n")
                .doesNotContain("${");
        assertThat(text.lines().filter(l -> !l.isBlank() && !l.startsWith("#"))).hasSize(13);
        assertThat(text.split("\n\n")).hasSize(21).allMatch(part -> part.startsWith("# "));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    country: GB                 | country: Gb                 | book.yaml:2 [country]: found 'Gb'; expected two capital letters, ISO 3166, such as GB
                    country: GB                 | country: UK                 | book.yaml:2 [country]: found 'UK'; expected two capital letters, ISO 3166, such as GB
                    country: GB                 | country: [GB,  FR]          | book.yaml:2 [country]: found '[GB, FR]'; expected two capital letters, ISO 3166, such as GB
                    country: GB                 | country: &a GB              | OK
                    vat_number: GB101747696     | vat_number: {a: b}          | book.yaml:3 [vat_number]: found '{a: b}'; expected the VAT number as written, such as GB101747696
                    registered_from: 2024-01-01 | registered_from: 1.1.2024   | book.yaml:4 [registered_from]: found '1.1.2024'; expected year-month-day, such as 2024-01-01
                    registered_from: 2024-01-01 | registered_from:            | book.yaml:4 [registered_from]: found ''; expected year-month-day, such as 2024-01-01
                    period_ends: [3, 6, 9, 12]  | period_ends: 3;6;9          | book.yaml:5 [period_ends]: found '3;6;9'; expected months from 1 to 12, rising, such as [3, 6, 9, 12]
                    period_ends: [3, 6, 9, 12]  | period_ends: [3, 13]        | book.yaml:5 [period_ends]: found '[3, 13]'; expected months from 1 to 12, rising, such as [3, 6, 9, 12]
                    period_ends: [3, 6, 9, 12]  | period_ends: [6, 3]         | book.yaml:5 [period_ends]: found '[6, 3]'; expected months from 1 to 12, rising, such as [3, 6, 9, 12]
                    period_ends: [3, 6, 9, 12]  | period_ends: []             | book.yaml:5 [period_ends]: found '[]'; expected months from 1 to 12, rising, such as [3, 6, 9, 12]
                    scheme: standard            | scheme: flat                | book.yaml:6 [scheme]: found 'flat'; expected standard, cash or flat-rate, or first days with one of them each, such as {2024-01-01: standard, 2026-07-01: cash}
                    zone: Europe/London         | zone: London                | book.yaml:7 [zone]: found 'London'; expected a time zone, such as Europe/London
                    currency: GBP               | currency: STG               | book.yaml:8 [currency]: found 'STG'; expected three capital letters, ISO 4217, such as GBP
                    rounding: per-box           | rounding: down              | book.yaml:9 [rounding]: found 'down'; expected per-line or per-box
                    northern_ireland: no        | northern_ireland: No        | book.yaml:10 [northern_ireland]: found 'No'; expected yes or no
                    stock: GB                   | stock: GB-NIR               | book.yaml:11 [stock]: found 'GB-NIR'; expected two capital letters, ISO 3166, or XI for Northern Ireland, such as GB
                    stock: GB                   | shelf: GB                   | book.yaml:11 [shelf]: found a setting this program does not know; expected one of name, country, vat_number, registered_from, registered_to, period_ends, periods, annual_accounting, payments_on_account, partial_exemption_year_ends, partial_exemption_last_year, scheme, flat_rate_sector, zone, currency, rounding, northern_ireland, stock, pays_by, choices¶book.yaml [stock]: found nothing; expected two capital letters, ISO 3166, or XI for Northern Ireland, such as GB
                    stock: GB                   | name: Other                 | book.yaml:11 [name]: found a second time; remove one of the two¶book.yaml [stock]: found nothing; expected two capital letters, ISO 3166, or XI for Northern Ireland, such as GB
                    choices: {}                 | choices: yes                | book.yaml:12 [choices]: found 'yes'; expected 'name: choice' lines, such as deemed-supply-in-box-6: yes, or {}
                    choices: {}                 | choices: {a: [1]}           | book.yaml:12 [choices]: found '[1]'; expected 'name: choice' lines, such as deemed-supply-in-box-6: yes, or {}
                    choices: {}                 | choices: {a: 1, a: 2}       | book.yaml:12 [choices]: found 'a' a second time; remove one of the two
                    name: Fernmoor Crafts       | name: Fernmoor: Crafts      | book.yaml:1: found text that is not YAML (mapping values are not allowed here); expected 'setting: value' lines, such as country: GB
                    name: Fernmoor Crafts       | name: !!java.io.File x      | OK
                    """)
    void problemsAreToldWithTheirLine(String line, String instead, String expected) {
        String text = GOOD.replace(line + "\n", instead + "\n");
        assertThat(text).isNotEqualTo(GOOD);

        if (expected.equals("OK")) {
            assertThat(SettingsFile.read("book.yaml", text).currency()).isEqualTo("GBP");
        } else {
            assertThatThrownBy(() -> SettingsFile.read("book.yaml", text))
                    .isInstanceOfSatisfying(
                            LedgerException.class,
                            e -> assertThat(e.fault()).isEqualTo(Fault.BAD_INPUT))
                    .hasMessage(expected.replace('¶', '\n'));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "# only a comment\n", "- a\n- list\n", "text"})
    void aFileWithoutSettingsIsRefused(String text) {
        assertThatThrownBy(() -> SettingsFile.read("book.yaml", text))
                .hasMessage(
                        "book.yaml: found no settings; expected 'setting: value' lines, such as"
                                + " country: GB");
    }

    @Test
    void everyMissingSettingIsTold() {
        assertThatThrownBy(() -> SettingsFile.read("book.yaml", "name: x"))
                .hasMessage(
                        """
                        book.yaml [country]: found nothing; expected two capital letters, ISO 3166, such as GB
                        book.yaml [vat_number]: found nothing; expected the VAT number as written, such as GB101747696
                        book.yaml [registered_from]: found nothing; expected year-month-day, such as 2024-01-01
                        book.yaml [period_ends]: found nothing; expected months from 1 to 12, rising, such as [3, 6, 9, 12]
                        book.yaml [scheme]: found nothing; expected standard, cash or flat-rate, or first days with one of them each, such as {2024-01-01: standard, 2026-07-01: cash}
                        book.yaml [zone]: found nothing; expected a time zone, such as Europe/London
                        book.yaml [currency]: found nothing; expected three capital letters, ISO 4217, such as GBP
                        book.yaml [rounding]: found nothing; expected per-line or per-box
                        book.yaml [northern_ireland]: found nothing; expected yes or no
                        book.yaml [stock]: found nothing; expected two capital letters, ISO 3166, or XI for Northern Ireland, such as GB
                        book.yaml [choices]: found nothing; expected 'name: choice' lines, such as deemed-supply-in-box-6: yes, or {}""");
    }
}

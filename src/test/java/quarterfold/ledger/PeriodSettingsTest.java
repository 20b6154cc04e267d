package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.AnnualAccounting.Instalments;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/** Settings that a book may leave out: schemes, notified periods, how VAT is paid. */
class PeriodSettingsTest {

    private static final String GOOD =
            """
            name: Fernmoor Crafts
            country: GB
            vat_number: GB101747696
            registered_from: 2024-01-01
            period_ends: [3, 6, 9, 12]
            zone: Europe/London
            currency: GBP
            rounding: per-box
            northern_ireland: no
            stock: GB
            choices: {}
            """;

    private static Settings read(String more) {
        return SettingsFile.read("book.yaml", GOOD + more);
    }

    @Test
    void whatIsNotStatedHasItsDefault() {
        Settings plain = read("scheme: standard");
        assertThat(plain.schemeOn(LocalDate.of(1990, 1, 1))).isEqualTo("standard");
        assertThat(plain.schemes().changes()).isEmpty();
        assertThat(plain.flatRateSector()).isEmpty();
        assertThat(plain.registeredTo()).isEmpty();
        assertThat(plain.paysBy()).isEqualTo(PaymentMethod.FASTER_PAYMENT);
        assertThat(plain.periods())
                .isEqualTo(Periods.of(plain.registeredFrom(), plain.periodEnds()));
    }

    @Test
    void schemeOnBothSidesOfAChange() {
        Settings settings = read("scheme: {2026-07-01: cash, 2024-01-01: standard}");
        assertThat(settings.schemeOn(LocalDate.of(2023, 12, 31))).isEqualTo("standard");
        assertThat(settings.schemeOn(LocalDate.of(2026, 6, 30))).isEqualTo("standard");
        assertThat(settings.schemeOn(LocalDate.of(2026, 7, 1))).isEqualTo("cash");
        assertThat(settings.schemes().changes()).containsExactly(LocalDate.of(2026, 7, 1));
    }

    @Test
    void everySettingComesBackAsItWas() {
        TreeMap<LocalDate, String> schemes = new TreeMap<>();
        schemes.put(LocalDate.of(2025, 12, 10), "flat-rate");
        schemes.put(LocalDate.of(2026, 7, 1), "standard");
        Settings settings =
                SampleSettings.paying(
                        new Periods(
                                LocalDate.of(2025, 12, 10),
                                Optional.of(LocalDate.of(2027, 5, 20)),
                                List.of(Month.MARCH, Month.SEPTEMBER),
                                List.of(
                                        new NotifiedPeriod(
                                                LocalDate.of(2025, 12, 10),
                                                LocalDate.of(2026, 3, 28),
                                                Optional.of(LocalDate.of(2026, 5, 4))),
                                        new NotifiedPeriod(
                                                LocalDate.of(2026, 3, 29),
                                                LocalDate.of(2026, 6, 30),
                                                Optional.empty())),
                                Optional.of(
                                        new AnnualAccounting(
                                                LocalDate.of(2026, 7, 1),
                                                Instalments.QUARTERLY,
                                                Amount.of("8000.50"))),
                                Optional.of(
                                        new PaymentsOnAccount(
                                                LocalDate.of(2026, 7, 1), Amount.of("2400000"))),
                                Optional.of(Month.JULY),
                                Optional.of(Percent.of("43.5"))),
                        PaymentMethod.DIRECT_DEBIT);
        Settings scheming =
                SampleSettings.on(settings.periods(), new Schemes(schemes, Optional.of("044")));
        for (Settings each : List.of(settings, scheming, SampleSettings.scheme("cash", ""))) {
            assertThat(SettingsFile.read("x", SettingsFile.write(each))).isEqualTo(each);
        }
    }

    /** The examples that stand in a new book as comments are settings themselves. */
    @Test
    void examplesOfTheTemplateAreSettings() {
        String text = SettingsFile.write(Samples.SETTINGS);
        List<String> examples =
                text.lines()
                        .filter(l -> l.matches("# [a-z_]+: .*"))
                        .map(l -> l.substring(2))
                        .toList();
        assertThat(examples)
                .containsExactly(
                        "registered_to: 2026-09-30",
                        "periods: [{from: 2026-02-15, to: 2026-06-30, due: 2026-08-07}]",
                        "annual_accounting: {from: 2026-04-01, instalments: monthly, last_year_vat: 8000.00}",
                        "payments_on_account: {from: 2026-06-01, yearly_vat: 2400000.00}",
                        "partial_exemption_year_ends: 3",
                        "partial_exemption_last_year: 43",
                        "flat_rate_sector: \"044\"");
        Settings settings = read("scheme: standard\n" + String.join("\n", examples));
        assertThat(settings.registeredTo()).contains(LocalDate.of(2026, 9, 30));
        assertThat(settings.periods().notified()).hasSize(1);
        assertThat(settings.periods().annual().orElseThrow().instalments())
                .isEqualTo(Instalments.MONTHLY);
        assertThat(settings.periods().onAccount().orElseThrow().yearlyVat())
                .hasToString("2400000.00");
        assertThat(settings.periods().partialExemptionYearEnds()).contains(Month.MARCH);
        assertThat(settings.periods().partialExemptionLastYear()).contains(Percent.of("43"));
        assertThat(settings.flatRateSector()).contains("044");
    }

    /** VAT Regulations 1995 reg 67 and VAT Notice 727: for those who cannot account normally. */
    @ParameterizedTest
    @CsvSource({
        "point-of-sale",
        "apportionment-1",
        "apportionment-2",
        "direct-calculation-1",
        "direct-calculation-2"
    })
    void retailSchemesAreRefusedWithTheReason(String scheme) {
        assertThatThrownBy(() -> read("scheme: " + scheme))
                .hasMessage(
                        "book.yaml:12 [scheme]: found '%s', a retail scheme; a retail scheme is for a retailer who cannot account for each sale (VAT Regulations 1995 reg 67; VAT Notice 727), and channels that report each order with its rate let a seller do so; expected standard, cash or flat-rate"
                                .formatted(scheme));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    scheme: {2024-01-01: flat}                             | [scheme]: found 'flat'; expected standard, cash or flat-rate, or first days with one of them each, such as {2024-01-01: standard, 2026-07-01: cash}
                    scheme: {2024-02-30: cash}                             | [scheme]: found '2024-02-30'; expected year-month-day, such as 2024-01-01
                    scheme: {}                                             | [scheme]: found '{}'; expected standard, cash or flat-rate, or first days with one of them each, such as {2024-01-01: standard, 2026-07-01: cash}
                    scheme: {2024-01-01: cash, 2024-01-01: standard}       | [scheme]: found 2024-01-01 a second time; remove one of the two
                    scheme: {2024-01-02: cash}                             | [scheme]: found no scheme before 2024-01-02; expected one from the registration on 2024-01-01 or earlier
                    scheme: {2024-01-01: cash, 2025-01-01: flat-rate}      | [flat_rate_sector]: found nothing; expected the trade sector of the flat rate by its id in flat-rates.csv, such as "044"
                    flat_rate_sector: shops                                | [flat_rate_sector]: found 'shops'; expected a sector's id of three digits in flat-rates.csv, such as "044"
                    pays_by: cheque                                        | [pays_by]: found 'cheque'; expected faster-payment, direct-debit, card, chaps, bacs
                    registered_to: 2023-12-31                              | [registered_to]: found 2023-12-31, before the registration; expected 2024-01-01 or later
                    registered_to: soon                                    | [registered_to]: found 'soon'; expected year-month-day, such as 2024-01-01
                    partial_exemption_year_ends: 13                        | [partial_exemption_year_ends]: found '13'; expected a month from 1 to 12, such as 3
                    partial_exemption_last_year: 100.01                    | [partial_exemption_last_year]: found '100.01'; expected a percentage from 0 to 100, such as 43
                    annual_accounting: yes                                 | [annual_accounting]: found 'yes'; expected from, instalments, last_year_vat, such as {from: 2026-04-01, instalments: monthly, last_year_vat: 8000.00}
                    annual_accounting: {from: 2023-12-31, instalments: monthly, last_year_vat: 1} | [annual_accounting]: found 2023-12-31, before the registration; expected 2024-01-01 or later
                    annual_accounting: {from: 2024-04-01, instalments: weekly, last_year_vat: 1}  | [annual_accounting.instalments]: found 'weekly'; expected monthly or quarterly
                    annual_accounting: {from: 2024-04-01, instalments: monthly, last_year_vat: 0} | [annual_accounting.last_year_vat]: found '0'; expected an amount above nothing, such as 8000.00
                    annual_accounting: {from: 2024-04-01, instalments: monthly, last_year_vat: 1, by: me} | [annual_accounting.by]: found a setting this program does not know; expected one of from, instalments, last_year_vat
                    payments_on_account: {from: 2024-04-01}                | [payments_on_account.yearly_vat]: found nothing; expected an amount above nothing, such as 8000.00
                    payments_on_account: {from: 2023-12-31, yearly_vat: 1} | [payments_on_account]: found 2023-12-31, before the registration; expected 2024-01-01 or later
                    periods: 2026-03                                       | [periods]: found '2026-03'; expected the periods the tax authority notified, such as [{from: 2026-02-15, to: 2026-06-30, due: 2026-08-07}]
                    periods: [2026-03]                                     | [periods]: found '2026-03'; expected the periods the tax authority notified, such as [{from: 2026-02-15, to: 2026-06-30, due: 2026-08-07}]
                    periods: [{to: 2026-03-31}]                            | [periods.from]: found nothing; expected year-month-day, such as 2024-01-01
                    periods: [{from: 2023-12-31, to: 2024-03-31}]          | [periods]: found 2023-12-31, before the registration; expected 2024-01-01 or later
                    periods: [{from: 2024-04-30, to: 2024-03-31}]          | [periods.to]: found 2024-03-31, before its from; expected a later day
                    periods: [{from: 2024-01-01, to: 2024-03-28}]          | [periods.due]: found nothing for a period that ends within a month; expected the due day the tax authority notified, since no rule gives it
                    periods: [{from: 2024-01-01, to: 2024-03-31, due: 2024-03-31}] | [periods.due]: found 2024-03-31, not after the period; expected the day the return is due
                    periods: [{from: 2024-01-01, to: 2024-03-31}, {from: 2024-03-31, to: 2024-06-30}] | [periods.from]: found 2024-03-31, not after the period before it; expected periods in order, none over another
                    periods: [{from: 2024-01-01, to: 2024-03-02, due: 2024-05-07}, {from: 2024-03-03, to: 2024-03-31}] | [periods.to]: found a second period that ends in 2024-03; expected one, since a period is named by the month of its last day
                    """)
    void problemsOfEachSetting(String line, String expected) {
        String scheme = line.startsWith("scheme") ? "" : "scheme: standard\n";
        assertThatThrownBy(() -> read(scheme + line))
                .satisfies(
                        e ->
                                assertThat(
                                                String.valueOf(e.getMessage())
                                                        .replaceFirst("^book.yaml(:1[0-9])? ", ""))
                                        .isEqualTo(expected));
    }

    @Test
    void aPeriodAfterTheRegistration() {
        assertThatThrownBy(
                        () ->
                                read(
                                        """
                                        scheme: standard
                                        registered_to: 2026-05-20
                                        periods:
                                          - from: 2026-04-01
                                            to: 2026-05-21
                                            due: 2026-06-30
                                        """))
                .hasMessage(
                        "book.yaml:15 [periods]: found 2026-05-21, after the registration; expected 2026-05-20 or earlier");
    }
}

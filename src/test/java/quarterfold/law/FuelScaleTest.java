package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.money.Amount;

/** The fuel scale charges of the tax authority's tables, one for each year from 1 May. */
class FuelScaleTest {

    private final Law law = Law.of("GB");

    /** Published copies of GOV.UK, VAT road fuel scale charges; a figure not seen is empty. */
    @ParameterizedTest(name = "{0} g/km, period from {1}: {2}, {3}, {4}")
    @CsvSource(
            textBlock =
                    """
        118, 2022-05-01, 700,  174, 58
        200, 2023-04-30, 2102, 525, 174
        200, 2023-05-01, 2212, 552, 183
        225, 2024-04-30, 2578, 644, 214
        225, 2024-05-01, 2454, 613, 203
        140, 2025-04-30, 1263, 315, 105
        140, 2025-05-01, 1191, 297, 99
        160, 2026-04-30, 1456, 363, 120
        118, 2026-05-01, 657,  163, 54
        160, 2026-05-01, 1445, 361, 119
        165, 2026-05-01, 1508, ,
        225, 2027-04-30, 2297, ,
        """)
    void charge(
            int co2,
            LocalDate periodStart,
            String year,
            @Nullable String quarter,
            @Nullable String month) {
        FuelScale scale = law.fuelScale(co2, periodStart).orElseThrow().value();
        assertThat(scale.forMonths(12)).contains(Amount.of(year));
        assertThat(scale.forMonths(3)).isEqualTo(Optional.ofNullable(quarter).map(Amount::of));
        assertThat(scale.forMonths(1)).isEqualTo(Optional.ofNullable(month).map(Amount::of));
        assertThat(scale.forMonths(6)).isEmpty();
    }

    /** GOV.UK, of each year: a figure that is no multiple of five is rounded down to one. */
    @ParameterizedTest(name = "{0} g/km is in the band from {1}")
    @CsvSource(
            textBlock =
                    """
        0,   0
        119, 0
        120, 0
        124, 0
        125, 125
        129, 125
        130, 130
        224, 220
        225, 225
        400, 225
        """)
    void band(int co2, int from) {
        assertThat(law.fuelScale(co2, LocalDate.of(2026, 8, 1)).orElseThrow().value().co2From())
                .isEqualTo(from);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2022-04-30", "2027-05-01"})
    void aYearWithoutATable(LocalDate periodStart) {
        assertThat(law.fuelScale(140, periodStart)).isEmpty();
    }

    @Test
    void noBandBelowTheLowest() {
        assertThat(law.fuelScale(-1, LocalDate.of(2026, 8, 1))).isEmpty();
    }

    /** 22 bands a year: 120 or less, then every five grams to 225 or more; no charge falls. */
    @ParameterizedTest
    @ValueSource(strings = {"2022-05-01", "2023-05-01", "2024-05-01", "2025-05-01", "2026-05-01"})
    void everyBandOfAYear(LocalDate day) {
        List<FuelScale> bands =
                IntStream.rangeClosed(0, 45)
                        .map(i -> i * 5)
                        .mapToObj(co2 -> law.fuelScale(co2, day).orElseThrow().value())
                        .distinct()
                        .toList();
        assertThat(bands).hasSize(22);
        for (int months : new int[] {12, 3, 1}) {
            assertThat(bands.stream().flatMap(b -> b.forMonths(months).stream()).toList())
                    .isSorted()
                    .isNotEmpty();
        }
    }
}

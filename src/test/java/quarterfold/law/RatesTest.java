package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.money.Percent;

/** Both sides of every change of a rate, each beside the text that fixes the day. */
class RatesTest {

    private final Rates rates = Law.of("GB").rates();

    @ParameterizedTest(name = "{0} on {1}: {2} [{3}]")
    @CsvSource(
            textBlock =
                    """
        standard,    1973-03-31, ,     Finance Act 1972 s.9: from 1 April 1973
        standard,    1973-04-01, 10,   Finance Act 1972 s.9
        standard,    1974-07-28, 10,   Finance Act 1972 s.9
        standard,    1974-07-29, 8,    SI 1974/1224
        standard,    1979-06-17, 8,    SI 1974/1224
        standard,    1979-06-18, 15,   Finance (No. 2) Act 1979 s.1
        standard,    1991-03-18, 15,   'the Budget of 19 March 1991 was not yet the change'
        standard,    1991-03-19, 15,   'the Budget of 19 March 1991 was not yet the change'
        standard,    1991-03-31, 15,   Finance (No. 2) Act 1979 s.1
        standard,    1991-04-01, 17.5, Finance Act 1991 s.13
        standard,    2008-11-30, 17.5, Finance Act 1991 s.13
        standard,    2008-12-01, 15,   SI 2008/3020 (from memory)
        standard,    2009-12-31, 15,   SI 2008/3020 (from memory)
        standard,    2010-01-01, 17.5, Finance Act 2009 s.9(1) (from memory)
        standard,    2011-01-03, 17.5, Finance Act 2009 s.9(1) (from memory)
        standard,    2011-01-04, 20,   Finance (No. 2) Act 2010 s.3 (from memory)
        standard,    2026-09-30, 20,   Finance (No. 2) Act 2010 s.3 (from memory)
        reduced,     1994-03-31, ,     VATA 1994 as first made: from 1 April 1994
        reduced,     1994-04-01, 8,    VATA 1994 as first made
        reduced,     1997-08-31, 8,    VATA 1994 as first made
        reduced,     1997-09-01, 5,    VATA 1994 s.29A and Sch 7A (from memory)
        reduced,     2026-09-30, 5,    VATA 1994 s.29A and Sch 7A (from memory)
        hospitality, 2020-07-08, ,     'announced on 8 July 2020, in force from 15 July'
        hospitality, 2020-07-14, ,     'announced on 8 July 2020, in force from 15 July'
        hospitality, 2020-07-15, 5,    temporary reduced rate for hospitality
        hospitality, 2021-09-30, 5,    temporary reduced rate for hospitality
        hospitality, 2021-10-01, 12.5, 'temporary reduced rate, second stage'
        hospitality, 2022-03-31, 12.5, 'temporary reduced rate, second stage'
        hospitality, 2022-04-01, ,     the standard rate applies again
        zero,        1973-03-31, ,     VATA 1994 s.30 and Sch 8: from the first day of the tax
        zero,        1973-04-01, 0,    VATA 1994 s.30 and Sch 8
        zero,        2026-09-30, 0,    VATA 1994 s.30 and Sch 8
        exempt,      2026-09-30, ,     'VATA 1994 s.31: exempt is not a rate'
        """)
    void rateInForce(String category, LocalDate day, @Nullable String percent, String source) {
        assertThat(rates.on(category, day).map(d -> d.value().toString()).orElse(null))
                .as(source)
                .isEqualTo(percent);
    }

    @ParameterizedTest(name = "{0}% on {1} is {2}, or once was {3}")
    @CsvSource(
            textBlock =
                    """
        20,   2026-08-01, standard,    standard
        20,   2011-01-04, standard,    standard
        20,   2011-01-03, ,
        17.5, 2011-01-03, standard,    standard
        17.5, 2011-01-04, ,            standard
        17.5, 1991-03-31, ,
        15,   2010-01-01, ,            standard
        5,    2020-07-14, reduced,     reduced
        5,    2020-07-15, reduced,     reduced
        5,    1997-08-31, ,
        12.5, 2021-09-30, ,
        12.5, 2021-10-01, hospitality, hospitality
        12.5, 2026-08-01, ,            hospitality
        8,    1996-01-01, reduced,     reduced
        8,    2026-08-01, ,            standard
        0,    2026-08-01, zero,        zero
        3,    2026-08-01, ,
        """)
    void categoryOfARate(
            String percent, LocalDate day, @Nullable String now, @Nullable String ever) {
        assertThat(rates.category(Percent.of(percent), day).orElse(null)).isEqualTo(now);
        assertThat(rates.categoryUpTo(Percent.of(percent), day).orElse(null)).isEqualTo(ever);
    }

    @Test
    void theRowInForceIsShownWithItsDaysAndSource() {
        assertThat(rates.on("hospitality", LocalDate.of(2021, 12, 25)))
                .contains(
                        new Dated<>(
                                Percent.of("12.5"),
                                LocalDate.of(2021, 10, 1),
                                LocalDate.of(2022, 3, 31),
                                "Temporary reduced rate for hospitality, holiday accommodation and"
                                        + " attractions, second stage; the standard rate applies"
                                        + " from 2022-04-01 (secondary source)"));
        assertThat(rates.on("standard", LocalDate.of(2026, 1, 1)).orElseThrow().to())
                .isEqualTo(LocalDate.MAX);
    }
}

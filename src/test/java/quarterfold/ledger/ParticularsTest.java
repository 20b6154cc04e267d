package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

class ParticularsTest {

    @Test
    void oneTextInTheOrderOfTheConstants() {
        Particulars stated =
                Particulars.NONE
                        .with(Particular.USE, "both")
                        .with(Particular.COST, "12.5")
                        .with(Particular.HELD, "2026-10-08")
                        .with(Particular.ON_HAND, "40");
        assertThat(stated.text()).isEqualTo("held=2026-10-08 cost=12.5 on_hand=40 use=both");
        assertThat(Particulars.parse(stated.text())).isEqualTo(stated);
        assertThat(stated.day(Particular.HELD)).contains(LocalDate.of(2026, 10, 8));
        assertThat(stated.amount(Particular.COST)).contains(Amount.of("12.50"));
        assertThat(stated.share(Particular.ON_HAND)).contains(Percent.of("40"));
        assertThat(stated.word(Particular.USE)).contains("both");
        assertThat(stated.day(Particular.DUE)).isEmpty();
    }

    @Test
    void noneIsTheEmptyText() {
        assertThat(Particulars.NONE.text()).isEmpty();
        assertThat(Particulars.parse("")).isEqualTo(Particulars.NONE);
        assertThat(Particulars.NONE.isEmpty()).isTrue();
        assertThat(Particulars.NONE.with(Particular.APPROVAL, "yes").isEmpty()).isFalse();
    }

    @ParameterizedTest(name = "{0}={1}: {2}")
    @CsvSource(
            textBlock =
                    """
        HELD,        2026-02-28, true
        HELD,        2026-02-29, false
        HELD,        soon,       false
        COST,        0.0001,     true
        COST,        0.00001,    false
        COST,        -3,         true
        COST,        ten,        false
        ON_HAND,     0,          true
        ON_HAND,     100,        true
        ON_HAND,     100.01,     false
        ON_HAND,     -1,         false
        CO2,         118,        true
        CO2,         118.5,      false
        CO2,         -1,         false
        ACCOUNT,     GB24QFLD00000012345678, true
        ACCOUNT,     20-00-00/12345678,      true
        ACCOUNT,     '20-00-00 12345678',    false
        ACCOUNT,     '',         false
        ERROR,       deliberate, true
        ERROR,       separate,   true
        ERROR,       careless,   false
        APPROVAL,    yes,        true
        APPROVAL,    no,         true
        APPROVAL,    maybe,      false
        USE,         taxable,    true
        USE,         both,       true
        USE,         none,       false
        ADDRESSED,   employee,   true
        ADDRESSED,   me,         false
        """)
    void whatATextMayBe(Particular particular, String text, boolean good) {
        assertThat(Particulars.isOf(particular, text)).isEqualTo(good);
    }

    @Test
    void refusesWhatItIsNot() {
        assertThatThrownBy(() -> new Particulars(Map.of(Particular.DUE, "soon")))
                .hasMessage("due: found 'soon'; expected a date such as 2026-09-30");
        assertThatThrownBy(() -> Particulars.parse("colour=red"))
                .hasMessage(
                        "the ledger holds the particular 'colour', which this program does not know");
    }
}

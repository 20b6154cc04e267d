package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A fact stated by a decision stands in its place, and nothing else of the line moves. */
class StatedFactsTest {

    private static final Line LINE = Samples.FULL;

    private static Arguments fact(String stated, Function<Line, Object> where, String value) {
        return Arguments.of(stated, where, value);
    }

    static Stream<Arguments> facts() {
        return Stream.of(
                fact("rate=5", l -> l.profile().rate().code(), "5"),
                fact("rate=exempt", l -> l.profile().rate().code(), "exempt"),
                fact("party_country=IE", l -> l.profile().partyCountry(), "IE"),
                fact("party_vat=GB101747696", l -> l.profile().partyVat(), "GB101747696"),
                fact("category=stock", l -> l.profile().category(), "stock"),
                fact("from=US", l -> l.profile().from(), "US"),
                fact("to=GB", l -> l.profile().to(), "GB"),
                fact("customer=consumer", l -> l.profile().customer().code(), "consumer"),
                fact("customer_vat=DE1", l -> l.profile().customerVat(), "DE1"),
                fact("channel_collects=no", l -> l.profile().channelCollects().code(), "no"),
                fact("evidence=invoice", l -> l.profile().evidence().code(), "invoice"),
                fact("business_use=40", l -> l.profile().businessUse().toString(), "40"),
                fact(
                        "held=2026-11-01",
                        l -> l.particulars().stated().get(Particular.HELD),
                        "2026-11-01"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("facts")
    void oneFactIsStated(String stated, Function<Line, Object> where, String value) {
        Line with = StatedFacts.state(LINE, stated);
        assertThat(where.apply(with)).isEqualTo(value).isNotEqualTo(where.apply(LINE));
        assertThat(with.taxPoint()).isEqualTo(LINE.taxPoint());
        assertThat(with.amounts()).isEqualTo(LINE.amounts());
        assertThat(with.document()).isEqualTo(LINE.document());
        assertThat(with.paid()).isEqualTo(LINE.paid());
        assertThat(with.profile().party()).isEqualTo(LINE.profile().party());
        assertThat(with.profile().kind()).isEqualTo(LINE.profile().kind());
        assertThat(with.notes()).isEqualTo(LINE.notes());
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            textBlock =
                    """
        rate=twenty,            false
        rate=20,                true
        from=UK,                false
        from=XI,                true
        evidence=receipt,       false
        business_use=101,       false
        category=,              false
        gross=12,               false
        kind=sale,              true
        kind=sold,              false
        held=soon,              false
        due=2026-12-01,         true
        nothing,                false
        """)
    void whatMayBeStated(String stated, boolean may) {
        assertThat(StatedFacts.isOne(stated)).isEqualTo(may);
        if (!may) {
            assertThatThrownBy(() -> StatedFacts.state(LINE, stated))
                    .hasMessage("not a fact that may be stated: " + stated);
        }
    }

    /** What kind it is of the ledger tells with the entry, so that the line is of it already. */
    @Test
    void aKindIsNotStatedTwice() {
        assertThat(StatedFacts.state(LINE, "kind=sale")).isEqualTo(LINE);
        assertThat(StatedFacts.expected("kind"))
                .startsWith("one of sale, sale-refund,")
                .endsWith("other-money, such as fee");
    }

    @Test
    void everyFieldIsOne() {
        assertThat(StatedFacts.fields())
                .contains("kind", "rate", "evidence", "held", "co2")
                .doesNotContain("gross", "date")
                .doesNotHaveDuplicates();
    }

    /** Evidence of export counts from the day it was obtained. */
    @Test
    void evidenceIsSeenOnADay() {
        LocalDate day = LocalDate.of(2026, 11, 2);
        Line export = StatedFacts.seen(LINE, "export", day);
        assertThat(export.profile().evidence()).isEqualTo(Evidence.EXPORT);
        assertThat(export.particulars().day(Particular.EVIDENCED)).contains(day);
        Line invoice = StatedFacts.seen(LINE, "invoice", day);
        assertThat(invoice.profile().evidence()).isEqualTo(Evidence.INVOICE);
        assertThat(invoice.particulars()).isEqualTo(LINE.particulars());
    }
}

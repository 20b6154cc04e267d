package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ChoicesTest {

    private final Choices choices = Law.of("GB").choices();

    @Test
    void shippedChoices() {
        assertThat(choices.all())
                .extracting(Choice::name, Choice::standard, Choice::values)
                .containsExactly(
                        tuple("deemed-supply-in-box-6", "yes", List.of("yes", "no")),
                        tuple("unregistered-supplier-in-box-7", "yes", List.of("yes", "no")),
                        tuple("blocked-in-box-7", "yes", List.of("yes", "no")),
                        tuple(
                                "import-value-from",
                                "import-entry",
                                List.of("import-entry", "supplier-invoice")),
                        tuple("pre-registration-in-box-7", "no", List.of("yes", "no")),
                        tuple(
                                "leaving-cash-accounting",
                                "settle-up",
                                List.of("settle-up", "six-months")),
                        tuple("stock-to-ni-in-box-7", "no", List.of("no", "yes")),
                        tuple("errors-in-boxes-6-to-9", "no", List.of("yes", "no")),
                        tuple("errors-told-separately", "no", List.of("yes", "no")),
                        tuple(
                                "error-at-the-limit",
                                "on-the-return",
                                List.of("on-the-return", "separately")),
                        tuple(
                                "flat-rate-reverse-charge-in-boxes-6-and-7",
                                "yes",
                                List.of("yes", "no")),
                        tuple("flat-rate-first-year", "yes", List.of("yes", "no")),
                        tuple(
                                "flat-rate-capital-goods-at-limit",
                                "claim",
                                List.of("claim", "not-claim")),
                        tuple(
                                "limited-cost-goods-limit",
                                "by-months",
                                List.of("by-months", "by-days")),
                        tuple(
                                "partial-exemption-share",
                                "last-year",
                                List.of("last-year", "current-period")),
                        tuple(
                                "partial-exemption-year-on",
                                "first-after",
                                List.of("first-after", "last-of-year")),
                        tuple("exchange-rates", "period-rate", List.of("period-rate", "ecb")),
                        tuple("import-importer-unstated", "own", List.of("own", "ask")));
        assertThat(choices.all()).allSatisfy(c -> assertThat(c.question()).contains("?"));
    }

    @Test
    void theDefaultHoldsUntilTheBookChooses() {
        assertThat(choices.holds("blocked-in-box-7=yes", Map.of())).isTrue();
        assertThat(choices.holds("blocked-in-box-7=no", Map.of())).isFalse();
        Map<String, String> chosen = Map.of("blocked-in-box-7", "no");
        assertThat(choices.holds("blocked-in-box-7=yes", chosen)).isFalse();
        assertThat(choices.holds("blocked-in-box-7=no", chosen)).isTrue();
        assertThat(choices.holds("deemed-supply-in-box-6=yes", chosen)).isTrue();
        assertThat(choices.holds("no-such=yes", Map.of("no-such", "yes"))).isFalse();
    }

    @Test
    void whatABookMayNotChoose() {
        assertThat(
                        choices.unknown(
                                Map.of(
                                        "zeal", "yes",
                                        "blocked-in-box-7", "maybe",
                                        "import-value-from", "supplier-invoice")))
                .containsExactly("blocked-in-box-7=maybe", "zeal=yes");
        assertThat(choices.unknown(Map.of())).isEmpty();
    }
}

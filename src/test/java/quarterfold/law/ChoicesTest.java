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
                        tuple("claim-cap-from", "due-day", List.of("due-day", "month-end")));
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

package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The first row in force whose facts and choice hold decides. */
class TreatmentsTest {

    private static final LocalDate DAY = LocalDate.of(2026, 8, 1);

    private final Treatments treatments = Law.of("GB").treatments();

    private static Map<Fact, String> facts(String kind, String liability, String evidence) {
        Map<Fact, String> facts = new EnumMap<>(Fact.class);
        facts.put(Fact.CURRENCY, "home");
        facts.put(Fact.KIND, kind);
        facts.put(Fact.LIABILITY, liability);
        facts.put(Fact.EVIDENCE, evidence);
        facts.put(Fact.CHANNEL_COLLECTS, "no");
        return facts;
    }

    private Optional<String> decide(Map<Fact, String> facts, LocalDate day, String choice) {
        return treatments.decide(facts, day, choice::equals).map(r -> r.value().rule());
    }

    @Test
    void theFirstRowThatMatches() {
        assertThat(decide(facts("sale", "standard", "unstated"), DAY, "")).contains("S17a");
        assertThat(decide(facts("sale-refund", "standard", "unstated"), DAY, "")).contains("S17b");
        assertThat(decide(facts("sale", "outside", "unstated"), DAY, "")).contains("S02");
        Map<Fact, String> foreign = facts("sale", "outside", "unstated");
        foreign.put(Fact.CURRENCY, "foreign");
        assertThat(decide(foreign, DAY, "")).contains("A01");
        assertThat(decide(facts("sale", "unstated", "unstated"), DAY, "")).isEmpty();
    }

    @Test
    void onlyRowsInForce() {
        Map<Fact, String> postponed = facts("import-vat-postponed", "unstated", "unstated");
        assertThat(decide(postponed, LocalDate.of(2020, 12, 31), "import-value-from=import-entry"))
                .isEmpty();
        assertThat(decide(postponed, LocalDate.of(2021, 1, 1), "import-value-from=import-entry"))
                .contains("I06");
    }

    @Test
    void onlyRowsOfTheBooksChoice() {
        Map<Fact, String> paid = facts("import-vat-paid", "unstated", "import-certificate");
        paid.put(Fact.CLAIMS, "yes");
        assertThat(decide(paid, DAY, "import-value-from=import-entry")).contains("I01");
        assertThat(decide(paid, DAY, "import-value-from=supplier-invoice")).contains("I02");
        assertThat(decide(paid, DAY, "")).isEmpty();
    }

    @Test
    void aRowByItsName() {
        TreatmentRow row = treatments.rule("U14a").orElseThrow().value();
        assertThat(row)
                .isEqualTo(
                        new TreatmentRow(
                                "U14a",
                                "part-blocked",
                                Map.of(
                                        Fact.KIND, Set.of("purchase", "expense", "fee"),
                                        Fact.BLOCKED, Set.of("part")),
                                "",
                                "liability",
                                VatRule.INSIDE,
                                true,
                                "",
                                "Part of the VAT is blocked; the rest is reclaimed"));
        assertThat(treatments.rule("Z99")).isEmpty();
    }

    /** The first of its rows on the day, whose boxes and words a decision then takes. */
    @Test
    void theRowOfATreatment() {
        assertThat(treatments.named("import-postponed", LocalDate.of(2021, 1, 1)))
                .hasValueSatisfying(
                        r -> {
                            assertThat(r.value().treatment()).isEqualTo("import-postponed");
                            assertThat(r.isInForce(LocalDate.of(2021, 1, 1))).isTrue();
                        });
        assertThat(treatments.named("import-postponed", LocalDate.of(2020, 12, 31))).isEmpty();
        assertThat(treatments.named("no-such-treatment", DAY)).isEmpty();
    }
}

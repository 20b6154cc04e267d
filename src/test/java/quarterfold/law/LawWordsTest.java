package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Every code a person meets on the law's page has words. */
class LawWordsTest {

    private final LawWords words = LawWords.of("GB");

    private static LawWords of(String rows) {
        return LawWords.of(
                Law.file(
                        "words.csv",
                        ("column,value,words\n" + rows).getBytes(StandardCharsets.UTF_8)));
    }

    @ParameterizedTest
    @EnumSource
    void everyFactHasAClauseAndWordsForItsValues(Fact fact) {
        assertThat(words.find(fact.column(), "*"))
                .as("words.csv: %s,*,a clause with {}", fact.column())
                .isPresent();
        for (String value : fact.words()) {
            assertThat(words.find(fact.column(), value))
                    .as("words.csv: %s,%s,its words", fact.column(), value)
                    .isPresent();
        }
    }

    @Test
    void everyWayToFindVatEveryMeasureAndEveryRateHasWords() {
        assertThat(codes(VatRule.values())).allMatch(v -> words.find("vat_is", v).isPresent());
        assertThat(codes(Measure.values())).allMatch(m -> words.find("measure", m).isPresent());
        assertThat(PlainCsv.rows("treatments.csv"))
                .extracting(r -> r.at("rate"))
                .filteredOn(rate -> !rate.isEmpty())
                .isNotEmpty()
                .allMatch(rate -> words.find("rate", rate).isPresent());
        assertThat(List.of("yes", "no")).allMatch(c -> words.find("claim", c).isPresent());
    }

    private static List<String> codes(Enum<?>[] values) {
        return Arrays.stream(values)
                .map(v -> v.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .toList();
    }

    /** Words for a value or a table that is no more would never be read. */
    @Test
    void noWordsForWhatThereIsNot() {
        Map<String, List<String>> closed =
                Arrays.stream(Fact.values())
                        .filter(f -> !f.words().isEmpty())
                        .collect(Collectors.toMap(Fact::column, Fact::words));
        Set<String> open =
                Stream.concat(
                                Arrays.stream(Fact.values())
                                        .filter(f -> f.words().isEmpty())
                                        .map(Fact::column),
                                Stream.of("page", "vat_is", "rate", "claim", "measure"))
                        .collect(Collectors.toSet());
        for (PlainCsv.Row row : PlainCsv.rows("words.csv")) {
            String column = row.at("column");
            if (column.equals("table")) {
                assertThat(PlainCsv.tables()).contains(row.at("value"));
            } else if (closed.containsKey(column) && !row.at("value").equals("*")) {
                assertThat(closed.getOrDefault(column, List.of()))
                        .as(column)
                        .containsAll(List.of(row.at("value").split("\\|", -1)));
            } else {
                assertThat(closed.containsKey(column) || open.contains(column)).as(column).isTrue();
            }
        }
    }

    @Test
    void clauses() {
        assertThat(words.clause("starts", List.of("gb", "ni")))
                .isEqualTo("the goods start in Great Britain or Northern Ireland");
        assertThat(words.clause("goes", List.of("eu")))
                .isEqualTo("the goods go to the European Union");
        assertThat(words.clause("category", List.of("travel", "subsistence")))
                .isEqualTo("the category is travel or subsistence");
        assertThat(words.clause("no_such_column", List.of("a", "b", "c")))
                .isEqualTo("the no such column is a, b or c");
    }

    /** A name for several values stands only where they all do. */
    @Test
    void severalValuesTogether() {
        LawWords two = of("pet,*,a {} is kept\npet,cat|dog,furry one\npet,cat,tabby\n");
        assertThat(two.clause("pet", List.of("dog", "fish", "cat")))
                .isEqualTo("a furry one or fish is kept");
        assertThat(two.clause("pet", List.of("cat", "fish"))).isEqualTo("a tabby or fish is kept");
        assertThat(two.together("pet")).isEqualTo(Map.of("furry one", List.of("tabby", "dog")));
        assertThat(two.together("plant")).isEmpty();
        assertThat(two.find("pet", "fish")).isEqualTo(Optional.empty());
        assertThat(two.say("pet", "fish")).isEqualTo("fish");
    }

    @ParameterizedTest
    @CsvSource(
            delimiterString = " => ",
            textBlock =
                    """
        pet,*,a pet => words.csv:2: [words]: found 'a pet'; expected a clause with {}, such as: the goods go to {}
        pet,cat, => words.csv:2: [words] is empty
        pet,,a => words.csv:2: [value] is empty
        ,cat,a => words.csv:2: [column] is empty
        """)
    void faults(String row, String message) {
        assertThatThrownBy(() -> of(row + "\n"))
                .isInstanceOf(LawException.class)
                .hasMessage(message);
    }

    @Test
    void twoRowsOfOneValue() {
        assertThatThrownBy(() -> of("pet,cat,a\npet,cat,b\n"))
                .isInstanceOf(LawException.class)
                .hasMessage("words.csv:3: [value]: 'cat' of pet has a row already");
    }
}

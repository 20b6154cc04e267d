package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A table as it stands, for showing the law. */
class TableRowsTest {

    private static final TableRows DATED =
            rows("name,from,to\nfirst,2020-01-01,2020-12-31\nsecond,2021-01-01,\n");
    private static final TableRows UNDATED = rows("name,words\nfirst,One\n");

    private static TableRows rows(String text) {
        return TableRows.of(Law.file("made.csv", text.getBytes(StandardCharsets.UTF_8)));
    }

    private static List<String> names(TableRows rows) {
        return rows.rows().stream().map(r -> r.cell("name")).toList();
    }

    @Test
    void everyRowWithItsCellsAndDays() {
        assertThat(DATED.name()).isEqualTo("made.csv");
        assertThat(DATED.columns()).containsExactly("name", "from", "to");
        assertThat(DATED.isDated()).isTrue();
        assertThat(DATED.rows().get(0).number()).isEqualTo(2);
        assertThat(DATED.rows().get(1).number()).isEqualTo(3);
        assertThat(DATED.rows().get(0).from()).isEqualTo(LocalDate.of(2020, 1, 1));
        assertThat(DATED.rows().get(0).to()).isEqualTo(LocalDate.of(2020, 12, 31));
        assertThat(DATED.rows().get(1).to()).as("still in force").isEqualTo(LocalDate.MAX);
        assertThat(DATED.rows().get(1).cell("to")).isEmpty();
        assertThat(DATED.rows().get(1).cell("rate")).as("no such column").isEmpty();
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "2019-12-31, ''",
        "2020-01-01, first",
        "2020-12-31, first",
        "2021-01-01, second",
        "9999-12-31, second"
    })
    void theRowsOfADay(LocalDate day, String name) {
        assertThat(names(DATED.on(Optional.of(day))))
                .isEqualTo(name.isEmpty() ? List.of() : List.of(name));
    }

    @Test
    void withoutADayOrWithoutDaysAllOfThem() {
        assertThat(names(DATED.on(Optional.empty()))).containsExactly("first", "second");
        assertThat(UNDATED.isDated()).isFalse();
        assertThat(names(UNDATED.on(Optional.of(LocalDate.of(1066, 10, 14)))))
                .containsExactly("first");
        assertThat(rows("name,from\nfirst,soon\n").isDated()).as("a beginning alone").isFalse();
    }

    @Test
    void aDayThatIsNoneIsRefused() {
        assertThatThrownBy(() -> rows("name,from,to\nfirst,2020-13-01,\n"))
                .isInstanceOf(LawException.class)
                .hasMessage(
                        "made.csv:2: [from]: found '2020-13-01'; expected a date such as 2011-01-04");
    }

    /** Of two rows: whether they share a day, and whether one has every day of the other. */
    @ParameterizedTest(name = "{0} to {1} and {2} to {3}: {4}, {5}")
    @CsvSource({
        "2020-01-01, 2020-12-31, 2020-01-01, 2020-12-31, true, true",
        "2020-01-01, 2020-12-31, 2020-01-02, 2020-12-30, true, true",
        "2020-01-01, 2020-12-31, 2020-01-01, 2021-01-01, true, false",
        "2020-01-01, 2020-12-31, 2019-12-31, 2020-12-31, true, false",
        "2020-01-01, 2020-12-31, 2020-12-31, 2021-06-30, true, false",
        "2020-01-01, 2020-12-31, 2021-01-01, 2021-06-30, false, false",
        "2020-01-01, 2020-12-31, 2019-01-01, 2020-01-01, true, false",
        "2020-01-01, 2020-12-31, 2019-01-01, 2019-12-31, false, false",
        "2020-01-01, '', 2025-01-01, '', true, true",
        "2020-01-01, 2025-01-01, 2025-01-01, '', true, false"
    })
    void twoRows(
            String from, String to, String otherFrom, String otherTo, boolean shares, boolean all) {
        TableRows two = rows("from,to\n%s,%s\n%s,%s\n".formatted(from, to, otherFrom, otherTo));
        TableRows.Row one = two.rows().get(0);
        TableRows.Row other = two.rows().get(1);
        assertThat(one.overlaps(other)).isEqualTo(shares);
        assertThat(other.overlaps(one)).isEqualTo(shares);
        assertThat(one.covers(other)).isEqualTo(all);
    }
}

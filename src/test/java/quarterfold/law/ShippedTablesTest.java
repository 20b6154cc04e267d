package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The shipped tables as files, split by hand: every row cites its text, none contradicts another,
 * each name one table uses another defines, and the law says on both sides of each day of change
 * what the files say.
 */
class ShippedTablesTest {

    /** What tells the rows of a table apart on one day, where it is not the first column alone. */
    private static final Map<String, Set<String>> NOT_PART_OF_THE_NAME =
            Map.of(
                    "account.csv", Set.of("label", "from", "to", "source"),
                    "boxes.csv", Set.of("sign", "account", "from", "to", "source"),
                    "counted-categories.csv", Set.of("from", "to", "source"),
                    "evidence-shows.csv", Set.of("when", "words", "from", "to", "source"),
                    "timing.csv", Set.of("from", "to", "source"));

    /** Choices about figures worked out over a period, or about amounts against a limit. */
    private static final List<String> ASKED_BY_THE_PROGRAM =
            List.of(
                    "exchange-rates=period-rate",
                    "exchange-rates=ecb",
                    "import-importer-unstated=own",
                    "flat-rate-first-year=yes",
                    "flat-rate-first-year=no",
                    "flat-rate-capital-goods-at-limit=claim",
                    "flat-rate-capital-goods-at-limit=not-claim",
                    "limited-cost-goods-limit=by-months",
                    "limited-cost-goods-limit=by-days",
                    "partial-exemption-share=last-year",
                    "partial-exemption-share=current-period",
                    "partial-exemption-year-on=first-after",
                    "partial-exemption-year-on=last-of-year");

    private static boolean isDated(String table) {
        return PlainCsv.columns(table).containsAll(List.of("from", "to"));
    }

    private static List<String> name(String table, PlainCsv.Row row) {
        List<String> columns = PlainCsv.columns(table);
        Set<String> other =
                NOT_PART_OF_THE_NAME.getOrDefault(
                        table, new HashSet<>(columns.subList(1, columns.size())));
        return columns.stream().filter(c -> !other.contains(c)).map(row::at).toList();
    }

    static Stream<String> tables() {
        return PlainCsv.tables().stream();
    }

    /** The law reads every table of the folder, so none can be checked here and used nowhere. */
    @Test
    void theLawHasEveryTable() {
        assertThat(Law.of("GB").files())
                .extracting(TableFile::name)
                .containsExactlyInAnyOrderElementsOf(PlainCsv.tables());
    }

    @Test
    void everyTableWithDaysIsLookedUpByThem() {
        assertThat(tables().filter(ShippedTablesTest::isDated))
                .as("tables with days; each needs its line in TableLookup")
                .containsExactlyInAnyOrderElementsOf(TableLookup.ALL.keySet());
    }

    /** A day on which a row begins, or the day after its last, and a row that tells whose. */
    record Boundary(String table, PlainCsv.Row row, LocalDate day) {
        @Override
        public String toString() {
            return "%s %s on %s".formatted(table, String.join(" ", name(table, row)), day);
        }
    }

    static Collection<Boundary> boundaries() {
        Map<String, Boundary> all = new LinkedHashMap<>();
        for (String table : TableLookup.ALL.keySet()) {
            for (PlainCsv.Row row : PlainCsv.rows(table)) {
                List<LocalDate> days = new ArrayList<>(List.of(row.from()));
                if (!row.to().equals(LocalDate.MAX)) {
                    days.add(row.to().plusDays(1));
                }
                for (LocalDate day : days) {
                    Boundary boundary = new Boundary(table, row, day);
                    all.putIfAbsent(boundary.toString(), boundary);
                }
            }
        }
        return all.values();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("boundaries")
    void bothSidesOfEveryDayOfChange(Boundary boundary) {
        List<String> before = onDay(boundary, boundary.day().minusDays(1));
        List<String> on = onDay(boundary, boundary.day());
        assertThat(on).as("what changes on the day").isNotEqualTo(before);
    }

    /** What the law answers, which must be what the file has. */
    private static List<String> onDay(Boundary boundary, LocalDate day) {
        TableLookup lookup = TableLookup.of(boundary.table());
        List<String> name = name(boundary.table(), boundary.row());
        List<String> expected =
                PlainCsv.rows(boundary.table()).stream()
                        .filter(r -> name(boundary.table(), r).equals(name))
                        .filter(r -> r.isInForce(day))
                        .map(lookup.says())
                        .toList();
        List<String> answered = lookup.law().apply(boundary.row(), day).toList();
        assertThat(answered).as("%s, on %s", boundary, day).isEqualTo(expected);
        return answered;
    }

    @ParameterizedTest
    @MethodSource("tables")
    void noTwoRowsOfOneNameAreInForceTogether(String table) {
        List<PlainCsv.Row> rows = PlainCsv.rows(table);
        assertThat(rows).isNotEmpty();
        for (int i = 0; i < rows.size(); i++) {
            for (PlainCsv.Row later : rows.subList(i + 1, rows.size())) {
                PlainCsv.Row row = rows.get(i);
                if (name(table, row).equals(name(table, later))) {
                    assertThat(isDated(table) && !row.meets(later))
                            .as("%s: %s and %s", table, row, later)
                            .isTrue();
                }
            }
        }
    }

    /** Two treatments with the same conditions would leave the later one without an entry. */
    @Test
    void noTwoTreatmentsAskTheSame() {
        List<String> conditions =
                Stream.concat(Arrays.stream(Fact.values()).map(Fact::column), Stream.of("choice"))
                        .toList();
        List<PlainCsv.Row> rows = PlainCsv.rows("treatments.csv");
        for (int i = 0; i < rows.size(); i++) {
            for (PlainCsv.Row later : rows.subList(i + 1, rows.size())) {
                PlainCsv.Row row = rows.get(i);
                assertThat(
                                row.meets(later)
                                        && conditions.stream()
                                                .allMatch(c -> row.at(c).equals(later.at(c))))
                        .as("%s and %s", row.at("rule"), later.at("rule"))
                        .isFalse();
            }
        }
    }

    /** Queries are our own words; the rule that asks has the source. */
    @ParameterizedTest
    @MethodSource("tables")
    void everyRowCitesItsSource(String table) {
        if (table.equals("queries.csv") || table.equals("answers.csv")) {
            assertThat(PlainCsv.columns(table)).doesNotContain("source");
            return;
        }
        assertThat(PlainCsv.rows(table))
                .allSatisfy(row -> assertThat(row.at("source")).as(row.toString()).isNotBlank());
    }

    /** What was not checked says so in the words that the law's page looks for. */
    @ParameterizedTest
    @MethodSource("tables")
    void doubtIsSaidInTheSameWords(String table) {
        assertThat(PlainCsv.rows(table))
                .extracting(row -> row.cells().getOrDefault("source", ""))
                .allSatisfy(
                        source ->
                                assertThat(
                                                source.replace("from memory", "")
                                                        .replace("secondary source", ""))
                                        .doesNotContainIgnoringCase("memory")
                                        .doesNotContainIgnoringCase("secondary"));
    }

    @Test
    void everyTreatmentWithBoxesIsUsed() {
        Set<String> named = column("treatments.csv", "treatment");
        named.addAll(column("adjustments.csv", "name"));
        assertThat(column("boxes.csv", "treatment")).isNotEmpty().isSubsetOf(named);
        assertThat(column("boxes.csv", "treatment")).containsAll(column("adjustments.csv", "name"));
    }

    @Test
    void everyTotalIsFed() {
        assertThat(column("boxes.csv", "box")).containsAll(column("totals.csv", "total"));
    }

    @Test
    void everyQueryThatIsRaisedHasWords() {
        assertThat(column("treatments.csv", "query"))
                .isNotEmpty()
                .isSubsetOf(column("queries.csv", "code"));
    }

    /** But for the choices on errors of closed returns, which are in no entry's treatment. */
    @Test
    void everyChoiceHasARuleForEachOfItsValues() {
        Set<String> values = new TreeSet<>();
        for (PlainCsv.Row choice : PlainCsv.rows("choices.csv")) {
            for (String value : choice.at("values").split("\\|", -1)) {
                if (!choice.at("name").startsWith("error")) {
                    values.add(choice.at("name") + "=" + value);
                }
            }
        }
        values.removeIf(value -> value.startsWith("leaving-cash-accounting=")); // moves days alone
        Set<String> ruled = column("treatments.csv", "choice");
        ruled.addAll(ASKED_BY_THE_PROGRAM);
        assertThat(ruled).isEqualTo(values);
    }

    private static Set<String> column(String table, String column) {
        return PlainCsv.rows(table).stream()
                .map(row -> row.at(column))
                .filter(cell -> !cell.isEmpty())
                .collect(Collectors.toCollection(TreeSet::new));
    }
}

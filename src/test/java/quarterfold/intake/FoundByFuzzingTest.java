package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Inputs that fuzzing found a fault with, made small; those that are files stand in
 * fixtures/hostile.
 */
class FoundByFuzzingTest {
    private static final String SALE = "2026-09-30,Q-%d,Sale,9999999999999.99\n";

    @TempDir Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private Learned learn(Path file) throws IOException {
        return new Learner(Desk.settings()).learn(file, "found", Map.of());
    }

    /** Java's own formatter fails on it with an index out of bounds. */
    @Test
    void aDatePatternOfMoreThanTenLetters() throws IOException {
        desk.layout(
                "mine",
                """
                layout: mine
                dates: {pattern: "uuuuuuuuuuuu-MM-dd"}
                signs: document
                fields: {date: Day}
                rows:
                  - when: {}
                    enter: [{kind: sale, gross: Sum}]
                amounts: [Sum]
                """);
        assertThat(desk.problems("a.csv", "Day,Sum\n2026-09-30,1.00\n"))
                .containsExactly(
                        "mine.yaml:2 [dates.pattern]: found 'uuuuuuuuuuuu-MM-dd'; expected a date pattern with a year, a month and a day, such as dd/MM/yyyy");
    }

    /** What learning read with its layout, import did not recognise: its rows end in a comma. */
    @Test
    void rowsWithoutColumnNamesThatEndInADelimiter() throws IOException {
        Path file =
                desk.file(
                        "found.csv",
                        """
                        QL-0417,2026-07-01,Sale,Q52019,GBP,22.50,
                        QL-0417,2026-07-01,Charge,Q52019,GBP,-2.81,
                        QL-0417,2026-07-02,Sale,Q52021,GBP,12.49,
                        QL-0417,2026-07-02,Charge,Q52021,GBP,-1.56,
                        QL-0417,2026-07-14,Sale,Q52028,GBP,52.98,
                        """);
        Learned learned = learn(file);
        desk.layout("found", learned.yaml().orElseThrow());

        ImportResult result = desk.enter(file);
        assertThat(result.problems()).isEmpty();
        assertThat(result.layout()).isEqualTo("found");
        assertThat(result.rowsRead()).isEqualTo(learned.rows()).isEqualTo(5);
    }

    /** The time a study takes grows with the square of the columns. */
    @Test
    void aReportOfMoreColumnsThanCanBeLearned() throws IOException {
        String cells = ",x".repeat(Grid.WIDEST);
        Learned learned = learn(desk.file("found.csv", "2026-09-30" + cells + "\n"));

        assertThat(learned.yaml()).isEmpty();
        assertThat(learned.faults())
                .containsExactly(
                        "found.csv:1: found 501 cells in a row; expected at most 500 in a report to be learned, such as one without the columns you do not need");
    }

    /** Their sum went past what a whole number can hold, and came out as less than nothing. */
    @Test
    void numbersTooLargeToBeAddedUpAreNoMoney() throws IOException {
        StringBuilder text = new StringBuilder("Date,Order,Type,Amount\n");
        for (int i = 0; i < 150; i++) {
            text.append(SALE.formatted(i));
        }
        Learned learned = learn(desk.file("found.csv", text.toString()));

        assertThat(learned.yaml()).isEmpty();
        assertThat(learned.faults())
                .containsExactly("found no column of amounts; expected one, such as Amount");
    }
}

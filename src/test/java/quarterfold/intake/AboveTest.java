package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What lines above the column names say of every row. */
class AboveTest {
    private static final String FEES =
            """
            layout: fees
            file: {header_row: 4}
            dates: {pattern: "dd/MM/yyyy"}
            signs: document
            above:
              - "Statement {Statement}"
              - "Period: {} to {Until}"
            fields: {date: Until, settlement: Statement, description: Fee type}
            constants: {channel: Quaylark}
            rows:
              - when: {Fee type: [Levy, Plan]}
                enter: [{kind: fee, gross: Amount}]
            other_rows:
              - {starts: Total, sums: [Amount], why: total}
            amounts: [Amount]
            """;
    private static final String FILE =
            """
            Quaylark
            Statement,QL-0418
            Period:  01/07/2026 to 31/07/2026
            Fee type,Amount
            Levy,4.00
            Plan,6.00
            Total,10.00
            """;

    @TempDir private Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private List<String> entered() {
        return desk.lines().stream()
                .map(
                        l ->
                                "%d %s %s %s %s"
                                        .formatted(
                                                l.row(),
                                                l.taxPoint(),
                                                l.profile().settlement(),
                                                l.item().description(),
                                                l.signedMoney()))
                .toList();
    }

    private static List<String> problems(String yaml) {
        Problems problems = new Problems();
        LayoutReader.read("fees.yaml", yaml, problems);
        return problems.kept().stream().map(Problem::toString).toList();
    }

    @Test
    void rowsHaveWhatTheLinesAboveSay() throws IOException {
        desk.layout("fees", FEES);

        assertThat(desk.enter("july.csv", FILE).problems()).isEmpty();
        assertThat(
                        desk.enter(
                                        "august.csv",
                                        FILE.replace("01/07/2026 to 31/07", "01/08/2026 to 31/08"))
                                .problems())
                .isEmpty();
        assertThat(entered())
                .containsExactly(
                        "5 2026-07-31 QL-0418 Levy -4.00",
                        "6 2026-07-31 QL-0418 Plan -6.00",
                        "5 2026-08-31 QL-0418 Levy -4.00",
                        "6 2026-08-31 QL-0418 Plan -6.00");
    }

    @Test
    void rowsThatAnEarlierFileHasUnderTheSameLinesRepeatIt() throws IOException {
        desk.layout("fees", FEES);
        desk.enter("july.csv", FILE);

        assertThat(
                        desk.enter(
                                        "again.csv",
                                        FILE.replace(
                                                "Plan,6.00\nTotal,10.00",
                                                "Plan,6.00\nPlan,7.00\nTotal,17.00"))
                                .problems())
                .isEmpty();
        assertThat(entered())
                .containsExactly(
                        "5 2026-07-31 QL-0418 Levy -4.00",
                        "6 2026-07-31 QL-0418 Plan -6.00",
                        "7 2026-07-31 QL-0418 Plan -7.00");
    }

    @Test
    void aFileWithoutTheLine() throws IOException {
        desk.layout("fees", FEES);
        String text = FILE.replace("Period:", "Span:");

        assertThat(desk.problems("july.csv", text))
                .containsExactly(
                        "july.csv:4: found no line above the column names that reads 'Period: {} to {Until}'; expected one, for layout fees: where the report now words it otherwise, put the line under above right");
        assertThat(
                        desk.enter(desk.file("july.csv", text), "fees").problems().stream()
                                .map(Problem::toString))
                .containsExactly(
                        "july.csv:4: found no line above the column names that reads 'Period: {} to {Until}'; expected one, for layout fees: where the report now words it otherwise, put the line under above right");
    }

    @Test
    void twoLinesThatSayOtherwise() throws IOException {
        desk.layout("fees", FEES);

        assertThat(desk.problems("july.csv", FILE.replace("Quaylark\n", "Statement QL-0417\n")))
                .containsExactly(
                        "july.csv:2: found 'QL-0418', and 'QL-0417' in a line above it, where the layout reads 'Statement {Statement}'; expected one such line above the column names, such as a pattern with more words of the line that is meant");
    }

    @Test
    void whatTheLineSaysIsNoDate() throws IOException {
        desk.layout("fees", FEES);

        assertThat(desk.problems("july.csv", FILE.replace("31/07/2026", "July")))
                .containsExactly(
                        "july.csv:3 [Until]: found 'July'; expected a date on the calendar written dd/MM/yyyy, such as 30/09/2026");
    }

    @Test
    void aColumnHasTheNameToo() throws IOException {
        desk.layout("fees", FEES);

        assertThat(
                        desk.problems(
                                "july.csv",
                                FILE.replace("Fee type,Amount", "Fee type,Amount,Until")
                                        .replace(".00\n", ".00,x\n")))
                .containsExactly(
                        "july.csv:4 [Until]: found the name in column 3 and in a line above; expected it once, such as one of them renamed");
    }

    @Test
    void layoutsThatAreNot() {
        assertThat(problems(FEES.replace("header_row: 4", "header_row: 1")))
                .containsExactly(
                        "fees.yaml:5 [above]: found lines above the column names where no row is above them; expected the row of the names, such as file: {header_row: 3}");
        assertThat(problems(FEES.replace(", settlement: Statement", "")))
                .containsExactly(
                        "fees.yaml:5 [above]: found 'Statement'; expected each name once, and that a field or the payout and nothing else is read from it, such as fields: {date: Issued}");
        assertThat(problems(FEES.replace("\"Statement {Statement}\"", "\"{Statement}\"")))
                .containsExactly(
                        "fees.yaml:5 [above]: found '{Statement}'; expected a line with a name in braces and words of its own, such as \"Issued: {Issued}\"");
        assertThat(problems(FEES.replace("Period: {} to {Until}", "Period: {} to {Until")))
                .containsExactly(
                        "fees.yaml:5 [above]: found 'Period: {} to {Until' with a brace too many or too few; expected a name in braces, such as Total {VAT paid}");
    }
}

package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Line;

/** Reports of which a line above the table dates all rows. */
class UndatedTest {
    private static final String FEES =
            """
            Fee statement no. 418
            Period: 01/07/2026 - 31/07/2026

            Fee type,Order,Net,VAT,Total
            Selling fee,N-1,4.00,0.80,4.80
            Advertising fee,,10.00,2.00,12.00
            Storage fee,,6.00,1.20,7.20
            Total,,20.00,4.00,24.00
            """;

    @TempDir private Path folder;
    private final List<Line> lines = new ArrayList<>();

    private Learned learn(String text, Map<String, String> answers) throws IOException {
        Path file = Files.writeString(folder.resolve("report.csv"), text);
        lines.clear();
        return new Learner(Desk.settings()).learn(file, "report", answers, lines::add);
    }

    private List<String> money() {
        return lines.stream()
                .map(l -> l.taxPoint() + " " + l.profile().kind().code() + " " + l.signedMoney())
                .toList();
    }

    @Test
    void whichOfSeveralDatesIsAsked() throws IOException {
        Learned open = learn(FEES, Map.of());

        assertThat(open.yaml()).isEmpty();
        assertThat(open.open())
                .containsExactly(
                        new Question(
                                "date-above",
                                "no row has a date, and above them stand '01/07/2026' (row 2: Period:), '31/07/2026' (row 2: Period: 01/07/2026 -); which of these is the day of all rows?",
                                List.of("01/07/2026", "31/07/2026"),
                                true));

        Learned learned = learn(FEES, Map.of("date-above", "31/07/2026"));
        assertThat(learned.isProved()).isTrue();
        assertThat(learned.proofs())
                .containsExactly(
                        "Net + VAT = Total in 3 of 3 rows",
                        "row 8 states the sum of 'Net', 'VAT', 'Total': it ties",
                        "all 4 rows read: 3 entries, 1 row set aside, money -24.00");
        assertThat(learned.yaml().orElseThrow())
                .contains(
                        """
                        # Lines above the column names: what they say under a name holds for every row.
                        above:
                          - "Period: {} - {Date above: [0-9]{1,2}/[0-9]{1,2}/[0-9]{4}}"

                        # entry field: column of the report
                        fields:
                          date: Date above
                        """);
        assertThat(money())
                .containsExactly(
                        "2026-07-31 fee -4.80", "2026-07-31 fee -12.00", "2026-07-31 fee -7.20");
    }

    @Test
    void theDateThatALineCallsTheDateIsTaken() throws IOException {
        String text = FEES.replace("Period: 01/07/2026 - 31/07/2026", "Invoice date,31 July 2026");

        Learned learned = learn(text, Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.notes())
                .containsExactly(
                        "no row has a date: '31 July 2026' in row 2 is the day of all of them",
                        "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR");
        assertThat(money()).startsWith("2026-07-31 fee -4.80");
    }

    @Test
    void aDateThatNoWordCallsTheDateIsAsked() throws IOException {
        String text = FEES.replace("Period: 01/07/2026 - 31/07/2026", "Printed,31.07.2026");

        assertThat(learn(text, Map.of()).open())
                .containsExactly(
                        new Question(
                                "date-above",
                                "no row has a date, and above them stand '31.07.2026' (row 2: Printed); which of these is the day of all rows?",
                                List.of("31.07.2026"),
                                true));
    }

    @Test
    void aTotalThatDoesNotTie() throws IOException {
        Learned learned =
                learn(
                        FEES.replace("Total,,20.00,4.00,24.00", "Total,,20.00,4.00,25.00"),
                        Map.of("date-above", "31/07/2026"));

        assertThat(learned.isProved()).isFalse();
        assertThat(learned.faults())
                .contains(
                        "row 8 ('Total'): found 25.00 in 'Total'; the rows above come to 24.00; the difference is 1.00");
    }

    @Test
    void aTotalUnderAnotherWord() throws IOException {
        Learned learned =
                learn(
                        FEES.replace("Total,,20.00", "Levies,,20.00"),
                        Map.of("date-above", "31/07/2026"));

        assertThat(learned.isProved()).isFalse();
        assertThat(learned.faults())
                .containsExactly(
                        "row 8 ('Levies') states 20.00, the sum of the 3 rows above: is it their total? Then save the file without it");
    }

    @Test
    void anAmountWithoutTheTextThatTheOthersHave() throws IOException {
        String text = FEES.replace("Total,,20", "Plan fee,,1.00,0.20,1.20\nTotal,,21");
        String without = text.replace("Advertising fee", "");

        assertThat(learn(without, Map.of("date-above", "31/07/2026")).faults())
                .contains(
                        "row 6 ('10.00') has a number, but no text in 'Fee type' as the rows beside it have: it would be lost");
    }

    @Test
    void datedRowsAboveTheNamesAreNoTable() throws IOException {
        Learned learned =
                learn(
                        FEES.replace(
                                "Period: 01/07/2026 - 31/07/2026", "Statement,418,Date,31/07/2026"),
                        Map.of("date-above", "31/07/2026"));

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.yaml().orElseThrow())
                .contains(
                        "  - \"Statement {} Date {Date above: [0-9]{1,2}/[0-9]{1,2}/[0-9]{4}}\"\n");
    }
}

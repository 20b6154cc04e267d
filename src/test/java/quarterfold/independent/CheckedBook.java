package quarterfold.independent;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.intake.ImportResult;
import quarterfold.intake.Importer;
import quarterfold.law.Law;
import quarterfold.ledger.Book;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Settings;
import quarterfold.period.BoxFigure;
import quarterfold.period.CloseResult;
import quarterfold.period.Closing;
import quarterfold.period.Period;
import quarterfold.period.Returns;
import quarterfold.treatment.Query;

/** A book on disk that made-up rows are entered in, and whose returns are held against sums. */
final class CheckedBook implements AutoCloseable {

    private static final Law LAW = Law.of("GB");
    private static final LocalDate DECIDED = LocalDate.of(2026, 10, 1);

    private final Path folder;
    private final Ledger ledger;
    private int files;

    /** {@code products}: the book's list of goods. */
    CheckedBook(Path folder, Settings settings, String products) throws IOException {
        this.folder = folder;
        Book.create(book(), settings);
        Files.writeString(book().resolve("products.csv"), products);
        this.ledger = Book.open(book()).ledger();
    }

    private Path book() {
        return folder.resolve("book");
    }

    void enter(Sheets sheets) throws IOException {
        for (Map.Entry<Integer, String> file : sheets.files().entrySet()) {
            enter(file.getValue());
        }
    }

    void enter(String text) throws IOException {
        files++;
        Path sheet = folder.resolve(files + ".csv");
        Files.writeString(sheet, text);
        ImportResult result =
                new Importer(Book.open(book()), ledger).enter(sheet, Optional.empty());
        assertThat(result.problems()).isEmpty();
    }

    /** Records a decision and says its number. */
    long decide(Decision.Target target, String about, Decision.Action action, String value) {
        return ledger.decide(
                        new Decision(0, target, about, action, value, "seen", "a person", DECIDED))
                .id();
    }

    /** Closes a period as it stands: what is still asked about is left as it is. */
    void close(YearMonth name) {
        for (Query query : returns().of(period(returns(), name)).holdingClose()) {
            decide(Decision.Target.QUERY, query.id(), Decision.Action.SET_ASIDE, "");
        }
        Returns returns = returns();
        assertThat(new Closing(ledger, returns).close(period(returns, name)))
                .isInstanceOf(CloseResult.Closed.class);
    }

    private Returns returns() {
        return new Returns(Book.open(book()), ledger, LAW);
    }

    private static Period period(Returns returns, YearMonth name) {
        return returns.calendar().named(name).orElseThrow();
    }

    /** Holds the nine boxes of each of the periods against what the sheets come to in it. */
    void agree(Sheets sheets, List<YearMonth> names, String about) {
        Returns returns = returns();
        for (YearMonth name : names) {
            Period period = period(returns, name);
            List<String> figures = new ArrayList<>();
            for (BoxFigure box : returns.of(period).boxes()) {
                figures.add(box.text());
            }
            List<String> sums = sheets.nineBoxes(period.start(), period.end());
            assertThat(figures)
                    .withFailMessage(
                            () ->
                                    "%s, %s: the return says %s, the sums say %s%n%s"
                                            .formatted(
                                                    about,
                                                    name,
                                                    figures,
                                                    sums,
                                                    String.join(
                                                            "\n",
                                                            sheets.rows(
                                                                    period.start(), period.end()))))
                    .isEqualTo(sums);
        }
    }

    @Override
    public void close() {
        ledger.close();
    }
}

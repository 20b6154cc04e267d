package quarterfold.period;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import quarterfold.law.Law;
import quarterfold.ledger.Book;
import quarterfold.ledger.Close;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Decision;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Line;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;
import quarterfold.treatment.Treated;

/** A book on disk with its ledger open. */
final class TempBook implements AutoCloseable {

    static final Law LAW = Law.of("GB");

    private final Path folder;
    private final Ledger ledger;
    private int files;

    TempBook(Path folder, Settings settings) {
        this.folder = folder;
        this.ledger = Book.create(folder, settings).ledger();
    }

    Ledger ledger() {
        return ledger;
    }

    /** Enters the lines as a file of that name, one row each. */
    void enter(String file, SampleLine... lines) {
        try (FileEntry entry = begin(file)) {
            commit(entry, 0, lines);
        }
    }

    /** Begins a file that has never been seen. */
    FileEntry begin(String file) {
        files++;
        return ledger.begin("%064x".formatted(files), file, "plain-sheet");
    }

    static void commit(FileEntry entry, int setAside, SampleLine... lines) {
        Amount money = Amount.ZERO;
        long row = 1;
        for (SampleLine sample : lines) {
            Line line = sample.line(++row);
            entry.add(line);
            money = money.plus(line.signedMoney());
        }
        entry.commit(lines.length + setAside, lines.length, money, money);
    }

    /** Appends a decision, such as {@code party}, its name, {@code state} and a fact. */
    void decide(String target, String about, String action, String value) {
        ledger.decide(
                new Decision(
                        0,
                        Coded.find(Decision.Target.class, target).orElseThrow(),
                        about,
                        Coded.find(Decision.Action.class, action).orElseThrow(),
                        value,
                        "seen",
                        "a person",
                        LocalDate.of(2026, 10, 1)));
    }

    void products(String rows) throws IOException {
        Files.writeString(folder.resolve("products.csv"), "product,liability,from,to\n" + rows);
    }

    /** The returns of the book as it stands now, under the shipped law. */
    Returns returns() {
        return returns(LAW);
    }

    Returns returns(Law law) {
        return new Returns(Book.open(folder), ledger, law);
    }

    Period period(String name) {
        return returns().calendar().named(YearMonth.parse(name)).orElseThrow();
    }

    VatReturn of(String period) {
        return returns().of(period(period));
    }

    /** Leaves the open questions that hold a close as they are. */
    void setAside(String period) {
        for (Query query : of(period).holdingClose()) {
            ledger.decide(
                    new Decision(
                            0,
                            Decision.Target.QUERY,
                            query.id(),
                            Decision.Action.SET_ASIDE,
                            "",
                            "Known",
                            "A. Tester",
                            LocalDate.of(2026, 10, 31)));
        }
    }

    /** Closes a period, once its open questions are set aside. */
    VatReturn close(String period) {
        setAside(period);
        return ((CloseResult.Closed) closing().close(period(period))).vatReturn();
    }

    /** What differs where the closed periods are worked out again. */
    List<String> differences() {
        List<String> found = new ArrayList<>();
        for (Close close : ledger.closes()) {
            Recomputation.check(Book.open(folder), ledger, close, f -> found.add(f.toString()));
        }
        return found;
    }

    Closing closing() {
        return new Closing(ledger, returns());
    }

    static List<String> figures(VatReturn vatReturn) {
        return vatReturn.boxes().stream().map(BoxFigure::text).toList();
    }

    static List<String> queries(VatReturn vatReturn) {
        return vatReturn.queries().stream().map(Query::id).toList();
    }

    static List<Treated> treated(Pack pack) {
        List<Treated> treated = new ArrayList<>();
        pack.forEachTreated(treated::add);
        return treated;
    }

    @Override
    public void close() {
        ledger.close();
    }
}

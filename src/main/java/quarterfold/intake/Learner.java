package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import quarterfold.ledger.Book;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.Line;
import quarterfold.ledger.Settings;

/**
 * Works out how to read a report no layout knows, and proves it: finds the encoding, the table in
 * the file and what each column is for, searches for sums that hold on every row and for the whole
 * file, and reads the file with the layout so found as an import would. What cannot be found is a
 * question; what does not tie is told.
 */
public final class Learner {
    private static final int LOOKED_AT = 1 << 16;

    /** Looks for a table in one sheet. */
    private interface Search {
        Optional<TableFinder.Found> find(Grid grid);
    }

    private final Vocabulary words = Vocabulary.load();
    private final NumberText text = new NumberText(words.currencies());
    private final KindFinder kinds = new KindFinder(words);
    private final TableFinder finder = new TableFinder(words, text);
    private final UndatedFinder undated = new UndatedFinder(finder, words, text);
    private final ShapeFinder shapeFinder = new ShapeFinder(finder, words, text, kinds);
    private final Settings book;

    public Learner(Settings book) {
        this.book = book;
    }

    /** The name a layout of this file would have: its own, without digits, months and endings. */
    public static String nameOf(Path file) {
        return ReportName.of(file);
    }

    /**
     * Learns a file. Nothing is written.
     *
     * @param name of the layout to make
     * @param answers to questions an earlier call asked, by their ids
     * @throws IOException if the file cannot be read
     */
    public Learned learn(Path file, String name, Map<String, String> answers) throws IOException {
        return learn(file, name, answers, Optional.empty());
    }

    /**
     * Learns a file anew. What a person wrote into the layout before that learning does not find
     * stays, such as which rows of earlier files count, and the file is read with it too; what the
     * file does not read with is left as a comment. Nothing is written.
     *
     * @param before the text of the layout of that name; see {@link #before}
     */
    public Learned learn(
            Path file, String name, Map<String, String> answers, Optional<String> before)
            throws IOException {
        return learn(file, name, answers, before, line -> {});
    }

    /**
     * The text of the book's own layout of that name, where there is one.
     *
     * @throws LedgerException if it cannot be read
     */
    public static Optional<String> before(Book book, String name) throws LedgerException {
        return OwnLayouts.text(book, name);
    }

    /**
     * Writes a layout into the book's folder of layouts, as it was proved; whole or not at all.
     *
     * @param replace whether one of the same name may be replaced
     * @return the file; nothing where one of that name says something else and may not be replaced
     * @throws LedgerException if it cannot be written
     */
    public static Optional<Path> write(Book book, Learned learned, boolean replace)
            throws LedgerException {
        String yaml = learned.yaml().orElseThrow();
        boolean other = before(book, learned.name()).filter(old -> !old.equals(yaml)).isPresent();
        return other && !replace
                ? Optional.empty()
                : Optional.of(OwnLayouts.write(book, learned.name(), yaml));
    }

    /** {@code lines} is given each line an import would enter, where a layout was found. */
    Learned learn(Path file, String name, Map<String, String> answers, Consumer<Line> lines)
            throws IOException {
        return learn(file, name, answers, Optional.empty(), lines);
    }

    Learned learn(
            Path file,
            String name,
            Map<String, String> answers,
            Optional<String> before,
            Consumer<Line> lines)
            throws IOException {
        Findings findings = new Findings(answers, OldLayout.answers(name, before));
        String own = String.valueOf(file.getFileName());
        try (Tables tables = Tables.open(file, own)) {
            TableFinder.Found table = table(file, own, tables, findings);
            boolean dates = tables.hasNativeDates();
            Optional<ShapeFinder.Shapes> shapes =
                    table.dated().isPresent() ? Optional.empty() : shapeFinder.find(table);
            if (shapes.isPresent()) {
                Findings apart = findings.afresh();
                ShapesMaker maker = new ShapesMaker(shapes.get(), dates, words, text, kinds, apart);
                Optional<Layout> layout = maker.make(name, own);
                if (!maker.isSummary()) {
                    return finish(tables, name, own, table, maker, layout, apart, before, lines);
                }
            }
            tellAbove(table, findings);
            LayoutMaker maker =
                    new LayoutMaker(ShapePart.only(table), dates, words, text, kinds, findings);
            Optional<Layout> layout = maker.make(name, own);
            return finish(tables, name, own, table, maker, layout, findings, before, lines);
        } catch (BadFile e) {
            findings.unsound(e.problem().toString());
            return learned(name, Optional.empty(), List.of(), findings, 0, 0);
        }
    }

    /** Rows above the names of columns are not read, so they may not be rows of another table. */
    private void tellAbove(TableFinder.Found table, Findings findings) {
        List<Grid.Line> dated = table.preamble().stream().filter(finder::hasDateAndNumber).toList();
        if (dated.size() > 1) {
            findings.unsound(
                    "rows above the column names have dates and amounts too (%,d, the first in row %d); expected all of them below names of their own, or a file of their own"
                            .formatted(dated.size(), dated.get(0).number()));
        }
    }

    /**
     * Whether a file may hold a table: any row with a date and a number, rows with numbers below
     * column names and a date, or cells not to be read.
     */
    boolean hasTable(Path file, String name) throws IOException {
        try (Tables tables = Tables.open(file, name)) {
            return best(file, name, tables, finder::find).isPresent()
                    || best(file, name, tables, undated::find).isPresent();
        } catch (BadFile e) {
            return hasCells(file);
        }
    }

    /** Whether a text that cannot be read as a table has rows of three cells, as a table would. */
    private static boolean hasCells(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(LOOKED_AT), StandardCharsets.ISO_8859_1)
                    .lines()
                    .anyMatch(line -> line.matches(".*[,;\t|].*[,;\t|].*"));
        }
    }

    private TableFinder.Found table(Path file, String own, Tables tables, Findings findings)
            throws BadFile, IOException {
        Optional<TableFinder.Found> dated = best(file, own, tables, finder::find);
        Optional<TableFinder.Found> below =
                dated.flatMap(TableFinder.Found::header).isPresent()
                        ? Optional.empty()
                        : best(file, own, tables, undated::find);
        if (below.filter(b -> dated.filter(d -> !isAbove(d, b)).isEmpty()).isPresent()) {
            return undated.dated(below.get(), findings);
        }
        if (dated.isEmpty()) {
            throw new BadFile(
                    own,
                    "found no row with a date and a number; expected a table of dated amounts, such as 2026-09-30,sale,120.00");
        }
        return dated.get();
    }

    /** Whether the rows that look like a table stand above the column names of another. */
    private static boolean isAbove(TableFinder.Found dated, TableFinder.Found other) {
        long names = other.header().orElseThrow().number();
        return dated.body().size() < other.body().size()
                && dated.body().stream().allMatch(line -> line.number() < names);
    }

    private static Optional<TableFinder.Found> best(
            Path file, String own, Tables tables, Search search) throws BadFile, IOException {
        if (tables.hasNativeDates()) {
            return best(tables, Layout.Shape.COMMA, search);
        }
        Optional<TableFinder.Found> best = Optional.empty();
        for (Layout.Shape shape : DelimiterFinder.find(tables, own, EncodingFinder.find(file))) {
            if (best.isEmpty()) {
                best = best(tables, shape, search);
            }
        }
        return best;
    }

    private static Optional<TableFinder.Found> best(
            Tables tables, Layout.Shape shape, Search search) throws BadFile, IOException {
        Optional<TableFinder.Found> best = Optional.empty();
        for (String table : tables.names()) {
            Optional<TableFinder.Found> found = search.find(Grid.read(tables, table, shape));
            if (found.isPresent() && (best.isEmpty() || found.get().score() > best.get().score())) {
                best = found;
            }
        }
        return best;
    }

    private Learned finish(
            Tables tables,
            String name,
            String own,
            TableFinder.Found table,
            Making maker,
            Optional<Layout> layout,
            Findings findings,
            Optional<String> before,
            Consumer<Line> lines)
            throws BadFile, IOException {
        if (layout.isEmpty() || !findings.canBeWritten()) {
            return learned(name, Optional.empty(), maker.found(), findings, table.body().size(), 0);
        }
        Layout alone = LayoutParts.withUnits(layout.get(), book.currency(), words.currencies());
        String sheet = table.grid().table();
        OldLayout earlier = new OldLayout(tables, sheet, own, book, before, findings.used());
        OldColumns.Kept columns = earlier.columns(alone, table);
        Layout made = columns.layout();
        List<String> comments = comments(own, maker.found(), findings);
        String yaml = LayoutWriter.write(made, "Learned from " + own, comments);
        Problems problems = new Problems();
        Layout read = LayoutReader.read(made.name() + ".yaml", yaml, problems);
        problems.kept().forEach(p -> findings.unsound(p.toString()));
        if (!problems.none()) {
            return learned(made.name(), Optional.empty(), maker.found(), findings, 0, 0);
        }
        OldRules rules = earlier.rules(read, yaml);
        rules.answered().forEach(findings::close);
        Optional<HandWritten.Kept> old = earlier.keep(read, rules.into(yaml));
        Layout whole =
                old.map(o -> LayoutReader.read(made.name() + ".yaml", o.yaml(), problems))
                        .orElse(read);
        List<Line> kept = new ArrayList<>();
        Trial trial = Trial.run(tables, own, whole, sheet, book, kept::add);
        trial.problems().kept().stream().limit(50).forEach(p -> findings.fault(p.toString()));
        trial.raised().forEach(findings::fault);
        if (trial.tied().settlements() > 0) {
            findings.prove(
                    "rows sum to the stated payout in %,d of the settlements, %s in all"
                            .formatted(
                                    trial.tied().settlements(), Trial.text(trial.tied().paid())));
        }
        if (trial.problems().none()) {
            findings.prove(
                    "all %,d rows read: %,d entries, %,d %s set aside, money %s"
                            .formatted(
                                    trial.rows(),
                                    trial.entries(),
                                    trial.setAside(),
                                    trial.setAside() == 1 ? "row" : "rows",
                                    Trial.text(trial.money())));
            maker.ownTotal().ifPresent(o -> o.hold(trial.money(), made, findings));
            kept.forEach(lines);
        }
        LayoutNotes.tell(whole, tables, own, book, findings);
        List<String> proved = comments(own, maker.found(), findings);
        columns.notes().forEach(findings::note);
        rules.notes().forEach(findings::note);
        old.ifPresent(o -> o.notes().forEach(findings::note));
        return learned(
                made.name(),
                Optional.of(
                        rules.into(LayoutWriter.write(made, "Learned from " + own, proved))
                                + old.map(HandWritten.Kept::added).orElse("")),
                maker.found(),
                findings,
                trial.rows(),
                trial.entries());
    }

    private static List<String> comments(String own, List<String> found, Findings findings) {
        List<String> comments = new ArrayList<>();
        comments.add(
                "Worked out from "
                        + own
                        + " by quarterfold learn. Correct what is wrong; import reads with it from then on.");
        comments.add("docs/formats.md explains every key.");
        findings.proofs().forEach(p -> comments.add("Proved: " + p));
        findings.faults().stream().limit(20).forEach(f -> comments.add("Does not tie: " + f));
        findings.notes().forEach(n -> comments.add("Note: " + n));
        found.forEach(comments::add);
        return comments;
    }

    private static Learned learned(
            String name,
            Optional<String> yaml,
            List<String> found,
            Findings findings,
            long rows,
            long entries) {
        return new Learned(
                name,
                yaml,
                found,
                findings.proofs(),
                Stream.concat(findings.settled().stream(), findings.notes().stream()).toList(),
                findings.faults(),
                findings.open(),
                findings.used(),
                rows,
                entries);
    }
}

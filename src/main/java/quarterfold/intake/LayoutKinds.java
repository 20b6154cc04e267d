package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.ledger.Book;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Decision.Target;
import quarterfold.ledger.Kind;
import quarterfold.ledger.KindDecisions;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.Line;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;

/**
 * Keeps in a book's layouts what people decided that rows are, which a layout did not know: files
 * to come are read so. A layout is changed only where the file that was asked about reads with it
 * to the same money.
 */
public final class LayoutKinds {
    private final Book book;
    private final Ledger ledger;

    /** {@code ledger} is the book's. */
    public LayoutKinds(Book book, Ledger ledger) {
        this.book = book;
        this.ledger = ledger;
    }

    /**
     * Brings the layout that a question came of to say what was decided on the question last; or
     * again what it said and asked, once that is undone.
     *
     * @return what became of the layout, for a person
     * @throws LedgerException if the layout or the file cannot be read, or the layout not be
     *     written
     */
    public String keep(RaisedQuery.Name query) throws LedgerException {
        Optional<Source> source =
                ledger.sources().stream().filter(s -> s.id() == query.source()).findFirst();
        if (source.isEmpty()) {
            return "No layout was changed: there is no source %d.".formatted(query.source());
        }
        String name = source.get().layout();
        Optional<String> text = OwnLayouts.text(book, name);
        if (text.isEmpty()) {
            return Layouts.shippedNames().contains(name)
                    ? "The layout %s is not the book's own and was not changed; copy it into the book's folder layouts to say there what such rows are."
                            .formatted(name)
                    : "No layout was changed: the book's folder layouts has no %s.yaml; say in the layout that reads such files what such rows are, for files to come."
                            .formatted(name);
        }
        try {
            return keep(query, source.get(), text.get());
        } catch (UncheckedIOException | IOException e) {
            throw Importer.unreadable(Path.of(source.get().name()), e);
        }
    }

    private String keep(RaisedQuery.Name query, Source source, String text) throws IOException {
        String name = source.layout();
        Problems problems = new Problems();
        KindRule.all(name, text, query.about(), problems);
        if (!problems.none()) {
            return "The layout %s was not changed, for it cannot be read: %s"
                    .formatted(name, problems.kept().get(0));
        }
        Optional<Kind> decided = decided(query, source);
        Optional<String> changed = changed(query, source, text, decided);
        if (changed.isEmpty()) {
            return "The layout %s was not changed: no rule about just '%s' could be found in it and changed; say there what such rows are, for files to come."
                    .formatted(name, query.about());
        }
        if (!readsAlike(source, text, changed.get())) {
            return "The layout %s was not changed: with the change %s could not be read again to the same money; say there what such rows are, for files to come."
                    .formatted(name, source.name());
        }
        Optional<String> meanwhile = OwnLayouts.text(book, name);
        if (meanwhile.filter(now -> !now.equals(text)).isPresent()) {
            return keep(query, source, meanwhile.get()); // another decision was kept at once
        }
        if (!changed.get().equals(text)) {
            OwnLayouts.write(book, name, changed.get());
        }
        return decided.isPresent()
                ? "The layout %s says so too: '%s' is %s, for files to come."
                        .formatted(name, query.about(), decided.get().code())
                : "The layout %s asks again what '%s' is.".formatted(name, query.about());
    }

    /** By the last decision that holds of such a question. */
    private Optional<Kind> decided(RaisedQuery.Name query, Source source) {
        return Decision.inForce(ledger.decisions()).stream()
                .filter(d -> d.target() == Target.QUERY)
                .filter(d -> isAlike(query, source, d))
                .reduce((first, last) -> last)
                .flatMap(KindDecisions::kind);
    }

    /**
     * The layout's text, saying the kind that was decided, or what it said and asked when the file
     * came; where every rule that asked then can be made to say just that.
     */
    private Optional<String> changed(
            RaisedQuery.Name query, Source source, String text, Optional<Kind> decided) {
        List<KindRule> asking =
                ledger.layoutText(source).stream()
                        .flatMap(
                                t ->
                                        KindRule.all(
                                                source.layout(), t, query.about(), new Problems())
                                                .stream())
                        .filter(rule -> !rule.rule().ask().isEmpty())
                        .toList();
        Optional<String> changed = Optional.of(text).filter(t -> !asking.isEmpty());
        for (KindRule then : asking) {
            changed = changed.flatMap(t -> then.changed(source.layout(), t, decided));
        }
        return changed;
    }

    /** Whether a decision is on the question, or on the same of another file of the layout. */
    private boolean isAlike(RaisedQuery.Name query, Source source, Decision decision) {
        return RaisedQuery.Name.parse(decision.about())
                .filter(q -> q.isOfKind() && q.about().equals(query.about()))
                .filter(
                        q ->
                                ledger.sources().stream()
                                        .anyMatch(
                                                s ->
                                                        s.id() == q.source()
                                                                && s.layout()
                                                                        .equals(source.layout())))
                .isPresent();
    }

    /** Whether the file makes the same lines of the same money by both, but for kinds. */
    private boolean readsAlike(Source source, String before, String now) throws IOException {
        Optional<Path> copy = book.archive().whole(source.sha256());
        if (copy.isEmpty()) {
            return false;
        }
        Problems problems = new Problems();
        try (Reading old = open(source, copy.get(), before, problems);
                Reading changed = open(source, copy.get(), now, problems)) {
            boolean more = problems.none() && old.next();
            while (more) {
                if (!changed.next() || !isAlike(lines(old), lines(changed))) {
                    return false;
                }
                more = problems.none() && old.next();
            }
            return problems.none() && !changed.next();
        } catch (BadFile e) {
            return false;
        }
    }

    private Reading open(Source source, Path copy, String yaml, Problems problems)
            throws BadFile, IOException {
        Layouts layouts = Layouts.only(source.layout(), yaml);
        return Readings.open(
                new Brought(copy, source.name(), book.settings(), layouts, problems),
                Optional.of(source.layout()));
    }

    private static List<Line> lines(Reading reading) {
        List<Line> lines = new ArrayList<>();
        reading.read(
                new RowReader.Output() {
                    @Override
                    public void line(Line line) {
                        lines.add(line);
                    }

                    @Override
                    public void setAside(long row, String reason) {}
                });
        return lines;
    }

    private static boolean isAlike(List<Line> some, List<Line> others) {
        boolean alike = some.size() == others.size();
        for (int i = 0; alike && i < some.size(); i++) {
            alike =
                    some.get(i).signedMoney().equals(others.get(i).signedMoney())
                            && some.get(i).taxPoint().equals(others.get(i).taxPoint());
        }
        return alike;
    }
}

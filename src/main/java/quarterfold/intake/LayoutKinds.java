package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.intake.Layout.Enter;
import quarterfold.intake.Layout.Rule;
import quarterfold.intake.Layout.Signs;
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

    /** What a rule is to say: the kind of its rows, and what is asked about them. */
    private record Wanted(Kind kind, String ask) {}

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
            return "The layout %s is not the book's own and was not changed; copy it into the book's folder layouts to say there what such rows are."
                    .formatted(name);
        }
        try {
            Optional<Wanted> wanted = wanted(query, source.get());
            Optional<String> changed =
                    wanted.isEmpty()
                            ? Optional.empty()
                            : changed(name, text.get(), query.about(), wanted.get());
            if (changed.isEmpty() || !readsAlike(source.get(), text.get(), changed.get())) {
                return "The layout %s was not changed: it has no rule about just '%s' that could be; see to it there, for files to come."
                        .formatted(name, query.about());
            }
            if (!changed.get().equals(text.get())) {
                OwnLayouts.write(book, name, changed.get());
            }
            return wanted.get().ask().isEmpty()
                    ? "The layout %s says so too: '%s' is %s, for files to come."
                            .formatted(name, query.about(), wanted.get().kind().code())
                    : "The layout %s asks again what '%s' is.".formatted(name, query.about());
        } catch (UncheckedIOException | IOException e) {
            throw Importer.unreadable(Path.of(source.get().name()), e);
        }
    }

    /** By the last decision that holds of such a question; else as the file's layout had it. */
    private Optional<Wanted> wanted(RaisedQuery.Name query, Source source) {
        Optional<Kind> decided =
                Decision.inForce(ledger.decisions()).stream()
                        .filter(d -> d.target() == Target.QUERY)
                        .filter(d -> isAlike(query, source, d))
                        .reduce((first, last) -> last)
                        .flatMap(KindDecisions::kind);
        return decided.map(kind -> new Wanted(kind, ""))
                .or(
                        () ->
                                ledger.layoutText(source)
                                        .flatMap(t -> Place.of(source.layout(), t, query.about()))
                                        .map(
                                                place ->
                                                        new Wanted(
                                                                place.kind(), place.rule().ask())));
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

    /** A rule in a layout, and the shape that has it. */
    private record Place(Layout layout, Layout shape, Rule rule) {

        /** Where the text of a layout has a rule about just such rows. */
        static Optional<Place> of(String name, String yaml, String about) {
            Problems problems = new Problems();
            Layout layout = LayoutReader.read(name + ".yaml", yaml, problems);
            return layout.all().stream()
                    .flatMap(shape -> shape.rules().stream().map(r -> new Place(layout, shape, r)))
                    .filter(p -> problems.none() && Asked.about(p.rule.when()).equals(about))
                    .findFirst();
        }

        Kind kind() {
            return Asked.kind(rule);
        }

        /** As printed, an amount's sign goes by the kind: where that turns, it is the owner's. */
        Optional<Signs> signs(Kind wanted) {
            boolean turns =
                    rule.signs(shape) == Signs.DOCUMENT && wanted.direction() != kind().direction();
            return turns ? Optional.of(Signs.OWNER) : rule.own();
        }

        /** The amounts of an entry: the one amount of a customs entry is its VAT. */
        Map<Field, String> amounts(Enter enter, Kind wanted) {
            boolean customs = wanted == Kind.IMPORT_VAT_PAID;
            Field from = customs ? Field.GROSS : Field.VAT;
            boolean alone = enter.amounts().keySet().equals(Set.of(from));
            return alone && customs != (kind() == Kind.IMPORT_VAT_PAID)
                    ? Map.of(
                            customs ? Field.VAT : Field.GROSS,
                            enter.amounts().values().iterator().next())
                    : enter.amounts();
        }

        Rule as(Wanted wanted) {
            return new Rule(
                    rule.when(),
                    rule.enter().stream()
                            .map(
                                    e ->
                                            e.kind() == kind()
                                                    ? new Enter(
                                                            wanted.kind(),
                                                            amounts(e, wanted.kind()),
                                                            e.set())
                                                    : e)
                            .toList(),
                    rule.setAside(),
                    wanted.ask(),
                    rule.line(),
                    signs(wanted.kind()));
        }
    }

    /** The layout's text with what is wanted, where it then says just that. */
    private static Optional<String> changed(String name, String yaml, String about, Wanted wanted) {
        Optional<Place> found = Place.of(name, yaml, about);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        Place place = found.get();
        Rule rule = place.rule();
        Rule expected = place.as(wanted);
        RuleText text = new RuleText(yaml, rule.line());
        text.kind(place.kind(), wanted.kind());
        if (!rule.ask().equals(wanted.ask())) {
            text.askNoMore();
            if (!wanted.ask().isEmpty()) {
                text.ask(wanted.ask());
            }
        }
        if (!expected.own().equals(rule.own())) {
            text.signs(expected.own().orElseThrow());
        }
        for (int i = 0; i < rule.enter().size(); i++) {
            Map<Field, String> now = expected.enter().get(i).amounts();
            if (!now.equals(rule.enter().get(i).amounts())) {
                text.amount(now.keySet().iterator().next());
            }
        }
        Problems problems = new Problems();
        Layout now = LayoutReader.read(name + ".yaml", text.yaml(), problems);
        List<Rule> wantedRules =
                rules(place.layout()).stream().map(r -> r.equals(rule) ? expected : r).toList();
        return problems.none() && bare(rules(now)).equals(bare(wantedRules))
                ? Optional.of(text.yaml())
                : Optional.empty();
    }

    private static List<Rule> rules(Layout layout) {
        return layout.all().stream().flatMap(shape -> shape.rules().stream()).toList();
    }

    /** Without where they stand in their file. */
    private static List<Rule> bare(List<Rule> rules) {
        return rules.stream()
                .map(r -> new Rule(r.when(), r.enter(), r.setAside(), r.ask(), 0, r.own()))
                .toList();
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

package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import quarterfold.ledger.Book;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Finding;
import quarterfold.ledger.Finding.Check;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.Line;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Source;

/**
 * Reads files of a book again as they were read when they came, entering nothing, and compares what
 * they say with what the ledger has of them: line by line, and the rows set aside. For one thread.
 */
public final class Rereader {
    private static final int BATCH = 8_192;

    private final Book book;
    private final Ledger ledger;
    private final Layouts layouts;

    /** {@code ledger} is the book's. */
    public Rereader(Book book, Ledger ledger) throws LedgerException {
        this.book = book;
        this.ledger = ledger;
        this.layouts = Importer.layouts(book);
    }

    /**
     * Tells of each difference between a source's file and the ledger.
     *
     * @param copy the file, with the source's bytes
     * @throws LedgerException if the file or the ledger cannot be read
     */
    public void compare(Source source, Path copy, Consumer<Finding> found) throws LedgerException {
        Optional<Layouts> kept = Shelf.kept(ledger, source);
        Comparison comparison = new Comparison(source, found, kept.isPresent());
        Layouts layouts = kept.orElse(this.layouts);
        if (!Readings.has(layouts, source.layout())) {
            comparison.tell(
                    "it was read with the layout %s, which is not there now; expected it in the book's folder layouts"
                            .formatted(source.layout()));
            return;
        }
        Problems problems = new Problems();
        Brought file = new Brought(copy, source.name(), book.settings(), layouts, problems);
        try (Reading reading = Readings.open(file, Optional.of(source.layout()))) {
            if (problems.none()) {
                Shelf shelf = new Shelf(book, ledger, layouts);
                Repeats repeats = Repeats.of(reading, source.name(), shelf, source.id());
                Transfer transfer = new Transfer(reading, repeats, problems);
                transfer.run(comparison);
                if (problems.none()) {
                    comparison.finish(transfer.rowsRead());
                    comparison.raised(transfer);
                }
            }
        } catch (BadFile e) {
            problems.add(e.problem());
        } catch (UncheckedIOException | IOException e) {
            throw Importer.unreadable(copy, e);
        }
        if (!problems.none()) {
            comparison.tell(
                    "it can no longer be read as it was, with the layout %s: %s"
                            .formatted(source.layout(), problems.kept().get(0)));
        }
        if (comparison.differs && kept.isEmpty() && isOwn(source.layout())) {
            comparison.tell(
                    "the layout %s is the book's own, and may have changed since the file came"
                            .formatted(source.layout()));
        }
    }

    private boolean isOwn(String layout) {
        return layouts.own().stream().anyMatch(form -> form.name().equals(layout));
    }

    /** What a file says beside what the ledger has of it. */
    private final class Comparison implements RowReader.Output {
        private final Source source;
        private final Consumer<Finding> found;
        private final List<Line> lines = new ArrayList<>();
        private final List<SetAside> asides = new ArrayList<>();
        private final List<PublishedRate> rates = new ArrayList<>();
        private final List<String> documents = new ArrayList<>();
        private final boolean kept;
        private final AskedAgain asked;
        private Optional<Ask> ask = Optional.empty();
        private long compared;
        private boolean differs;

        /**
         * {@code kept}: whether the layout was kept; if not, the file came to a program that noted
         * nothing of what is asked about rows, and asked it in other words.
         */
        Comparison(Source source, Consumer<Finding> found, boolean kept) {
            this.source = source;
            this.found = found;
            this.kept = kept;
            asked = new AskedAgain(ledger.asked(source.id()));
        }

        @Override
        public void line(Line line) {
            lines.add(line);
            ask.filter(a -> a.isOf(line)).ifPresent(a -> asked.see(a.about(), number()));
            if (lines.size() == BATCH) {
                compare();
            }
        }

        /** The number that the line given last has, if the ledger has it. */
        private long number() {
            return source.firstEntry() + compared + lines.size() - 1;
        }

        @Override
        public void asked(Ask next) {
            ask = Optional.of(next);
        }

        @Override
        public void rate(PublishedRate rate) {
            rates.add(rate);
        }

        @Override
        public void setAside(long row, String reason) {
            asides.add(new SetAside(source.id(), row, reason));
        }

        @Override
        public void attach(Named document) {
            documents.add("row %d names %s".formatted(document.row(), document.file()));
        }

        private void compare() {
            long first = source.firstEntry() + compared;
            Map<Long, Line> entries = new HashMap<>();
            if (source.entries() > compared) {
                for (Entry entry : ledger.entries(source, first, lines.size())) {
                    entries.put(entry.number(), entry.line());
                }
            }
            for (int i = 0; i < lines.size(); i++) {
                Line entered = entries.get(first + i);
                if (entered == null) {
                    tell(
                            "row %d makes an entry; expected entry %d of it in the ledger, where there is none"
                                    .formatted(lines.get(i).row(), first + i));
                } else if (!entered.equals(lines.get(i))) {
                    differ(first + i, entered, lines.get(i));
                }
            }
            compared += lines.size();
            lines.clear();
        }

        private void differ(long number, Line entered, Line read) {
            differs = true;
            Map<String, String> there = LineFields.of(entered);
            LineFields.of(read)
                    .forEach(
                            (field, text) -> {
                                String has = there.getOrDefault(field, "");
                                if (!has.equals(text)) {
                                    found.accept(
                                            new Finding(
                                                    Check.ENTRIES,
                                                    "entry %d [%s]".formatted(number, field),
                                                    "found '%s'; expected '%s', as row %d of %s has it"
                                                            .formatted(
                                                                    has,
                                                                    text,
                                                                    read.row(),
                                                                    source.name())));
                                }
                            });
        }

        void finish(long rowsRead) {
            compare();
            if (compared < source.entries()) {
                tell(
                        "it makes %d entries; found %d of it in the ledger"
                                .formatted(compared, source.entries()));
            }
            if (rowsRead != source.rowsRead()) {
                tell(
                        "it has %d rows; found %d in the ledger's count of them"
                                .formatted(rowsRead, source.rowsRead()));
            }
            rates();
            documents();
            if (kept) {
                asked.difference().ifPresent(this::tell);
            }
            Set<SetAside> there = new LinkedHashSet<>(ledger.setAside(source.id()));
            Set<SetAside> again = new LinkedHashSet<>(asides);
            again.stream()
                    .filter(a -> !there.contains(a))
                    .forEach(
                            a ->
                                    tell(
                                            "row %d is set aside (%s); expected it among the ledger's rows set aside, where it is not"
                                                    .formatted(a.row(), a.reason())));
            there.stream()
                    .filter(a -> !again.contains(a))
                    .forEach(
                            a ->
                                    tell(
                                            "row %d is not set aside; found it set aside in the ledger (%s)"
                                                    .formatted(a.row(), a.reason())));
        }

        private void rates() {
            List<PublishedRate> there =
                    ledger.rates().of(source).stream().map(HeldRate::rate).toList();
            if (rates.equals(there)) {
                return;
            }
            rates.stream()
                    .filter(r -> !there.contains(r))
                    .forEach(r -> tell("it states %s; expected it in the ledger".formatted(r)));
            there.stream()
                    .filter(r -> !rates.contains(r))
                    .forEach(
                            r -> tell("it does not state %s; found it in the ledger".formatted(r)));
        }

        /** The documents that rows name are those attached to them. */
        private void documents() {
            List<String> there =
                    ledger.attachments().of(source).stream()
                            .map(a -> "row %d names %s".formatted(a.row(), a.file()))
                            .toList();
            if (!documents.equals(there)) {
                tell(
                        "its rows name %d documents; found %d others attached to them in the ledger, or other rows"
                                .formatted(documents.size(), there.size()));
            }
        }

        private boolean isCompared(RaisedQuery query) {
            return kept || !(query.name().isOfKind() || query.code().equals(AgainstKind.CODE));
        }

        /** The questions that the reading raises are those the ledger keeps. */
        void raised(Transfer transfer) {
            List<RaisedQuery> raised = new ArrayList<>();
            transfer.raise(
                    (code, about, question) ->
                            raised.add(new RaisedQuery(source.id(), code, about, question)));
            raised.removeIf(q -> !isCompared(q));
            List<RaisedQuery> there =
                    ledger.raised().stream()
                            .filter(q -> q.source() == source.id() && isCompared(q))
                            .toList();
            if (!raised.equals(there)) {
                tell(
                        "its settlements raise %d questions; found %d others in the ledger, or other words"
                                .formatted(raised.size(), there.size()));
            }
        }

        void tell(String text) {
            differs = true;
            found.accept(new Finding(Check.ENTRIES, source.name(), text));
        }
    }
}

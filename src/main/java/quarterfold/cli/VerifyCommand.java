package quarterfold.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import quarterfold.intake.Rereader;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.Close;
import quarterfold.ledger.Finding;
import quarterfold.ledger.Finding.Check;
import quarterfold.ledger.Source;
import quarterfold.papers.VerifyJson;
import quarterfold.period.Period;
import quarterfold.period.Recomputation;

@Command(
        name = "verify",
        description = {
            "Checks a book against itself: that every file kept is the one that was imported, that the ledger says"
                    + " what the files say, that every closed return comes out again as it was closed, with the"
                    + " tables, settings and decisions it was closed with, and that no entry is missing.",
            ""
        },
        footer = {
            "",
            "Changes nothing. Exit code 1 where anything is not as it must be.",
            "",
            "Examples:",
            "  quarterfold --book my-book verify",
            "  quarterfold --book my-book verify 2026-09"
        },
        mixinStandardHelpOptions = true)
final class VerifyCommand implements Callable<Integer> {

    /** From so many entries on, a person is told what is being done. */
    private static final long LONG = 100_000;

    @ParentCommand private Main main = new Main();
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(
            paramLabel = "PERIOD",
            arity = "0..1",
            description = "only the files and the close of this period, such as 2026-09")
    private Optional<String> period = Optional.empty();

    @Option(names = "--json", description = "for programs: docs/formats.md says the shape")
    private boolean json;

    private final List<Finding> findings = new ArrayList<>();
    private final List<String> closed = new ArrayList<>();
    private long sources;
    private long documents;
    private long entries;
    private long occasions;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try (OpenBook book = OpenBook.of(main)) {
            Optional<Period> named = period.map(book::period);
            boolean readable = book.ledger().check(findings::add);
            if (readable) {
                sources(book, named);
                returns(book, named);
            }
            if (json) {
                out.println(VerifyJson.of(sources, documents, entries, closed, findings));
            } else {
                print(book.ledger().lastEntry(), readable, out);
            }
        }
        return findings.isEmpty() ? ExitCode.DONE : ExitCode.REFUSED;
    }

    private void sources(OpenBook book, Optional<Period> named) {
        Rereader rereader = new Rereader(book.book(), book.ledger());
        List<Source> all = book.ledger().sources();
        for (Source source : all) {
            if (named.isEmpty()
                    || source.dates().filter(d -> overlap(d, named.get())).isPresent()) {
                progress(
                        source.entries(), "reading %s again".formatted(Texts.plain(source.name())));
                source(source, rereader, book);
                book.ledger().attachments().of(source).forEach(a -> document(a, source, book));
            }
        }
    }

    private void source(Source source, Rereader rereader, OpenBook book) {
        sources++;
        Optional<Path> whole = book.book().archive().whole(source.sha256());
        if (whole.isPresent()) {
            entries += source.entries();
            rereader.compare(source, whole.get(), findings::add);
            return;
        }
        notWhole(source.name(), source.sha256(), book);
    }

    private void document(Attachment document, Source source, OpenBook book) {
        documents++;
        if (book.book().archive().whole(document.sha256()).isEmpty()) {
            notWhole(
                    "%s row %d, %s".formatted(source.name(), document.row(), document.file()),
                    document.sha256(),
                    book);
        }
    }

    private void notWhole(String place, String sha256, OpenBook book) {
        Optional<Path> other = book.book().archive().named(sha256);
        findings.add(
                new Finding(
                        Check.SOURCES,
                        place,
                        other.map(
                                        path ->
                                                "the copy sources/%s is not the file that was imported; expected the SHA-256 %s; put the file back from another copy"
                                                        .formatted(path.getFileName(), sha256))
                                .orElse(
                                        "found no copy in sources; expected a file with the SHA-256 %s; put the file back from another copy"
                                                .formatted(sha256))));
    }

    private static boolean overlap(Source.Dates dates, Period period) {
        return !dates.last().isBefore(period.start()) && !dates.first().isAfter(period.end());
    }

    private void returns(OpenBook book, Optional<Period> named) {
        for (Close close : book.ledger().closes()) {
            if (named.isEmpty() || named.get().name().equals(close.period())) {
                progress(close.lastEntry(), "working %s out again".formatted(close.period()));
                occasions += Recomputation.check(book.book(), book.ledger(), close, findings::add);
                closed.add(close.period().toString());
            }
        }
    }

    private void progress(long many, String doing) {
        if (many >= LONG) {
            spec.commandLine().getErr().println(doing + " …");
        }
    }

    private void print(long last, boolean readable, PrintWriter out) {
        line(Check.SOURCES, "%s, byte for byte".formatted(kept()), out);
        line(
                Check.ENTRIES,
                Texts.count(
                        entries, "entry is what its file says", "entries are what their files say"),
                out);
        line(
                Check.RETURNS,
                closed.isEmpty()
                        ? "no closed return to work out again"
                        : "%s: worked out again from %s, the same to the penny"
                                .formatted(
                                        String.join(", ", closed),
                                        Texts.count(occasions, "entry", "entries")),
                out);
        line(
                Check.NUMBERS,
                last == 0
                        ? "no entry yet"
                        : "entries 1 to %s, without a gap"
                                .formatted(Texts.grouped(Long.toString(last))),
                out);
        out.println(
                findings.isEmpty()
                        ? "All is as it must be."
                        : Texts.count(findings.size(), "difference", "differences")
                                + (readable
                                        ? "."
                                        : "; the ledger is broken, so files and returns were not looked at."));
    }

    private String kept() {
        if (documents > 0) {
            return "%s and %s kept are those that were imported"
                    .formatted(
                            Texts.count(sources, "file", "files"),
                            Texts.count(documents, "document", "documents"));
        }
        return Texts.count(sources, "file kept is", "files kept are")
                + (sources == 1 ? " the one that was imported" : " those that were imported");
    }

    private void line(Check check, String well, PrintWriter out) {
        List<Finding> of = findings.stream().filter(f -> f.check() == check).toList();
        out.printf(
                "%-9s %s%n",
                check.code(),
                of.isEmpty() ? well : Texts.count(of.size(), "difference:", "differences:"));
        of.forEach(
                f -> out.printf("  %s: %s%n", Texts.plain(f.place()), Texts.cell(f.text(), 1_000)));
    }
}

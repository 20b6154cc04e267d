package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Archived;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.Source;
import quarterfold.ledger.SourceArchive;

/** The documents that the rows of one file name: found, kept, and attached to their rows. */
final class Attaching {

    /** In bytes: a document of more is no receipt. */
    private static final long LARGEST = 64L << 20;

    private static final String EXPECTED =
            "the name of a file beside the list or in a folder with it, such as receipt-12.jpg";

    private record Kept(Named named, Archived copy) {}

    private final SourceArchive archive;
    private final Ledger ledger;
    private final Piece list;
    private final Claims claims;
    private final List<Named> named = new ArrayList<>();
    private final Map<String, Archived> copies = new LinkedHashMap<>();
    private final List<Kept> kept = new ArrayList<>();

    Attaching(SourceArchive archive, Ledger ledger, Piece list, Claims claims) {
        this.archive = archive;
        this.ledger = ledger;
        this.list = list;
        this.claims = claims;
    }

    void add(Named document) {
        named.add(document);
    }

    /** Finds and copies them; one that is not there is a problem. */
    void keep(Problems problems) throws IOException {
        for (Named each : named) {
            Optional<Piece> document = list.beside().find(each.file());
            if (document.isEmpty()) {
                problems.add(each.problem(notThere(each), EXPECTED));
            } else {
                keep(each, document.get(), problems);
            }
        }
    }

    private static String notThere(Named each) {
        return Beside.path("folder/", each.file()).filter(p -> p.startsWith("folder/")).isEmpty()
                ? ", which is not there, or outside what was brought"
                : ", and no such file was brought with it";
    }

    private void keep(Named each, Piece document, Problems problems) throws IOException {
        if (document.key().equals(list.key())) {
            problems.add(each.problem(", the list itself", EXPECTED));
        } else if (document.size() == 0) {
            problems.add(
                    each.problem(", an empty file", "the document, such as its picture again"));
        } else if (document.size() > LARGEST) {
            problems.add(
                    each.problem(
                            ", a file of %,d bytes".formatted(document.size()),
                            "at most %,d, such as a smaller picture".formatted(LARGEST)));
        } else {
            Archived copy = copy(document);
            Optional<Source> source = ledger.source(copy.sha256());
            if (source.isPresent()) {
                problems.add(
                        each.problem(
                                ", which is in the book as source %d with entries of its own"
                                        .formatted(source.get().id()),
                                "a document that is no report, so that nothing is claimed twice, such as the row left out"));
            } else {
                kept.add(new Kept(each, copy));
                claims.add(document, "%s row %d".formatted(list.name(), each.row()), true);
            }
        }
    }

    private Archived copy(Piece document) throws IOException {
        Archived known = copies.get(document.key());
        if (known == null) {
            try {
                known = document.archive(archive);
            } catch (LedgerException e) {
                if (e.getCause() instanceof BadBytes bad) {
                    throw bad;
                }
                throw e;
            }
            copies.put(document.key(), known);
        }
        return known;
    }

    void attach(FileEntry entry) {
        kept.forEach(k -> entry.attach(k.named().row(), k.named().file(), k.copy().sha256()));
    }

    int count() {
        return kept.size();
    }

    /** Claims the documents of a list that the ledger has already. */
    void claimAgain(Source source) throws IOException {
        for (Attachment each : ledger.attachments().of(source)) {
            Optional<Piece> there = list.beside().find(each.file());
            if (there.isPresent()) {
                claims.add(there.get(), "%s row %d".formatted(source.name(), each.row()), true);
            }
        }
    }

    /** Takes the copies back, since the list was refused. */
    void discard() throws LedgerException {
        for (Archived copy : copies.values()) {
            archive.discard(copy, ledger);
        }
        for (Named each : named) {
            try {
                list.beside().find(each.file()).ifPresent(d -> claims.add(d, list.name(), false));
            } catch (IOException e) {
                // Then it is no file that will be looked at.
            }
        }
    }
}

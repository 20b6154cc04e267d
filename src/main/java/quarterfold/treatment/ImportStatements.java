package quarterfold.treatment;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Profile;

/**
 * Which lines of import VAT certificates and postponed import VAT statements count: each import
 * once, on whatever lists, files and forms of a document it stands, and of a month with an amended
 * document what that one has.
 *
 * <p>The tax authority issues amended statements beside those first issued (its open-source service
 * has a file role for each). An amended document is the whole of its month for its number: a line
 * of the one before that is in it too stays as it is, so that only differences change a return, and
 * one that is not counts no more. Of several amended ones the last that was brought in counts.
 */
public final class ImportStatements {

    /** Of a ledger without imports. */
    static final ImportStatements NONE = new ImportStatements(AmendedDocuments.NONE, Map.of());

    private final Map<Long, Long> sameAs = new HashMap<>();
    private final AmendedDocuments amended;
    private final Map<Long, Boolean> postponed;
    private final Map<ImportKey, List<Entry>> byKey = new HashMap<>();
    private final Map<Long, Set<String>> importers = new HashMap<>();

    private ImportStatements(AmendedDocuments amended, Map<Long, Boolean> postponed) {
        this.amended = amended;
        this.postponed = Map.copyOf(postponed);
    }

    /** The lines of a ledger. */
    static ImportStatements of(Search ledger, Answers answers) {
        Map<Long, Boolean> postponed = new HashMap<>();
        List<Entry> lines = new ArrayList<>();
        Map<Long, Set<String>> importers = new HashMap<>();
        ledger.forEach(
                ImportStatements::isImportVat,
                entry -> {
                    Answered answered = Answered.of(entry, answers);
                    String importer = answered.entry().profile().partyVat();
                    if (!importer.isEmpty()) {
                        importers
                                .computeIfAbsent(entry.source(), s -> new HashSet<>())
                                .add(importer);
                    }
                    if (answered.decided().equals("duplicate")) {
                        return;
                    }
                    boolean stated = ImportKey.isOfDocument(answered.entry());
                    if (stated) {
                        lines.add(answered.entry());
                    }
                    if (entry.kind() == Kind.IMPORT_VAT_POSTPONED) {
                        postponed.put(entry.number(), stated);
                    }
                });
        ImportStatements statements = new ImportStatements(new AmendedDocuments(lines), postponed);
        lines.forEach(statements::meet);
        statements.importers.putAll(importers);
        return statements;
    }

    private static boolean isImportVat(Profile profile) {
        return profile.kind() == Kind.IMPORT_VAT_PAID
                || profile.kind() == Kind.IMPORT_VAT_POSTPONED;
    }

    /** Two of one file may be two imports, which a person must say. */
    private void meet(Entry line) {
        if (replacedBy(line).isPresent() || line.line().document().isEmpty()) {
            return;
        }
        List<Entry> known = byKey.computeIfAbsent(ImportKey.of(line), key -> new ArrayList<>());
        Optional<Entry> same =
                known.stream()
                        .filter(k -> k.kind() == line.kind() && k.source() != line.source())
                        .filter(k -> ImportKey.isOneImporter(k, line))
                        .findFirst();
        same.ifPresentOrElse(s -> sameAs.put(line.number(), s.number()), () -> known.add(line));
    }

    /** The numbers of the importers that the imports of a file state. */
    Set<String> importersIn(long source) {
        return importers.getOrDefault(source, Set.of());
    }

    /** The first entry of the amended document that has replaced this one. */
    public OptionalLong replacedBy(Entry entry) {
        return amended.replacedBy(entry.number());
    }

    /** The lines about whose month the entry asks. */
    Optional<AmendedDocuments.Unplaced> unplaced(Entry entry) {
        return amended.unplaced(entry.number());
    }

    /** The entry of another file that is the same import. */
    OptionalLong sameAs(Entry entry) {
        Long number = sameAs.get(entry.number());
        return number == null ? OptionalLong.empty() : OptionalLong.of(number);
    }

    /** Whether a line is neither replaced nor the same import as one of another file. */
    public boolean counts(Entry entry) {
        return replacedBy(entry).isEmpty() && sameAs(entry).isEmpty();
    }

    /**
     * Whether an entry repeats nothing though an earlier one looks the same: one of them is the
     * estimate the other takes the place of, or the earlier one counts no more.
     */
    boolean isNoRepeat(Entry entry, long earlier) {
        Boolean stated = postponed.get(entry.number());
        Boolean earlierStated = postponed.get(earlier);
        return amended.replacedBy(earlier).isPresent()
                || (stated != null && earlierStated != null && !stated.equals(earlierStated));
    }

    /** The numbers of all entries of months for which there is an amended document. */
    public Set<Long> ofAmendedMonths() {
        return amended.ofAmendedMonths();
    }
}

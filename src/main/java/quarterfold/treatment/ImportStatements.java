package quarterfold.treatment;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Profile;

/**
 * Which lines of import VAT certificates and postponed import VAT statements count: each import
 * once, on whatever lists, files and forms of a document it stands, and of a month with an amended
 * document what that one has.
 *
 * <p>The tax authority issues amended statements beside those first issued (its open-source service
 * has a file role for each). An amended document is the whole of its month for its importer: a line
 * of the one before that is in it too stays as it is, so that only differences change a return, and
 * one that is not counts no more. Of several amended ones the last that was brought in counts.
 */
public final class ImportStatements {

    /** Of a ledger without imports. */
    static final ImportStatements NONE = new ImportStatements();

    private final Map<Long, Long> replacedBy = new HashMap<>();
    private final Map<Long, Long> sameAs = new HashMap<>();
    private final Set<Long> ofAmendedMonths = new TreeSet<>();
    private final Map<Long, Boolean> postponed = new HashMap<>();
    private final Map<ImportKey, List<Entry>> byKey = new HashMap<>();

    private record Month(Kind kind, YearMonth month) {}

    private ImportStatements() {}

    /** The lines of a ledger. */
    static ImportStatements of(Search ledger, Answers answers) {
        ImportStatements statements = new ImportStatements();
        List<Entry> lines = new ArrayList<>();
        ledger.forEach(
                ImportStatements::isImportVat,
                entry -> {
                    Answered answered = Answered.of(entry, answers);
                    if (answered.decided().equals("duplicate")) {
                        return;
                    }
                    boolean stated = ImportKey.isOfDocument(answered.entry());
                    if (stated) {
                        lines.add(answered.entry());
                    }
                    if (entry.kind() == Kind.IMPORT_VAT_POSTPONED) {
                        statements.postponed.put(entry.number(), stated);
                    }
                });
        statements.replace(lines);
        lines.forEach(statements::meet);
        return statements;
    }

    private static boolean isImportVat(Profile profile) {
        return profile.kind() == Kind.IMPORT_VAT_PAID
                || profile.kind() == Kind.IMPORT_VAT_POSTPONED;
    }

    private void replace(List<Entry> lines) {
        Map<Month, List<Entry>> months = new LinkedHashMap<>();
        for (Entry line : lines) {
            line.line()
                    .particulars()
                    .month(Particular.STATEMENT_MONTH)
                    .ifPresent(
                            month ->
                                    months.computeIfAbsent(
                                                    new Month(line.kind(), month),
                                                    m -> new ArrayList<>())
                                            .add(line));
        }
        for (List<Entry> month : months.values()) {
            List<Entry> amended = month.stream().filter(ImportStatements::isAmended).toList();
            amended.stream()
                    .filter(first -> isFirstOfLast(first, amended))
                    .forEach(first -> replace(month, first));
        }
    }

    /** Whether a line is the first of the last amended document of its importer. */
    private static boolean isFirstOfLast(Entry first, List<Entry> amended) {
        return amended.stream()
                .filter(a -> ImportKey.isOneImporter(a, first))
                .noneMatch(
                        a ->
                                a.source() > first.source()
                                        || (a.source() == first.source()
                                                && a.number() < first.number()));
    }

    /** The lines of a month that are not in the amended document which begins with this one. */
    private void replace(List<Entry> month, Entry first) {
        Set<ImportKey> kept = new HashSet<>();
        List<Entry> others = new ArrayList<>();
        for (Entry entry : month) {
            if (ImportKey.isOneImporter(entry, first)) {
                ofAmendedMonths.add(entry.number());
                if (entry.source() == first.source() && isAmended(entry)) {
                    kept.add(ImportKey.of(entry));
                } else {
                    others.add(entry);
                }
            }
        }
        others.stream()
                .filter(e -> !kept.contains(ImportKey.of(e)))
                .forEach(e -> replacedBy.put(e.number(), first.number()));
    }

    private static boolean isAmended(Entry entry) {
        return entry.line()
                .particulars()
                .word(Particular.AMENDED)
                .filter("yes"::equals)
                .isPresent();
    }

    /** Two of one file may be two imports, which a person must say. */
    private void meet(Entry line) {
        if (replacedBy.containsKey(line.number()) || line.line().document().isEmpty()) {
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

    /** The first entry of the amended document that has replaced this one. */
    public OptionalLong replacedBy(Entry entry) {
        return number(replacedBy, entry);
    }

    /** The entry of another file that is the same import. */
    OptionalLong sameAs(Entry entry) {
        return number(sameAs, entry);
    }

    private static OptionalLong number(Map<Long, Long> map, Entry entry) {
        Long number = map.get(entry.number());
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
        return replacedBy.containsKey(earlier)
                || (stated != null && earlierStated != null && !stated.equals(earlierStated));
    }

    /** The numbers of all entries of months for which there is an amended document. */
    public Set<Long> ofAmendedMonths() {
        return Set.copyOf(ofAmendedMonths);
    }
}

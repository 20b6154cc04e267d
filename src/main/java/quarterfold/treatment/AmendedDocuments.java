package quarterfold.treatment;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.money.Amount;

/**
 * What amended certificates and statements replace. Each is the whole of its month for its number:
 * parts of a business, told by the last three digits, have documents of their own (both from
 * memory). A line that states no month is of the month of the same import, or of the amended line
 * with its reference and date; of which one it is else, a person is asked.
 */
final class AmendedDocuments {

    /** Of a ledger without imports. */
    static final AmendedDocuments NONE = new AmendedDocuments(List.of());

    private final Map<Month, List<Entry>> months = new LinkedHashMap<>();
    private final Map<Long, Long> replacedBy = new HashMap<>();
    private final Set<Long> ofAmendedMonths = new TreeSet<>();
    private final Map<Long, Unplaced> unplaced = new TreeMap<>();

    private record Month(Kind kind, YearMonth month) {}

    private record Reference(Kind kind, String reference, LocalDate day) {
        static Reference of(Entry line) {
            return new Reference(
                    line.kind(), ImportKey.reference(line.line().document()), line.taxPoint());
        }
    }

    private record Same(Kind kind, ImportKey key) {
        static Same of(Entry line) {
            return new Same(line.kind(), ImportKey.of(line));
        }
    }

    /**
     * Lines that may be of the month of an amended document which does not have them.
     *
     * @param entries their numbers
     * @param amended the first entry of the document
     */
    record Unplaced(List<Long> entries, YearMonth month, long amended) {

        Map<String, String> words() {
            return Map.of(
                    "entries",
                    entries.stream().map(n -> "entry " + n).collect(Collectors.joining(", ")),
                    "first",
                    Long.toString(entries.get(0)),
                    "of",
                    month.toString(),
                    "other",
                    Long.toString(amended));
        }
    }

    /**
     * @param lines of certificates and statements, in the order of their numbers
     */
    AmendedDocuments(List<Entry> lines) {
        lines.forEach(line -> month(line).ifPresent(month -> add(line, month)));
        if (lines.stream().noneMatch(AmendedDocuments::isAmended)) {
            return;
        }
        List<Entry> unknown = place(lines);
        for (Map.Entry<Month, List<Entry>> month : months.entrySet()) {
            for (Entry first : firsts(month.getValue())) {
                replace(month.getValue(), first);
                ask(unknown, month.getKey(), first);
            }
        }
    }

    private static Optional<YearMonth> month(Entry line) {
        return line.line().particulars().month(Particular.STATEMENT_MONTH);
    }

    private static boolean isAmended(Entry entry) {
        return entry.line().particulars().isYes(Particular.AMENDED);
    }

    private void add(Entry line, YearMonth month) {
        months.computeIfAbsent(new Month(line.kind(), month), m -> new ArrayList<>()).add(line);
    }

    /** Puts lines without a month into theirs where that is known; the others are given back. */
    private List<Entry> place(List<Entry> lines) {
        List<Entry> stated = lines.stream().filter(l -> month(l).isPresent()).toList();
        Map<Same, List<Entry>> same = stated.stream().collect(Collectors.groupingBy(Same::of));
        Map<Reference, List<Entry>> amended =
                stated.stream()
                        .filter(AmendedDocuments::isAmended)
                        .collect(Collectors.groupingBy(Reference::of));
        List<Entry> unknown = new ArrayList<>();
        for (Entry line : lines) {
            if (month(line).isPresent()) {
                continue;
            }
            Optional<YearMonth> month =
                    latest(line, same.getOrDefault(Same.of(line), List.of()))
                            .or(
                                    () ->
                                            latest(
                                                    line,
                                                    amended.getOrDefault(
                                                            Reference.of(line), List.of())));
            month.filter(m -> !line.line().document().isEmpty())
                    .ifPresentOrElse(m -> add(line, m), () -> unknown.add(line));
        }
        return unknown;
    }

    private static Optional<YearMonth> latest(Entry line, List<Entry> others) {
        return others.stream()
                .filter(o -> ImportKey.isOneImporter(o, line))
                .flatMap(o -> month(o).stream())
                .max(Comparator.naturalOrder());
    }

    /** The first lines of the amended documents that count: of each number the last. */
    private static List<Entry> firsts(List<Entry> month) {
        List<Entry> amended = month.stream().filter(AmendedDocuments::isAmended).toList();
        return amended.stream().filter(first -> isFirstOfLast(first, amended)).toList();
    }

    private static boolean isFirstOfLast(Entry first, List<Entry> amended) {
        return amended.stream()
                .filter(a -> ImportKey.isOnePart(a, first))
                .noneMatch(
                        a ->
                                a.source() > first.source()
                                        || (a.source() == first.source()
                                                && a.number() < first.number()));
    }

    /** The lines of a month that are not in the amended document which begins with this one. */
    private void replace(List<Entry> month, Entry first) {
        List<Entry> document = month.stream().filter(e -> isIn(e, first)).toList();
        Map<Same, List<Entry>> kept = document.stream().collect(Collectors.groupingBy(Same::of));
        Set<Reference> references =
                document.stream().map(Reference::of).collect(Collectors.toSet());
        List<Entry> others =
                month.stream()
                        .filter(e -> !isIn(e, first) && isReached(e, first, references))
                        .toList();
        Set<Same> changed = changed(others, kept);
        Stream.concat(document.stream(), others.stream())
                .forEach(e -> ofAmendedMonths.add(e.number()));
        others.stream()
                .filter(e -> !kept.containsKey(Same.of(e)) || changed.contains(Same.of(e)))
                .forEach(e -> replacedBy.putIfAbsent(e.number(), first.number()));
    }

    private static boolean isIn(Entry line, Entry first) {
        return line.source() == first.source()
                && isAmended(line)
                && ImportKey.isOnePart(line, first);
    }

    /** A line of the same number; of another part of the business, one that the document names. */
    private static boolean isReached(Entry line, Entry first, Set<Reference> references) {
        return ImportKey.isOnePart(line, first)
                || (ImportKey.isOneImporter(line, first)
                        && (!isAmended(line) || line.source() < first.source())
                        && references.contains(Reference.of(line)));
    }

    /** The imports of which the document states another value of the goods. */
    private static Set<Same> changed(List<Entry> others, Map<Same, List<Entry>> kept) {
        Set<Same> changed = new HashSet<>();
        for (Entry other : others) {
            List<Optional<Amount>> now =
                    kept.getOrDefault(Same.of(other), List.of()).stream()
                            .map(ImportKey::value)
                            .toList();
            Optional<Amount> before = ImportKey.value(other);
            if (!now.isEmpty()
                    && before.isPresent()
                    && now.stream().noneMatch(v -> v.isEmpty() || v.equals(before))) {
                changed.add(Same.of(other));
            }
        }
        return changed;
    }

    /** Asked of whichever came later: what is in a closed return is not asked about any more. */
    private void ask(List<Entry> unknown, Month month, Entry first) {
        for (Entry line : unknown) {
            if (line.kind() == month.kind()
                    && !isAmended(line)
                    && YearMonth.from(line.taxPoint()).equals(month.month())
                    && ImportKey.isOnePart(line, first)) {
                long asked = Math.max(line.number(), first.number());
                List<Long> entries = new ArrayList<>();
                Optional.ofNullable(unplaced.get(asked))
                        .ifPresent(u -> entries.addAll(u.entries()));
                entries.add(line.number());
                unplaced.put(
                        asked, new Unplaced(List.copyOf(entries), month.month(), first.number()));
            }
        }
    }

    /** The first entry of the amended document that has replaced this one. */
    OptionalLong replacedBy(long number) {
        Long by = replacedBy.get(number);
        return by == null ? OptionalLong.empty() : OptionalLong.of(by);
    }

    /** The numbers of all entries of months for which there is an amended document. */
    Set<Long> ofAmendedMonths() {
        return Set.copyOf(ofAmendedMonths);
    }

    /** The lines about whose month the entry asks. */
    Optional<Unplaced> unplaced(long number) {
        return Optional.ofNullable(unplaced.get(number));
    }
}

package quarterfold.intake;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.intake.Layout.Dates;

/** Finds which column dates the rows, and how its dates are written. */
final class DateStudy {
    private final List<Column> columns;
    private final boolean nativeDates;
    private final List<String> beside;
    private final Findings findings;

    /** {@code beside}: dates of rows of other shapes, which may be written alike. */
    DateStudy(List<Column> columns, boolean nativeDates, List<String> beside, Findings findings) {
        this.columns = columns;
        this.beside = beside;
        this.nativeDates = nativeDates;
        this.findings = findings;
    }

    /** The dates of the layout; nothing where there are none, or a person must say. */
    Optional<Dates> study() {
        List<Column> dated = columns.stream().filter(c -> c.role() == Role.DATE).toList();
        if (dated.isEmpty()) {
            findings.unsound("found no column of dates; expected one, such as Date");
            return Optional.empty();
        }
        Column column = choose(dated);
        dated.stream().filter(c -> c != column).forEach(c -> c.setRole(Role.IGNORED));
        Optional<Dates> dates = order(column);
        columns.stream()
                .filter(c -> c.role() == Role.PAID)
                .filter(c -> dates.isEmpty() || !reads(dates.get(), c))
                .forEach(c -> c.setRole(Role.IGNORED));
        return dates;
    }

    private boolean reads(Dates dates, Column column) {
        DateReader reader = new DateReader(dates, ZoneOffset.UTC, nativeDates);
        return column.stated().stream().allMatch(t -> reader.read(t).isPresent());
    }

    private Column choose(List<Column> dated) {
        Column first = dated.get(0);
        boolean same = dated.stream().allMatch(c -> c.texts().equals(first.texts()));
        if (same) {
            return first;
        }
        List<String> names = dated.stream().map(Column::reference).toList();
        Optional<String> answer =
                findings.ask(
                        new Question(
                                "date",
                                "several columns hold dates: %s; which is the day of the supply?"
                                        .formatted(
                                                names.stream()
                                                        .map(n -> "'" + n + "'")
                                                        .collect(Collectors.joining(", "))),
                                names,
                                true));
        return dated.stream()
                .filter(c -> answer.filter(c.reference()::equals).isPresent())
                .findFirst()
                .orElse(first);
    }

    private Optional<Dates> order(Column column) {
        List<String> own = usable(column.stated());
        List<String> all = new ArrayList<>(own);
        all.addAll(usable(beside));
        List<DateFinder.Found> found = DateFinder.find(all, nativeDates);
        boolean alike = !found.isEmpty() || beside.isEmpty();
        List<String> texts = alike ? all : own;
        if (!alike) {
            found = DateFinder.find(own, nativeDates);
        }
        if (found.isEmpty()) {
            findings.unsound(
                    "'%s': found dates written in ways that no one pattern reads, such as %s"
                            .formatted(column.reference(), unlike(column.stated())));
            return Optional.empty();
        }
        if (found.size() == 1) {
            return Optional.of(found.get(0).dates());
        }
        Optional<Dates> dotted = dotted(texts, found);
        if (dotted.isPresent()) {
            return dotted;
        }
        List<String> patterns = found.stream().map(f -> f.dates().pattern()).distinct().toList();
        Optional<String> answer =
                findings.ask(
                        new Question(
                                alike ? "dates" : "dates-of-these",
                                "every date in '%s' can be read in %d ways, such as '%s', which is %s; which pattern is it?"
                                        .formatted(
                                                column.reference(),
                                                found.size(),
                                                texts.get(0),
                                                found.stream()
                                                        .map(f -> f.days().get(0).toString())
                                                        .distinct()
                                                        .collect(Collectors.joining(" or "))),
                                patterns,
                                true));
        return found.stream()
                .map(DateFinder.Found::dates)
                .filter(d -> answer.filter(d.pattern()::equals).isPresent())
                .findFirst();
    }

    /** The first text, and the first that is not written as it is. */
    private String unlike(List<String> texts) {
        Optional<String> other =
                texts.stream()
                        .filter(
                                t ->
                                        DateFinder.find(List.of(texts.get(0), t), nativeDates)
                                                .isEmpty())
                        .findFirst()
                        .filter(t -> !t.equals(texts.get(0)));
        return (texts.isEmpty() ? "''" : "'" + texts.get(0) + "'")
                + other.map(t -> " and '" + t + "'").orElse("");
    }

    /** With points between them, days stand first: no country writes months or years so. */
    private static Optional<Dates> dotted(List<String> texts, List<DateFinder.Found> found) {
        return texts.stream().allMatch(t -> t.matches("\\d{1,2}\\.\\d{1,2}\\.(\\d{4}|\\d{2})\\b.*"))
                ? found.stream()
                        .map(DateFinder.Found::dates)
                        .filter(d -> d.pattern().startsWith("d"))
                        .findFirst()
                : Optional.empty();
    }

    /** The texts but for the few that are no dates at all, which reading the rows will tell. */
    private static List<String> usable(List<String> stated) {
        List<String> like = new ArrayList<>(stated);
        like.removeIf(t -> !DateFinder.isLike(t));
        return List.copyOf(Set.copyOf(like)).stream().sorted().toList();
    }
}

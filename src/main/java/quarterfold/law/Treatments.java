package quarterfold.law;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The decision table: the first row in force on the tax point whose facts hold decides. */
public final class Treatments {

    /** The rate cell that means the entry's own rate. */
    public static final String OWN_RATE = "liability";

    private final List<Dated<TreatmentRow>> rows;

    Treatments(TableFile file, Choices choices, Rates rates, Set<String> queries) {
        rows =
                Table.read(file).rows().stream()
                        .map(row -> row.dated(read(row, choices, rates, queries)))
                        .toList();
        Set<String> names = rows.stream().map(r -> r.value().rule()).collect(Collectors.toSet());
        if (names.size() != rows.size()) {
            throw new LawException(file.name() + ": two rows have the same name in [rule]");
        }
    }

    /** The row that decides, if any does. */
    public Optional<Dated<TreatmentRow>> decide(
            Map<Fact, String> facts, LocalDate day, Predicate<String> choice) {
        return rows.stream()
                .filter(row -> row.isInForce(day))
                .filter(row -> row.value().matches(facts))
                .filter(row -> row.value().choice().isEmpty() || choice.test(row.value().choice()))
                .findFirst();
    }

    /** Every row, in the order they are tried. */
    public List<Dated<TreatmentRow>> rows() {
        return rows;
    }

    /** Whether any row, of any day, is of the treatment. */
    boolean has(String treatment) {
        return rows.stream().anyMatch(r -> r.value().treatment().equals(treatment));
    }

    /** The first row of a treatment in force on a day, for a decision that names the treatment. */
    public Optional<Dated<TreatmentRow>> named(String treatment, LocalDate day) {
        return rows.stream()
                .filter(r -> r.isInForce(day) && r.value().treatment().equals(treatment))
                .findFirst();
    }

    public Optional<Dated<TreatmentRow>> rule(String name) {
        return rows.stream().filter(r -> r.value().rule().equals(name)).findFirst();
    }

    private static TreatmentRow read(
            Table.Row row, Choices choices, Rates rates, Set<String> queries) {
        String rate = row.cell("rate");
        if (!rate.isEmpty() && !rate.equals(OWN_RATE) && !rates.keyed().names().contains(rate)) {
            throw row.fault(
                    "[rate]: found '%s'; expected liability or a category of rates.csv"
                            .formatted(rate));
        }
        String query = row.cell("query");
        if (!query.isEmpty() && !queries.contains(query)) {
            throw row.fault("[query]: found '%s'; expected a code of queries.csv".formatted(query));
        }
        String choice = row.cell("choice");
        if (!choice.isEmpty() && !choices.knows(choice)) {
            throw row.fault(
                    "[choice]: found '%s'; expected name=value of choices.csv".formatted(choice));
        }
        return new TreatmentRow(
                row.needed("rule"),
                row.needed("treatment"),
                conditions(row),
                choice,
                rate,
                row.parse(
                        "vat_is",
                        Treatments::vatRule,
                        "none, inside, on-document, on-margin or import"),
                row.parse("claim", Treatments::yesNo, "yes or no"),
                query,
                row.needed("why"));
    }

    private static Map<Fact, Set<String>> conditions(Table.Row row) {
        Map<Fact, Set<String>> when = new EnumMap<>(Fact.class);
        for (Fact fact : Fact.values()) {
            String cell = fact.isLater() ? row.later(fact.column()) : row.cell(fact.column());
            if (!cell.isEmpty()) {
                Set<String> words =
                        Arrays.stream(cell.split("\\|", -1))
                                .map(String::strip)
                                .collect(Collectors.toSet());
                if (!fact.words().isEmpty() && !fact.words().containsAll(words)) {
                    throw row.fault(
                            "[%s]: found '%s'; expected one or more of %s, joined by |"
                                    .formatted(fact.column(), cell, fact.words()));
                }
                when.put(fact, words);
            }
        }
        return when;
    }

    private static VatRule vatRule(String text) {
        return VatRule.valueOf(text.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    static boolean yesNo(String text) {
        return switch (text) {
            case "yes" -> true;
            case "no" -> false;
            default -> throw new IllegalArgumentException(text);
        };
    }
}

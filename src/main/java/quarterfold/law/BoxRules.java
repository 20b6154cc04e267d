package quarterfold.law;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What treatments and adjustments add to which box or total: {@code boxes.csv}. */
final class BoxRules {

    private final Map<String, List<Dated<BoxRule>>> byTreatment;
    private final List<Dated<Counted>> counted;
    private final Set<String> sets;

    /** Refuses a treatment, adjustment, box or total that the other tables do not have. */
    BoxRules(
            TableFile file,
            Treatments treatments,
            List<Dated<Adjusts>> adjustments,
            List<Dated<Box>> form,
            List<Dated<Total>> totals,
            List<Dated<Counted>> counted) {
        Set<String> treated = new HashSet<>();
        treatments.rows().forEach(t -> treated.add(t.value().treatment()));
        adjustments.forEach(a -> treated.add(a.value().name()));
        Set<String> summed = new HashSet<>();
        form.stream()
                .map(Dated::value)
                .filter(b -> !b.isComputed())
                .forEach(b -> summed.add(b.id()));
        totals.forEach(t -> summed.add(t.value().name()));
        this.counted = List.copyOf(counted);
        this.sets = counted.stream().map(c -> c.value().set()).collect(Collectors.toSet());
        List<Dated<BoxRule>> rules = new ArrayList<>();
        for (Table.Row row : Table.read(file).rows()) {
            Dated<BoxRule> rule = row.dated(rule(row, treated, summed));
            if (rules.stream().anyMatch(r -> r.overlaps(rule) && same(r.value(), rule.value()))) {
                throw row.fault(
                        "'%s %s %s' has another row in force on the same days"
                                .formatted(
                                        treatmentOf(rule),
                                        rule.value().box(),
                                        rule.value().measure()));
            }
            rules.add(rule);
        }
        this.byTreatment = rules.stream().collect(Collectors.groupingBy(BoxRules::treatmentOf));
    }

    private static String treatmentOf(Dated<BoxRule> rule) {
        return rule.value().treatment();
    }

    /** Whether some entry would add the same figure to the same box by both. */
    private static boolean same(BoxRule one, BoxRule other) {
        return one.treatment().equals(other.treatment())
                && one.box().equals(other.box())
                && one.measure() == other.measure()
                && (one.schemes().isEmpty()
                        || other.schemes().isEmpty()
                        || one.schemes().stream().anyMatch(other.schemes()::contains));
    }

    List<Dated<BoxRule>> of(String treatment, String scheme, LocalDate day) {
        return byTreatment.getOrDefault(treatment, List.of()).stream()
                .filter(d -> d.isInForce(day) && d.value().isFor(scheme))
                .toList();
    }

    List<Dated<BoxRule>> of(String treatment, String scheme, String category, LocalDate day) {
        return of(treatment, scheme, day).stream()
                .filter(
                        d ->
                                !sets.contains(d.value().box())
                                        || counts(d.value().box(), category, day))
                .toList();
    }

    boolean counts(String set, String category, LocalDate day) {
        return counted.stream()
                .anyMatch(c -> c.isInForce(day) && c.value().equals(new Counted(set, category)));
    }

    Stream<Dated<BoxRule>> stream() {
        return byTreatment.values().stream().flatMap(List::stream);
    }

    private static BoxRule rule(Table.Row row, Set<String> treated, Set<String> summed) {
        String treatment = row.needed("treatment");
        if (!treated.contains(treatment)) {
            throw row.fault(
                    "[treatment]: found '%s'; expected a treatment of treatments.csv or a name of adjustments.csv"
                            .formatted(treatment));
        }
        String box = row.needed("box");
        if (!summed.contains(box)) {
            throw row.fault(
                    "[box]: found '%s'; expected a box of form.csv that sums entries, or a total of totals.csv"
                            .formatted(box));
        }
        Measure measure =
                row.parse(
                        "measure",
                        t -> Measure.valueOf(t.toUpperCase(Locale.ROOT)),
                        "net, vat, claim or gross");
        int sign = row.parse("sign", BoxRules::sign, "plus or minus");
        String schemes = row.later("scheme");
        return new BoxRule(
                treatment,
                box,
                measure,
                sign,
                schemes.isEmpty() ? Set.of() : Set.of(schemes.split("\\|", -1)),
                row.later("account"));
    }

    private static int sign(String text) {
        return switch (text) {
            case "plus" -> 1;
            case "minus" -> -1;
            default -> throw new IllegalArgumentException(text);
        };
    }
}

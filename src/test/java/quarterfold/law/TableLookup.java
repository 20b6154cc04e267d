package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.money.Amount;

/**
 * How a table with days is asked about a row.
 *
 * @param says what the row says while it is in force
 * @param law what the law answers about a row of its name on a day; nothing where none is in force
 */
record TableLookup(
        Function<PlainCsv.Row, String> says,
        BiFunction<PlainCsv.Row, LocalDate, Stream<String>> law) {

    private static final Law LAW = Law.of("GB");

    /** One for every table with days; a new table has its line here. */
    static final Map<String, TableLookup> ALL = new LinkedHashMap<>();

    static {
        ALL.put(
                "rates.csv",
                new TableLookup(
                        row -> says(row, row.at("percent")),
                        (row, day) ->
                                LAW.rates().on(row.at("category"), day).stream()
                                        .map(d -> says(d, d.value().toString()))));
        ALL.put(
                "limits.csv",
                new TableLookup(
                        row -> says(row, Amount.of(row.at("amount")) + " " + row.at("unit")),
                        (row, day) ->
                                LAW.limit(row.at("name"), day).stream()
                                        .map(
                                                d ->
                                                        says(
                                                                d,
                                                                d.value().amount()
                                                                        + " "
                                                                        + d.value().unit()))));
        ALL.put(
                "areas.csv",
                new TableLookup(
                        row -> row.at("area"),
                        (row, day) ->
                                Stream.of(LAW.area(row.at("country"), day))
                                        .filter(area -> !area.equals("elsewhere"))));
        ALL.put(
                "blocked.csv",
                new TableLookup(
                        row -> says(row, row.at("percent_blocked") + " " + row.at("words")),
                        (row, day) ->
                                LAW.blocked(row.at("category"), day).stream()
                                        .map(
                                                d ->
                                                        says(
                                                                d,
                                                                d.value().blocked()
                                                                        + " "
                                                                        + d.value().words()))));
        ALL.put(
                "evidence.csv",
                new TableLookup(
                        row ->
                                says(
                                        row,
                                        row.at("claims").equals("yes")
                                                + " "
                                                + (row.at("up_to").isEmpty()
                                                        ? ""
                                                        : Amount.of(row.at("up_to")))
                                                + " "
                                                + row.at("only_categories")
                                                + " "
                                                + row.at("must_show")),
                        (row, day) ->
                                LAW.evidence(row.at("evidence"), day).stream()
                                        .map(d -> says(d, evidence(d.value())))));
        ALL.put(
                "periods.csv",
                new TableLookup(
                        row -> says(row, row.at("value")),
                        (row, day) -> periodRule(row.at("name"), day)));
        ALL.put(
                "form.csv",
                new TableLookup(
                        row ->
                                String.join(
                                        " ",
                                        row.at("label"),
                                        row.at("export_name"),
                                        row.at("source")),
                        (row, day) ->
                                LAW.form(day).stream()
                                        .filter(b -> b.id().equals(row.at("box")))
                                        .map(
                                                b ->
                                                        String.join(
                                                                " ",
                                                                b.label(),
                                                                b.exportName(),
                                                                b.source()))));
        ALL.put(
                "boxes.csv",
                new TableLookup(
                        row ->
                                says(
                                        row,
                                        (row.at("sign").equals("plus") ? "1" : "-1")
                                                + " "
                                                + row.at("account")),
                        (row, day) ->
                                LAW
                                        .boxes(
                                                row.at("treatment"),
                                                row.at("scheme").isEmpty()
                                                        ? "standard"
                                                        : row.at("scheme").split("\\|", -1)[0],
                                                day)
                                        .stream()
                                        .filter(d -> d.value().box().equals(row.at("box")))
                                        .filter(
                                                d ->
                                                        d.value()
                                                                .measure()
                                                                .name()
                                                                .equalsIgnoreCase(
                                                                        row.at("measure")))
                                        .map(
                                                d ->
                                                        says(
                                                                d,
                                                                d.value().sign()
                                                                        + " "
                                                                        + d.value().account()))));
        ALL.put(
                "adjustments.csv",
                new TableLookup(
                        row -> says(row, row.at("why")),
                        (row, day) -> adjustment(row.at("name"), day)));
        ALL.put(
                "totals.csv",
                new TableLookup(
                        row -> row.at("words"),
                        (row, day) ->
                                LAW.totals(day).stream()
                                        .filter(t -> t.name().equals(row.at("total")))
                                        .map(Total::words)));
        ALL.put(
                "counted-categories.csv",
                new TableLookup(
                        row -> "counts",
                        (row, day) ->
                                Stream.of("counts")
                                        .filter(
                                                c ->
                                                        LAW.counts(
                                                                row.at("set"),
                                                                row.at("category"),
                                                                day))));
        ALL.put(
                "flat-rates.csv",
                new TableLookup(
                        row -> says(row, row.at("sector") + " " + row.at("percent")),
                        (row, day) ->
                                LAW.flatRate(row.at("id"), day).stream()
                                        .map(
                                                d ->
                                                        says(
                                                                d,
                                                                d.value().sector()
                                                                        + " "
                                                                        + d.value().percent()))));
        ALL.put(
                "fuel-scale.csv",
                new TableLookup(
                        row ->
                                says(
                                        row,
                                        Stream.of("months_12", "months_3", "months_1")
                                                .map(row::at)
                                                .map(
                                                        t ->
                                                                t.isEmpty()
                                                                        ? ""
                                                                        : Amount.of(t).toString())
                                                .collect(Collectors.joining(" "))),
                        (row, day) ->
                                LAW.fuelScale(Integer.parseInt(row.at("co2_from")), day).stream()
                                        .filter(
                                                d ->
                                                        row.at("co2_from")
                                                                .equals(
                                                                        Integer.toString(
                                                                                d.value()
                                                                                        .co2From())))
                                        .map(d -> says(d, fuelScale(d.value())))));
        ALL.put(
                "evidence-shows.csv",
                new TableLookup(
                        row -> says(row, row.at("when") + " " + row.at("words")),
                        (row, day) ->
                                LAW.particulars(row.at("evidence"), day).stream()
                                        .filter(d -> d.value().code().equals(row.at("particular")))
                                        .map(
                                                d ->
                                                        says(
                                                                d,
                                                                d.value().when()
                                                                        + " "
                                                                        + d.value().words()))));
        ALL.put(
                "account.csv",
                new TableLookup(
                        row -> says(row, row.at("label")),
                        (row, day) ->
                                LAW.account(day).stream()
                                        .filter(d -> d.value().account().equals(row.at("account")))
                                        .filter(
                                                d ->
                                                        d.value()
                                                                .portion()
                                                                .code()
                                                                .equals(row.at("portion")))
                                        .map(d -> says(d, d.value().label()))));
        ALL.put(
                "timing.csv",
                new TableLookup(
                        row -> row.at("rule"),
                        (row, day) ->
                                Stream.of(TimeRule.values())
                                        .filter(r -> r.code().equals(row.at("rule")))
                                        .filter(r -> LAW.isUnder(r, row.at("treatment"), day))
                                        .map(TimeRule::code)));
        ALL.put(
                "treatments.csv",
                new TableLookup(
                        row -> says(row, row.at("treatment") + " " + row.at("why")),
                        (row, day) ->
                                LAW.treatments().rule(row.at("rule")).stream()
                                        .filter(d -> d.isInForce(day))
                                        .map(
                                                d ->
                                                        says(
                                                                d,
                                                                d.value().treatment()
                                                                        + " "
                                                                        + d.value().why()))));
    }

    private static String fuelScale(FuelScale scale) {
        return Stream.of(12, 3, 1)
                .map(months -> scale.forMonths(months).map(Amount::toString).orElse(""))
                .collect(Collectors.joining(" "));
    }

    private static String evidence(EvidenceRule rule) {
        return rule.claims()
                + " "
                + rule.upTo().map(Amount::toString).orElse("")
                + " "
                + String.join("|", rule.onlyCategories())
                + " "
                + rule.mustShow();
    }

    private static Stream<String> adjustment(String name, LocalDate day) {
        try {
            Dated<Adjusts> row = LAW.adjustment(name, day);
            return Stream.of(says(row, row.value().why()));
        } catch (LawException e) {
            assertThat(e).hasMessage("adjustments.csv: has no '%s' on %s", name, day);
            return Stream.of();
        }
    }

    private static Stream<String> periodRule(String name, LocalDate day) {
        try {
            Dated<String> rule = LAW.periodRule(name, day);
            return Stream.of(says(rule, rule.value()));
        } catch (LawException e) {
            assertThat(e).hasMessage("periods.csv: has no '%s' on %s", name, day);
            return Stream.of();
        }
    }

    private static String says(PlainCsv.Row row, String value) {
        return "%s, %s to %s: %s".formatted(value, row.from(), row.to(), row.at("source"));
    }

    private static String says(Dated<?> dated, String value) {
        return "%s, %s to %s: %s".formatted(value, dated.from(), dated.to(), dated.source());
    }

    static TableLookup of(String table) {
        return Optional.ofNullable(ALL.get(table)).orElseThrow();
    }
}

package quarterfold.law;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.time.Period;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * A country's VAT law: its tables, read, checked against one another, and looked up by day. Two
 * laws read from the same texts give the same answers.
 */
public final class Law {

    private static final List<String> NAMES =
            List.of(
                    "rates.csv",
                    "limits.csv",
                    "areas.csv",
                    "choices.csv",
                    "queries.csv",
                    "treatments.csv",
                    "boxes.csv",
                    "form.csv",
                    "blocked.csv",
                    "evidence.csv",
                    "periods.csv",
                    "flat-rates.csv",
                    "fuel-scale.csv",
                    "evidence-shows.csv",
                    "adjustments.csv",
                    "totals.csv",
                    "counted-categories.csv",
                    "account.csv",
                    "answers.csv",
                    "timing.csv");

    private final List<TableFile> files;
    private final Rates rates;
    private final Keyed<Limit> limits;
    private final Keyed<String> areas;
    private final Choices choices;
    private final Map<String, QueryText> queries;
    private final Treatments treatments;
    private final BoxRules boxRules;
    private final List<Dated<Adjusts>> adjustments;
    private final List<Dated<Total>> totals;
    private final List<Dated<Counted>> counted;
    private final List<Dated<Box>> form;
    private final Keyed<Blocked> blocked;
    private final Keyed<EvidenceRule> evidence;
    private final Keyed<String> periods;
    private final List<Dated<FlatRate>> flatRates;
    private final List<Dated<FuelScale>> fuelScale;
    private final List<Dated<Particular>> particulars;
    private final List<Dated<AccountLine>> account;
    private final Map<String, String> answers;
    private final List<Dated<Timed>> timing;

    /** A limit and the unit it is in, such as pounds or years. */
    public record Limit(Amount amount, String unit) {

        /** The day that is so many years or months before another. Refuses another unit. */
        public LocalDate before(LocalDate day) {
            return day.minus(span());
        }

        /** The day that is so many years, months or days after another. Refuses another unit. */
        public LocalDate after(LocalDate day) {
            return day.plus(span());
        }

        private Period span() {
            int count = amount.decimal().intValueExact();
            return switch (unit) {
                case "years" -> Period.ofYears(count);
                case "months" -> Period.ofMonths(count);
                case "days" -> Period.ofDays(count);
                default -> throw new LawException("limits.csv: " + unit + " is no span of time");
            };
        }
    }

    /**
     * A query's words; {@code {gross}} and the like stand for what the entry says.
     *
     * @param holdsClose whether it touches money, so that a period cannot be closed while it is
     *     open
     */
    public record QueryText(String code, boolean holdsClose, String question) {}

    private Law(List<TableFile> files) {
        this.files = List.copyOf(files);
        rates = new Rates(table("rates.csv"));
        limits =
                Keyed.read(
                        table("limits.csv"),
                        "name",
                        row ->
                                new Limit(
                                        row.parse("amount", Amount::of, "a number such as 90000"),
                                        row.needed("unit")));
        areas = Keyed.read(table("areas.csv"), "country", row -> row.needed("area"));
        choices = new Choices(table("choices.csv"));
        queries =
                Table.read(table("queries.csv"))
                        .named(
                                "code",
                                row ->
                                        new QueryText(
                                                row.needed("code"),
                                                row.later("holds_close").isEmpty()
                                                        || row.parse(
                                                                "holds_close",
                                                                Treatments::yesNo,
                                                                "yes or no"),
                                                row.needed("question")));
        treatments = new Treatments(table("treatments.csv"), choices, rates, queries.keySet());
        form = Form.read(table("form.csv"));
        adjustments = added("adjustments.csv", Adjusts::of, Adjusts::name);
        totals = added("totals.csv", Total::of, Total::name);
        counted =
                added(
                        "counted-categories.csv",
                        Counted::of,
                        c -> "%s of %s".formatted(c.category(), c.set()));
        boxRules = new BoxRules(table("boxes.csv"), treatments, adjustments, form, totals, counted);
        blocked =
                Keyed.read(
                        table("blocked.csv"),
                        "category",
                        row ->
                                new Blocked(
                                        row.parse(
                                                "percent_blocked",
                                                Percent::of,
                                                "a percentage such as 50"),
                                        row.needed("words")));
        evidence = Keyed.read(table("evidence.csv"), "evidence", EvidenceRule::of);
        periods = Keyed.read(table("periods.csv"), "name", row -> row.needed("value"));
        flatRates = added("flat-rates.csv", FlatRate::of, FlatRate::id);
        fuelScale = added("fuel-scale.csv", FuelScale::of, f -> "" + f.co2From());
        particulars = added("evidence-shows.csv", Particular::of, Particular::name);
        account = added("account.csv", AccountLine::of, AccountLine::name);
        answers =
                files.stream()
                        .filter(f -> f.name().equals("answers.csv"))
                        .findFirst()
                        .map(f -> Table.read(f).named("query", row -> row.needed("answer")))
                        .orElse(Map.of());
        for (String query : answers.keySet()) {
            query(query); // refuses one that is not asked
        }
        timing = added("timing.csv", row -> Timed.of(row, treatments), Timed::key);
    }

    private TableFile table(String name) {
        return files.stream()
                .filter(f -> f.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new LawException("the law has no table " + name));
    }

    /** A table that laws frozen before it was added lack: it has no rows in them. */
    private <T> List<Dated<T>> added(
            String table, Function<Table.Row, T> value, Function<T, String> name) {
        return files.stream()
                .filter(f -> f.name().equals(table))
                .findFirst()
                .map(f -> Table.read(f).dated(value, name))
                .orElse(List.of());
    }

    /** Reads the shipped tables of a country, such as {@code GB}. */
    public static Law of(String country) {
        return of(NAMES.stream().map(name -> shipped(country, name)).toList());
    }

    /** A file of the country's folder. */
    static TableFile shipped(String country, String name) {
        String folder = "/quarterfold/templates/law/" + country.toLowerCase(Locale.ROOT) + "/";
        try (InputStream in = Law.class.getResourceAsStream(folder + name)) {
            if (in == null) {
                throw new LawException(
                        "there are no tables for the country %s: %s is missing"
                                .formatted(country, name));
            }
            return file(name, in.readAllBytes());
        } catch (IOException e) {
            throw new LawException(name + " cannot be read", e);
        }
    }

    /** The law that these tables state, for a close worked out again with the tables it froze. */
    public static Law of(List<TableFile> files) {
        return new Law(files);
    }

    /** A table from its bytes, with their digest. */
    public static TableFile file(String name, byte[] bytes) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
            return new TableFile(
                    name,
                    HexFormat.of().formatHex(digest),
                    new String(bytes, StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    public List<TableFile> files() {
        return files;
    }

    public Rates rates() {
        return rates;
    }

    public Choices choices() {
        return choices;
    }

    public Treatments treatments() {
        return treatments;
    }

    public Optional<Dated<Limit>> limit(String name, LocalDate day) {
        return limits.on(name, day);
    }

    /** The area of a country's code on the day: gb, ni, eu or elsewhere. */
    public String area(String country, LocalDate day) {
        return areas.on(country, day).map(Dated::value).orElse("elsewhere");
    }

    /** A rule of {@code periods.csv}. Refuses a name the table does not have on the day. */
    public Dated<String> periodRule(String name, LocalDate day) {
        return periodRuleOn(name, day)
                .orElseThrow(
                        () ->
                                new LawException(
                                        "periods.csv: has no '%s' on %s".formatted(name, day)));
    }

    /** A rule of {@code periods.csv}; empty where the table has none of the name on the day. */
    public Optional<Dated<String>> periodRuleOn(String name, LocalDate day) {
        return periods.on(name, day);
    }

    /** The currency the return is in, ISO 4217. */
    public String currency() {
        return periodRule("return-currency", LocalDate.MAX).value();
    }

    public Optional<Dated<Blocked>> blocked(String category, LocalDate day) {
        return blocked.on(category, day);
    }

    public Optional<Dated<EvidenceRule>> evidence(String code, LocalDate day) {
        return evidence.on(code, day);
    }

    /** What a sector pays under the flat-rate scheme on the day. */
    public Optional<Dated<FlatRate>> flatRate(String id, LocalDate day) {
        return flatRates.stream()
                .filter(d -> d.isInForce(day) && d.value().id().equals(id))
                .findFirst();
    }

    /** The sectors of the flat-rate scheme on the day, in the table's order. */
    public List<FlatRate> flatRates(LocalDate day) {
        return flatRates.stream().filter(d -> d.isInForce(day)).map(Dated::value).toList();
    }

    /**
     * The fuel scale charge of a car, by its emissions in grams per kilometre, for a period that
     * begins on the day. Empty where no table is in force.
     */
    public Optional<Dated<FuelScale>> fuelScale(int co2, LocalDate periodStart) {
        return FuelScale.band(fuelScale, co2, periodStart);
    }

    /** What a document of this kind must show on the day, in the table's order. */
    public List<Dated<Particular>> particulars(String evidence, LocalDate day) {
        return particulars.stream()
                .filter(d -> d.isInForce(day) && d.value().evidence().equals(evidence))
                .toList();
    }

    /** The lines of the VAT account on the day, in the table's order. */
    public List<Dated<AccountLine>> account(LocalDate day) {
        return account.stream().filter(d -> d.isInForce(day)).toList();
    }

    /** The flags that mostly answer a query; empty where leaving it as it is comes first. */
    public Optional<String> answer(String query) {
        return Optional.ofNullable(answers.get(query));
    }

    /** Whether a treatment is under a rule about days, for a supply of the day. */
    public boolean isUnder(TimeRule rule, String treatment, LocalDate day) {
        Timed wanted = new Timed(treatment, rule);
        return timing.stream().anyMatch(d -> d.isInForce(day) && d.value().equals(wanted));
    }

    /** Whether the tables ask a question: those an older close froze may know of no such. */
    public boolean asks(String code) {
        return queries.containsKey(code);
    }

    /** The words of a query. Refuses a code the table does not have. */
    public QueryText query(String code) {
        return Optional.ofNullable(queries.get(code))
                .orElseThrow(() -> new LawException("queries.csv: has no '%s'".formatted(code)));
    }

    /**
     * What a treatment or an adjustment adds to the boxes, and to the totals of {@code totals.csv},
     * under a scheme; empty where it goes nowhere.
     */
    public List<Dated<BoxRule>> boxes(String treatment, String scheme, LocalDate day) {
        return boxRules.of(treatment, scheme, day);
    }

    /** The same for an entry of a category: some totals take only the categories they count. */
    public List<Dated<BoxRule>> boxes(
            String treatment, String scheme, String category, LocalDate day) {
        return boxRules.of(treatment, scheme, category, day);
    }

    /** Whether a category counts in a set of {@code counted-categories.csv}. */
    public boolean counts(String set, String category, LocalDate day) {
        return boxRules.counts(set, category, day);
    }

    /** What a return takes up beside its entries. Refuses a name the table does not have. */
    public Dated<Adjusts> adjustment(String name, LocalDate day) {
        return adjustments.stream()
                .filter(d -> d.isInForce(day) && d.value().name().equals(name))
                .findFirst()
                .orElseThrow(
                        () ->
                                new LawException(
                                        "adjustments.csv: has no '%s' on %s".formatted(name, day)));
    }

    /** The totals on the day that are no box of the form, in the table's order. */
    public List<Total> totals(LocalDate day) {
        return totals.stream().filter(d -> d.isInForce(day)).map(Dated::value).toList();
    }

    /** The boxes of the form for a period that ends on the day, in the form's order. */
    public List<Box> form(LocalDate periodEnd) {
        return form.stream().filter(d -> d.isInForce(periodEnd)).map(Dated::value).toList();
    }

    /**
     * The days on which some table changes. Between two of them every table is constant, so what
     * was decided for one day holds for all.
     */
    public NavigableSet<LocalDate> changes() {
        Stream<Dated<?>> all =
                Stream.of(
                                rates.keyed().stream(),
                                limits.stream(),
                                areas.stream(),
                                blocked.stream(),
                                evidence.stream(),
                                flatRates.stream(),
                                particulars.stream(),
                                treatments.rows().stream(),
                                boxRules.stream(),
                                counted.stream())
                        .flatMap(s -> s);
        return all.flatMap(
                        d ->
                                d.to().equals(LocalDate.MAX)
                                        ? Stream.of(d.from())
                                        : Stream.of(d.from(), d.to().plusDays(1)))
                .collect(Collectors.toCollection(TreeSet::new));
    }
}

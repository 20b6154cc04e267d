package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;
import static quarterfold.treatment.FirstMatch.in;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.law.BoxRule;
import quarterfold.law.Choice;
import quarterfold.law.Dated;
import quarterfold.law.Fact;
import quarterfold.law.Law;
import quarterfold.law.TreatmentRow;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/** The treatment table as a whole: every row can be reached, and everything it names is there. */
class TreatmentTableTest {

    private static final Law LAW = Treating.LAW;
    private static final LocalDate DAY = LocalDate.of(2026, 8, 1);
    private static final List<Dated<TreatmentRow>> ROWS = LAW.treatments().rows();

    /** Treatments that add to no box, each with the reason. */
    private static final Map<String, String> NOWHERE =
            Map.ofEntries(
                    Map.entry("duplicate", "it counts with the entry it repeats"),
                    Map.entry("awaiting-payment", "it counts when it is paid: reg 57"),
                    Map.entry("no-vat-later", "no VAT to charge or take back"),
                    Map.entry("debt-unpaid", "relief is claimed by an entry of its own"),
                    Map.entry("met-again", "it counts with the entry it repeats"),
                    Map.entry("replaced", "the amended document counts"),
                    Map.entry("import-of-another", "the owner of the goods reclaims their VAT"),
                    Map.entry("likely-duplicate", "a person must say whether it repeats another"),
                    Map.entry("before-registration-sale", "no taxable person: VATA 1994 s.3"),
                    Map.entry("before-registration-purchase", "nothing to reclaim by reg 111"),
                    Map.entry("pre-registration-unclaimed", "a person must answer first"),
                    Map.entry("stock-within-limit", "VATA 1994 Sch 4 para 8(1)(c): no supply"),
                    Map.entry("undecided", "a person must answer before it is in a box"),
                    Map.entry("discount-funded-by-another", "the price stays whole"),
                    Map.entry("sale-customer-accounts", "the customer's: VATA 1994 s.7AA"),
                    Map.entry("private-use-untaxed", "no supply: VATA 1994 Sch 4 para 5(5)"),
                    Map.entry("gift-untaxed", "no supply: VATA 1994 Sch 4 para 5"),
                    Map.entry("voucher-issued", "VAT falls due when it is used"),
                    Map.entry("voucher-used", "VAT fell due when it was issued"),
                    Map.entry("stock-moved", "no supply: VATA 1994 s.5"),
                    Map.entry("import-disallowed-value-elsewhere", "the book's choice"),
                    Map.entry("import-unevidenced-value-elsewhere", "the book's choice"),
                    Map.entry("outside-sale", "outside the scope of VAT: VATA 1994 s.4"),
                    Map.entry("outside-purchase", "outside the scope of VAT: VATA 1994 s.4"),
                    Map.entry("deemed-supply-outside-boxes", "the book's choice"),
                    Map.entry("deemed-supply-outside-boxes-reduced", "the book's choice"),
                    Map.entry("unregistered-supplier-outside-boxes", "the book's choice"),
                    Map.entry("unregistered-supplier-outside-boxes-credit", "the book's choice"),
                    Map.entry("blocked-outside-boxes", "the book's choice"),
                    Map.entry("blocked-outside-boxes-credit", "the book's choice"),
                    Map.entry("fee-on-settlement", "the channel's invoice is the evidence"),
                    Map.entry("imported-goods-invoice", "the value comes with the import entry"),
                    Map.entry("imported-goods-invoice-credit", "as for the invoice"),
                    Map.entry(
                            "private-use-under-flat-rate",
                            "no VAT was deducted: VATA 1994 Sch 4 para 5(5)"),
                    Map.entry("flat-rate-import-paid-value-elsewhere", "the book's choice"),
                    Map.entry("import-duty", "duty is not VAT: VATA 1994 s.24(1)"),
                    Map.entry("compensation", "no supply: HMRC manual VATSC61800"),
                    Map.entry("bank-line", "the money of other entries: VATA 1994 s.4"),
                    Map.entry("money-only", "no supply: VAT Notice 700/12 boxes 6 and 7"));

    /** Treatments that turn VAT between boxes, so that no one sign holds for them. */
    private static final Set<String> TURNING =
            Set.of("export-overdue", "export-evidenced", "supplier-unpaid");

    private static final Set<String> FOLLOWS_A_CLAIM = Set.of("I06", "I06b", "T07");
    private static final Set<Kind> WITHOUT_A_DOCUMENT = Set.of(Kind.OTHER_MONEY, Kind.STOCK_MOVED);

    static Stream<Dated<TreatmentRow>> rows() {
        return ROWS.stream();
    }

    /** Some entry, in some book, has facts for which the row is the first: none is shadowed. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void everyRowDecidesSomeEntry(Dated<TreatmentRow> row) {
        LocalDate day = row.to().isBefore(DAY) ? row.to() : DAY;
        Optional<FirstMatch.Facts> facts = new FirstMatch(words(), never()).search(ROWS, row, day);
        assertThat(facts).as("no entry reaches %s", row.value().rule()).isPresent();
        Treated treated = treat(facts.orElseThrow(), day);
        assertThat(treated.rule()).as("%s", facts).isEqualTo(row.value().rule());
        assertThat(treated.treatment()).isEqualTo(row.value().treatment());
        assertThat(treated.why()).isEqualTo(row.value().why());
        assertThat(treated.citation()).isEqualTo(row.source());
        assertThat(claimsOnGoodEvidence(treated)).as("%s", treated).isTrue();
    }

    /**
     * VAT Regulations 1995 reg 29(2): nothing in box 4 without evidence. What a credit takes away,
     * a postponed import, which may be estimated, own goods moved, and VAT that was claimed before
     * are another matter.
     */
    private static boolean claimsOnGoodEvidence(Treated treated) {
        return treated.boxes().getOrDefault("4", Amount.ZERO).signum() <= 0
                || FOLLOWS_A_CLAIM.contains(treated.rule())
                || WITHOUT_A_DOCUMENT.contains(treated.entry().kind())
                || treated.evidence().filter(e -> e.grade().supports()).isPresent();
    }

    /** Every fact's words, every kind, and a category for each way of being blocked. */
    private static Map<String, Set<String>> words() {
        Map<String, Set<String>> words = new HashMap<>();
        for (Fact fact : Fact.values()) {
            words.put(fact.column(), new LinkedHashSet<>(fact.words()));
        }
        words.put("kind", Arrays.stream(Kind.values()).map(Kind::code).collect(Collectors.toSet()));
        words.put(
                "category",
                Set.of(
                        "",
                        "travel",
                        "advertising",
                        "client-entertaining",
                        "car-hire",
                        "toll",
                        "bad-debt-relief",
                        "sample",
                        "single-purpose",
                        "multi-purpose",
                        "third-party-funded",
                        "bad-debt-recovered",
                        "helicopter"));
        in(words, "liability").remove("hospitality"); // not a rate on the day
        for (Choice choice : LAW.choices().all()) {
            words.put(choice.name(), Set.copyOf(choice.values()));
        }
        return words;
    }

    /** What no entry has together, since one fact follows from the other. */
    private static List<Map<String, Set<String>>> never() {
        List<Map<String, Set<String>>> never = new ArrayList<>();
        never.addAll(ImpossibleEvidence.of(in(words(), "category")));
        never.add(
                Map.of(
                        "evidence",
                        Set.of(
                                "invoice",
                                "self-billed",
                                "import-certificate",
                                "postponed-statement"),
                        "claims",
                        Set.of("no", "over-limit", "not-this-category")));
        never.add(
                Map.of(
                        "evidence",
                        Set.of("simplified"),
                        "claims",
                        Set.of("no", "not-this-category")));
        never.add(
                Map.of(
                        "evidence",
                        Set.of("export", "alternative", "missing", "unstated"),
                        "claims",
                        ImpossibleEvidence.allBut(
                                "no",
                                "repeated",
                                "import-vat",
                                "fee-lines",
                                "advance",
                                "other-copy",
                                "on-bill")));
        never.add(Map.of("evidence", Set.of("none-needed"), "claims", Set.of("no")));
        never.add(
                Map.of(
                        "evidence",
                        Set.of("none-needed"),
                        "claims",
                        ImpossibleEvidence.allBut(
                                "no",
                                "not-this-category",
                                "repeated",
                                "import-vat",
                                "fee-lines",
                                "advance",
                                "other-copy",
                                "on-bill"),
                        "category",
                        without(in(words(), "category"), "toll")));
        never.add(
                Map.of(
                        "evidence",
                        Set.of("none-needed"),
                        "claims",
                        Set.of("not-this-category"),
                        "category",
                        Set.of("toll")));
        blocked(never, "none", "", "travel", "advertising", "toll");
        blocked(never, "full", "client-entertaining");
        blocked(never, "part", "car-hire");
        blocked(
                never,
                "unknown",
                "helicopter",
                "bad-debt-relief",
                "bad-debt-recovered",
                "sample",
                "single-purpose",
                "multi-purpose",
                "third-party-funded");
        Set<String> sales =
                Arrays.stream(Kind.values())
                        .filter(k -> k.side() == Kind.Side.SALES)
                        .map(Kind::code)
                        .collect(Collectors.toSet());
        never.add(Map.of("kind", sales, "liability", Set.of("unstated")));
        never.add(Map.of("kind", Set.of("stock-moved"), "liability", Set.of("unstated")));
        never.add(Map.of("kind", Set.of("fuel-scale"), "measured", Set.of("within", "above")));
        never.add(
                Map.of(
                        "kind",
                        without(in(words(), "kind"), "fuel-scale"),
                        "measured",
                        Set.of("listed", "different", "unlisted")));
        never.add(
                Map.of(
                        "kind",
                        Set.of("gift"),
                        "category",
                        Set.of("sample"),
                        "measured",
                        Set.of("above")));
        Set<String> otherKinds =
                without(
                        Arrays.stream(Kind.values()).map(Kind::code).collect(Collectors.toSet()),
                        "other-money");
        for (Map<String, Set<String>> noRelief :
                List.of(
                        Map.of("kind", otherKinds),
                        Map.of("category", without(in(words(), "category"), "bad-debt-relief")))) {
            Map<String, Set<String>> during = new HashMap<>(noRelief);
            during.put("registration", Set.of("during", "after"));
            during.put("in_time", Set.of("no"));
            never.add(during);
            Map<String, Set<String>> other = new HashMap<>(noRelief);
            other.put("in_time", Set.of("early", "unstated"));
            never.add(other);
        }
        return never;
    }

    private static void blocked(
            List<Map<String, Set<String>>> never, String how, String... categories) {
        never.add(
                Map.of(
                        "category",
                        Set.of(categories),
                        "blocked",
                        without(Set.of("none", "part", "full", "unknown"), how)));
    }

    private static Set<String> without(Set<String> all, String one) {
        return all.stream().filter(w -> !w.equals(one)).collect(Collectors.toSet());
    }

    /** Treats an entry that has these facts. */
    private static Treated treat(FirstMatch.Facts facts, LocalDate day) {
        Map<String, String> countries =
                Map.of("gb", "GB", "ni", "XI", "eu", "DE", "elsewhere", "US", "unstated", "");
        Map<String, String> numbers =
                Map.of(
                        "none",
                        "",
                        "gb",
                        "GB101747696",
                        "gb-fails",
                        "GB123456789",
                        "foreign",
                        "DE123456788");
        Map<String, String> rates =
                Map.of("standard", "20", "reduced", "5", "zero", "0", "not-a-rate", "3");
        String liability = facts.get("liability");
        SampleLine line =
                SampleLine.of(facts.get("kind"))
                        .on(day.toString())
                        .currency(facts.get("currency").equals("home") ? "GBP" : "EUR")
                        .rate(
                                liability.equals("unstated")
                                        ? ""
                                        : rates.getOrDefault(liability, liability))
                        .goods(in(countries, facts.get("starts")), in(countries, facts.get("goes")))
                        .customer(facts.get("customer"), in(numbers, facts.get("customer_vat")))
                        .channel(
                                facts.get("channel_collects").equals("none") ? "" : "Quaylark",
                                facts.get("channel_collects").equals("none")
                                        ? "no"
                                        : facts.get("channel_collects"))
                        .party(
                                recipientMissing(facts) ? "" : "Example supplier",
                                in(countries, facts.get("supplier")),
                                in(numbers, facts.get("supplier_vat")))
                        .evidence(facts.get("evidence"))
                        .settlement(facts.get("settlement").equals("yes") ? "QL-0001" : "")
                        .category(facts.get("category"));
        boolean over = facts.get("claims").equals("over-limit");
        boolean much = facts.get("claims").equals("overcharged");
        boolean stock =
                facts.get("kind").equals("stock-on-hand") && facts.get("on_hand").equals("yes");
        String net = stock ? "10000" : over ? "1000" : "10";
        String vat =
                stock
                        ? "2000"
                        : over ? liability.equals("reduced") ? "50" : "200" : much ? "9" : "0.50";
        switch (facts.get("vat")) {
            case "printed" -> line.printed(net, vat);
            case "nil" -> line.printed(over ? "1000" : "10", "0");
            default -> line.gross(stock ? "12000" : over ? "1200" : "12");
        }
        if (facts.get("kind").equals("fuel-scale")) {
            line = fuelScale(facts, line);
        }
        Map<String, String> choices = new HashMap<>();
        LAW.choices().all().forEach(c -> choices.put(c.name(), facts.get(c.name())));
        String seller = facts.get("seller").equals("uk") ? "GB" : "US";
        Settings settings =
                SampleSettings.of(
                        seller, "GB", facts.get("northern_ireland").equals("yes"), choices);
        particulars(facts, line);
        relief(facts, line, day);
        Treating treating =
                Treating.of(SampleSettings.of(settings, periods(facts, day), scheme(facts)))
                        .deciding(decisions(facts));
        return switch (facts.get("claims")) {
            case "repeated" -> treating.all(line.document("A-1"), line).get(1);
            case "import-vat" ->
                    treating.all(importOf(facts.get("vat").equals("nil") ? net : vat, day), line)
                            .get(1);
            case "met-again" -> ofTwoDocuments(treating, line, false);
            case "replaced" -> ofTwoDocuments(treating, line, true);
            case "on-bill" ->
                    treating.claimed(
                                    e ->
                                            Optional.of(
                                                            new DoubleClaims.Claim(
                                                                    YearMonth.of(2026, 6),
                                                                    Amount.of(vat)))
                                                    .filter(m -> e == 1))
                            .all(billOf(vat, day), line)
                            .get(1);
            case "advance" ->
                    treating.all(
                                    SampleLine.of("expense")
                                            .party("Example supplier", "GB", "GB101747696")
                                            .printed("0.5", "0.1")
                                            .document("A-0")
                                            .particular(Particular.ADVANCE, "yes")
                                            .on(day.toString()),
                                    line.document("A-1").particular(Particular.FOLLOWS, "A-0"))
                            .get(1);
            case "other-copy" ->
                    treating.all(
                                    SampleLine.of("expense")
                                            .party("Example supplier", "GB", "GB101747696")
                                            .printed("0.5", "0.1")
                                            .document("A-0")
                                            .on(day.toString()),
                                    line.document("A-1")
                                            .particular(Particular.AMENDED, "yes")
                                            .particular(Particular.FOLLOWS, "A-0"))
                            .get(1);
            case "fee-lines" -> treating.all(feeLine(day), line).get(1);
            default ->
                    treating.one(line, Coded.find(Cause.class, facts.get("cause")).orElseThrow());
        };
    }

    /** An import entry of which the VAT is billed again. */
    private static SampleLine importOf(String vat, LocalDate day) {
        return SampleLine.of("import-vat-paid")
                .vat(vat)
                .document("26GB01")
                .evidence("import-certificate")
                .on(day.toString());
    }

    /** An agent's bill for an import of which it prints the VAT. */
    private static SampleLine billOf(String vat, LocalDate day) {
        return SampleLine.of("expense")
                .party("Cobble Hare Couriers Ltd", "GB", "GB101747696")
                .printed(vat, "0")
                .rate("0")
                .document("CH-9")
                .evidence("invoice")
                .on(day.toString());
    }

    /** A fee claimed on a settlement. */
    private static SampleLine feeLine(LocalDate day) {
        return SampleLine.of("fee")
                .party("Example supplier", "GB", "GB101747696")
                .printed("3", "0.60")
                .evidence("invoice")
                .channel("Quaylark", "no")
                .settlement("QL-0001")
                .on(day.toString());
    }

    /** The line with the same in a later file, or with an amended document that has it no more. */
    private static Treated ofTwoDocuments(Treating treating, SampleLine line, boolean replaced) {
        line.document("A-1").particular(Particular.STATEMENT_MONTH, "2026-08");
        Entry first = new Entry(1, 1, line.line(2));
        Entry second =
                replaced
                        ? new Entry(
                                2,
                                2,
                                line.document("A-2").particular(Particular.AMENDED, "yes").line(2))
                        : new Entry(2, 2, line.line(2));
        return new TreatmentRun(treating.context(List.of(first, second)))
                .treat(replaced ? first : second);
    }

    private static void particulars(FirstMatch.Facts facts, SampleLine line) {
        for (Particular particular : List.of(Particular.USE, Particular.ADDRESSED)) {
            if (!facts.get(particular.code()).equals("unstated")) {
                line.particular(particular, facts.get(particular.code()));
            }
        }
        switch (facts.get("on_hand")) {
            case "yes" -> line.particular(Particular.ON_HAND, "100");
            case "no" -> line.particular(Particular.ON_HAND, "0");
            case "within-limit" -> {}
            default -> {}
        }
        boolean gift = facts.get("kind").equals("gift");
        switch (facts.get("measured")) {
            case "within" ->
                    line.particular(Particular.CONSIGNMENT, "135")
                            .particular(Particular.COST, gift ? "50" : "9999");
            case "above" ->
                    line.particular(Particular.CONSIGNMENT, "135.01")
                            .particular(Particular.COST, gift ? "50.01" : "1");
            case "listed", "different" -> line.particular(Particular.CO2, "118");
            default -> {}
        }
    }

    private static boolean recipientMissing(FirstMatch.Facts facts) {
        return facts.get("kind").equals("gift") && facts.get("measured").equals("unstated");
    }

    /** A charge as the table has it for a quarter, another one, or none. */
    private static SampleLine fuelScale(FirstMatch.Facts facts, SampleLine line) {
        return switch (facts.get("measured")) {
            case "listed" -> line.without().gross("163");
            case "unstated" -> line.without();
            default -> line.without().gross("100");
        };
    }

    /** The day a debt was due, where the entry claims relief on it. */
    private static void relief(FirstMatch.Facts facts, SampleLine line, LocalDate day) {
        if (facts.get("kind").equals("other-money")
                && facts.get("category").equals("bad-debt-relief")) {
            switch (facts.get("in_time")) {
                case "yes" -> line.particular(Particular.DUE, day.minusMonths(6).toString());
                case "no" -> line.particular(Particular.DUE, day.minusYears(5).toString());
                case "early" -> line.particular(Particular.DUE, day.toString());
                default -> {}
            }
        }
    }

    /** A registration that the day is before, during or after. */
    private static Periods periods(FirstMatch.Facts facts, LocalDate day) {
        List<Month> quarters = SampleSettings.months("3 6 9 12");
        return switch (facts.get("registration")) {
            case "before" ->
                    Periods.of(
                            facts.get("in_time").equals("yes")
                                    ? day.plusDays(1)
                                    : day.plusYears(10),
                            quarters);
            case "after" -> ended(day.minusDays(1), quarters);
            default ->
                    facts.get("kind").equals("stock-on-hand")
                                    && !facts.get("on_hand").equals("unstated")
                            ? ended(day, quarters)
                            : SampleSettings.GB.periods();
        };
    }

    private static Periods ended(LocalDate lastDay, List<Month> quarters) {
        Periods open = Periods.of(SampleSettings.GB.registeredFrom(), quarters);
        return new Periods(
                open.registeredFrom(),
                Optional.of(lastDay),
                open.ends(),
                open.notified(),
                open.annual(),
                open.onAccount(),
                open.partialExemptionYearEnds());
    }

    private static Schemes scheme(FirstMatch.Facts facts) {
        String scheme = facts.get("scheme");
        return Schemes.of(
                scheme, scheme.equals("flat-rate") ? Optional.of("044") : Optional.empty());
    }

    /** Decisions on the entry that is looked at: the second where it repeats the first. */
    private static Decision[] decisions(FirstMatch.Facts facts) {
        boolean second =
                Set.of("repeated", "import-vat", "fee-lines", "advance", "other-copy", "on-bill")
                        .contains(facts.get("claims"));
        return switch (facts.get("decided")) {
            case "disallowed" -> new Decision[] {decided(second, Decision.Action.DISALLOW, "")};
            case "duplicate" ->
                    new Decision[] {
                        decided(second, Decision.Action.DUPLICATE_OF, second ? "1" : "2")
                    };
            default -> new Decision[0];
        };
    }

    private static Decision decided(boolean second, Decision.Action action, String value) {
        return new Decision(
                1,
                Decision.Target.ENTRY,
                second ? "2" : "1",
                action,
                value,
                "seen",
                "a person",
                DAY);
    }

    @Test
    void theKindsOfTheTableAreTheLedgersKinds() {
        Set<String> used = new TreeSet<>();
        ROWS.forEach(r -> used.addAll(r.value().when().getOrDefault(Fact.KIND, Set.of())));
        assertThat(used)
                .isEqualTo(
                        Arrays.stream(Kind.values())
                                .map(Kind::code)
                                .collect(Collectors.toCollection(TreeSet::new)));
        assertThat(ROWS).allSatisfy(r -> assertThat(r.value().when()).containsKey(Fact.KIND));
    }

    /** A plain case of every kind: nothing unusual about it, and everything stated. */
    @Test
    void everyKindIsDecided() {
        Map<String, String> treatments = new TreeMap<>();
        for (Kind kind : Kind.values()) {
            SampleLine line =
                    SampleLine.of(kind.code())
                            .printed("100", "20")
                            .rate("20")
                            .party(
                                    "Example supplier",
                                    "GB",
                                    kind.side() == Kind.Side.IMPORTS ? "" : "GB101747696")
                            .evidence(
                                    switch (kind) {
                                        case IMPORT_VAT_PAID -> "import-certificate";
                                        case IMPORT_VAT_POSTPONED -> "postponed-statement";
                                        default -> "invoice";
                                    });
            treatments.put(kind.code(), Treating.gb().one(line).treatment());
        }
        assertThat(treatments)
                .containsExactly(
                        Map.entry("bank-line", "bank-line"),
                        Map.entry("compensation", "compensation"),
                        Map.entry("customer-payment", "money-only"),
                        Map.entry("delivery", "uk-sale"),
                        Map.entry("delivery-refund", "uk-sale-reduced"),
                        Map.entry("discount", "uk-sale-reduced"),
                        Map.entry("discount-reversed", "uk-sale"),
                        Map.entry("expense", "uk-purchase"),
                        Map.entry("expense-credit", "uk-purchase-credit"),
                        Map.entry("fee", "uk-purchase"),
                        Map.entry("fee-refund", "uk-purchase-credit"),
                        Map.entry("fuel-scale", "fuel-scale-charge"),
                        Map.entry("gift", "gift"),
                        Map.entry("import-duty", "import-duty"),
                        Map.entry("import-vat-paid", "import-paid"),
                        Map.entry("import-vat-postponed", "import-postponed"),
                        Map.entry("other-money", "money-only"),
                        Map.entry("payout", "money-only"),
                        Map.entry("private-use", "private-use"),
                        Map.entry("purchase", "uk-purchase"),
                        Map.entry("purchase-credit", "uk-purchase-credit"),
                        Map.entry("reserve", "money-only"),
                        Map.entry("sale", "uk-sale"),
                        Map.entry("sale-refund", "uk-sale-reduced"),
                        Map.entry("stock-moved", "stock-moved"),
                        Map.entry("stock-on-hand", "undecided"),
                        Map.entry("supplier-payment", "money-only"),
                        Map.entry("transfer", "money-only"),
                        Map.entry("voucher", "undecided"),
                        Map.entry("voucher-redeemed", "undecided"));
    }

    @Test
    void everyTreatmentHasItsBoxesOrGoesNowhereForAReason() {
        Set<String> nowhere =
                ROWS.stream()
                        .filter(
                                r ->
                                        LAW.boxes(r.value().treatment(), "standard", r.from())
                                                .isEmpty())
                        .map(r -> r.value().treatment())
                        .collect(Collectors.toSet());
        assertThat(nowhere).isEqualTo(NOWHERE.keySet());
        assertThat(NOWHERE.values()).noneMatch(String::isBlank);
    }

    /** A row is never in force on a day on which its treatment's boxes are not. */
    @Test
    void boxesAreInForceAsLongAsTheirTreatment() {
        for (Dated<TreatmentRow> row : ROWS) {
            if (!NOWHERE.containsKey(row.value().treatment())) {
                assertThat(LAW.boxes(row.value().treatment(), "standard", row.from()))
                        .as(row.value().rule())
                        .isEqualTo(LAW.boxes(row.value().treatment(), "standard", row.to()));
            }
        }
    }

    /** VAT Regulations 1995 reg 38(3)(b) and (4)(b): taken away where the supply was added. */
    @Test
    void whatReducesMirrorsWhatItReduces() {
        Set<String> treatments =
                ROWS.stream().map(r -> r.value().treatment()).collect(Collectors.toSet());
        List<String> reducing =
                treatments.stream().filter(t -> t.matches(".*-(reduced|credit)")).sorted().toList();
        assertThat(reducing).hasSize(39);
        for (String treatment : reducing) {
            String base = treatment.replaceFirst("-(reduced|credit)$", "");
            assertThat(treatments).contains(base);
            assertThat(
                            LAW.boxes(treatment, "standard", DAY).stream()
                                    .map(Dated::value)
                                    .map(
                                            b ->
                                                    new BoxRule(
                                                            base,
                                                            b.box(),
                                                            b.measure(),
                                                            -b.sign(),
                                                            b.schemes(),
                                                            b.account())))
                    .as(treatment)
                    .containsExactlyElementsOf(
                            LAW.boxes(base, "standard", DAY).stream().map(Dated::value).toList());
            if (!TURNING.contains(base)) {
                assertThat(LAW.boxes(treatment, "standard", DAY))
                        .allMatch(b -> b.value().sign() == -1);
            }
        }
        assertThat(treatments)
                .filteredOn(t -> !reducing.contains(t) && !TURNING.contains(t))
                .allMatch(
                        t ->
                                LAW.boxes(t, "standard", DAY).stream()
                                        .allMatch(b -> b.value().sign() == 1));
    }

    @Test
    void everyRowCitesAText() {
        assertThat(ROWS)
                .allSatisfy(
                        r ->
                                assertThat(r.source())
                                        .as(r.value().rule())
                                        .containsPattern(
                                                "VATA 1994|VAT Regulations 1995|VAT Notice|HMRC"
                                                        + " manual|SI \\d{4}/\\d+|gov\\.uk"));
    }

    /** VAT that nobody may reclaim is never in a treatment that adds to box 4. */
    @Test
    void onlyRowsThatClaimFeedBoxFour() {
        for (Dated<TreatmentRow> row : ROWS) {
            boolean feeds =
                    LAW.boxes(row.value().treatment(), "standard", DAY).stream()
                            .anyMatch(b -> b.value().box().equals("4"));
            assertThat(row.value().claims()).as(row.value().rule()).isEqualTo(feeds);
        }
    }

    @Test
    void everyQueryIsAskedSomewhere() throws IOException {
        Set<String> byTable =
                ROWS.stream()
                        .map(r -> r.value().query())
                        .filter(q -> !q.isEmpty())
                        .collect(Collectors.toCollection(TreeSet::new));
        Set<String> listed = new TreeSet<>();
        for (String line :
                LAW.files().stream()
                        .filter(f -> f.name().equals("queries.csv"))
                        .findFirst()
                        .orElseThrow()
                        .text()
                        .lines()
                        .skip(1)
                        .toList()) {
            listed.add(line.substring(0, line.indexOf(',')));
        }
        assertThat(listed).containsAll(byTable);
        Set<String> byCode = new TreeSet<>(listed);
        byCode.removeAll(byTable);
        assertThat(byCode)
                .containsExactly(
                        "credit-adds-to-claim",
                        "credit-entered-twice",
                        "customer-payment-above-document",
                        "customer-payment-without-document",
                        "error-deliberate",
                        "error-too-old",
                        "errors-told-separately",
                        "fees-without-invoice",
                        "flat-rate-percent",
                        "import-month-missing",
                        "late-claim-time",
                        "late-purchase",
                        "late-under-flat-rate",
                        "no-rule",
                        "partial-exemption-last-year",
                        "partial-exemption-override",
                        "partial-exemption-use",
                        "sale-vat-apportioned",
                        "sale-vat-differs",
                        "sale-vat-nil",
                        "sale-vat-untaxed",
                        "sterling-vat-differs",
                        "supplier-payment-above-document",
                        "supplier-payment-without-document",
                        "vat-above-every-rate",
                        "vat-differs",
                        "vat-not-in-sterling",
                        "vat-overcharged");
        String code = mainCode();
        assertThat(byCode).allMatch(q -> code.contains('"' + q + '"'));
    }

    private static String mainCode() throws IOException {
        StringBuilder all = new StringBuilder();
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                all.append(Files.readString(file));
            }
        }
        return all.toString();
    }

    /** The small costs that need no document are categories one may claim at all. */
    @Test
    void evidenceNamesCategoriesThatExist() {
        List<String> small =
                LAW.evidence("none-needed", DAY).orElseThrow().value().onlyCategories();
        assertThat(small)
                .isNotEmpty()
                .allMatch(c -> LAW.blocked(c, DAY).orElseThrow().value().blocked().isZero());
    }
}

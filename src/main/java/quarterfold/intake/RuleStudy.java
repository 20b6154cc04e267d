package quarterfold.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import quarterfold.intake.Layout.Enter;
import quarterfold.intake.Layout.Rule;
import quarterfold.intake.Layout.Signs;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Kind;

/** Finds what the rows of a table are: a rule for each of the words they say of themselves. */
final class RuleStudy {
    static final Set<Role> SAYING = EnumSet.of(Role.RECORD, Role.TYPE, Role.PART);
    private static final List<String> KINDS = Stream.of(Kind.values()).map(Kind::code).toList();

    private final List<Column> columns;
    private final MoneyPlan plan;
    private final String money;
    private final KindFinder kinds;
    private final Findings findings;
    private final Subject subject;
    private final Optional<Kind> titled;
    private final KindAsking asking;
    private final List<Rule> rules = new ArrayList<>();
    private final Map<Integer, Kind> kindOfRow = new LinkedHashMap<>();
    private final Map<Integer, Signs> ownSigns = new LinkedHashMap<>();
    private Signs signs = Signs.OWNER;

    /**
     * @param money the column of a row's one amount, as the layout names it
     * @param subject what words round the table say that its rows are
     * @param titled what the title of the table itself says that they are
     */
    RuleStudy(
            List<Column> columns,
            MoneyPlan plan,
            String money,
            KindFinder kinds,
            Subject subject,
            Optional<Kind> titled,
            Findings findings) {
        this.columns = columns;
        this.plan = plan;
        this.money = money;
        this.kinds = kinds;
        this.subject = subject;
        this.titled = titled;
        this.findings = findings;
        asking = new KindAsking(plan, KINDS, findings);
    }

    List<Rule> rules() {
        return rules;
    }

    Signs signs() {
        return signs;
    }

    /** Whether some rows have signs of their own. */
    boolean hasOwnSigns() {
        return !ownSigns.isEmpty();
    }

    void study() {
        List<Column> said = columns.stream().filter(c -> SAYING.contains(c.role())).toList();
        boolean wide = plan.shape() == MoneyPlan.Shape.WIDE;
        if (areBankLines()) {
            all(Kind.BANK_LINE);
            return;
        }
        if (said.isEmpty()) {
            withoutWords(wide);
            return;
        }
        List<RowHeap> heaps = heaps(said);
        if (wide) {
            heaps.forEach(this::wide);
        } else {
            Map<Integer, SignStudy.Heap> kindsOfRules = new LinkedHashMap<>();
            for (RowHeap heap : heaps) {
                single(heap)
                        .ifPresent(
                                kind ->
                                        kindsOfRules.put(
                                                rules.size() - 1,
                                                new SignStudy.Heap(kind, heap.rows())));
            }
            findSigns(kindsOfRules);
            if (findings.canBeWritten()) { // else the signs may be others
                doubtDirections(heaps);
            }
        }
    }

    private List<RowHeap> heaps(List<Column> said) {
        Map<Map<String, String>, List<Integer>> heaps = new LinkedHashMap<>();
        int rows = said.get(0).texts().size();
        for (int row = 0; row < rows; row++) {
            Map<String, String> when = new LinkedHashMap<>();
            for (Column column : said) {
                when.put(column.reference(), column.texts().get(row));
            }
            heaps.computeIfAbsent(when, w -> new ArrayList<>()).add(row);
        }
        boolean marked = said.get(0).role() == Role.RECORD;
        return heaps.entrySet().stream()
                .map(e -> new RowHeap(e.getKey(), marked, e.getValue()))
                .toList();
    }

    private Optional<Kind> single(RowHeap heap) {
        Optional<KindFinder.Said> said = heap.said(kinds);
        boolean moves = heap.rows().stream().anyMatch(row -> plan.money(row) != 0);
        if (!moves && said.filter(KindFinder.Said::isNote).isPresent()) {
            add(heap, List.of(), "information only, no money", "");
            return Optional.empty();
        }
        String doubt = heap.doubt(kinds);
        Optional<Kind> answer = asking.answered(heap);
        Optional<Kind> kind =
                doubt.isEmpty() ? answer.or(() -> said.flatMap(KindFinder::kind)) : answer;
        String category = said.map(s -> KindFinder.category(s, Role.NONE)).orElse("channel-fee");
        if (kind.isEmpty()) {
            kind = asking.ask(heap, doubt);
        }
        add(heap, kind, category);
        return kind;
    }

    private void add(RowHeap heap, Optional<Kind> kind, String category) {
        if (kind.isPresent()) {
            Kind found = kind.get();
            heap.rows().forEach(row -> kindOfRow.put(row, found));
            add(heap, List.of(enter(found, amounts(found), category)), "", "");
        } else {
            add(
                    heap,
                    List.of(enter(Kind.OTHER_MONEY, amounts(Kind.OTHER_MONEY), "")),
                    "",
                    "what is '%s'?".formatted(heap.about()));
        }
    }

    /** Rows whose money all goes against the kind their words were read as are asked about. */
    private void doubtDirections(List<RowHeap> heaps) {
        boolean turned = sales() < 0; // asked already
        for (int i = 0; i < heaps.size(); i++) {
            RowHeap heap = heaps.get(i);
            Optional<Kind> kind =
                    Optional.ofNullable(kindOfRow.get(heap.rows().get(0)))
                            .filter(k -> !(turned && k == Kind.SALE))
                            .filter(k -> asking.isAgainst(heap, k, signsOf(heap)))
                            .filter(k -> asking.answered(heap).isEmpty());
            if (kind.isPresent()) {
                asking.ask(heap, KindAsking.against(kind.get()));
                heap.rows().forEach(kindOfRow::remove);
                add(heap, Optional.empty(), "");
                rules.set(i, rules.remove(rules.size() - 1));
            }
        }
    }

    private Map<Field, String> amounts(Kind kind) {
        Map<Field, String> amounts = new EnumMap<>(Field.class);
        if (plan.shape() != MoneyPlan.Shape.DOCUMENT) {
            amounts.put(Field.GROSS, money);
            if (kind.side() == Kind.Side.PURCHASES && plan.shape() == MoneyPlan.Shape.SINGLE) {
                plan.printedVat(columns).ifPresent(c -> amounts.put(Field.VAT, c.reference()));
            }
            return amounts;
        }
        amounts.put(Field.NET, plan.parts().get(0).column().reference());
        amounts.put(Field.VAT, plan.parts().get(1).column().reference());
        amounts.put(Field.GROSS, money);
        return amounts;
    }

    private static boolean isTax(Role role) {
        return role == Role.TAX || role == Role.DELIVERY_TAX || role == Role.WITHHELD;
    }

    /** The amounts of a part's entry; a price with a tax of its own is a net. */
    private Map<Field, String> amounts(Column column) {
        Column tax = plan.taxes().get(column);
        if (tax == null) {
            return TaxWithin.amounts(plan, columns, column);
        }
        Map<Field, String> amounts = new EnumMap<>(Field.class);
        amounts.put(Field.NET, column.reference());
        amounts.put(Field.VAT, tax.reference());
        amounts.put(Field.GROSS, MoneyPlan.gross(column, tax));
        return amounts;
    }

    private static Enter enter(Kind kind, Map<Field, String> amounts, String category) {
        boolean fee = kind == Kind.FEE || kind == Kind.FEE_REFUND;
        return new Enter(
                kind,
                amounts,
                fee && !category.isEmpty() ? Map.of(Field.CATEGORY, category) : Map.of());
    }

    private void add(RowHeap heap, List<Enter> enters, String setAside, String ask) {
        Map<String, List<String>> when = new LinkedHashMap<>();
        heap.when().forEach((column, text) -> when.put(column, List.of(text)));
        rules.add(new Rule(when, enters, setAside, ask, 0));
    }

    private void wide(RowHeap heap) {
        boolean moves =
                heap.rows().stream()
                        .anyMatch(
                                row ->
                                        plan.parts().stream()
                                                .anyMatch(p -> p.column().values()[row] != 0));
        Optional<KindFinder.Said> said = heap.said(kinds);
        if (!moves) {
            add(heap, List.of(), "information only, no money", "");
            return;
        }
        String doubt = heap.doubt(kinds);
        Optional<Kind> answer = asking.answered(heap);
        if (answer.isEmpty() && (said.isEmpty() || !doubt.isEmpty())) {
            answer = asking.ask(heap, doubt);
        }
        Optional<KindFinder.Said> event = answer.flatMap(KindFinder::event);
        if (event.isPresent()) {
            said = event;
            answer = Optional.empty();
        } else if (!doubt.isEmpty()) {
            said = Optional.empty();
        }
        List<Enter> enters = new ArrayList<>();
        for (MoneyPlan.Part part : plan.parts()) {
            Role role = part.column().role();
            if (isTax(role)) {
                continue;
            }
            boolean used = heap.rows().stream().anyMatch(r -> part.column().values()[r] != 0);
            boolean trade =
                    said.filter(s -> s.event().equals("sale") || s.event().equals("refund"))
                            .isPresent();
            if (!used && (!trade || role == Role.NONE)) {
                continue;
            }
            if (trade && role == Role.NONE) {
                MoneyPlanner.askPart(part.column(), plan.root().orElseThrow(), findings);
            }
            Optional<Kind> kind =
                    answer.isPresent() ? answer : said.flatMap(s -> KindFinder.kind(s, role));
            String category = said.map(s -> KindFinder.category(s, role)).orElse("");
            enters.add(enter(kind.orElse(Kind.OTHER_MONEY), amounts(part.column()), category));
            if (kind.isEmpty() && said.isPresent()) {
                asking.ask(heap, "");
            }
        }
        boolean open =
                enters.stream().anyMatch(e -> e.kind() == Kind.OTHER_MONEY) && answer.isEmpty();
        boolean turned = new WideSigns(plan, findings).areTurned(heap, said);
        add(heap, enters, "", open ? "what is '%s'?".formatted(heap.about()) : "");
        if (turned) {
            rules.set(
                    rules.size() - 1, rules.get(rules.size() - 1).with(Optional.of(Signs.TURNED)));
            heap.rows().forEach(row -> ownSigns.put(row, Signs.TURNED));
        }
    }

    private void withoutWords(boolean wide) {
        boolean bought = columns.stream().anyMatch(c -> c.role() == Role.SUPPLIER);
        boolean sold =
                subject == Subject.SALES
                        || (wide && (plan.has(Role.GOODS) || plan.has(Role.TOTAL)));
        Optional<Kind> known = sold && !bought ? Optional.of(Kind.SALE) : Optional.empty();
        Optional<Kind> kind =
                known.isPresent() || titled.isPresent()
                        ? titled.or(() -> known)
                        : findings.ask(
                                        new Question(
                                                "rows",
                                                "no column says what the rows are; what are they?",
                                                KINDS,
                                                true))
                                .flatMap(a -> Coded.find(Kind.class, a));
        if (kind.isPresent() && wide) {
            wideSales();
        } else if (kind.isPresent()) {
            int direction = kind.get().direction();
            boolean printed =
                    direction > 0
                            ? plan.shape() == MoneyPlan.Shape.DOCUMENT
                                    || plan.shape() == MoneyPlan.Shape.PRODUCT
                            : plan.shape() != MoneyPlan.Shape.PAIR && direction * sum() <= 0;
            signs = printed ? Signs.DOCUMENT : signs;
            all(kind.get());
        }
    }

    private void wideSales() {
        List<Enter> enters = new ArrayList<>();
        KindFinder.Said sale = new KindFinder.Said("sale", "", "");
        for (MoneyPlan.Part part : plan.parts()) {
            Role role = part.column().role();
            if (!isTax(role)) {
                enters.add(
                        enter(
                                KindFinder.kind(sale, role).orElse(Kind.OTHER_MONEY),
                                amounts(part.column()),
                                KindFinder.category(sale, role)));
            }
        }
        List<Integer> rows = IntStream.range(0, columns.get(0).texts().size()).boxed().toList();
        Directions.check(plan, rows, 1, findings);
        rules.add(new Rule(Map.of(), enters, "", "", 0));
    }

    /** A bank's own words for a payment say nothing of what it was for. */
    private boolean areBankLines() {
        return (plan.shape() == MoneyPlan.Shape.SINGLE || plan.shape() == MoneyPlan.Shape.PAIR)
                && findings.answer("rows")
                        .map(Kind.BANK_LINE.code()::equals)
                        .orElse(subject == Subject.BANK);
    }

    /** All rows are of one kind. */
    private void all(Kind kind) {
        for (int row = 0; row < columns.get(0).texts().size(); row++) {
            kindOfRow.put(row, kind);
        }
        Enter enter = enter(kind, amounts(kind), "channel-fee");
        rules.add(new Rule(Map.of(), List.of(enter), "", "", 0));
    }

    private long sum() {
        return IntStream.range(0, columns.get(0).texts().size()).mapToLong(plan::money).sum();
    }

    /** Whether amounts are the owner's + and -, or all positive as printed. */
    private void findSigns(Map<Integer, SignStudy.Heap> heaps) {
        SignStudy study = new SignStudy(plan, List.copyOf(heaps.values()), findings);
        boolean letters =
                columns.stream()
                        .filter(Column::hasValues)
                        .flatMap(c -> c.stated().stream())
                        .anyMatch(AmountReader::hasLetters);
        signs = letters ? Signs.OWNER : study.study();
        heaps.forEach(
                (rule, heap) ->
                        study.own(heap)
                                .filter(own -> own != signs)
                                .ifPresent(
                                        own -> {
                                            rules.set(rule, rules.get(rule).with(Optional.of(own)));
                                            heap.rows().forEach(row -> ownSigns.put(row, own));
                                        }));
    }

    private Signs signsOf(RowHeap heap) {
        return ownSigns.getOrDefault(heap.rows().get(0), signs);
    }

    private long sales() {
        return kindOfRow.entrySet().stream()
                .filter(e -> e.getValue() == Kind.SALE)
                .mapToLong(e -> plan.money(e.getKey()))
                .sum();
    }

    /** The money of a row as the ledger will have it: positive where it comes in. */
    long money(int row) {
        long value = plan.money(row);
        Kind kind = kindOfRow.get(row);
        Signs of = ownSigns.getOrDefault(row, signs);
        return value * of.owners(kind == null ? 1 : kind.direction());
    }

    boolean isPayout(int row) {
        return kindOfRow.get(row) == Kind.PAYOUT;
    }
}

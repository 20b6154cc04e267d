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
import quarterfold.money.Amount;

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

    void study() {
        List<Column> said = columns.stream().filter(c -> SAYING.contains(c.role())).toList();
        boolean wide = plan.shape() == MoneyPlan.Shape.WIDE;
        if (plan.shape() == MoneyPlan.Shape.DOCUMENT || plan.shape() == MoneyPlan.Shape.PRODUCT) {
            signs = Signs.DOCUMENT;
        }
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
            heaps.forEach(this::single);
            if (plan.shape() == MoneyPlan.Shape.SINGLE || plan.shape() == MoneyPlan.Shape.PAIR) {
                findSigns();
            }
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

    private void single(RowHeap heap) {
        Optional<KindFinder.Said> said = heap.said(kinds);
        boolean moves = heap.rows().stream().anyMatch(row -> plan.money(row) != 0);
        if (!moves && said.filter(KindFinder.Said::isNote).isPresent()) {
            add(heap, List.of(), "information only, no money", "");
            return;
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
                            .filter(k -> asking.isAgainst(heap, k, signs))
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
            if (role == Role.TAX || role == Role.WITHHELD) {
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
            enters.add(
                    enter(
                            kind.orElse(Kind.OTHER_MONEY),
                            Map.of(Field.GROSS, part.column().reference()),
                            category));
            if (kind.isEmpty() && said.isPresent()) {
                asking.ask(heap, "");
            }
        }
        boolean open =
                enters.stream().anyMatch(e -> e.kind() == Kind.OTHER_MONEY) && answer.isEmpty();
        checkDirections(heap, said);
        add(heap, enters, "", open ? "what is '%s'?".formatted(heap.about()) : "");
    }

    /**
     * What a sale brings comes in, what it costs goes out; else names stand over the wrong cells.
     */
    private void checkDirections(RowHeap heap, Optional<KindFinder.Said> said) {
        if (said.filter(s -> s.event().equals("sale")).isPresent()) {
            Directions.check(plan, heap.rows(), 1, findings);
        } else if (said.filter(s -> s.event().equals("refund")).isPresent()) {
            Directions.check(plan, heap.rows(), -1, findings);
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
            boolean out = kind.get().direction() < 0 && plan.shape() == MoneyPlan.Shape.SINGLE;
            signs = out && sum() > 0 ? Signs.DOCUMENT : signs;
            all(kind.get());
        }
    }

    private void wideSales() {
        List<Enter> enters = new ArrayList<>();
        KindFinder.Said sale = new KindFinder.Said("sale", "", "");
        for (MoneyPlan.Part part : plan.parts()) {
            Role role = part.column().role();
            if (role != Role.TAX && role != Role.WITHHELD) {
                enters.add(
                        enter(
                                KindFinder.kind(sale, role).orElse(Kind.OTHER_MONEY),
                                Map.of(Field.GROSS, part.column().reference()),
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
        return plan.parts().get(0).column().sum();
    }

    /** Whether amounts are the owner's + and -, or all positive as printed. */
    private void findSigns() {
        long with = 0;
        long against = 0;
        for (Map.Entry<Integer, Kind> each : kindOfRow.entrySet()) {
            int direction = each.getValue().direction();
            long value = plan.money(each.getKey());
            if (direction < 0 && each.getValue() != Kind.RESERVE && value != 0) {
                with += value < 0 ? 1 : 0;
                against += value > 0 ? 1 : 0;
            }
        }
        if (plan.shape() == MoneyPlan.Shape.PAIR) {
            if (against > with) {
                findings.unsound(
                        "most rows that should take money away have it in the credit column; expected the owner's view, such as fees under debit");
            }
            return;
        }
        if (against > 0 && with * 10 >= against && against * 10 >= with) {
            findings.ask(
                            new Question(
                                    "signs",
                                    "of the rows that should take money away %,d have a minus and %,d have none; are amounts printed with the owner's + and -, or all as on a document?"
                                            .formatted(with, against),
                                    List.of("owner", "document"),
                                    true))
                    .ifPresent(a -> signs = a.equals("document") ? Signs.DOCUMENT : Signs.OWNER);
        } else if (against > with) {
            signs = Signs.DOCUMENT;
        }
        checkSales();
    }

    private long sales() {
        long in = 0;
        for (Map.Entry<Integer, Kind> each : kindOfRow.entrySet()) {
            if (each.getValue() == Kind.SALE) {
                in += plan.money(each.getKey());
            }
        }
        return in;
    }

    private void checkSales() {
        long in = sales();
        if (in < 0) {
            findings.ask(
                    new Question(
                            "signs-turned",
                            "sales come to %s, less than nothing: have the columns slipped, or is + money out here? no means that they are right"
                                    .formatted(new Amount(in)),
                            List.of("no"),
                            true));
        }
    }

    /** The money of a row as the ledger will have it: positive where it comes in. */
    long money(int row) {
        long value = plan.money(row);
        Kind kind = kindOfRow.get(row);
        return signs == Signs.DOCUMENT && kind != null ? value * kind.direction() : value;
    }

    boolean isPayout(int row) {
        return kindOfRow.get(row) == Kind.PAYOUT;
    }
}

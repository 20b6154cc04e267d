package quarterfold.papers;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.law.Box;
import quarterfold.law.Total;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Item;
import quarterfold.ledger.Kind.Side;
import quarterfold.ledger.Profile;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.period.BoxFigure;
import quarterfold.period.Pack;
import quarterfold.treatment.Context;
import quarterfold.treatment.Conversion;
import quarterfold.treatment.Treated;

/**
 * The period's entries, one row each, on four lists by what they are. Every list has the same
 * columns up to the boxes, so a box stands in the same column on each; those of purchases and
 * imports have the grade of their evidence beside them.
 */
final class EntrySheets {

    private static final double NARROWEST = 10;
    private static final double UNUSED = 7.5;

    private static final Column<Treated> EVIDENCE =
            Column.text(
                    "Evidence",
                    12,
                    t -> t.evidence().map(e -> Words.plain(e.grade().code())).orElse(""));

    private final Map<Side, ListSheet<Treated>> lists = new EnumMap<>(Side.class);

    /** The boxes, and after them the totals that some entry adds to. */
    private final List<String> boxes;

    private final int firstBox;

    /** Makes the four lists' sheets, empty. */
    EntrySheets(Sheets sheets, Pack pack, Tally tally) {
        List<Total> totals =
                pack.law().totals(pack.vatReturn().period().end()).stream()
                        .filter(t -> !tally.feeds(t.name()).isEmpty())
                        .toList();
        boxes =
                Stream.concat(
                                pack.vatReturn().boxes().stream()
                                        .map(BoxFigure::box)
                                        .filter(b -> !b.isComputed())
                                        .map(Box::id),
                                totals.stream().map(Total::name))
                        .toList();
        Map<String, String> headings =
                totals.stream().collect(Collectors.toMap(Total::name, Total::words));
        Map<Long, String> files =
                pack.sources().stream().collect(Collectors.toMap(Source::id, Source::name));
        firstBox = facts(0).size();
        for (Side side : Side.values()) {
            double money = width(tally.largest(side));
            List<Column<Treated>> columns = new ArrayList<>(facts(money));
            for (String box : boxes) {
                double total = tally.largestTotal(side, box).map(EntrySheets::width).orElse(UNUSED);
                columns.add(
                        box(
                                box,
                                headings.getOrDefault(box, "Box " + box),
                                total == UNUSED ? UNUSED : Math.max(money, total)));
            }
            if (side == Side.PURCHASES || side == Side.IMPORTS) {
                columns.add(EVIDENCE);
                documents(pack.attachments()).ifPresent(columns::add);
            }
            if (!tally.rates().isEmpty()) {
                columns.addAll(exchange(pack));
            }
            columns.addAll(places(files));
            lists.put(
                    side,
                    new ListSheet<>(
                            sheets,
                            heading(side),
                            columns,
                            tally.rows(side),
                            (page, column) ->
                                    tally.sheetTotal(side, page, boxes.get(column - firstBox))));
        }
    }

    static String name(Side side) {
        return switch (side) {
            case SALES -> "Sales";
            case PURCHASES -> "Purchases";
            case IMPORTS -> "Imports";
            case MONEY -> "Other money";
        };
    }

    private static ListSheet.Heading heading(Side side) {
        return new ListSheet.Heading(
                name(side),
                "Amounts are positive as printed; the box columns show what each entry adds, with"
                        + " its sign.",
                "No entries of this kind in the period.",
                6);
    }

    private static List<Column<Treated>> facts(double money) {
        return List.of(
                Column.whole("No.", 7, t -> t.entry().number()),
                Column.of("Date", 13.5, t -> new Value.Day(t.occasion().day())),
                Column.text("Kind", 13, t -> Words.plain(t.entry().kind().code())),
                Column.text("Document or order", 14, t -> document(t.entry())),
                Column.text("Party or channel", 19, t -> party(t.entry().profile())),
                Column.text("Description", 30, t -> description(t.entry().line().item())),
                Column.text("From", 7.5, t -> t.entry().profile().from()),
                Column.text("To", 5, t -> t.entry().profile().to()),
                Column.text("Cur.", 6, t -> t.entry().profile().currency()),
                printed("Printed net", money, t -> t.entry().amounts().net()),
                printed("Printed VAT", money + 1.5, t -> t.entry().amounts().vat()),
                printed("Printed gross", money, t -> t.entry().amounts().gross()),
                Column.text("Treatment", 20, t -> Words.treatment(t.treatment())),
                Column.text("Rate", 7, Treated::rate),
                Column.money("Value", money, Treated::net),
                Column.money("VAT", money, Treated::vat),
                Column.money("Claimed VAT", money + 2, Treated::claim));
    }

    /** The names of the documents kept with each entry, where any entry has one. */
    private static Optional<Column<Treated>> documents(List<Attachment> all) {
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        Column.text(
                                "Document kept",
                                longest(all.stream().map(Attachment::file).toList()),
                                t ->
                                        all.stream()
                                                .filter(a -> a.isOf(t.entry()))
                                                .map(Attachment::file)
                                                .collect(Collectors.joining(", "))));
    }

    private static Column<Treated> printed(
            String heading, double width, Function<Treated, Optional<Amount>> amount) {
        return new Column<>(heading, width, true, false, t -> money(amount.apply(t)));
    }

    private static Column<Treated> box(String id, String heading, double width) {
        return new Column<>(
                heading, width, true, true, t -> money(Optional.ofNullable(t.boxes().get(id))));
    }

    /** How an amount in another currency came into sterling. */
    private static List<Column<Treated>> exchange(Pack pack) {
        Map<Long, String> names = new HashMap<>();
        Context.Files files =
                id ->
                        names.computeIfAbsent(
                                id, i -> pack.source(i).map(Source::name).orElse("source " + i));
        return List.of(
                Column.of("In sterling", 13, t -> money(t.conversion().map(Conversion::money))),
                Column.text(
                        "Exchange rate",
                        22,
                        t -> t.conversion().map(Conversion::quoted).orElse("")),
                Column.text(
                        "Rate from", 48, t -> t.conversion().map(c -> c.source(files)).orElse("")));
    }

    private static List<Column<Treated>> places(Map<Long, String> files) {
        return List.of(
                Column.text("Rule", 7, Treated::rule),
                Column.whole("Row in file", 8, t -> t.entry().line().row()),
                Column.text(
                        "Source file",
                        longest(files.values()),
                        t ->
                                files.getOrDefault(
                                        t.entry().source(), "source " + t.entry().source())));
    }

    /** Room for an amount of this size in bold, with four decimals. */
    private static double width(Amount largest) {
        return Math.max(NARROWEST, Words.exact(largest, false).length() + 1.5);
    }

    private static double longest(Collection<String> names) {
        int longest = names.stream().mapToInt(String::length).max().orElse(0);
        return Math.min(48, Math.max(14, longest + 2.0));
    }

    private static Value money(Optional<Amount> amount) {
        return amount.<Value>map(Value.Money::new).orElse(new Value.Blank());
    }

    private static String document(Entry entry) {
        return joined(entry.line().document(), entry.line().order());
    }

    private static String party(Profile profile) {
        return joined(profile.party(), profile.channel());
    }

    private static String description(Item item) {
        return joined(item.description(), item.product());
    }

    private static String joined(String first, String second) {
        return Stream.of(first, second)
                .filter(text -> !text.isEmpty())
                .distinct()
                .collect(Collectors.joining(" / "));
    }

    /**
     * The sheet an entry is on: that of its kind, but a settlement's fee line that is in no box is
     * money that moved, and would bury the invoices among the purchases.
     */
    static Side sideOf(Treated treated) {
        Side side = treated.entry().kind().side();
        boolean moneyOnly =
                treated.boxes().isEmpty() && !treated.entry().profile().settlement().isEmpty();
        return side == Side.PURCHASES && moneyOnly ? Side.MONEY : side;
    }

    void add(Treated treated) {
        list(sideOf(treated)).add(treated);
    }

    private ListSheet<Treated> list(Side side) {
        return Objects.requireNonNull(lists.get(side), "every side has its list");
    }

    /** Every cell in the workbook that adds to a box. */
    List<String> ranges(String box) {
        int column = firstBox + boxes.indexOf(box);
        return Stream.of(Side.values())
                .flatMap(side -> list(side).ranges(column).stream())
                .toList();
    }
}

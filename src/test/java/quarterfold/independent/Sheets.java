package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Kind;

/** The rows of a book's plain sheets, and beside them what they come to, by day and box. */
final class Sheets {

    private static final List<String> COLUMNS =
            List.of(
                    "date",
                    "kind",
                    "document",
                    "party",
                    "party_country",
                    "party_vat",
                    "description",
                    "product",
                    "category",
                    "currency",
                    "net",
                    "vat",
                    "gross",
                    "rate",
                    "from",
                    "to",
                    "customer",
                    "customer_vat",
                    "channel",
                    "channel_collects",
                    "settlement",
                    "order",
                    "evidence",
                    "business_use",
                    "held",
                    "evidenced",
                    "sterling_vat",
                    "exchange_day",
                    "on_hand",
                    "use",
                    "co2",
                    "sent",
                    "invoiced",
                    "due",
                    "paid");

    private static final List<String> AMOUNTS = List.of("net", "vat", "gross", "sterling_vat");

    private final List<Row> rows = new ArrayList<>();
    private final NavigableMap<LocalDate, Map<Integer, BigDecimal>> sums = new TreeMap<>();

    /** A row being written, cell by cell. */
    static final class Row {
        private final LocalDate day;
        private final Map<String, String> cells = new LinkedHashMap<>();

        private Row(LocalDate day, String kind) {
            this.day = day;
            put("date", day.toString());
            put("kind", kind);
        }

        /** An empty text is a cell not stated. */
        Row put(String column, String text) {
            if (!COLUMNS.contains(column)) {
                throw new IllegalArgumentException(column);
            }
            cells.put(column, text);
            return this;
        }

        Row put(Price price) {
            price.cells().forEach(this::put);
            return this;
        }

        @Override
        public String toString() {
            return cells.entrySet().stream()
                    .filter(c -> !c.getValue().isEmpty())
                    .map(c -> c.getKey() + "=" + c.getValue())
                    .collect(Collectors.joining(" "));
        }
    }

    Row row(LocalDate day, String kind) {
        Row row = new Row(day, kind);
        rows.add(row);
        return row;
    }

    /**
     * Enters rows as money of which it is not known what it is, one in three of those that move
     * any; gives what their entries are, by their numbers in {@link #file}.
     */
    Map<Long, String> disguise(Dice dice) {
        Map<Long, String> known = new TreeMap<>();
        for (int i = 0; i < rows.size(); i++) {
            Map<String, String> cells = rows.get(i).cells;
            String kind = cells.getOrDefault("kind", "");
            int direction = Coded.find(Kind.class, kind).map(Kind::direction).orElse(0);
            if (direction != 0 && !kind.equals("other-money") && dice.oneIn(3)) {
                known.put(i + 1L, kind);
                cells.put("kind", "other-money");
                if (direction < 0) {
                    AMOUNTS.forEach(column -> cells.computeIfPresent(column, Sheets::turned));
                }
                if (kind.equals("import-vat-paid") && isBlank(cells, "net")) {
                    cells.put("gross", cells.getOrDefault("vat", ""));
                    cells.put("vat", "");
                }
            }
        }
        return known;
    }

    private static boolean isBlank(Map<String, String> cells, String column) {
        return cells.getOrDefault(column, "").isEmpty();
    }

    private static String turned(String column, String amount) {
        return amount.isEmpty() ? amount : new BigDecimal(amount).negate().toPlainString();
    }

    /** The row that was written last. */
    Row last() {
        return rows.get(rows.size() - 1);
    }

    /** An amount that a box takes on a day. */
    void box(LocalDate day, int box, BigDecimal amount) {
        sums.computeIfAbsent(day, d -> new TreeMap<>()).merge(box, amount, BigDecimal::add);
    }

    int size() {
        return rows.size();
    }

    /** The nine boxes from the first day to the last. */
    List<String> nineBoxes(LocalDate first, LocalDate last) {
        Map<Integer, BigDecimal> sum = new TreeMap<>();
        sums.subMap(first, true, last, true)
                .values()
                .forEach(d -> d.forEach((box, a) -> sum.merge(box, a, BigDecimal::add)));
        return NineBoxes.of(sum);
    }

    /** The rows dated from the first day to the last, where they are few enough to read. */
    List<String> rows(LocalDate first, LocalDate last) {
        List<String> found =
                rows.stream()
                        .filter(r -> !r.day.isBefore(first) && !r.day.isAfter(last))
                        .map(Row::toString)
                        .toList();
        return found.size() > 200 ? List.of(found.size() + " rows") : found;
    }

    /** One file a year. */
    Map<Integer, String> files() {
        return rows.stream()
                .collect(
                        Collectors.groupingBy(
                                r -> YearMonth.from(r.day).getYear(),
                                TreeMap::new,
                                Collectors.collectingAndThen(Collectors.toList(), Sheets::file)));
    }

    /** All rows in the order they were written, so that the first is entry 1. */
    String file() {
        return file(rows);
    }

    private static String file(List<Row> rows) {
        List<String> stated =
                COLUMNS.stream()
                        .filter(c -> rows.stream().anyMatch(r -> r.cells.containsKey(c)))
                        .toList();
        return rows.stream()
                .map(
                        row ->
                                stated.stream()
                                        .map(column -> row.cells.getOrDefault(column, ""))
                                        .collect(Collectors.joining(",")))
                .collect(Collectors.joining("\n", String.join(",", stated) + "\n", "\n"));
    }
}

package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Line;
import quarterfold.money.Amount;

/**
 * Months of one report whose columns come and go by lot, and one layout learned from the first and
 * again from the second: each month is read to exactly the money put in, or refused.
 */
class AgainByLotTest {
    /** More with {@code -Dseeds=5000}. */
    private static final int SEEDS = Integer.getInteger("seeds", 400);

    private static final Map<String, String> ANSWERS =
            Map.of("sum", "sum", "rows", "sale", "column/Postage", "fee");

    @TempDir private Path folder;

    /** A month's file, and what each family of money comes to in it. */
    private record Month(String text, Map<String, Long> truth) {}

    private static Month month(Random lot, int number) {
        List<String> fees = new ArrayList<>();
        String commission = lot.nextInt(6) == 0 ? "Service fee" : "Commission";
        for (String name : List.of(commission, "Advertising fee", "Stallage")) {
            if (lot.nextInt(name.equals("Stallage") ? 12 : 2) == 0) {
                fees.add(name);
            }
        }
        boolean delivery = lot.nextInt(3) == 0;
        boolean discount = lot.nextInt(3) == 0;
        boolean net = lot.nextInt(3) > 0;
        boolean type = lot.nextInt(8) > 0;
        String price = lot.nextInt(12) == 0 ? "Total" : "Price";
        Map<String, Long> truth = new TreeMap<>();
        List<String> rows = new ArrayList<>();
        List<String> texts = new ArrayList<>();
        for (String text : List.of("Item", "Status", "Reference", "Weight")) {
            if (lot.nextInt(3) == 0) {
                texts.add(text);
            }
        }
        for (int i = 0; i < 6; i++) {
            boolean refund = type && i == 4 && lot.nextBoolean();
            int way = refund ? -1 : 1;
            Map<String, Object> row = new LinkedHashMap<>();
            row.put("Date", "2026-%02d-%02d".formatted(number, i + 13));
            row.put("Order", "N%d-%d".formatted(number, i));
            if (type) {
                row.put("Type", refund ? "Refund" : "Sale");
            }
            long sum = money(row, price, way * (long) (1_000 + lot.nextInt(5_000)), "goods", truth);
            if (delivery) {
                sum += money(row, "Delivery", way * (long) lot.nextInt(500), "delivery", truth);
            }
            if (discount) {
                sum += money(row, "Discount", -way * (long) lot.nextInt(300), "discount", truth);
            }
            for (String fee : fees) {
                long whole = fee.equals("Stallage") && lot.nextBoolean() ? 100L : 1L;
                sum += money(row, fee, -way * whole * (1 + lot.nextInt(200)), "fee", truth);
            }
            if (net) {
                row.put("Net", text(sum));
            }
            for (String text : texts) {
                row.put(
                        text,
                        switch (text) {
                            case "Item" -> "Bowl";
                            case "Status" -> i % 2 == 0 ? "Sent" : "Done";
                            case "Reference" -> "R" + i;
                            default -> "0." + (15 + i);
                        });
            }
            if (i == 0) {
                rows.add(String.join(",", row.keySet()));
            }
            rows.add(String.join(",", row.values().stream().map(Object::toString).toList()));
        }
        truth.values().removeIf(v -> v == 0);
        return new Month(String.join("\n", rows) + "\n", truth);
    }

    private static long money(
            Map<String, Object> row,
            String name,
            long pennies,
            String family,
            Map<String, Long> truth) {
        row.put(name, text(pennies));
        truth.merge(family, pennies, Long::sum);
        return pennies;
    }

    private static String text(long pennies) {
        return new Amount(pennies * 100).toString();
    }

    private Optional<String> learn(Month month, Optional<String> before) throws IOException {
        Path file = Files.writeString(folder.resolve("made.csv"), month.text());
        Learned learned = new Learner(Desk.settings()).learn(file, "made", ANSWERS, before);
        return learned.isProved() ? learned.yaml() : Optional.empty();
    }

    /** What the month's entries come to by the layout, or nothing where it is refused. */
    private Optional<Map<String, Long>> read(Month month, String yaml) throws IOException {
        Path file = Files.writeString(folder.resolve("made.csv"), month.text());
        Problems problems = new Problems();
        Layout layout = LayoutReader.read("made.yaml", yaml, problems);
        assertThat(problems.kept()).isEmpty();
        List<Line> lines = new ArrayList<>();
        try (Tables tables = Tables.open(file, "made.csv")) {
            String table = tables.names().get(0);
            Trial trial = Trial.run(tables, "made.csv", layout, table, Desk.settings(), lines::add);
            if (!trial.told().isEmpty()) {
                return Optional.empty();
            }
        } catch (BadFile e) {
            return Optional.empty();
        }
        Map<String, Long> money = new TreeMap<>();
        lines.forEach(
                l ->
                        money.merge(
                                LearnedReportsTest.family(l.profile().kind()),
                                l.signedMoney().tenThousandths() / 100,
                                Long::sum));
        money.values().removeIf(v -> v == 0);
        return Optional.of(money);
    }

    @Test
    void eachMonthIsReadToItsMoneyOrRefused() throws IOException {
        List<String> wrong = new ArrayList<>();
        Map<String, Integer> counts = new TreeMap<>();
        for (int seed = 0; seed < SEEDS; seed++) {
            Random lot = new Random(seed);
            Month first = month(lot, 7);
            Month second = month(lot, 8);
            Month third = month(lot, 9);
            Optional<String> before = learn(first, Optional.empty());
            Optional<String> both = before.isEmpty() ? before : learn(second, before);
            if (both.isEmpty()) {
                continue;
            }
            Map<String, Month> months = Map.of("first", first, "second", second, "third", third);
            for (Map.Entry<String, Month> each : months.entrySet()) {
                Month month = each.getValue();
                Optional<Map<String, Long>> money = read(month, both.get());
                if (money.isPresent()) {
                    counts.merge(each.getKey(), 1, Integer::sum);
                }
                if (money.isPresent() && !money.get().equals(month.truth())) {
                    wrong.add(
                            "%d %s: %s for %s\n%s\n%s\n%s"
                                    .formatted(
                                            seed,
                                            each.getKey(),
                                            money.get(),
                                            month.truth(),
                                            first.text(),
                                            month.text(),
                                            both.get()));
                }
            }
        }
        assertThat(wrong).isEmpty();
        int learned = counts.getOrDefault("second", 0);
        assertThat(learned).as("%s", counts).isGreaterThan(SEEDS * 3 / 4);
        assertThat(counts.getOrDefault("first", 0)).as("%s", counts).isGreaterThan(learned * 2 / 5);
    }
}

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Random;

/**
 * Writes a statement of the invented channel Quaylark with any number of rows, all in the quarter
 * to 30 September 2026: orders with delivery, money off and charges, some returns, some exports.
 * The same number of rows and seed give the same bytes. Every statement sums to nothing with its
 * payout.
 *
 * <p>Run as {@code java StatementMaker.java ROWS FILE [SEED]}.
 */
public final class StatementMaker {
    private static final String HEADER =
            "Statement,Paid on,Line,When,Type,Part,Order,Order line,SKU,Item,Units,Ships from,"
                    + "Ships to,Buyer,Customs proof,Currency,Amount,Remark\n";
    private static final int STATEMENTS = 13;
    private static final int PRODUCTS = 2_000;
    private static final String[] MATERIALS = {
        "Stoneware", "Linen", "Oak", "Brass", "Wool", "Felt", "Cork", "Slate", "Willow", "Copper"
    };
    private static final String[] THINGS = {
        "mixing bowl", "tea towel pair", "bread board", "plant mister", "picnic blanket",
        "craft kit", "coaster set", "\"house number, small\"", "log basket", "measuring cups"
    };
    private static final long FIRST = Instant.parse("2026-07-01T05:00:00Z").getEpochSecond();
    private static final long LAST = Instant.parse("2026-09-30T20:00:00Z").getEpochSecond();

    private final long rows;
    private final Random random;
    private final Writer out;
    private final StringBuilder row = new StringBuilder();
    private long written;
    private int statement;
    private long line;
    private long pennies;
    private long order = 10_000_000;
    private String when = "";
    private String paid = "";

    private StatementMaker(long rows, long seed, Writer out) {
        this.rows = rows;
        this.random = new Random(seed);
        this.out = out;
    }

    public static void main(String[] args) throws IOException {
        long rows = Long.parseLong(args[0]);
        long seed = args.length > 2 ? Long.parseLong(args[2]) : 20_260_930;
        try (Writer out = Files.newBufferedWriter(Path.of(args[1]), StandardCharsets.UTF_8)) {
            new StatementMaker(rows, seed, out).write();
        }
    }

    private void write() throws IOException {
        out.write(HEADER);
        for (statement = 0; statement < STATEMENTS; statement++) {
            paid = time((statement + 1) * rows / STATEMENTS);
            line = 0;
            pennies = 0;
            long end = (statement + 1) * rows / STATEMENTS - 1; // and its payout
            while (written < end) {
                order(end);
            }
            row("Payout", "", "", "", "", -pennies, "end of statement");
        }
    }

    private String time(long at) {
        return Instant.ofEpochSecond(FIRST + (LAST - FIRST) * at / rows).toString();
    }

    /** An order of one or two articles, or one that came back; cut where the statement ends. */
    private void order(long end) {
        when = time(written);
        order += 1 + random.nextInt(9);
        String number = "Q" + order;
        boolean export = random.nextInt(100) == 0;
        String ends = export ? "GB,US," : random.nextInt(50) == 0 ? "GB,XI," : "GB,GB,";
        String to = ends + (random.nextInt(12) == 0 ? "business" : "consumer");
        String proof = export ? "held" : "";
        boolean back = random.nextInt(15) == 0;
        String type = back ? "Return" : "Sale";
        int sign = back ? -1 : 1;
        long price = 0;
        int articles = random.nextInt(6) == 0 ? 2 : 1;
        for (int article = 1; article <= articles; article++) {
            int product = random.nextInt(PRODUCTS);
            int units = random.nextInt(8) == 0 ? 2 : 1;
            long goods = (499 + product * 37L % 6_000) * units;
            price += goods;
            String what = item(product);
            String place = to + "," + (back ? "" : proof);
            entry(
                    end,
                    type,
                    "Goods",
                    number + "," + article,
                    what + "," + units,
                    place,
                    sign * goods);
            if (random.nextInt(3) == 0) {
                long delivery = 295 + 100L * random.nextInt(3);
                entry(
                        end,
                        type,
                        "Delivery",
                        number + "," + article,
                        what + ",",
                        place,
                        sign * delivery);
            }
            if (random.nextInt(10) == 0) {
                entry(
                        end,
                        type,
                        "Money off",
                        number + "," + article,
                        what + ",",
                        place,
                        -sign * goods / 10);
            }
        }
        String charge = back ? "Charge given back" : "Charge";
        entry(end, charge, "Selling charge", number + ",", ",,", ",,,", -sign * price / 8);
        if (!back && random.nextInt(2) == 0) {
            entry(end, charge, "Handling charge", number + ",", ",,", ",,,", -234);
        }
    }

    private static String item(int product) {
        String thing = THINGS[product / MATERIALS.length % THINGS.length];
        String material = MATERIALS[product % MATERIALS.length];
        String size = " no. " + (product / 100 + 1);
        return "TW-%d,%s"
                .formatted(
                        1_000 + product,
                        thing.startsWith("\"")
                                ? "\""
                                        + material
                                        + " "
                                        + thing.substring(1, thing.length() - 1)
                                        + size
                                        + "\""
                                : material + " " + thing + size);
    }

    private void entry(
            long end,
            String type,
            String part,
            String number,
            String what,
            String to,
            long amount) {
        if (written < end) {
            row(type, part, number, what, to, amount, "");
        }
    }

    private void row(
            String type,
            String part,
            String number,
            String what,
            String to,
            long amount,
            String remark) {
        row.setLength(0);
        row.append("QL-").append(1_000 + statement).append(',').append(paid).append(',');
        row.append(++line).append(',').append(when).append(',').append(type).append(',');
        row.append(part).append(',').append(number.isEmpty() ? "," : number).append(',');
        row.append(what.isEmpty() ? ",," : what).append(',');
        row.append(to.isEmpty() ? ",,," : to).append(",GBP,");
        long absolute = Math.abs(amount);
        row.append(amount < 0 ? "-" : "").append(absolute / 100).append('.');
        row.append(absolute % 100 / 10)
                .append(absolute % 10)
                .append(',')
                .append(remark)
                .append('\n');
        try {
            out.append(row);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        pennies += amount;
        written++;
    }
}

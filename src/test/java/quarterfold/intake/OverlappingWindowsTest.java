package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.Line;

/**
 * A report cut into overlapping exports by day, imported in any order, gives the entries of the
 * whole: rows of one moment, which may be alike, are in the same exports. A case for each seed.
 */
class OverlappingWindowsTest {

    private static final LocalDate FIRST = LocalDate.of(2026, 7, 1);
    private static final int DAYS = 60;

    private static final String LAYOUT =
            """
            layout: report
            dates: {pattern: "yyyy-MM-dd HH:mm"}
            signs: owner
            currency: GBP
            fields: {date: When, order: Order, product: SKU}
            constants: {channel: Fairbank}
            rows:
              - when: {Type: Sale}
                enter:
                  - {kind: sale, gross: Price}
                  - {kind: fee, gross: Charge, set: {category: channel-fee}}
              - when: {Type: Advert}
                enter: [{kind: fee, gross: Charge, set: {category: advertising}}]
              - when: {Type: Note}
                set_aside: "information only, no money"
            amounts: [Price, Charge]
            """;

    private static final String HEADER = "When,Order,SKU,Type,Price,Charge,Remark\n";

    /** A row of the report and its day, counted from the first. */
    private record Made(int day, String text) {}

    static IntStream seeds() {
        return IntStream.range(0, 40);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void giveTheEntriesOfTheWhole(int seed, @TempDir Path folder) throws IOException {
        Random random = new Random(seed);
        List<Made> report = report(random);
        List<List<Made>> windows = windows(report, random);
        Collections.shuffle(windows, random);
        try (Desk whole = new Desk(folder.resolve("whole")).layout("report", LAYOUT);
                Desk parts = new Desk(folder.resolve("parts")).layout("report", LAYOUT)) {
            enter(whole, "whole.csv", report);
            long read = 0;
            long entered = 0;
            long repeated = 0;
            long noted = 0;
            for (int i = 0; i < windows.size(); i++) {
                ImportResult.Entered part = enter(parts, i + ".csv", windows.get(i));
                read += part.rowsRead();
                entered += part.source().rowsEntered();
                repeated += part.repeated().rows();
                noted += windows.get(i).stream().filter(m -> m.text().contains("Note")).count();
            }
            assertThat(said(parts)).isEqualTo(said(whole));
            assertThat(entered + repeated + noted).isEqualTo(read);
            assertThat(parts.findings()).isEmpty();
            assertThat(parts.entries())
                    .extracting(e -> e.number())
                    .isEqualTo(
                            IntStream.rangeClosed(1, whole.entries().size())
                                    .mapToObj(Long::valueOf)
                                    .toList());
        }
    }

    private static ImportResult.Entered enter(Desk desk, String name, List<Made> rows)
            throws IOException {
        ImportResult result =
                desk.enter(
                        name, HEADER + rows.stream().map(Made::text).collect(Collectors.joining()));
        assertThat(result.problems()).isEmpty();
        return (ImportResult.Entered) result;
    }

    /** What the lines say but for the number of their rows, and how often. */
    private static Map<String, Long> said(Desk desk) {
        return desk.lines().stream()
                .map(OverlappingWindowsTest::withoutRow)
                .collect(Collectors.groupingBy(l -> l, TreeMap::new, Collectors.counting()));
    }

    private static String withoutRow(Line line) {
        return line.toString().replaceFirst("row=\\d+", "");
    }

    /** Rows in the order of time, some of them twice or three times the same. */
    private static List<Made> report(Random random) {
        List<Made> rows = new ArrayList<>();
        int orders = 0;
        for (int day = 0; day < DAYS; day++) {
            int many = random.nextInt(6);
            for (int i = 0; i < many; i++) {
                String when =
                        "%s %02d:%02d"
                                .formatted(FIRST.plusDays(day), 8 + i * 2, random.nextInt(60));
                String text =
                        switch (random.nextInt(5)) {
                            case 0 ->
                                    "%s,,,Advert,,-%d.00,\n".formatted(when, random.nextInt(1, 4));
                            case 1 -> "%s,,,Note,,,hello\n".formatted(when);
                            default ->
                                    "%s,%s,TW-%d,Sale,%d.00,-1.00,%s\n"
                                            .formatted(
                                                    when,
                                                    "A-" + orders++,
                                                    random.nextInt(20),
                                                    random.nextInt(5, 40),
                                                    random.nextInt(9) == 0 ? "gift" : "");
                        };
                int times = random.nextInt(8) == 0 ? random.nextInt(2, 4) : 1;
                for (int t = 0; t < times; t++) {
                    rows.add(new Made(day, text));
                }
            }
        }
        return rows;
    }

    /** Runs of days that cover all of them; neighbours mostly overlap, and some lie in others. */
    private static List<List<Made>> windows(List<Made> report, Random random) {
        List<List<Made>> windows = new ArrayList<>();
        int start = 0;
        while (start < DAYS) {
            int length = random.nextInt(5, 30);
            add(windows, report, start, start + length);
            start += Math.max(1, length - random.nextInt(10));
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            int from = random.nextInt(DAYS);
            add(windows, report, from, from + random.nextInt(1, 12));
        }
        return windows;
    }

    private static void add(List<List<Made>> windows, List<Made> report, int from, int to) {
        List<Made> rows = report.stream().filter(m -> m.day() >= from && m.day() < to).toList();
        if (!rows.isEmpty() && !windows.contains(rows)) { // the same bytes are one source
            windows.add(rows);
        }
    }
}

package quarterfold.intake;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A report of an invented channel with rows of several shapes, made from a seed: letters, words or
 * stacked tables, their columns, language, marks, signs, dates and what is stated round them are
 * drawn by lot. It knows what money was put in.
 */
final class MadeShapes {
    /** What a seed does to the report that must be told. */
    enum Harm {
        NONE,
        WRONG_TOTAL,
        LOST_ROW,
        ROW_OF_ANOTHER_SHAPE,
        MONEY_WITHOUT_DATE,
        MONEY_OF_NO_SHAPE
    }

    enum Family {
        LETTERS,
        LETTERS_WITH_NAMES,
        WORDS,
        STACKED,
        SHEET
    }

    private static final Map<String, String> ADVERTS =
            Map.of(
                    "en",
                    "Advertising",
                    "de",
                    "Werbung",
                    "fr",
                    "Publicité",
                    "es",
                    "Publicidad",
                    "it",
                    "Pubblicità",
                    "nl",
                    "Reclame",
                    "pl",
                    "Reklama");

    /** A shape: its mark, its title, its column names, and its rows. */
    private record Part(
            String mark, String title, List<String> names, List<List<String>> rows, int money) {}

    private final Random lot;
    private final Harm harm;
    private final Family family;
    private final String language;
    private final String[] names;
    private final String[] kinds;
    private final char decimal;
    private final String thousands;
    private final int negative;
    private final String unit;
    private final String pattern;
    private final boolean wide;
    private final boolean feesPositive;
    private final boolean unknown;
    private final List<Part> parts = new ArrayList<>();
    private final Map<String, Long> truth = new TreeMap<>();
    private final List<List<String>> lines = new ArrayList<>();
    private long all;
    private long paid;
    private int rows;
    private boolean harmed;

    MadeShapes(long seed, Harm harm) {
        lot = new Random(seed);
        this.harm = harm;
        family = Family.values()[lot.nextInt(5)];
        language = MadeReport.LANGUAGES[lot.nextInt(7)];
        names = MadeReport.NAMES.getOrDefault(language, new String[0]);
        kinds = MadeReport.KINDS.getOrDefault(language, new String[0]);
        boolean english = language.equals("en");
        decimal = english ? '.' : lot.nextInt(8) == 0 ? '.' : ',';
        thousands = lot.nextInt(3) == 0 ? "" : decimal == '.' ? "," : ".";
        negative = lot.nextInt(6) == 0 ? 1 + lot.nextInt(2) : 0;
        unit = lot.nextInt(6) == 0 ? (english ? "£" : " €") : "";
        pattern =
                new String[] {
                            "yyyy-MM-dd",
                            "dd.MM.yyyy",
                            "dd/MM/yyyy",
                            "yyyy-MM-dd'T'HH:mm:ss",
                            "d MMM yyyy",
                            "MM/dd/yyyy HH:mm",
                            "yyyyMMdd"
                        }
                        [lot.nextInt(7)];
        boolean named = family != Family.LETTERS && family != Family.WORDS;
        wide = lot.nextInt(3) == 0 && named;
        feesPositive = lot.nextInt(3) == 0;
        unknown = lot.nextInt(15) == 0;
    }

    Map<String, Long> truth() {
        return truth;
    }

    Family family() {
        return family;
    }

    private boolean isTables() {
        return family == Family.STACKED || family == Family.SHEET;
    }

    Path write(Path folder) throws IOException {
        LocalDate start = LocalDate.of(2026, 7, 1).plusDays(lot.nextInt(5));
        parts.add(sales(start));
        parts.add(fees(start));
        if (lot.nextInt(3) == 0) {
            parts.add(refunds(start));
        }
        if (!isTables() && lot.nextBoolean()) {
            Collections.shuffle(parts, lot);
        }
        harm();
        if (isTables()) {
            stacked();
        } else {
            records();
        }
        return family == Family.SHEET ? workbook(folder) : text(folder);
    }

    private LocalDate day(LocalDate start) {
        return start.plusDays(lot.nextInt(60));
    }

    private void put(LocalDate day, String kind, long pennies) {
        MadeReport.add(truth, day, kind, pennies);
        all += pennies;
        paid += kind.equals("payout") ? pennies : 0;
    }

    private void count() {
        rows++;
    }

    private Part sales(LocalDate start) {
        List<String> columns = new ArrayList<>(List.of(names[0], names[1], names[2], names[12]));
        columns.addAll(
                wide
                        ? List.of(names[3], names[4], names[5], names[6], names[7])
                        : List.of(names[8]));
        List<List<String>> made = new ArrayList<>();
        int tall = 5 + lot.nextInt(12);
        for (int i = 0; i < tall; i++) {
            made.add(wide ? wide(day(start), i) : single(day(start), i));
            count();
        }
        return new Part(mark(0, "T"), kinds[0], columns, made, wide ? 5 : 1);
    }

    private List<String> wide(LocalDate day, int i) {
        int way = lot.nextInt(6) == 0 ? -1 : 1;
        long goods = 500L + lot.nextInt(300_000);
        long delivery = lot.nextInt(3) == 0 ? 395 : 0;
        long discount = lot.nextInt(4) == 0 ? goods / 10 : 0;
        long fee = goods / 8 + 20;
        put(day, "goods", way * goods);
        put(day, "delivery", way * delivery);
        put(day, "discount", -way * discount);
        put(day, "fee", -way * fee);
        List<String> row =
                new ArrayList<>(
                        List.of(date(day), "Q-" + (100 + i), kinds[way > 0 ? 0 : 1], title()));
        for (long each :
                new long[] {
                    way * goods,
                    way * delivery,
                    -way * discount,
                    -way * fee,
                    way * (goods + delivery - discount - fee)
                }) {
            row.add(number(each));
        }
        return row;
    }

    private List<String> single(LocalDate day, int i) {
        long goods = 500L + lot.nextInt(300_000);
        int draw = lot.nextInt(10);
        if (unknown && i == 2) {
            put(day, "other", goods);
            return List.of(date(day), "Q-7", "Xyzzy 77", title(), number(goods));
        }
        boolean sale = draw < 7 || i < 2 || (draw == 9 && family == Family.WORDS);
        String kind = sale ? kinds[0] : draw < 9 ? kinds[1] : kinds[5];
        String family = sale || draw < 9 ? "goods" : "compensation";
        long money = sale || draw == 9 ? goods : -goods;
        put(day, family, money);
        return List.of(date(day), "Q-" + (100 + i), kind, title(), number(money));
    }

    private Part fees(LocalDate start) {
        String amount = lot.nextBoolean() ? names[8] : names[6];
        boolean typed = !isTables() || lot.nextInt(3) > 0;
        boolean first = lot.nextBoolean();
        List<String> columns = new ArrayList<>();
        if (typed) {
            columns.add(names[2]);
        }
        columns.add(first ? 0 : columns.size(), names[0]);
        columns.add("Ref");
        columns.add(amount);
        List<List<String>> made = new ArrayList<>();
        int tall = 2 + lot.nextInt(20);
        for (int i = 0; i < tall; i++) {
            LocalDate day = day(start);
            long fee = 100L + lot.nextInt(40_000);
            put(day, "fee", -fee);
            count();
            String what = i % 3 == 1 ? ADVERTS.getOrDefault(language, "") : kinds[2];
            List<String> row = new ArrayList<>();
            if (typed) {
                row.add(what);
            }
            row.add(first ? 0 : row.size(), date(day));
            row.add("R" + i + "x");
            row.add(number(feesPositive ? fee : -fee));
            made.add(row);
        }
        return new Part(mark(2, "F"), kinds[2], columns, made, 1);
    }

    /** Refunds, and the payout at the end of them. */
    private Part refunds(LocalDate start) {
        List<String> columns = List.of(names[1], names[0], "Page", names[2], names[8]);
        List<List<String>> made = new ArrayList<>();
        int tall = 2 + lot.nextInt(4);
        for (int i = 0; i < tall; i++) {
            LocalDate day = day(start);
            long back = 100L + lot.nextInt(20_000);
            put(day, "goods", -back);
            count();
            made.add(List.of("Q-" + i, date(day), "p" + i, kinds[1], number(-back)));
        }
        if (lot.nextBoolean() && all > 0 && family != Family.WORDS) {
            LocalDate day = start.plusDays(61);
            long out = all;
            put(day, "payout", -out);
            count();
            made.add(List.of("", date(day), "p9", kinds[3], number(-out)));
        }
        return new Part(mark(1, "R"), kinds[1], columns, made, 1);
    }

    private String mark(int kind, String letter) {
        return family == Family.WORDS
                ? kinds[kind].toUpperCase(Locale.ROOT)
                : letter + (language.equals("pl") ? "1" : "");
    }

    private void harm() {
        Part last = parts.get(parts.size() - 1);
        Part first = parts.get(0);
        switch (harm) {
            case LOST_ROW -> {
                Part from = parts.get(lot.nextInt(parts.size()));
                from.rows().remove(lot.nextInt(from.rows().size()));
            }
            case ROW_OF_ANOTHER_SHAPE -> {
                List<String> row = first.rows().get(0);
                last.rows().add(1, row);
            }
            case MONEY_WITHOUT_DATE -> {
                List<String> row = new ArrayList<>(last.rows().get(1));
                row.set(last.names().indexOf(names[0]), "");
                last.rows().set(1, row);
            }
            default -> {}
        }
        harmed = harm != Harm.NONE;
    }

    private boolean isWrong() {
        return harm == Harm.WRONG_TOTAL;
    }

    private void records() {
        boolean header = lot.nextBoolean();
        boolean states = harmed || lot.nextInt(4) > 0;
        if (header) {
            lines.add(List.of("H0", "Quaylark", date(LocalDate.of(2026, 9, 30))));
        }
        List<List<String>> body = new ArrayList<>();
        for (Part part : parts) {
            List<List<String>> marked = new ArrayList<>();
            for (List<String> row : part.rows()) {
                List<String> more = new ArrayList<>(row);
                more.add(0, part.mark());
                marked.add(more);
            }
            if (family == Family.LETTERS_WITH_NAMES) {
                List<String> more = new ArrayList<>(part.names());
                more.add(0, part.mark());
                lines.add(more);
            }
            body.addAll(marked);
        }
        if (lot.nextBoolean()) {
            Collections.shuffle(body, lot);
        }
        lines.addAll(body);
        if (harm == Harm.MONEY_OF_NO_SHAPE) {
            lines.add(List.of("X", "Quaylark", number(4_321)));
        }
        if (states) {
            long wrong = isWrong() ? 100 : 0;
            boolean count = harm == Harm.LOST_ROW || lot.nextBoolean();
            boolean money = !count || isWrong() || lot.nextBoolean();
            List<String> trailer = new ArrayList<>(List.of("Z9"));
            if (count) {
                trailer.add(
                        "%06d"
                                .formatted(
                                        lot.nextBoolean()
                                                ? rows
                                                : (long) lines.size() + 1 + lost()));
            }
            if (money) {
                trailer.add(number((lot.nextBoolean() ? all : all - paid) + wrong));
            }
            lines.add(trailer);
        }
    }

    private int lost() {
        return harm == Harm.LOST_ROW ? 1 : 0;
    }

    private void stacked() {
        boolean above = lot.nextInt(3) == 0;
        if (lot.nextBoolean()) {
            lines.add(List.of("Quaylark report"));
        }
        if (above) {
            lines.add(
                    List.of(
                            MadeReport.PAYOUT.getOrDefault(language, "Payout"),
                            number(all - paid + (isWrong() ? 100 : 0))));
        }
        boolean totals = lot.nextBoolean() || (harmed && !above);
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            boolean untyped = !part.names().contains(names[2]);
            if (i > 0) {
                lines.add(List.of());
                if (untyped || lot.nextBoolean()) {
                    lines.add(List.of(part.title()));
                }
            }
            lines.add(part.names());
            lines.addAll(part.rows());
            boolean last = i == parts.size() - 1;
            if (totals) {
                lines.add(total(part, last && isWrong() && !above));
            }
            if (last && harm == Harm.MONEY_OF_NO_SHAPE) {
                List<String> row = blank(part);
                row.set(0, "Plan");
                row.set(part.names().size() - 1, number(-4_321));
                lines.add(row);
            }
        }
        if (lot.nextInt(3) == 0 && !isWrong()) {
            Part last = parts.get(parts.size() - 1);
            List<String> row = blank(last);
            row.set(0, "Netto " + MadeReport.PAYOUT.getOrDefault(language, "payout"));
            row.set(last.names().size() - 1, number(all - paid));
            lines.add(row);
        }
    }

    private static List<String> blank(Part part) {
        return new ArrayList<>(Collections.nCopies(part.names().size(), ""));
    }

    /** Of the rows as they were before harm came to them, so that it shows. */
    private List<String> total(Part part, boolean wrong) {
        List<String> row = blank(part);
        row.set(0, names[13]);
        int from = part.names().size() - part.money();
        for (int i = from; i < part.names().size(); i++) {
            row.set(i, number(sums(part, i) + (wrong ? 100 : 0)));
        }
        return row;
    }

    private long sums(Part part, int column) {
        long sum = 0;
        for (List<String> row : part.rows()) {
            sum += values.getOrDefault(row.get(column), 0L);
        }
        return sum + (harm == Harm.LOST_ROW ? 777 : 0);
    }

    private final Map<String, Long> values = new TreeMap<>();

    private String title() {
        return new String[] {"Wool blanket", "Teapot, blue", "Oak \"A\" frame", "Café cup"}
                [lot.nextInt(4)];
    }

    private String date(LocalDate day) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH)
                .format(day.atTime(lot.nextInt(24), 15));
    }

    private String number(long pennies) {
        String digits = BigDecimal.valueOf(Math.abs(pennies), 2).toPlainString();
        StringBuilder text = new StringBuilder(digits.replace('.', decimal));
        for (int i = digits.length() - 6; !thousands.isEmpty() && i > 0; i -= 3) {
            text.insert(i, thousands);
        }
        String plain = unit.equals("£") ? unit + text : text + unit;
        String signed =
                pennies >= 0
                        ? plain
                        : negative == 1
                                ? plain + "-"
                                : negative == 2 ? "(" + plain + ")" : "-" + plain;
        values.put(signed, pennies);
        return signed;
    }

    private Path text(Path folder) throws IOException {
        char delimiter = new char[] {';', '\t', '|', ','}[lot.nextInt(4)];
        boolean padded = isTables() && lot.nextBoolean();
        int width = lines.stream().mapToInt(List::size).max().orElse(0);
        StringBuilder text = new StringBuilder();
        for (List<String> line : lines) {
            int cells = padded ? width : line.size();
            for (int i = 0; i < cells; i++) {
                text.append(i == 0 ? "" : String.valueOf(delimiter));
                text.append(i < line.size() ? MadeReport.cell(line.get(i), delimiter) : "");
            }
            text.append("\r\n");
        }
        return Files.write(folder.resolve("quaylark.csv"), MadeReport.bytes(text.toString(), lot));
    }

    private Path workbook(Path folder) throws IOException {
        Path file = folder.resolve("quaylark.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(file)) {
            book.createSheet("Read me").createRow(0).createCell(0).setCellValue("Nothing here");
            var sheet = book.createSheet("Table");
            int at = lot.nextInt(3);
            int left = lot.nextInt(3);
            boolean stored = unit.isEmpty() && lot.nextBoolean();
            for (List<String> line : lines) {
                var row = sheet.createRow(at++);
                for (int i = 0; i < line.size(); i++) {
                    Long value = values.get(line.get(i));
                    if (stored && value != null) {
                        row.createCell(left + i).setCellValue(value / 100.0);
                    } else {
                        row.createCell(left + i).setCellValue(line.get(i));
                    }
                }
            }
            book.write(out);
        }
        return file;
    }

    @Override
    public String toString() {
        StringBuilder text =
                new StringBuilder("%s %s %s %s%n".formatted(family, language, pattern, harm));
        lines.forEach(line -> text.append(line).append('\n'));
        return text.toString();
    }
}

package quarterfold.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A report of an invented channel, made from a seed: its shape, language, marks, signs, dates and
 * what stands round the table are drawn by lot. It knows what money was put in.
 */
final class MadeReport {
    /** What a seed does to the report that must be told. */
    enum Harm {
        NONE,
        BROKEN_ROW,
        WRONG_TOTAL,
        WRONG_PAYOUT,
        SLIPPED_NAMES,
        REPEATED_STATES,
        ROW_WITHOUT_DATE
    }

    private enum Shape {
        LONG,
        WIDE,
        PAIR,
        MARK
    }

    static final String[] LANGUAGES = {"en", "de", "fr", "es", "it", "nl", "pl"};
    static final Map<String, String[]> NAMES = new LinkedHashMap<>();
    static final Map<String, String> PAYOUT =
            Map.of("de", "Auszahlung", "fr", "Versement", "nl", "Uitbetaling", "pl", "Wypłata");
    static final Map<String, String[]> KINDS = new LinkedHashMap<>();

    static {
        // date, order, type, goods, delivery, discount, fee, net, amount, debit, credit, balance,
        // title, total
        NAMES.put(
                "en",
                split(
                        "Order date|Order number|Transaction type|Item price|Shipping charged|Money off|Selling fee|Net to you|Amount|Money out|Money in|Running balance|Item title|Total"));
        NAMES.put(
                "de",
                split(
                        "Buchungsdatum|Bestellnummer|Transaktionsart|Artikelpreis|Versandkosten|Rabatt|Verkaufsgebühr|Auszahlbetrag|Betrag|Soll|Haben|Saldo|Artikelbezeichnung|Summe"));
        NAMES.put(
                "fr",
                split(
                        "Date de commande|Numéro de commande|Type de transaction|Prix article|Frais de livraison|Remise|Commission|Net à payer|Montant|Débit|Crédit|Solde|Désignation|Total général"));
        NAMES.put(
                "es",
                split(
                        "Fecha de pedido|Número de pedido|Tipo de transacción|Precio del artículo|Gastos de envío|Descuento|Comisión de venta|Importe neto|Importe|Debe|Haber|Saldo|Descripción|Suma"));
        NAMES.put(
                "it",
                split(
                        "Data ordine|Numero ordine|Tipo transazione|Prezzo articolo|Spese di spedizione|Sconto|Commissione|Importo netto|Importo|Dare|Avere|Saldo|Descrizione|Totale"));
        NAMES.put(
                "nl",
                split(
                        "Besteldatum|Bestelnummer|Transactietype|Artikelprijs|Verzendkosten|Korting|Commissie|Nettobedrag|Bedrag|Af|Bij|Saldo|Omschrijving|Totaal"));
        NAMES.put(
                "pl",
                split(
                        "Data zamówienia|Numer zamówienia|Typ transakcji|Cena produktu|Koszt dostawy|Rabat|Prowizja|Kwota netto|Kwota|Obciążenie|Uznanie|Saldo|Opis|Razem"));
        // sale, refund, fee, payout, delivery (with sale), compensation
        KINDS.put("en", split("Sale|Refund|Commission|Payout|Sale shipping|Lost stock"));
        KINDS.put(
                "de", split("Verkauf|Erstattung|Gebühr|Auszahlung|Verkauf Versand|Entschädigung"));
        KINDS.put(
                "fr",
                split("Vente|Remboursement|Commission|Versement|Vente livraison|Indemnisation"));
        KINDS.put("es", split("Venta|Reembolso|Comisión|Transferencia|Venta envío|Indemnización"));
        KINDS.put(
                "it",
                split("Vendita|Rimborso|Commissione|Bonifico|Vendita spedizione|Risarcimento"));
        KINDS.put(
                "nl",
                split(
                        "Verkoop|Terugbetaling|Commissie|Uitbetaling|Verkoop verzending|Schadevergoeding"));
        KINDS.put("pl", split("Sprzedaż|Zwrot|Prowizja|Wypłata|Sprzedaż dostawa|Odszkodowanie"));
    }

    private static String[] split(String names) {
        return names.split("\\|", -1);
    }

    private final Random lot;
    private final Shape shape;
    private final Harm harm;
    private final boolean above;
    private final String language;
    private final String[] names;
    private final String[] kinds;
    private final char decimal;
    private final String thousands;
    private final int negative;
    private final String unit;
    private final boolean minor;
    private final String pattern;
    private final boolean positive;
    private final boolean unknown;
    private final Map<String, Long> truth = new TreeMap<>();
    private final List<List<String>> lines = new ArrayList<>();
    private final List<Long> totals = new ArrayList<>();
    private long balance;
    private int rows;

    MadeReport(long seed, Harm harm) {
        this(seed, harm, false);
    }

    /** {@code above}: whether a line above the table has the one date of all rows. */
    MadeReport(long seed, Harm harm, boolean above) {
        lot = new Random(seed);
        this.above = above;
        this.harm = harm;
        language = LANGUAGES[lot.nextInt(LANGUAGES.length)];
        names = NAMES.getOrDefault(language, new String[0]);
        kinds = KINDS.getOrDefault(language, new String[0]);
        Shape drawn = Shape.values()[lot.nextInt(4)];
        boolean needsColumns = harm == Harm.BROKEN_ROW || harm == Harm.SLIPPED_NAMES;
        boolean needsTotal =
                (harm == Harm.WRONG_TOTAL || harm == Harm.WRONG_PAYOUT) && drawn == Shape.MARK;
        shape = needsColumns ? Shape.WIDE : needsTotal ? Shape.LONG : drawn;
        boolean english = language.equals("en");
        decimal = english ? '.' : lot.nextInt(8) == 0 ? '.' : ',';
        thousands =
                lot.nextInt(3) == 0
                        ? ""
                        : decimal == '.' ? "," : lot.nextInt(4) == 0 ? "\u00a0" : ".";
        negative = lot.nextInt(6) == 0 ? 1 + lot.nextInt(2) : 0;
        unit = lot.nextInt(5) == 0 ? (english ? "£" : " €") : "";
        minor = harm != Harm.WRONG_PAYOUT && unit.isEmpty() && lot.nextInt(12) == 0;
        pattern =
                new String[] {
                            "yyyy-MM-dd",
                            "dd.MM.yyyy",
                            "dd/MM/yyyy",
                            "yyyy-MM-dd'T'HH:mm:ss",
                            "d MMM yyyy",
                            "MM/dd/yyyy HH:mm",
                            "dd.MM.yy",
                            "yyyyMMdd"
                        }
                        [above ? new int[] {0, 1, 2, 4}[lot.nextInt(4)] : lot.nextInt(8)];
        positive = lot.nextInt(3) == 0;
        unknown = lot.nextInt(12) == 0;
    }

    /** The money put in, by day and kind, in pennies; positive where it comes in. */
    Map<String, Long> truth() {
        return truth;
    }

    static void add(Map<String, Long> sums, LocalDate day, String family, long pennies) {
        sums.merge(day + " " + family, pennies, Math::addExact);
        sums.values().removeIf(sum -> sum == 0);
    }

    Path write(Path folder) throws IOException {
        int tall = 8 + lot.nextInt(18);
        boolean hasBalance = shape != Shape.WIDE && !positive && lot.nextBoolean();
        boolean hasTotal = harm == Harm.WRONG_TOTAL || lot.nextInt(3) == 0;
        List<String> header = header(hasBalance);
        LocalDate day = LocalDate.of(2026, 7, above ? 13 : 1).plusDays(lot.nextInt(5));
        List<List<String>> body = new ArrayList<>();
        for (int i = 0; i < tall; i++) {
            day = day.plusDays(above ? 0 : lot.nextInt(4));
            body.addAll(rows(day, i, tall, hasBalance));
        }
        List<String> total = total(header);
        harm(body, header);
        if (isRecords()) {
            records(body);
            return text(folder);
        }
        statePayout();
        preamble(header);
        lines.addAll(body);
        if (lot.nextInt(10) == 0 && !blankColumn) {
            lines.add(lines.size() - body.size() / 2, header); // the names again, on a new page
        }
        if (hasTotal && shape != Shape.MARK) {
            lines.add(total);
        }
        if (lot.nextInt(6) == 0) {
            lines.add(List.of("Rows", Integer.toString(rows)));
        }
        if (above) {
            dateAbove(header, total, day);
        }
        return lot.nextInt(25) == 0 ? workbook(folder) : text(folder);
    }

    /** Takes the column of dates away, and puts the date into a line above the names. */
    private void dateAbove(List<String> header, List<String> total, LocalDate day) {
        total.set(1, total.get(0));
        int names = lines.indexOf(header);
        int width = header.size();
        for (int i = names; i < lines.size(); i++) {
            List<String> line = lines.get(i);
            if (line.size() == width) {
                lines.set(i, without(line, 0));
            }
        }
        String label = this.names[0];
        String date = date(day);
        lines.add(
                lot.nextInt(names + 1),
                lot.nextBoolean() ? List.of(label, date) : List.of(label + ": " + date));
    }

    /** Rows of several kinds, each with a letter and a shape of its own, and no column names. */
    private boolean isRecords() {
        return !above && harm == Harm.NONE && shape == Shape.LONG && !minor && lot.nextInt(3) == 0;
    }

    private void records(List<List<String>> body) {
        boolean letters = lot.nextBoolean();
        if (letters) {
            lines.add(List.of("H", "Quaylark", "20260930"));
        }
        for (List<String> row : body) {
            List<String> record = new ArrayList<>(row);
            if (letters) {
                record.add(0, "T");
            }
            lines.add(record);
        }
        if (letters) {
            lines.add(List.of("F", Integer.toString(body.size())));
        }
    }

    /** What the report says above the table that all its rows but the payout come to. */
    private void statePayout() {
        if (harm == Harm.WRONG_PAYOUT || (!minor && lot.nextInt(6) == 0)) {
            long all = 0;
            for (Map.Entry<String, Long> each : truth.entrySet()) {
                all += each.getKey().endsWith("payout") ? 0 : each.getValue();
            }
            long said = all + (harm == Harm.WRONG_PAYOUT ? 1_001 : 0);
            lines.add(List.of(PAYOUT.getOrDefault(language, "Payout"), number(said)));
        }
    }

    private List<String> header(boolean hasBalance) {
        List<String> header = new ArrayList<>(List.of(names[0], names[1]));
        if (shape != Shape.WIDE || lot.nextInt(3) > 0) {
            header.add(names[2]);
        }
        header.add(names[12]);
        switch (shape) {
            case WIDE -> header.addAll(List.of(names[3], names[4], names[5], names[6], names[7]));
            case PAIR -> header.addAll(List.of(names[9], names[10]));
            case MARK -> header.addAll(List.of("D/C", names[8]));
            default -> header.add(names[8] + (minor ? " (Cent)" : ""));
        }
        if (hasBalance) {
            header.add(names[11]);
        }
        return header;
    }

    private List<List<String>> rows(LocalDate day, int i, int tall, boolean hasBalance) {
        int draw = lot.nextInt(10);
        String order = "Q-" + (1000 + i * 7 + lot.nextInt(7));
        long goods = 500L + lot.nextInt(lot.nextInt(4) == 0 ? 400_000 : 9_000);
        if (shape == Shape.WIDE) {
            return List.of(wide(day, order, draw, goods));
        }
        if (unknown && i == 3) {
            return List.of(single(day, order, "Xyzzy 77", "other", goods, hasBalance));
        }
        if (i == tall - 1 && balance > 0) {
            return List.of(single(day, "", kinds[3], "payout", -balance, hasBalance));
        }
        if (draw < 5) {
            List<List<String>> sale = new ArrayList<>();
            sale.add(single(day, order, kinds[0], "goods", goods, hasBalance));
            sale.add(single(day, order, kinds[2], "fee", -(goods / 9 + 1), hasBalance));
            if (draw == 0) {
                sale.add(single(day, order, kinds[4], "delivery", 395, hasBalance));
            }
            return sale;
        }
        return List.of(
                draw < 7
                        ? single(day, order, kinds[1], "goods", -goods, hasBalance)
                        : draw < 9
                                ? single(day, "", kinds[2], "fee", -goods / 5, hasBalance)
                                : single(day, "", kinds[5], "compensation", goods, hasBalance));
    }

    private List<String> single(
            LocalDate day,
            String order,
            String kind,
            String family,
            long pennies,
            boolean hasBalance) {
        rows++;
        balance += pennies;
        add(truth, day, family, pennies);
        List<String> row = new ArrayList<>(List.of(date(day), order, kind, title()));
        switch (shape) {
            case PAIR -> {
                row.add(pennies < 0 ? number(-pennies) : "");
                row.add(pennies < 0 ? "" : number(pennies));
                total(0, pennies < 0 ? -pennies : 0);
                total(1, pennies < 0 ? 0 : pennies);
            }
            case MARK -> {
                row.add(pennies < 0 ? "D" : "C");
                row.add(number(Math.abs(pennies)));
            }
            default -> {
                long printed = positive ? Math.abs(pennies) : pennies;
                row.add(number(printed));
                total(0, printed);
            }
        }
        if (hasBalance) {
            row.add(number(balance));
        }
        return row;
    }

    private List<String> wide(LocalDate day, String order, int draw, long goods) {
        rows++;
        int way = draw < 8 ? 1 : -1;
        long delivery = draw % 3 == 0 ? 495 : 0;
        long discount = draw % 4 == 1 ? goods / 10 : 0;
        long fee = goods / 8 + 20;
        long net = goods + delivery - discount - fee;
        add(truth, day, "goods", way * goods);
        add(truth, day, "delivery", way * delivery);
        add(truth, day, "discount", -way * discount);
        add(truth, day, "fee", -way * fee);
        long out = positive ? 1 : -1;
        List<String> row =
                new ArrayList<>(List.of(date(day), order, kinds[way > 0 ? 0 : 1], title()));
        long[] printed = {
            way * goods, way * delivery, way * out * discount, way * out * fee, way * net
        };
        for (int i = 0; i < printed.length; i++) {
            row.add(printed[i] == 0 && draw == 3 ? "" : number(printed[i]));
            total(i, printed[i]);
        }
        return row;
    }

    private void total(int column, long pennies) {
        while (totals.size() <= column) {
            totals.add(0L);
        }
        totals.set(column, totals.get(column) + pennies);
    }

    private List<String> total(List<String> header) {
        List<String> row = new ArrayList<>(Collections.nCopies(header.size(), ""));
        row.set(0, names[13]);
        int first = header.indexOf(names[12]) + 1;
        for (int i = 0; i < totals.size(); i++) {
            long wrong = harm == Harm.WRONG_TOTAL && i == totals.size() - 1 ? 100 : 0;
            row.set(first + i, number(totals.get(i) + wrong));
        }
        return row;
    }

    private void harm(List<List<String>> body, List<String> header) {
        if (!header.contains(names[2])) {
            body.replaceAll(row -> without(row, 2));
        }
        int last = header.size() - 1;
        switch (harm) {
            case BROKEN_ROW -> {
                List<String> row = new ArrayList<>(body.get(4));
                row.set(last, number(123_456));
                body.set(4, row);
            }
            case SLIPPED_NAMES -> header.add(0, header.remove(last));
            case REPEATED_STATES -> {
                header.add("Status");
                List<List<String>> twice = new ArrayList<>();
                for (List<String> row : body) {
                    twice.add(with(row, "Placed"));
                    twice.add(with(row, "Settled"));
                }
                body.clear();
                body.addAll(twice);
            }
            case ROW_WITHOUT_DATE -> {
                List<String> row = new ArrayList<>(body.get(2));
                row.set(0, "");
                row.set(1, "Plan");
                body.set(2, row);
            }
            default -> {}
        }
    }

    private static List<String> without(List<String> row, int column) {
        List<String> less = new ArrayList<>(row);
        less.remove(column);
        return less;
    }

    private static List<String> with(List<String> row, String cell) {
        List<String> more = new ArrayList<>(row);
        more.add(cell);
        return more;
    }

    private void preamble(List<String> header) {
        int titles = lot.nextInt(4);
        for (int i = 0; i < titles; i++) {
            lines.add(List.of(i == 0 ? "Quaylark report" : "Page " + i));
        }
        if (minor) {
            lines.add(List.of("All amounts in pence"));
        }
        if (!above && lot.nextInt(5) == 0) {
            header.add(1, "Reserved");
            lines.add(header);
            blankColumn = true;
            return;
        }
        lines.add(header);
    }

    private boolean blankColumn;

    private String title() {
        return new String[] {
                    "Wool blanket",
                    "Teapot, blue",
                    "Oak \"A\" frame",
                    "Marble; run",
                    "Line\nbreak",
                    "Café cup"
                }
                [lot.nextInt(6)];
    }

    private String date(LocalDate day) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH)
                .format(day.atTime(lot.nextInt(24), 15));
    }

    private String number(long pennies) {
        if (minor) {
            return Long.toString(pennies);
        }
        String digits =
                BigDecimal.valueOf(Math.abs(pennies), 2)
                        .setScale(2, RoundingMode.UNNECESSARY)
                        .toPlainString();
        StringBuilder text = new StringBuilder(digits.replace('.', decimal));
        if (!thousands.isEmpty()) {
            for (int i = digits.length() - 6; i > 0; i -= 3) {
                text.insert(i, thousands);
            }
        }
        String plain = unit.equals("£") ? unit + text : text + unit;
        if (pennies >= 0) {
            return plain;
        }
        return negative == 1 ? plain + "-" : negative == 2 ? "(" + plain + ")" : "-" + plain;
    }

    private List<List<String>> finished() {
        if (!blankColumn) {
            return lines;
        }
        List<List<String>> wider = new ArrayList<>();
        boolean below = false;
        for (List<String> line : lines) {
            List<String> row = new ArrayList<>(line);
            if (below) {
                row.add(Math.min(1, row.size()), "");
            }
            below |= line.contains("Reserved");
            wider.add(row);
        }
        return wider;
    }

    private Path text(Path folder) throws IOException {
        char[] delimiters = {';', '\t', '|', ','};
        char delimiter = delimiters[lot.nextInt(4)];
        boolean trailing = lot.nextInt(6) == 0;
        StringBuilder text = new StringBuilder();
        for (List<String> line : finished()) {
            for (int i = 0; i < line.size(); i++) {
                text.append(i == 0 ? "" : String.valueOf(delimiter))
                        .append(cell(line.get(i), delimiter));
            }
            text.append(trailing ? String.valueOf(delimiter) : "").append("\r\n");
        }
        return Files.write(folder.resolve("quaylark.csv"), bytes(text.toString(), lot));
    }

    static String cell(String text, char delimiter) {
        boolean quoted = text.indexOf(delimiter) >= 0 || text.contains("\n") || text.contains("\"");
        return quoted ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }

    /** In one of the encodings that such files come in. */
    static byte[] bytes(String text, Random lot) {
        Charset western = Charset.forName("windows-1252");
        boolean fits = western.newEncoder().canEncode(text);
        return switch (lot.nextInt(6)) {
            case 0 -> ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8);
            case 1 -> ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE);
            case 2, 3 -> text.getBytes(fits ? western : StandardCharsets.UTF_8);
            case 4 -> {
                byte[] once = text.getBytes(StandardCharsets.UTF_8);
                ByteArrayOutputStream twice = new ByteArrayOutputStream();
                for (byte b : once) {
                    String c = new String(new byte[] {b}, western);
                    boolean none = c.equals("\uFFFD");
                    twice.writeBytes(
                            (none ? String.valueOf((char) (b & 0xff)) : c)
                                    .getBytes(StandardCharsets.UTF_8));
                }
                yield twice.toByteArray();
            }
            default -> text.getBytes(StandardCharsets.UTF_8);
        };
    }

    private Path workbook(Path folder) throws IOException {
        Path file = folder.resolve("quaylark.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook();
                var out = Files.newOutputStream(file)) {
            book.createSheet("Read me").createRow(0).createCell(0).setCellValue("Nothing here");
            var sheet = book.createSheet("Table");
            int at = 1 + lot.nextInt(3);
            int left = lot.nextInt(3);
            for (List<String> line : finished()) {
                var row = sheet.createRow(at++);
                for (int i = 0; i < line.size(); i++) {
                    row.createCell(left + i).setCellValue(line.get(i));
                }
            }
            book.write(out);
        }
        return file;
    }

    @Override
    public String toString() {
        return shape
                + " "
                + harm
                + " "
                + Arrays.toString(names)
                + " "
                + pattern
                + " decimal "
                + decimal
                + " thousands '"
                + thousands
                + "' negative "
                + negative
                + " unit '"
                + unit
                + "' minor "
                + minor
                + " positive "
                + positive;
    }
}

package quarterfold.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Every reader that is tried with broken input; a new one is a line here. */
final class Targets {
    private static final Path DEMO = Path.of("fixtures/demo");
    private static final Path HOSTILE = Path.of("fixtures/hostile");
    private static final Path LAYOUTS = Path.of("templates/layouts");

    /** Of a long file so many bytes are kept, to whole lines, so that many can be tried. */
    private static final int SHORT = 3_000;

    private static final String PRODUCTS =
            "product,liability,from,to\nTW-1,zero,2024-01-01,\nTW-2,reduced,,2026-03-31\nTW-2,standard,2026-04-01,\n";
    private static final String BUNDLES =
            "bundle,product,shelf_price,from,to\nGIFT,TW-1,7.99,2024-01-01,\nGIFT,TW-2,12.00,2024-01-01,\n";

    private static final byte[] RECEIPTS =
            """
            # August
            - file: r1.pdf
              date: 2026-08-05
              supplier: Inkwell Nook Ltd
              amount: 27.89
              rate: 20
              category: stationery
            - {date: 2026-08-06, supplier: "Corner Shop", amount: 3.50, kind: purchase}
            - {date: 2026-08-07, supplier: 'Reed & Co', net: 10.00, vat: 2.00}
            """
                    .getBytes(StandardCharsets.UTF_8);

    private Targets() {}

    static Map<String, Target.Maker> all() throws IOException {
        List<byte[]> sound = files(DEMO, ".csv");
        List<byte[]> tables = mostly(sound, files(HOSTILE, ".csv"));
        List<byte[]> books = mostly(workbooks(sound), files(HOSTILE, ".xlsx"));
        List<byte[]> old = mostly(oldWorkbooks(sound), files(HOSTILE, ".xls"));
        List<byte[]> lists = mostly(List.of(RECEIPTS), files(HOSTILE, ".yaml"));
        Map<String, Target.Maker> all = new LinkedHashMap<>();
        all.put(
                "delimited",
                (folder, seed) ->
                        imports(folder, "fuzz.csv", seed, tables, StatedInTables::inText));
        all.put(
                "workbook",
                (folder, seed) ->
                        packed(folder, "fuzz.xlsx", seed, books, StatedInTables::inWorkbook));
        all.put(
                "old workbook",
                (folder, seed) ->
                        imports(folder, "fuzz.xls", seed, old, StatedInTables::inOldWorkbook));
        all.put("list in YAML", (folder, seed) -> list(folder, seed, lists));
        all.put(
                "e-invoice",
                (folder, seed) ->
                        imports(
                                folder,
                                "fuzz.xml",
                                seed,
                                DocumentSeeds.invoices(),
                                StatedInDocuments::inInvoice));
        all.put(
                "bank statement",
                (folder, seed) ->
                        imports(
                                folder,
                                "fuzz.xml",
                                seed,
                                DocumentSeeds.statements(),
                                StatedInDocuments::inStatement));
        all.put(
                "exchange rates",
                (folder, seed) -> imports(folder, "fuzz.xml", seed, DocumentSeeds.rates()));
        all.put(
                "pdf",
                (folder, seed) ->
                        imports(
                                folder,
                                "fuzz.pdf",
                                seed,
                                DocumentSeeds.pdfs(folder),
                                StatedInDocuments::inPdf));
        all.put("zip", (folder, seed) -> zip(folder, seed, DocumentSeeds.zips(sound)));
        all.put("layout", Targets::layout);
        all.put("learn", (folder, seed) -> learns(folder, seed, tables));
        all.put("book.yaml", Targets::settings);
        all.put("products.csv", (folder, seed) -> list(folder, "products.csv", seed, PRODUCTS));
        all.put("bundles.csv", (folder, seed) -> list(folder, "bundles.csv", seed, BUNDLES));
        return all;
    }

    /** A reader of files that are not packed. */
    private static Target imports(
            Path folder, String name, long seed, List<byte[]> seeds, Stated stated)
            throws IOException {
        Mutator mutator = new Mutator(seed, seeds);
        return new ImportTarget(folder, name, mutator::next, stated);
    }

    private static Target imports(Path folder, String name, long seed, List<byte[]> seeds)
            throws IOException {
        return imports(folder, name, seed, seeds, Stated.NOTHING);
    }

    /** Lists of receipts, with the picture that the sound one names. */
    private static Target list(Path folder, long seed, List<byte[]> lists) throws IOException {
        Files.writeString(folder.resolve("r1.pdf"), "%PDF-1.4 a receipt");
        return imports(folder, "fuzz.yaml", seed, lists);
    }

    /** A reader of packed files. */
    private static Target packed(
            Path folder, String name, long seed, List<byte[]> seeds, Stated stated)
            throws IOException {
        PackedMutator mutator = new PackedMutator(seed, seeds);
        return new ImportTarget(folder, name, mutator::next, stated);
    }

    /** Broken ZIPs, and sound ones with broken files in them. */
    private static Target zip(Path folder, long seed, List<byte[]> seeds) {
        Mutator mutator = new Mutator(seed, seeds);
        return new DeliveryTarget(folder, "fuzz.zip", mutator::next);
    }

    private static Target layout(Path folder, long seed) throws IOException {
        List<Path> reports = new ArrayList<>();
        for (String name :
                List.of("quaylark-2026-07.csv", "norrowby-2026-07.csv", "receipts.csv")) {
            reports.add(Files.write(folder.resolve(name), shortened(DEMO.resolve(name))));
        }
        List<byte[]> layouts = new ArrayList<>();
        for (byte[] shipped : files(LAYOUTS, ".yaml")) {
            String text = new String(shipped, StandardCharsets.UTF_8);
            String mine = text.replaceFirst("(?m)^layout: .*$", "layout: " + LayoutTarget.NAME);
            layouts.add(mine.getBytes(StandardCharsets.UTF_8));
        }
        return new LayoutTarget(folder, new Mutator(seed, layouts), reports);
    }

    private static Target learns(Path folder, long seed, List<byte[]> tables) throws IOException {
        Mutator mutator = new Mutator(seed, tables);
        return new LearnTarget(folder, mutator::next);
    }

    private static Target settings(Path folder, long seed) throws IOException {
        Path made = Files.createDirectory(folder.resolve("pattern"));
        byte[] sound = new SettingsTarget(made, "book.yaml", new Mutator(seed, List.of())).sound();
        String open = new String(sound, StandardCharsets.UTF_8).replaceAll("(?m)^# (\\w+:)", "$1");
        List<byte[]> seeds = List.of(sound, sound, open.getBytes(StandardCharsets.UTF_8));
        return new SettingsTarget(folder, "book.yaml", new Mutator(seed, seeds));
    }

    private static Target list(Path folder, String name, long seed, String text)
            throws IOException {
        List<byte[]> seeds = List.of(text.getBytes(StandardCharsets.UTF_8));
        return new SettingsTarget(folder, name, new Mutator(seed, seeds));
    }

    private static List<byte[]> files(Path folder, String ending) throws IOException {
        List<byte[]> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(f -> f.toString().endsWith(ending)).sorted().toList()) {
                all.add(ending.equals(".csv") ? shortened(file) : Files.readAllBytes(file));
            }
        }
        return all;
    }

    private static byte[] shortened(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        if (bytes.length <= SHORT) {
            return bytes;
        }
        int end = SHORT;
        while (end > 0 && bytes[end - 1] != '\n') {
            end--;
        }
        return Arrays.copyOf(bytes, end);
    }

    /** The sound ones several times, so that most inputs are of them. */
    private static List<byte[]> mostly(List<byte[]> sound, List<byte[]> hostile) {
        List<byte[]> all = new ArrayList<>(hostile);
        while (all.size() < 4 * hostile.size()) {
            all.addAll(sound);
        }
        return all;
    }

    /** The same tables as workbooks, with numbers as numbers and one cell styled. */
    private static List<byte[]> workbooks(List<byte[]> tables) throws IOException {
        List<byte[]> all = new ArrayList<>();
        for (byte[] table : tables) {
            all.add(written(new XSSFWorkbook(), table));
        }
        return all;
    }

    /** The same in the old binary format. */
    private static List<byte[]> oldWorkbooks(List<byte[]> tables) throws IOException {
        List<byte[]> all = new ArrayList<>();
        for (byte[] table : tables) {
            all.add(written(new HSSFWorkbook(), table));
        }
        return all;
    }

    private static byte[] written(Workbook made, byte[] table) throws IOException {
        try (Workbook workbook = made;
                ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            fill(workbook, new String(table, Charset.forName("windows-1252")));
            workbook.write(out);
            return out.toByteArray();
        }
    }

    private static void fill(Workbook workbook, String table) throws IOException {
        Sheet sheet = workbook.createSheet("Table");
        CellStyle date = workbook.createCellStyle();
        date.setDataFormat((short) 14);
        char delimiter = table.indexOf(';') < 0 ? ',' : ';';
        CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(delimiter).get();
        try (CSVParser parser =
                CSVParser.builder()
                        .setReader(new StringReader(table.replace("\u00ef\u00bb\u00bf", "")))
                        .setFormat(format)
                        .get()) {
            for (CSVRecord record : parser) {
                Row row = sheet.createRow((int) record.getRecordNumber() - 1);
                for (int i = 0; i < record.size(); i++) {
                    cell(row, i, record.get(i), date);
                }
            }
        }
    }

    private static void cell(Row row, int column, String text, CellStyle date) {
        if (text.matches("-?[0-9]{1,6}\\.[0-9]{2}")) {
            row.createCell(column).setCellValue(Double.parseDouble(text));
        } else if (text.matches("2026-[0-9]{2}-[0-9]{2}")) {
            row.createCell(column).setCellValue(java.time.LocalDate.parse(text));
            row.getCell(column).setCellStyle(date);
        } else if (!text.isEmpty()) {
            row.createCell(column).setCellValue(text);
        }
    }
}

package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are too large in one way or another, made here since no one would keep them. */
class HostileSizeTest {
    private static final String HEADER = "date,kind,gross,description\n";
    private static final String GOOD = "2026-09-30,sale,1.00,a\n";
    private static final int TEN_MILLION = 10_000_000;
    private static final int MILLION = 1_000_000;

    @TempDir Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    @Test
    void aCellOfTenMillionCharacters() throws IOException {
        String cell = "x".repeat(TEN_MILLION);
        assertThat(desk.problems("a.csv", HEADER + GOOD + "2026-09-30,sale,1.00," + cell + "\n"))
                .containsExactly(
                        "a.csv:3: found a row of more than 1,000,000 characters; expected shorter rows, with every opening quote closed, such as \"blue, 12 cm\"");
    }

    @Test
    void aMillionColumns() throws IOException {
        assertThat(desk.problems("a.csv", HEADER + GOOD + ",".repeat(MILLION - 2) + "x\n"))
                .containsExactly(
                        "a.csv:3: found a row of 999,999 cells; expected at most 16,384, such as the table without its empty columns");
        assertThat(desk.problems("b.csv", HEADER + GOOD + "1,".repeat(MILLION) + "1\n"))
                .containsExactly(
                        "b.csv:3: found a row of more than 1,000,000 characters; expected shorter rows, with every opening quote closed, such as \"blue, 12 cm\"");
    }

    @Test
    void asManyColumnsAsThereMayBe() throws IOException {
        String blank = ",".repeat(Rows.COLUMN_LIMIT - 4);
        desk.enter(
                "a.csv",
                HEADER.strip() + blank + "\n" + GOOD.strip() + blank + "\n" + GOOD.strip() + blank);
        assertThat(desk.lines()).hasSize(2);
    }

    @Test
    void aSheetsCellOfTenMillionCharacters() throws IOException {
        Path file = workbook(2);
        sheet(file, "<t>a</t>", "<t>" + noise(TEN_MILLION) + "</t>");

        assertThat(desk.problems(file))
                .containsExactly(
                        "a.xlsx:Sales!D2: found a cell of more than 100,000 characters; expected at most that");
    }

    /** Each cell is as long as it may be; together they are more than should be held. */
    @Test
    void aSheetsRowOfManyLongCells() throws IOException {
        Path file = workbook(2);
        StringBuilder cells = new StringBuilder();
        for (int i = 0; i < 11; i++) {
            cells.append("<c t=\"inlineStr\"><is><t>")
                    .append(noise(100_000))
                    .append("</t></is></c>");
        }
        sheet(file, "</row>\n<row r=\"3\"", cells + "</row>\n<row r=\"3\"");

        assertThat(desk.problems(file))
                .containsExactly(
                        "a.xlsx:Sales!2: found a row of more than 1,000,000 characters; expected at most that");
    }

    @Test
    void aListInYamlThatIsTooLarge() throws IOException {
        String item = "- {date: 2026-09-30, amount: 1.00, supplier: %s}\n";
        assertThat(desk.problems("a.yaml", item.formatted("x".repeat(TEN_MILLION))))
                .containsExactly(
                        "a.yaml: found YAML of more than 2,097,152 bytes; expected less, such as the list as .csv");
        assertThat(desk.problems("b.yaml", item.formatted("x".repeat(100_001))))
                .containsExactly(
                        "b.yaml:1: found a text of more than 100,000 characters; expected at most that");
    }

    @Test
    void aRateOfTenMillionCharacters() throws IOException {
        String rate = "<exchangeRate><rateNew>" + "1".repeat(TEN_MILLION);
        assertThat(desk.problems("a.xml", "<exchangeRateMonthList>\n" + rate + "</rateNew>"))
                .containsExactly(
                        "a.xml:2: found a text of more than 100,000 characters; expected a shorter one");
    }

    /** The parser's own limit; what it says of it is not for people. */
    @Test
    void anElementOfAMillionAttributes() throws IOException {
        StringBuilder xml = new StringBuilder("<exchangeRateMonthList>\n<exchangeRate");
        for (int i = 0; i < MILLION; i++) {
            xml.append(" a").append(i).append("=''");
        }
        assertThat(desk.problems("a.xml", xml + "/></exchangeRateMonthList>"))
                .containsExactly(
                        "a.xml:2: found XML that breaks off, breaks the rules of XML, or has a document type; expected the whole file as it was issued, every element closed; get it again");
    }

    @Test
    void aSheetOfManyRowsIsNoBomb() throws IOException {
        ImportResult result = desk.enter(workbook(60_000));

        assertThat(result.problems()).isEmpty();
        assertThat(result.entries()).isEqualTo(60_000);
    }

    /** The limit counts what is unpacked, whatever the packed file says of itself. */
    @Test
    void whatIsUnpackedIsCounted() throws IOException {
        try (InputStream in = PackedSize.limited(new ByteArrayInputStream(new byte[10]), 10)) {
            assertThat(in.readAllBytes()).hasSize(10);
        }
        try (InputStream in = PackedSize.limited(new ByteArrayInputStream(new byte[11]), 10)) {
            assertThatThrownBy(in::readAllBytes)
                    .isInstanceOf(IOException.class)
                    .hasMessage(
                            "found a packed file of which one part unpacks to more than 10 bytes; expected less, such as the sheet saved again as .csv");
        }
        try (InputStream in = PackedSize.limited(new ByteArrayInputStream(new byte[2]), 1)) {
            assertThat(in.read()).isZero();
            assertThatThrownBy(in::read).isInstanceOf(IOException.class);
        }
    }

    /** Texts that compress little, so that the limit on them is met before any other. */
    @Test
    void stylesThatAreTooLarge() throws IOException {
        Path file = workbook(2);
        try (FileSystem zip = FileSystems.newFileSystem(file);
                Writer out = Files.newBufferedWriter(zip.getPath("xl/styles.xml"))) {
            String noise = noise(MILLION);
            for (int i = 0; i < 68; i++) {
                out.write(noise);
            }
        }

        assertThat(desk.problems(file))
                .containsExactly(
                        "a.xlsx: found a packed file of which one part unpacks to more than 67,108,864 bytes; expected less, such as the sheet saved again as .csv");
    }

    /** Letters and digits in a fixed order without repeats that a packer could use. */
    private static String noise(int length) {
        return new java.util.Random(2026)
                .ints(length, 0, 62)
                .collect(
                        StringBuilder::new,
                        (text, i) ->
                                text.append(
                                        "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
                                                .charAt(i)),
                        StringBuilder::append)
                .toString();
    }

    private Path workbook(int rows) throws IOException {
        Path file = desk.path("a.xlsx");
        try (SXSSFWorkbook workbook = new SXSSFWorkbook(null, 100, false, false);
                OutputStream out = Files.newOutputStream(file)) {
            Sheet sheet = workbook.createSheet("Sales");
            row(sheet, 0, HEADER.strip());
            for (int i = 1; i <= rows; i++) {
                row(sheet, i, GOOD.strip());
            }
            workbook.write(out);
        }
        return file;
    }

    private static void row(Sheet sheet, int number, String texts) {
        var row = sheet.createRow(number);
        String[] cells = texts.split(",", -1);
        for (int i = 0; i < cells.length; i++) {
            row.createCell(i).setCellValue(cells[i]);
        }
    }

    private static void sheet(Path file, String before, String after) throws IOException {
        try (FileSystem zip = FileSystems.newFileSystem(file)) {
            Path part = zip.getPath("xl/worksheets/sheet1.xml");
            String xml = Files.readString(part, StandardCharsets.UTF_8);
            assertThat(xml).contains(before);
            int at = xml.indexOf(before);
            Files.writeString(
                    part, xml.substring(0, at) + after + xml.substring(at + before.length()));
        }
    }
}

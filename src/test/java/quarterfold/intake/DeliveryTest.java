package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Folders and ZIPs: every file in them is entered, refused, kept as evidence, or passed over. */
class DeliveryTest {
    private static final String HEADER = "date,kind,gross,rate\n";

    @TempDir Path folder;
    private Desk desk;
    private Path quarter = Path.of("");

    @BeforeEach
    void open() throws IOException {
        desk = new Desk(folder);
        quarter = Files.createDirectory(folder.resolve("quarter"));
    }

    @AfterEach
    void close() {
        desk.close();
    }

    /** A sheet of one sale, which no other amount makes. */
    private static String sale(int pounds) {
        return HEADER + "2026-09-30,sale," + pounds + ".00,20\n";
    }

    private Path file(String name, String text) throws IOException {
        Path file = quarter.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    private Path zip(String name, String... namesAndTexts) throws IOException {
        Path file = quarter.resolve(name);
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            for (int i = 0; i < namesAndTexts.length; i += 2) {
                zip.putNextEntry(new ZipEntry(namesAndTexts[i]));
                zip.write(namesAndTexts[i + 1].getBytes(StandardCharsets.ISO_8859_1));
            }
        }
        return file;
    }

    private List<String> enter(Path... named) {
        List<String> told = new ArrayList<>();
        desk.deliver(List.of(named), result -> told.add(told(result)));
        return told;
    }

    private static String told(ImportResult result) {
        if (result instanceof ImportResult.Refused refused) {
            return refused.name() + " | refused | " + refused.problems().get(0);
        }
        if (result instanceof ImportResult.NotEntered other) {
            return other.name() + " | " + other.reason();
        }
        return "%s | %s | %d"
                .formatted(result.name(), result.getClass().getSimpleName(), result.entries());
    }

    @Test
    void aFolderIsGoneThroughByName() throws IOException {
        file("b.csv", sale(2));
        file("a/z.csv", sale(1));
        file("a.csv", sale(3));
        file("c/d/e/f.csv", sale(4));

        assertThat(enter(quarter))
                .containsExactly(
                        "a/z.csv | Entered | 1",
                        "a.csv | Entered | 1",
                        "b.csv | Entered | 1",
                        "c/d/e/f.csv | Entered | 1");
        assertThat(desk.archive())
                .as("no folder is made for a folder's files")
                .containsExactly("a.csv", "b.csv", "f.csv", "z.csv");
    }

    @Test
    void namesSayWhichFolderWhereSeveralAreNamed() throws IOException {
        Path july = Files.createDirectory(folder.resolve("july"));
        Path august = Files.createDirectory(folder.resolve("august"));
        Files.writeString(july.resolve("s.csv"), sale(7));
        Files.writeString(august.resolve("s.csv"), sale(8));

        assertThat(enter(july, august))
                .containsExactly("july/s.csv | Entered | 1", "august/s.csv | Entered | 1");
    }

    @Test
    void aRefusedFileDoesNotStopTheOthers() throws IOException {
        file("a.csv", HEADER + "2026-09-31,sale,1.00,20\n");
        file("b.csv", sale(2));
        file("new-channel.csv", "Day,Thing,Sum\n2026-09-30,Cup,12.00\n");

        assertThat(enter(quarter))
                .containsExactly(
                        "a.csv | refused | a.csv:2 [date]: found '2026-09-31'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",
                        "b.csv | Entered | 1",
                        "new-channel.csv | refused | new-channel.csv: found no header that a layout knows; expected the columns of a layout or of the plain sheet, such as date,kind,gross; or a layout for it, which this works out: quarterfold learn FILE");
        assertThat(desk.archive()).containsExactly("b.csv");
    }

    @Test
    void whatIsNoReportIsListedWithTheReason() throws IOException {
        file("a.csv", sale(1));
        file(".DS_Store", "x");
        file("sub/.hidden/secret.csv", sale(9));
        file("sub/~$open.xlsx", "x");
        file("notes.md", "# Notes\n\n| 2026-09-30 | 12.00 | bought |\n");
        file("words.txt", "Call the accountant\n");
        file("letters.txt", "one, two, three\n");
        file("products.csv", "product,liability,from,to\nTW-2001,zero,2024-01-01,\n");
        Files.write(quarter.resolve("photo.jpg"), new byte[] {-1, (byte) 0xd8, -1, -32, 0});
        Files.write(quarter.resolve("film.bin"), new byte[] {1, 0, 2});
        Files.writeString(quarter.resolve("letter.pdf"), "%PDF-1.4\n");

        assertThat(enter(quarter))
                .containsExactly(
                        "a.csv | Entered | 1",
                        "letters.txt | no row has a date and a number",
                        "notes.md | a text that no layout knows",
                        "products.csv | a list of goods: its place is the book's own folder",
                        "words.txt | no row has a date and a number",
                        "letter.pdf | a PDF that no form of report fits, and no list of receipts names",
                        "film.bin | a file of no known form",
                        "photo.jpg | a picture that no list of receipts names",
                        "quarter | 3 hidden files or folders, such as .DS_Store");
        assertThat(desk.lines()).hasSize(1);
    }

    /** What was to be a report is never taken for none because it is broken. */
    @Test
    void whatIsBrokenIsNotPassedOver() throws IOException {
        file("cut.xml", "<?xml version=\"1.0\"?>\n<Invo");
        file("type.xml", "<!DOCTYPE a [<!ENTITY b \"c\">]>\n<a>&b;</a>");
        file("list.yaml", "- {date: 2026-09-30, supplier: \"a\0b\", amount: 1.00}\n");
        Files.write(
                quarter.resolve("wide.yaml"),
                "- {date: 2026-09-30, amount: 1.00}\n".getBytes(StandardCharsets.UTF_16));

        assertThat(enter(quarter))
                .containsExactlyInAnyOrder(
                        "cut.xml | refused | cut.xml: found XML that breaks off or breaks the rules of XML before its first element; expected the whole file as it was issued; get it again",
                        "type.xml | refused | type.xml: found a document type (<!DOCTYPE), as web pages have; expected XML without one, or a table, such as the same report downloaded as .csv",
                        "list.yaml | refused | list.yaml: found text that is not YAML (special characters are not allowed); expected a list of receipts, such as - {file: r1.jpg, date: 2026-08-05, supplier: Inkwell Nook Ltd, amount: 27.89}",
                        "wide.yaml | refused | wide.yaml: found bytes that are not UTF-8; expected text in UTF-8, such as the list saved again in that encoding");
    }

    @Test
    void aFileNamedByItselfIsMeant() throws IOException {
        Path photo =
                Files.write(
                        folder.resolve("photo.png"),
                        "\u0089PNG\r\n\u001a\n".getBytes(StandardCharsets.ISO_8859_1));
        Path film = Files.write(folder.resolve("film.bin"), new byte[] {1, 0, 2});
        Path words = Files.writeString(folder.resolve("words.txt"), "Call the accountant\n");
        Path nothing = folder.resolve("nothing.zip");
        try (OutputStream out = Files.newOutputStream(nothing)) {
            new ZipOutputStream(out).close();
        }
        Path blank = Files.createFile(folder.resolve("blank.pdf"));

        assertThat(enter(photo, film, words, nothing, blank))
                .containsExactly(
                        "words.txt | refused | words.txt: found no header that a layout knows; expected the columns of a layout or of the plain sheet, such as date,kind,gross; or a layout for it, which this works out: quarterfold learn FILE",
                        "blank.pdf | refused | blank.pdf: found an empty file; expected the document, such as the same file downloaded again",
                        "photo.png | refused | photo.png: found a picture; expected a report, or a list that names the picture as evidence, such as receipts.csv with a column file",
                        "film.bin | refused | film.bin: found a file of no known form; expected a report, such as the same figures saved as .csv",
                        "nothing.zip | refused | nothing.zip: found a ZIP without files; expected one at least, such as the same ZIP downloaded again");
    }

    @Test
    void linksAreToldAndNotFollowed(@TempDir Path elsewhere) throws IOException {
        Files.writeString(elsewhere.resolve("outside.csv"), sale(5));
        file("a.csv", sale(1));
        Files.createSymbolicLink(quarter.resolve("loop"), quarter);
        Files.createSymbolicLink(quarter.resolve("out"), elsewhere);
        Files.createSymbolicLink(quarter.resolve("out.csv"), elsewhere.resolve("outside.csv"));

        assertThat(enter(quarter))
                .containsExactly(
                        "a.csv | Entered | 1",
                        "loop | a symbolic link: links are not followed",
                        "out | a symbolic link: links are not followed",
                        "out.csv | a symbolic link: links are not followed");
    }

    @Test
    void aBookIsNoFolderOfReports() throws IOException {
        Path own = folder.resolve("book");
        file("a.csv", sale(1));
        Files.createDirectory(quarter.resolve("other"));
        for (String part : List.of("book.yaml", "ledger.sqlite")) {
            Files.copy(own.resolve(part), quarter.resolve("other").resolve(part));
        }

        assertThat(enter(own))
                .containsExactly(
                        "book | refused | book: found a book; expected a folder of reports, such as the folder they were downloaded to");
        assertThat(enter(quarter))
                .containsExactly(
                        "a.csv | Entered | 1", "other | a book: its files are in it already");
    }

    @Test
    void tooManyFilesAndNothingIsEntered() throws IOException {
        for (int i = 0; i <= FolderWalk.MOST_FILES; i++) {
            Files.writeString(quarter.resolve("f%05d.csv".formatted(i)), "");
        }

        assertThat(enter(quarter))
                .containsExactly(
                        "quarter | refused | quarter: found more than 10,000 files in a folder; expected at most that, such as one quarter's; nothing of it was entered");
    }

    @Test
    void aZipIsGoneThroughAndOneInIt() throws IOException {
        Path inner = zip("inner.zip", "deep/x.csv", sale(1));
        String bytes = new String(Files.readAllBytes(inner), StandardCharsets.ISO_8859_1);
        Path outer = zip("outer.zip", "y.csv", sale(2), "in/inner.zip", bytes, "a/", "");
        Files.delete(inner);

        assertThat(enter(outer))
                .containsExactly(
                        "outer.zip/in/inner.zip/deep/x.csv | Entered | 1",
                        "outer.zip/y.csv | Entered | 1");
        assertThat(desk.archive())
                .containsExactly("outer.zip_in_inner.zip_deep_x.csv", "outer.zip_y.csv");
        assertThat(desk.path("book/sources").toFile().list())
                .as("the copy of the inner one is gone")
                .hasSize(2);
    }

    @Test
    void aZipInAFolderAndAFolderInAZip() throws IOException {
        file("a.csv", sale(1));
        zip("b.zip", "sub/c.csv", sale(2), "sub/.hidden", "x", "__MACOSX/._c.csv", "x");

        assertThat(enter(quarter))
                .containsExactly(
                        "a.csv | Entered | 1",
                        "b.zip/sub/c.csv | Entered | 1",
                        "b.zip | 2 hidden files or folders, such as sub/.hidden");
    }

    @Test
    void aZipInAZipInAZip() throws IOException {
        String bytes = sale(1);
        String name = "x.csv";
        for (String next : List.of("one.zip", "two.zip", "three.zip")) {
            bytes =
                    new String(
                            Files.readAllBytes(zip(next, name, bytes)),
                            StandardCharsets.ISO_8859_1);
            name = next;
        }

        assertThat(enter(quarter.resolve("three.zip")))
                .containsExactly(
                        "three.zip/two.zip/one.zip | refused | three.zip/two.zip/one.zip: found a ZIP in a ZIP in a ZIP; expected one ZIP in another at most, such as this one unpacked");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../evil.csv",
                "/evil.csv",
                "a/../../evil.csv",
                "C:\\evil.csv",
                "a\\..\\b.csv"
            })
    void namesThatLeadOutOfAZip(String name) throws IOException {
        assertThat(enter(zip("z.zip", name, sale(1), "good.csv", sale(2))))
                .containsExactly(
                        "z.zip/good.csv | Entered | 1",
                        "z.zip/%1$s | refused | z.zip/%1$s: found a name that leads out of the ZIP; expected one of a file in it, such as july/statement.csv"
                                .formatted(name.replace('\\', '/')));
        assertThat(Files.exists(folder.resolve("evil.csv"))).isFalse();
    }

    @Test
    void aLinkInAZip() throws IOException {
        Path file = quarter.resolve("link.zip");
        try (ZipArchiveOutputStream zip = new ZipArchiveOutputStream(file)) {
            ZipArchiveEntry link = new ZipArchiveEntry("link.csv");
            link.setUnixMode(0120777);
            zip.putArchiveEntry(link);
            zip.write("/etc/passwd".getBytes(StandardCharsets.UTF_8));
            zip.closeArchiveEntry();
        }

        assertThat(enter(file))
                .containsExactly(
                        "link.zip/link.csv | refused | link.zip/link.csv: found a symbolic link; expected a file, such as the one it leads to packed in its place: links are not followed");
    }

    @Test
    void oneNameTwiceInAZip() throws IOException {
        Path file = quarter.resolve("twice.zip");
        try (ZipArchiveOutputStream zip = new ZipArchiveOutputStream(file)) {
            for (int pounds : List.of(1, 2)) {
                zip.putArchiveEntry(new ZipArchiveEntry("a.csv"));
                zip.write(sale(pounds).getBytes(StandardCharsets.UTF_8));
                zip.closeArchiveEntry();
            }
        }

        assertThat(enter(file))
                .containsExactly(
                        "twice.zip/a.csv | refused | twice.zip/a.csv: found 2 files of this name in the ZIP; expected it once, such as the files packed again");
    }

    @Test
    void aZipThatUnpacksToFarTooMuch() throws IOException {
        Path file = quarter.resolve("bomb.zip");
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("zeros.csv"));
            byte[] zeros = new byte[1 << 20];
            for (int i = 0; i < 32; i++) {
                zip.write(zeros);
            }
            zip.closeEntry();
            zip.putNextEntry(new ZipEntry("good.csv"));
            zip.write(sale(1).getBytes(StandardCharsets.UTF_8));
        }

        assertThat(enter(file))
                .containsExactly(
                        "bomb.zip/good.csv | Entered | 1",
                        "bomb.zip/zeros.csv | refused | bomb.zip/zeros.csv: found a file that unpacks to more than 200 times its size in the ZIP; expected less, such as the file by itself");
    }

    /** Each file is small enough by itself. */
    @Test
    void aZipThatUnpacksToFarTooMuchInParts() throws IOException {
        String zeros = "\0".repeat(3 << 20);
        Path file = zip("parts.zip", "1.csv", zeros, "2.csv", zeros, "3.csv", zeros, "a.csv", "x");

        assertThat(enter(file))
                .containsExactly(
                        "parts.zip | refused | parts.zip: found a ZIP of files that unpack to more than 200 times their size in it; expected less, such as the files by themselves; nothing of it was entered");
    }

    /** A ZIP of ZIPs of many files each is limited as one ZIP of all of them. */
    @Test
    void tooManyFilesInZipsInAZip() throws IOException {
        Path outer = quarter.resolve("outer.zip");
        Path half = quarter.resolve("half.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(half))) {
            for (int i = 0; i < Zip.MOST_FILES / 2; i++) {
                zip.putNextEntry(new ZipEntry("." + i));
            }
        }
        byte[] bytes = Files.readAllBytes(half);
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(outer))) {
            for (String name : List.of("a.zip", "b.zip")) {
                zip.putNextEntry(new ZipEntry(name));
                zip.write(bytes);
            }
            zip.putNextEntry(new ZipEntry("c.csv"));
            zip.write(sale(1).getBytes(StandardCharsets.UTF_8));
        }

        assertThat(enter(outer))
                .containsExactly(
                        "outer.zip/c.csv | Entered | 1",
                        "outer.zip/a.zip | 5000 hidden files or folders, such as .0",
                        "outer.zip/b.zip | refused | outer.zip/b.zip: found 5,000 files of 0 bytes in it, after 5,003 of %,d in other ZIPs; expected at most 10,000 of 8,589,934,592 in all, such as this ZIP brought in by itself; nothing of it was entered"
                                .formatted(2 * bytes.length + sale(1).length()));
    }

    /** The same with a ZIP that says it is small: both places that state the size are patched. */
    @Test
    void aZipThatLiesAboutItsSize() throws IOException {
        Path file = zip("liar.zip", "a.csv", sale(1).repeat(50));
        byte[] bytes = Files.readAllBytes(file);
        patch(bytes, new byte[] {'P', 'K', 1, 2}, 24, new byte[] {10, 0, 0, 0});

        assertThat(enter(Files.write(file, bytes)))
                .containsExactly(
                        "liar.zip/a.csv | refused | liar.zip/a.csv: found a file that unpacks to more bytes than the ZIP says; expected a sound ZIP, such as the files packed again");
    }

    @Test
    void aZipWithAWrongChecksum() throws IOException {
        Path file = zip("crc.zip", "a.csv", sale(1));
        byte[] bytes = Files.readAllBytes(file);
        patch(bytes, new byte[] {'P', 'K', 1, 2}, 16, new byte[] {1, 2, 3, 4});

        assertThat(enter(Files.write(file, bytes)))
                .containsExactly(
                        "crc.zip/a.csv | refused | crc.zip/a.csv: found a file that is not the one that was packed, by its checksum; expected a sound ZIP, such as the files packed again");
    }

    @Test
    void aZipWithBrokenBytes() throws IOException {
        Path file = zip("broken.zip", "a.csv", sale(1));
        byte[] bytes = Files.readAllBytes(file);
        for (int i = 35; i < 60; i++) {
            bytes[i] = -1;
        }

        assertThat(enter(Files.write(file, bytes)))
                .containsExactly(
                        "broken.zip/a.csv | refused | broken.zip/a.csv: found packed bytes that cannot be unpacked; expected a sound ZIP, such as the files packed again");
    }

    @Test
    void aZipCutOff() throws IOException {
        Path file = zip("cut.zip", "a.csv", sale(1));
        byte[] bytes = Files.readAllBytes(file);

        assertThat(enter(Files.write(file, java.util.Arrays.copyOf(bytes, bytes.length / 2))))
                .containsExactly(
                        "cut.zip | refused | cut.zip: found a ZIP that is not sound; expected one that opens, such as the files packed again");
    }

    /** The flag that says so is set by hand: bit 0 of the general purpose bits. */
    @Test
    void aZipWithAPassword() throws IOException {
        Path file = zip("locked.zip", "a.csv", sale(1), "b.csv", sale(2));
        byte[] bytes = Files.readAllBytes(file);
        patch(bytes, new byte[] {'P', 'K', 1, 2}, 8, new byte[] {9});

        assertThat(enter(Files.write(file, bytes)))
                .containsExactly(
                        "locked.zip | refused | locked.zip: found a ZIP of which 1 file is locked with a password; expected one that opens without, such as the files packed again; nothing of it was entered");
    }

    @Test
    void tooManyFilesInAZip() throws IOException {
        Path file = quarter.resolve("many.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            zip.setLevel(0);
            for (int i = 0; i <= Zip.MOST_FILES; i++) {
                zip.putNextEntry(new ZipEntry(i + ".csv"));
            }
        }

        assertThat(enter(file))
                .containsExactly(
                        "many.zip | refused | many.zip: found 10,001 files in a ZIP; expected at most 10,000, such as one quarter's; nothing of it was entered");
    }

    /** What is packed is told apart by what is in it, whatever its name. */
    @Test
    void workbooksAndOtherPackedDocuments() throws IOException {
        Path workbook = quarter.resolve("book.zip");
        try (XSSFWorkbook made = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(workbook)) {
            var sheet = made.createSheet("S");
            String[][] cells = {{"date", "kind", "gross"}, {"2026-09-30", "sale", "12.50"}};
            for (int i = 0; i < cells.length; i++) {
                var row = sheet.createRow(i);
                for (int j = 0; j < cells[i].length; j++) {
                    row.createCell(j).setCellValue(cells[i][j]);
                }
            }
            made.write(out);
        }
        zip("broken.xlsx", "xl/workbook.xml", "<x/>");
        zip("letter.docx", "[Content_Types].xml", "<x/>", "word/document.xml", "<x/>");
        zip("sheet.ods", "mimetype", "x", "META-INF/manifest.xml", "<x/>", "content.xml", "<x/>");

        assertThat(enter(quarter))
                .containsExactly(
                        "book.zip | Entered | 1",
                        "broken.xlsx | refused | broken.xlsx: found a packed file that is not a sound XLSX workbook; expected a text table or an XLSX workbook, such as the sheet saved again as .xlsx or .csv",
                        "letter.docx | an office document that is no workbook",
                        "sheet.ods | refused | sheet.ods: found an OpenDocument; expected an XLSX workbook or a text table, such as the same sheet saved as .xlsx");
    }

    @Test
    void whatIsThereAlreadyIsSaidWithWhatItHolds() throws IOException {
        file("a.csv", sale(1));
        enter(quarter);

        assertThat(enter(quarter)).containsExactly("a.csv | AlreadyThere | 1");
        assertThat(desk.lines()).hasSize(1);
    }

    private static void patch(byte[] bytes, byte[] record, int offset, byte[] with) {
        for (int i = 0; i + record.length < bytes.length; i++) {
            if (java.util.Arrays.equals(bytes, i, i + record.length, record, 0, record.length)) {
                System.arraycopy(with, 0, bytes, i + offset, with.length);
                return;
            }
        }
        throw new AssertionError("no such record");
    }
}

package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person reads of a folder that is brought in, and of the receipts kept from it. */
class ImportFolderTest {
    private static final String LIST =
            """
            date,kind,document,party,party_vat,category,gross,rate,evidence,file
            2026-08-05,expense,R-1,Inkwell Nook Ltd,GB000480437,stationery,24.00,20,simplified,scans/r1.jpg
            2026-08-06,expense,R-2,Corner Shop,,stationery,12.00,20,missing,
            """;

    /** Of the first picture, by sha256sum. */
    private static final String SHA256 =
            "0daf6712a6590e4fc2a5af5359482e5704d66040742a3a31783ecd11d9c47e08";

    @TempDir private Path folder;
    private Path book = Path.of("");
    private Path quarter = Path.of("");

    @BeforeEach
    void aFolder() throws IOException {
        book = SmallBook.empty(folder);
        quarter = folder.resolve("quarter");
        Files.createDirectories(quarter.resolve("scans"));
        SmallBook.file(quarter, "quarter.csv", SmallBook.QUARTER);
        SmallBook.file(quarter, "receipts.csv", LIST);
        SmallBook.file(quarter, ".DS_Store", "x");
        SmallBook.file(
                quarter,
                "a-report-with-a-name-that-goes-on-and-on-2026-07.csv",
                "date,kind,gross\n,,\n2026-07-01,sale,x\n");
        for (String name : List.of("r1.jpg", "r2.jpg")) {
            Files.write(quarter.resolve("scans").resolve(name), picture(name));
        }
    }

    private static byte[] picture(String name) {
        return new byte[] {-1, (byte) 0xd8, -1, (byte) 0xe0, (byte) name.charAt(1)};
    }

    private Run run(Object... args) {
        return Run.of(Stream.concat(Stream.of("--book", book), Stream.of(args)).toArray());
    }

    @Test
    void asText() {
        assertThat(run("import", quarter))
                .isEqualTo(
                        new Run(
                                65,
                                """
                                file                                  kind      layout       rows  entries  set aside   money
                                a-report-wi…es-on-and-on-2026-07.csv            plain-sheet     1        0          0          refused: nothing was entered
                                quarter.csv                           mixed     plain-sheet     6        6          0  -51.00  ties
                                receipts.csv                          expenses  plain-sheet     2        2          0  -36.00  ties, 1 document kept with it
                                3 files                                         entered now     8        8          0  -87.00  2 tie, 1 refused

                                Not read as reports:
                                  scans/r1.jpg  evidence of receipts.csv row 2
                                  scans/r2.jpg  a picture that no list of receipts names
                                  quarter       1 hidden file or folder, such as .DS_Store
                                """,
                                """
                                a-report-with-a-name-that-goes-on-and-on-2026-07.csv:3 [gross]: found 'x'; expected an amount with at most 4 decimals, such as 1234.50
                                """));
    }

    @Test
    void asJson() {
        assertThat(run("import", "--json", quarter))
                .isEqualTo(
                        new Run(
                                65,
                                """
                                {"file":"a-report-with-a-name-that-goes-on-and-on-2026-07.csv","sha256":"c448bfe6f92e2780094c39745477e0c820a30d25ba4007ae839118d03d4418c1","result":"refused","kind":"","layout":"plain-sheet","rows_read":1,"entries":0,"set_aside":0,"repeated":0,"problems":["a-report-with-a-name-that-goes-on-and-on-2026-07.csv:3 [gross]: found 'x'; expected an amount with at most 4 decimals, such as 1234.50"]}
                                {"file":"quarter.csv","sha256":"d35fdbb4f181da6f6244bfbff2905e9ad69c1d8bc86f689386fd65a2909b95ed","result":"entered","kind":"mixed","layout":"plain-sheet","rows_read":6,"entries":6,"set_aside":0,"repeated":0,"money":"-51.00","documents":0,"problems":[]}
                                {"file":"receipts.csv","sha256":"73e23fb9ace550e0d6a5e38ecc808a717a998cfee9222b8c6e19963f95b722db","result":"entered","kind":"expenses","layout":"plain-sheet","rows_read":2,"entries":2,"set_aside":0,"repeated":0,"money":"-36.00","documents":1,"problems":[]}
                                {"file":"scans/r1.jpg","sha256":"","result":"evidence","kind":"","layout":"","rows_read":0,"entries":0,"set_aside":0,"repeated":0,"reason":"evidence of receipts.csv row 2","problems":[]}
                                {"file":"scans/r2.jpg","sha256":"","result":"passed-over","kind":"","layout":"","rows_read":0,"entries":0,"set_aside":0,"repeated":0,"reason":"a picture that no list of receipts names","problems":[]}
                                {"file":"quarter","sha256":"","result":"passed-over","kind":"","layout":"","rows_read":0,"entries":0,"set_aside":0,"repeated":0,"reason":"1 hidden file or folder, such as .DS_Store","problems":[]}
                                """,
                                ""));
    }

    @Test
    void aFolderOfNothing() throws IOException {
        Path empty = Files.createDirectory(folder.resolve("empty"));
        assertThat(run("import", empty))
                .isEqualTo(
                        new Run(
                                65,
                                """
                                file   kind  layout  rows  entries  set aside  money
                                empty                   0        0          0         refused: nothing was entered
                                """,
                                """
                                empty: found a folder with no file in it; expected at least one, such as the folder they were downloaded to
                                """));
        Files.createDirectories(empty.resolve("folders/in/folders"));
        assertThat(run("import", empty).code()).isEqualTo(65);
        assertThat(run("ledger", "--json").out()).isEmpty();
    }

    /** What stops everything is told last, and what was entered before it is shown. */
    @Test
    void aFileThatIsNotThere() {
        assertThat(run("import", quarter.resolve("quarter.csv"), quarter.resolve("gone.csv")))
                .extracting(Run::code, Run::out)
                .containsExactly(
                        74,
                        """
                        file         kind   layout       rows  entries  set aside   money
                        quarter.csv  mixed  plain-sheet     6        6          0  -51.00  ties
                        """);
    }

    /** The next import clears what killed ones left, and a receipt is none of it. */
    @Test
    void aReceiptThatIsKeptIsNoLeftOver() throws IOException {
        run("import", quarter);
        Path left = Files.writeString(book.resolve("sources/.incoming-7.part"), "half");
        run("import", SmallBook.file(folder, "more.csv", "date,kind,gross\n2026-07-05,sale,12\n"));
        assertThat(left).doesNotExist();
        try (Stream<Path> kept = Files.list(book.resolve("sources"))) {
            assertThat(kept.map(p -> p.getFileName().toString()))
                    .filteredOn(name -> name.endsWith(".jpg"))
                    .hasSize(1);
        }
        assertThat(run("verify").code()).isZero();
    }

    @Test
    void theStoryOfAReceipt() {
        run("import", quarter);
        String kept = "sources/" + SHA256.substring(0, 12) + "-r1.jpg";

        assertThat(run("vouch", 7).out())
                .contains("  Document kept          scans/r1.jpg, as " + kept + "\n");
        assertThat(run("vouch", 8).out()).doesNotContain("Document kept");
        List<String> entries = run("ledger", "--json").out().lines().toList();
        assertThat(entries.get(6))
                .endsWith(
                        ",\"documents\":[{\"file\":\"scans/r1.jpg\",\"sha256\":\"%s\"}]}"
                                .formatted(SHA256));
        assertThat(entries.get(7)).doesNotContain("documents");
    }

    @Test
    void aReceiptThatIsChangedOrMissing() throws IOException {
        run("import", quarter);
        assertThat(run("verify").out())
                .startsWith(
                        "sources   2 files and 1 document kept are those that were imported, byte for byte\n");
        assertThat(run("verify", "--json").out())
                .startsWith("{\"well\":true,\"sources\":2,\"documents\":1,\"entries\":8,");

        Path copy = book.resolve("sources").resolve(SHA256.substring(0, 12) + "-r1.jpg");
        assertThat(copy.toFile().setWritable(true)).isTrue();
        Files.writeString(copy, "another picture");
        assertThat(run("verify"))
                .extracting(Run::code, r -> r.out().lines().limit(2).toList())
                .containsExactly(
                        1,
                        List.of(
                                "sources   1 difference:",
                                "  receipts.csv row 2, scans/r1.jpg: the copy sources/%s is not the file that was imported; expected the SHA-256 %s; put the file back from another copy"
                                        .formatted(copy.getFileName(), SHA256)));
        Files.delete(copy);
        assertThat(run("verify").out().lines().skip(1).findFirst())
                .contains(
                        "  receipts.csv row 2, scans/r1.jpg: found no copy in sources; expected a file with the SHA-256 %s; put the file back from another copy"
                                .formatted(SHA256));
        assertThat(run("vouch", 7).out())
                .contains("  Document kept          scans/r1.jpg, which is missing in sources\n");
    }

    @Test
    void aRowWhoseReceiptTheLedgerHasNot() throws SQLException {
        run("import", quarter);
        try (Connection ledger =
                        DriverManager.getConnection(
                                "jdbc:sqlite:" + book.resolve("ledger.sqlite"));
                Statement statement = ledger.createStatement()) {
            statement.execute("drop trigger attachment_is_not_deleted");
            statement.execute("delete from attachment");
        }

        assertThat(run("verify").out())
                .contains(
                        "  receipts.csv: its rows name 1 documents; found 0 others attached to them in the ledger, or other rows\n");
    }

    /** The workbook shows which document is kept with which purchase. */
    @Test
    void theWorkbookNamesTheReceipt() throws IOException {
        run("import", quarter.resolve("receipts.csv"));
        assertThat(run("papers", "2026-09").code()).isZero();
        try (XSSFWorkbook workbook =
                new XSSFWorkbook(
                        Files.newInputStream(book.resolve("papers/2026-09-draft/workbook.xlsx")))) {
            List<List<String>> rows = new ArrayList<>();
            workbook.getSheet("Purchases")
                    .forEach(
                            row -> {
                                List<String> cells = new ArrayList<>();
                                row.forEach(cell -> cells.add(cell.toString()));
                                rows.add(cells);
                            });
            List<String> headings =
                    rows.stream()
                            .filter(r -> r.contains("Document kept"))
                            .findFirst()
                            .orElseThrow();
            int column = headings.indexOf("Document kept");
            assertThat(rows)
                    .filteredOn(r -> r.size() > column && r.contains("R-1"))
                    .extracting(r -> r.get(column))
                    .containsExactly("scans/r1.jpg");
        }
    }
}

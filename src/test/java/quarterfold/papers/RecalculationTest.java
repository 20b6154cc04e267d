package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.LongStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.money.Amount;
import quarterfold.money.Rounding;

/** Another spreadsheet program finds the same boxes from the rows alone. */
class RecalculationTest {

    private static final String REMEMBERED = "</f><v>[^<]*</v>";

    @TempDir static Path scratch;

    @BeforeAll
    static void libreOffice() {
        Recalculation.needed();
    }

    @Test
    void boxesComeFromTheRowsNotFromWhatTheFileRemembers() throws Exception {
        ListPack pack = Samples.small();
        Path workbook = written(pack, "small", Sheets.ROW_LIMIT);
        Path wrong = changed(workbook, "wrong", "sheet1", REMEMBERED, "</f><v>77</v>");
        Path none = changed(workbook, "none", "sheet1", REMEMBERED, "</f>");

        assertThat(Recalculation.boxes(wrong).values()).containsOnly(new BigDecimal("77"));
        assertSame(Recalculation.boxes(Recalculation.of(workbook, scratch)), figures(pack));
        assertSame(Recalculation.boxes(Recalculation.of(wrong, scratch)), figures(pack));
        assertSame(Recalculation.boxes(Recalculation.of(none, scratch)), figures(pack));
    }

    /** Boxes take the cells of adjustments too, and no total of the entry sheets. */
    @Test
    void adjustmentsAreCellsLikeEntries() throws Exception {
        ListPack pack = Samples.adjusted();
        Path workbook = written(pack, "adjusted", Sheets.ROW_LIMIT);
        Path wrong = changed(workbook, "adjusted-wrong", "sheet1", REMEMBERED, "</f><v>77</v>");

        assertThat(figures(pack))
                .containsEntry("1", new BigDecimal("750.0000"))
                .containsEntry("4", new BigDecimal("387.6600"))
                .containsEntry("6", new BigDecimal("9999.0000"));
        assertSame(Recalculation.boxes(Recalculation.of(wrong, scratch)), figures(pack));
    }

    @Test
    void changedRowMovesItsBoxAndTheCheckSaysSo() throws Exception {
        ListPack pack = Samples.small();
        Path workbook = written(pack, "changed", Sheets.ROW_LIMIT);
        Path moved =
                changed(
                        workbook,
                        "moved",
                        "sheet2",
                        "(<c r=\"R5\"[^>]*>)<v>1.665</v>",
                        "$1<v>101.665</v>");

        Path again = Recalculation.of(moved, scratch);

        Map<String, BigDecimal> expected = new TreeMap<>(figures(pack));
        for (String box : List.of("1", "3", "5")) {
            expected.computeIfPresent(box, (b, figure) -> figure.add(new BigDecimal(100)));
        }
        assertSame(Recalculation.boxes(again), expected);
        assertThat(texts(again, 5, 10, 18))
                .containsExactly(
                        "DIFFERS", "agrees", "DIFFERS", "agrees", "DIFFERS", "agrees", "agrees",
                        "agrees", "agrees");
        assertThat(texts(again, 0, 7, 7)).containsExactly("Pay 117.33 by 7 November 2026");
        assertThat(texts(again, 0, 20, 20))
                .containsExactly(
                        "A BOX DIFFERS: the rows of this workbook were changed, or it is not whole.");
    }

    @Test
    void boxesTakeInTheSheetsThatCarryOn() throws Exception {
        ListPack pack = Samples.busy(200);
        Path workbook = written(pack, "split", 50);
        Path none = changed(workbook, "split-none", "sheet1", REMEMBERED, "</f>");

        Path again = Recalculation.of(none, scratch);

        assertSame(Recalculation.boxes(again), figures(pack));
        assertThat(texts(again, 0, 20, 20)).containsExactly("Every box agrees.");
    }

    /**
     * Every named rounding, on its own halves, both signs, and amounts drawn at random below the
     * hundred million up to which TRUNC is exact in every program.
     */
    @Test
    void formulasRoundAsTheNamedRoundingsDo() throws Exception {
        long[] halves = {0, 1, 49, 50, 51, 99, 100, 149, 150, 9_999, 10_000, 10_050, 26_750};
        List<Rounding> roundings = List.of(Rounding.values());
        Random random = new Random(2026);
        List<Amount> amounts =
                LongStream.concat(LongStream.of(halves), random.longs(300, 0, 1_000_000_000_000L))
                        .flatMap(n -> LongStream.of(n, -n))
                        .mapToObj(Amount::new)
                        .toList();
        Path file = scratch.resolve("roundings.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook()) {
            XSSFSheet sheet = book.createSheet("Roundings");
            for (int i = 0; i < amounts.size(); i++) {
                Row row = sheet.createRow(i);
                Value.number(row.createCell(0), amounts.get(i));
                for (int r = 0; r < roundings.size(); r++) {
                    row.createCell(r + 1)
                            .setCellFormula(BoxFormulas.rounded(roundings.get(r), "A" + (i + 1)));
                }
            }
            try (var out = Files.newOutputStream(file)) {
                book.write(out);
            }
        }

        try (InputStream in = Files.newInputStream(Recalculation.of(file, scratch));
                XSSFWorkbook book = new XSSFWorkbook(in)) {
            XSSFSheet sheet = book.getSheetAt(0);
            for (int i = 0; i < amounts.size(); i++) {
                for (int r = 0; r < roundings.size(); r++) {
                    Rounding rounding = roundings.get(r);
                    String value = sheet.getRow(i).getCell(r + 1).getRawValue();
                    assertThat(new BigDecimal(value))
                            .as("%s of %s", rounding, amounts.get(i))
                            .isEqualByComparingTo(amounts.get(i).rounded(rounding).decimal());
                }
            }
        }
    }

    private static Path written(ListPack pack, String name, int rowLimit) throws IOException {
        Path folder = scratch.resolve(name);
        WorkingPapers.write(pack, folder, rowLimit);
        return folder.resolve("workbook.xlsx");
    }

    private static Map<String, BigDecimal> figures(ListPack pack) {
        Map<String, BigDecimal> figures = new TreeMap<>();
        pack.vatReturn().boxes().forEach(b -> figures.put(b.box().id(), b.figure().decimal()));
        return figures;
    }

    private static void assertSame(
            Map<String, BigDecimal> found, Map<String, BigDecimal> expected) {
        assertThat(found).hasSize(9).hasSameSizeAs(expected);
        expected.forEach(
                (box, figure) ->
                        assertThat(found.get(box)).as("box " + box).isEqualByComparingTo(figure));
    }

    /** The texts of one column of the first sheet, rows counted from 0. */
    private static List<String> texts(Path workbook, int column, int first, int last)
            throws IOException {
        try (InputStream in = Files.newInputStream(workbook);
                XSSFWorkbook book = new XSSFWorkbook(in)) {
            XSSFSheet sheet = book.getSheetAt(0);
            return LongStream.rangeClosed(first, last)
                    .mapToObj(r -> sheet.getRow((int) r).getCell(column).getStringCellValue())
                    .toList();
        }
    }

    /** A copy of a workbook with one sheet's XML changed; the change must be there to make. */
    private static Path changed(
            Path workbook, String name, String sheet, String pattern, String replacement)
            throws IOException {
        Path copy = Files.createDirectories(scratch.resolve(name)).resolve("workbook.xlsx");
        UnaryOperator<String> change =
                xml -> {
                    String after = xml.replaceAll(pattern, replacement);
                    assertThat(after).isNotEqualTo(xml);
                    return after;
                };
        try (ZipInputStream in = new ZipInputStream(Files.newInputStream(workbook));
                ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(copy))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                byte[] bytes = in.readAllBytes();
                out.putNextEntry(new ZipEntry(entry.getName()));
                out.write(
                        entry.getName().endsWith("/" + sheet + ".xml")
                                ? change.apply(new String(bytes, StandardCharsets.UTF_8))
                                        .getBytes(StandardCharsets.UTF_8)
                                : bytes);
            }
        }
        return copy;
    }
}

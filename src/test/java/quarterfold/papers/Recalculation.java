package quarterfold.papers;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * Another spreadsheet program's opinion of a workbook: LibreOffice, without a screen, told to work
 * out every formula anew.
 */
public final class Recalculation {

    private static final String PROGRAM = "soffice";
    private static final long MINUTES = 3;

    /** The program's own setting "recalculation on file load: always", for a fresh profile. */
    private static final String ALWAYS =
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <oor:items xmlns:oor="http://openoffice.org/2001/registry"
                       xmlns:xs="http://www.w3.org/2001/XMLSchema"
                       xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
            <item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
            </oor:items>
            """;

    private Recalculation() {}

    /** Skips the test where LibreOffice is not installed; where {@code CI} is set, fails it. */
    public static void needed() {
        boolean there =
                Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                        .anyMatch(folder -> Files.isExecutable(Path.of(folder, PROGRAM)));
        if (there) {
            return;
        }
        String message =
                "LibreOffice is not installed, so no second program recalculates the workbook:"
                        + " install it (Debian: apt-get install libreoffice-calc)";
        if (System.getenv("CI") != null) {
            Assertions.fail(message);
        }
        Assumptions.abort(message);
    }

    /** A copy of the workbook with every formula worked out anew, in a new folder of scratch. */
    public static Path of(Path workbook, Path scratch) throws IOException, InterruptedException {
        Path profile = scratch.resolve("profile");
        if (!Files.exists(profile)) {
            Files.createDirectories(profile.resolve("user"));
            Files.writeString(profile.resolve("user/registrymodifications.xcu"), ALWAYS);
        }
        Path folder = Files.createTempDirectory(scratch, "recalculated");
        Path said = folder.resolve("said.txt");
        Process process =
                new ProcessBuilder(
                                PROGRAM,
                                "-env:UserInstallation=" + profile.toUri(),
                                "--headless",
                                "--convert-to",
                                "xlsx:Calc MS Excel 2007 XML",
                                "--outdir",
                                folder.toString(),
                                workbook.toString())
                        .redirectErrorStream(true)
                        .redirectOutput(said.toFile())
                        .start();
        boolean ended = process.waitFor(MINUTES, TimeUnit.MINUTES);
        Path result = folder.resolve(workbook.getFileName());
        if (!ended || !Files.exists(result)) {
            process.destroyForcibly();
            throw new IOException("LibreOffice did not convert it: " + Files.readString(said));
        }
        return result;
    }

    /** The figures of the boxes as the workbook file has them, by box id. */
    public static Map<String, BigDecimal> boxes(Path workbook) throws IOException {
        Map<String, BigDecimal> boxes = new TreeMap<>();
        try (InputStream in = Files.newInputStream(workbook);
                XSSFWorkbook book = new XSSFWorkbook(in)) {
            for (Name name : book.getAllNames()) {
                if (name.getNameName().startsWith("box_")) {
                    CellReference cell = new CellReference(name.getRefersToFormula());
                    String value =
                            book.getSheet(cell.getSheetName())
                                    .getRow(cell.getRow())
                                    .getCell(cell.getCol())
                                    .getRawValue();
                    boxes.put(
                            name.getNameName().substring("box_".length()),
                            new BigDecimal(value == null ? "0" : value));
                }
            }
        }
        return boxes;
    }
}

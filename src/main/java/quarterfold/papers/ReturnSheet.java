package quarterfold.papers;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import quarterfold.law.Box;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.period.BoxFigure;
import quarterfold.period.Pack;
import quarterfold.period.VatReturn;

/**
 * The first sheet: the boxes as formulas over the entry sheets, beside each the figure that was
 * worked out before the workbook was written and whether the two agree. The figure of box 1 is also
 * the name {@code box_1}, and so on.
 */
final class ReturnSheet {

    private static final int EXACT = 2;
    private static final int FIGURE = 3;
    private static final int FROZEN = 4;
    private static final int CHECK = 5;
    private static final int OTHER = 6;
    private static final int GAP = 7;
    private static final double[] WIDTHS = {12, 50, 17, 15, 16, 12, 16, 13};
    private static final double ALL = 165;
    private static final int BOX_HEADING = 9;

    private final Sheets sheets;
    private final Pack pack;
    private final VatReturn vatReturn;
    private final SXSSFSheet sheet;

    ReturnSheet(Sheets sheets, Pack pack) {
        this.sheets = sheets;
        this.pack = pack;
        this.vatReturn = pack.vatReturn();
        this.sheet = sheets.create("Return");
        sheet.getPrintSetup().setFitHeight((short) 1);
        for (int i = 0; i < WIDTHS.length; i++) {
            sheet.setColumnWidth(i, Sheets.characters(WIDTHS[i]));
        }
    }

    /** Writes the sheet once the entry sheets are known. */
    void write(EntrySheets entries, AdjustmentSheet adjustments) {
        head();
        Map<String, String> cells = new HashMap<>();
        int row = BOX_HEADING + 1;
        for (BoxFigure box : vatReturn.boxes()) {
            row++;
            cells.put(box.box().id(), "D" + row);
        }
        direction(cells);
        headings();
        for (BoxFigure box : vatReturn.boxes()) {
            String id = box.box().id();
            List<String> feeding =
                    box.box().isComputed()
                            ? List.of()
                            : Stream.concat(
                                            entries.ranges(id).stream(),
                                            adjustments.ranges(id).stream())
                                    .toList();
            box(box, feeding, cells);
        }
        foot(row);
    }

    private void head() {
        Settings settings = pack.settings();
        sheets.title(sheet, Words.title(vatReturn));
        said(1, "Business", settings.name());
        said(2, "VAT number", settings.vatNumber());
        said(3, "Period", Words.span(vatReturn.period()));
        Row due = said(4, "Due by", "");
        Cell day = due.createCell(1);
        day.setCellValue(vatReturn.period().due());
        day.setCellStyle(sheets.look().style(Look.Part.FACT_DAY));
        said(5, "Rounding", Words.rounding(settings.roundingPerLine()));
    }

    private Row said(int number, String label, String text) {
        Row row = sheet.createRow(number);
        sheets.put(row, 0, Look.Part.LABEL, label);
        if (!text.isEmpty()) {
            sheets.put(row, 1, Look.Part.FACT, text);
        }
        return row;
    }

    private void direction(Map<String, String> cells) {
        Box difference = Words.difference(vatReturn).box();
        String figure = cells.get(difference.id());
        String due = cells.get(difference.formula().boxes().get(0));
        String back = cells.get(difference.formula().boxes().get(1));
        String money =
                "FIXED(" + figure + "," + (difference.unit() == Box.Unit.POUNDS ? 0 : 2) + ")";
        String dueEnd = BoxFormulas.quoted(Words.dueEnd(vatReturn.period()));
        Row row = sheet.createRow(7);
        row.setHeightInPoints(20);
        Cell cell = row.createCell(0);
        cell.setCellFormula(
                "IF(%1$s>%2$s,\"Pay \"&%3$s&%4$s,IF(%1$s<%2$s,\"Reclaim \"&%3$s,\"Nothing to pay or reclaim\")&%5$s)"
                        .formatted(
                                due,
                                back,
                                money,
                                BoxFormulas.quoted(Words.payEnd(vatReturn.period())),
                                dueEnd));
        cell.setCellValue(Words.direction(vatReturn));
        cell.setCellStyle(sheets.look().style(Look.Part.SAYING));
    }

    private void headings() {
        Row row = sheet.createRow(BOX_HEADING);
        row.setHeightInPoints(29);
        String frozen =
                vatReturn.status() == VatReturn.Status.CLOSED
                        ? "Figure at the close"
                        : "Figure of the draft";
        List<String> words =
                List.of(
                        "Box",
                        "What it is",
                        "Added up, before rounding",
                        "Figure",
                        frozen,
                        "Do they agree?",
                        "With the other rounding",
                        "Difference");
        for (int i = 0; i < words.size(); i++) {
            boolean right = i >= EXACT && i != CHECK;
            sheets.put(row, i, right ? Look.Part.HEADING_RIGHT : Look.Part.HEADING, words.get(i));
        }
    }

    private void box(BoxFigure figure, List<String> feeding, Map<String, String> cells) {
        Box box = figure.box();
        String here = cells.getOrDefault(box.id(), "");
        int number = Integer.parseInt(here.substring(1));
        Row row = sheet.createRow(number - 1);
        row.setHeightInPoints(Wrapping.height(Wrapping.lines(box.label(), WIDTHS[1] - 1)) + 8);
        sheets.put(row, 0, Look.Part.BOX_NAME, "Box " + box.id());
        sheets.put(row, 1, Look.Part.BOX_NAME, box.label());
        boolean pounds = box.unit() == Box.Unit.POUNDS;
        Look.Part plain = pounds ? Look.Part.BOX_POUNDS : Look.Part.BOX_PENCE;
        String formula;
        if (box.isComputed()) {
            row.createCell(EXACT).setCellStyle(sheets.look().style(plain));
            formula = BoxFormulas.computed(box, cells);
        } else {
            formula(row, EXACT, Look.Part.BOX_EXACT, BoxFormulas.sumOf(feeding))
                    .setCellValue(figure.exact().decimal().doubleValue());
            formula = BoxFormulas.rounded(box.rounding(), "C" + number);
        }
        Look.Part bold = pounds ? Look.Part.BOX_FIGURE_POUNDS : Look.Part.BOX_FIGURE_PENCE;
        Value.number(formula(row, FIGURE, bold, formula), figure.figure());
        amount(row, FROZEN, plain, figure.figure());
        formula(
                        row,
                        CHECK,
                        Look.Part.BOX_CHECK,
                        "IF(ROUND(D%1$d-E%1$d,4)=0,\"agrees\",\"DIFFERS\")".formatted(number))
                .setCellValue("agrees");
        Amount other = pack.otherRounding().getOrDefault(box.id(), figure.figure());
        amount(row, OTHER, plain, other);
        Value.number(
                formula(row, GAP, plain, "ROUND(G%1$d-D%1$d,2)".formatted(number)),
                other.minus(figure.figure()));
        Name name = sheets.workbook().createName();
        name.setNameName("box_" + box.id());
        name.setRefersToFormula("Return!$D$" + number);
    }

    private Cell formula(Row row, int column, Look.Part part, String formula) {
        Cell cell = row.createCell(column);
        cell.setCellFormula(formula);
        cell.setCellStyle(sheets.look().style(part));
        return cell;
    }

    private void amount(Row row, int column, Look.Part part, Amount amount) {
        Cell cell = row.createCell(column);
        Value.number(cell, amount);
        cell.setCellStyle(sheets.look().style(part));
    }

    private void foot(int lastBox) {
        int boxes = vatReturn.boxes().size();
        Row all = sheet.createRow(lastBox + 1);
        Cell check =
                formula(
                        all,
                        0,
                        Look.Part.TOTAL_LABEL,
                        "IF(COUNTIF(F%d:F%d,\"agrees\")=%d,%s,%s)"
                                .formatted(
                                        BOX_HEADING + 2,
                                        lastBox,
                                        boxes,
                                        BoxFormulas.quoted("Every box agrees."),
                                        BoxFormulas.quoted(
                                                "A BOX DIFFERS: the rows of this workbook were"
                                                        + " changed, or it is not whole.")));
        check.setCellValue("Every box agrees.");
        note(lastBox + 3, How.addedUp(vatReturn));
        note(lastBox + 4, How.otherRounding(pack));
        note(lastBox + 5, How.queries(vatReturn));
        note(lastBox + 7, Caution.text());
        sheet.createFreezePane(0, BOX_HEADING + 1);
    }

    private void note(int number, String text) {
        Row row = sheet.createRow(number);
        row.setHeightInPoints(Wrapping.height(Wrapping.lines(text, ALL)) + 3);
        Cell cell = row.createCell(0);
        cell.setCellValue(CellText.xml(text));
        cell.setCellStyle(sheets.look().style(Look.Part.NOTE));
        sheet.addMergedRegion(new CellRangeAddress(number, number, 0, WIDTHS.length - 1));
    }
}

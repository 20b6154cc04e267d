package quarterfold.papers;

import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import quarterfold.law.Box;
import quarterfold.law.TableFile;
import quarterfold.period.BoxFigure;
import quarterfold.period.Pack;

/**
 * The last sheet: the rows of the law's tables the period used, its form, and the tables' digests.
 */
final class LawSheet {

    private static final double[] WIDTHS = {16, 30, 70, 66, 12};

    private final Sheets sheets;
    private final SXSSFSheet sheet;
    private int next;

    private LawSheet(Sheets sheets) {
        this.sheets = sheets;
        this.sheet = sheets.create("Law used");
        for (int i = 0; i < WIDTHS.length; i++) {
            sheet.setColumnWidth(i, Sheets.characters(WIDTHS[i]));
        }
    }

    static void write(Sheets sheets, Pack pack, Tally tally) {
        LawSheet law = new LawSheet(sheets);
        sheets.title(law.sheet, "Law used");
        law.next++;
        law.line(Look.Part.LABEL, sheets.about() + ".");
        law.next++;
        law.line(Look.Part.SAYING, "Treatments the period used");
        law.headings("Rule", "Treatment", "What it says", "Rests on", "Entries");
        tally.rules()
                .forEach(
                        (rule, entries) ->
                                law.row(
                                        new Value.Text(rule.rule()),
                                        new Value.Text(Words.treatment(rule.treatment())),
                                        new Value.Text(rule.why()),
                                        new Value.Text(rule.citation()),
                                        new Value.Count(entries)));
        law.next++;
        law.line(Look.Part.SAYING, "The form");
        law.headings("Box", "Rounding", "How it is made", "Rests on", "");
        for (BoxFigure figure : pack.vatReturn().boxes()) {
            Box box = figure.box();
            law.row(
                    new Value.Text("Box " + box.id()),
                    new Value.Text(Words.rounding(box.rounding())),
                    new Value.Text(box.label() + ": " + Words.made(box)),
                    new Value.Text(box.source()),
                    new Value.Blank());
        }
        law.next++;
        law.line(Look.Part.SAYING, "Tables, as they were read");
        law.headings("File", "", "SHA-256 of the file", "", "");
        for (TableFile file : pack.law().files()) {
            law.row(
                    new Value.Text(file.name()),
                    new Value.Blank(),
                    new Value.Text(file.sha256()),
                    new Value.Blank(),
                    new Value.Blank());
        }
    }

    private void line(Look.Part part, String text) {
        sheets.put(sheet.createRow(next++), 0, part, text);
    }

    private void headings(String... headings) {
        Row row = sheet.createRow(next++);
        for (int i = 0; i < headings.length; i++) {
            Look.Part part = i == headings.length - 1 ? Look.Part.HEADING_RIGHT : Look.Part.HEADING;
            sheets.put(row, i, part, headings[i]);
        }
    }

    private void row(Value... values) {
        Row row = sheet.createRow(next++);
        int lines = 1;
        for (int i = 0; i < values.length; i++) {
            values[i].put(row.createCell(i), sheets.look(), WIDTHS[i]);
            lines = Math.max(lines, values[i].lines(WIDTHS[i]));
        }
        row.setHeightInPoints(Wrapping.height(lines));
    }
}

package quarterfold.papers;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.GregorianCalendar;
import quarterfold.ledger.Settings;
import quarterfold.period.BoxFigure;
import quarterfold.period.Pack;
import quarterfold.period.VatReturn;

/** The summary a person signs: the return on a page, and after it what the return rests on. */
final class SummaryPdf {

    private static final float SIDE = 52;
    private static final float TOP = 48;
    private static final float BOTTOM = 58;

    private SummaryPdf() {}

    /** Writes the summary as a new file. */
    static void write(Pack pack, Tally tally, Path file) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PdfLook look = new PdfLook();
        VatReturn vatReturn = pack.vatReturn();
        String about = pack.settings().name() + ", " + Words.span(vatReturn.period());
        Document document = new Document(PageSize.A4, SIDE, SIDE, TOP, BOTTOM);
        PdfWriter writer = PdfWriter.getInstance(document, bytes);
        document.addTitle(Words.title(vatReturn) + ", " + about);
        document.addCreator("Quarterfold");
        document.open();
        writer.getInfo()
                .put(
                        PdfName.CREATIONDATE,
                        new PdfDate(
                                GregorianCalendar.from(
                                        vatReturn.period().end().atStartOfDay(ZoneOffset.UTC))));
        writer.setPageEvent(new PageFoot(look.small, look.shown(about)));
        head(document, look, pack);
        document.add(boxes(look, pack));
        document.add(look.line(How.otherRounding(pack), look.plain, 10));
        document.add(look.line(How.queries(vatReturn), look.plain, 3));
        document.add(look.panel(Caution.text(), look.plain));
        SummaryParts parts = new SummaryParts(look, pack, tally);
        document.add(parts.signatures());
        document.newPage();
        for (PdfPTable feeds : parts.feeds()) {
            document.add(feeds);
        }
        if (!vatReturn.adjustments().isEmpty()) {
            document.add(parts.adjustments());
        }
        document.add(parts.queries());
        document.add(parts.inNoBox());
        document.add(parts.setAside());
        document.add(parts.sources());
        document.close();
        Files.write(file, SteadyPdf.of(bytes.toByteArray()));
    }

    private static void head(Document document, PdfLook look, Pack pack) {
        Settings settings = pack.settings();
        VatReturn vatReturn = pack.vatReturn();
        document.add(look.line(Words.title(vatReturn), look.title, 0));
        PdfPTable facts = look.table(1, 5);
        facts.setSpacingBefore(8);
        fact(facts, look, "Business", settings.name());
        fact(facts, look, "VAT number", settings.vatNumber());
        fact(facts, look, "Period", Words.span(vatReturn.period()));
        fact(facts, look, "Due by", Words.day(vatReturn.period().due()));
        document.add(facts);
        document.add(look.line(Words.direction(vatReturn), look.saying, 16));
    }

    private static void fact(PdfPTable facts, PdfLook look, String label, String text) {
        for (PdfPCell cell :
                new PdfPCell[] {look.left(label, look.quiet), look.left(text, look.bold)}) {
            cell.setBorder(0);
            cell.setPaddingTop(1.5f);
            cell.setPaddingBottom(1.5f);
            facts.addCell(cell);
        }
    }

    private static PdfPTable boxes(PdfLook look, Pack pack) {
        PdfPTable table =
                look.section(
                        "The return",
                        "",
                        new float[] {1.1f, 8, 2.2f},
                        "Box",
                        "What it is",
                        ">Figure");
        for (BoxFigure figure : pack.vatReturn().boxes()) {
            table.addCell(look.left(figure.box().id(), look.bold));
            table.addCell(look.left(figure.box().label(), look.plain));
            table.addCell(look.right(Words.figure(figure.box(), figure.figure()), look.bold));
        }
        return table;
    }
}

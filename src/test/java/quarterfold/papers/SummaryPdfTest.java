package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.period.VatReturn;

class SummaryPdfTest {

    @TempDir Path folder;

    @Test
    void everyWordOfASmallQuarter() throws IOException {
        Golden.check("small-summary.txt", text(Samples.small()));
    }

    @Test
    void adjustmentsWithTheirWorking() throws IOException {
        assertThat(text(Samples.adjusted()))
                .contains("Adjustments\nFigures worked out over the whole period or year.")
                .contains("Turnover with VAT 9999.99 at 7.5% is 749.9993.")
                .contains("1: 749.9993")
                .contains("4: -12.34")
                .contains("Flat rate 1 749.9993");
        assertThat(text(Samples.small())).doesNotContain("Adjustments");
    }

    @Test
    void everyFontIsEmbedded() throws IOException {
        List<String> fonts = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(written(Samples.small()))) {
            for (PDPage page : pdf.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
                    fonts.add(page.getResources().getFont(name).getName().substring(7));
                }
            }
        }
        assertThat(fonts).contains("LiberationSans", "LiberationSans-Bold");
    }

    @Test
    void headingsAndPageNumbersAreOnEveryPage() throws IOException {
        String text = text(Samples.busy(50));

        assertThat(text).contains("Page 1 of 5", "Page 5 of 5").doesNotContain("Page 6");
        assertThat(text.split("Where, and the query's name Question At stake", -1)).hasSize(5);
    }

    @Test
    void longListOfQueriesShowsThoseWithMostMoneyAndCountsTheRest() throws IOException {
        Samples.Quarter quarter = new Samples.Quarter().source("a.csv", "plain-sheet", 1, 1, "0");
        for (int i = 1; i <= 43; i++) {
            quarter.query("E" + i + "/x", "a.csv row " + i, "Question " + i + "?", i + ".00");
        }

        String text = text(quarter.pack("Many Questions", VatReturn.Status.DRAFT));

        assertThat(text)
                .contains(
                        "43 queries are open; each waits for a person's answer. These are the 40"
                                + " with the most money at stake; 3 more are in the\nworkbook.")
                .contains("a.csv row 43 Question 43? 43.00\nE43/x\na.csv row 42 Question 42? 42.00")
                .contains("a.csv row 4 Question 4? 4.00")
                .doesNotContain("a.csv row 3 ");
    }

    @Test
    void lettersTheFontLacksShowAsQuestionMarks() throws IOException {
        String text =
                text(new Samples.Quarter().pack("Ζωή Żółć 茶壺\u0001 Ltd", VatReturn.Status.DRAFT));

        assertThat(text).contains("Business Ζωή Żółć ???");
    }

    private File written(ListPack pack) throws IOException {
        Path papers = folder.resolve("papers");
        WorkingPapers.write(pack, papers);
        return papers.resolve("summary.pdf").toFile();
    }

    private String text(ListPack pack) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(written(pack))) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            stripper.setLineSeparator("\n");
            stripper.setPageEnd("\n");
            return stripper.getText(pdf);
        }
    }
}

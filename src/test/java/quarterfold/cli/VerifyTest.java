package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is changed behind the program's back is found, and told in full. */
class VerifyTest {

    private static final String WELL =
            """
            sources   1 file kept is the one that was imported, byte for byte
            entries   6 entries are what their files say
            returns   2026-09: worked out again from 6 entries, the same to the penny
            numbers   entries 1 to 6, without a gap
            All is as it must be.
            """;

    @TempDir private Path folder;
    private Path book = Path.of("");

    @BeforeEach
    void aClosedQuarter() throws IOException {
        book = SmallBook.quarter(folder);
        SmallBook.setAside(book, "E4/evidence-missing");
        assertThat(run("close", "2026-09").code()).isZero();
    }

    @Test
    void bookAsItMustBe() {
        assertThat(run("verify")).isEqualTo(new Run(0, WELL, ""));
        assertThat(run("verify", "2026-09")).isEqualTo(new Run(0, WELL, ""));
        assertThat(run("verify", "--json"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                {"well":true,"sources":1,"entries":6,"returns":["2026-09"],"differences":[]}
                                """,
                                ""));
    }

    @Test
    void bookOfNothingAndPeriodOfNothing(@TempDir Path other) {
        Path empty = SmallBook.empty(other);
        assertThat(Run.of("--book", empty, "verify"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                sources   0 files kept are those that were imported, byte for byte
                                entries   0 entries are what their files say
                                returns   no closed return to work out again
                                numbers   no entry yet
                                All is as it must be.
                                """,
                                ""));
        assertThat(run("verify", "2026-12").out()).startsWith("sources   0 files kept");
    }

    /**
     * What came, was decided or was changed after the close is not what it was closed with: the
     * closed return still comes out.
     */
    @Test
    void laterEntriesDecisionsSettingsAndProductsDoNotMatter() throws IOException {
        SmallBook.enter(
                book,
                SmallBook.file(
                        folder,
                        "late.csv",
                        "date,kind,document,gross,rate,product\n2026-09-29,sale,L-1,600.00,20,BOWL\n"));
        decide("--entry", "4", "--evidence-seen", "invoice");
        decide("--party", "Fernmoor Pottery Ltd", "--disallow");
        Files.writeString(
                book.resolve("products.csv"), "product,liability,from,to\nBOWL,zero,2024-01-01,\n");
        Path yaml = book.resolve("book.yaml");
        Files.writeString(
                yaml,
                Files.readString(yaml)
                        .replaceFirst("(?m)^rounding: .*$", "rounding: per-line")
                        .replaceFirst("(?m)^name: .*$", "name: Another Name Ltd"));

        assertThat(run("verify"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                sources   2 files kept are those that were imported, byte for byte
                                entries   7 entries are what their files say
                                returns   2026-09: worked out again from 6 entries, the same to the penny
                                numbers   entries 1 to 7, without a gap
                                All is as it must be.
                                """,
                                ""));
    }

    @Test
    void anEntryChangedInTheLedger() throws SQLException {
        tamper("update entry set vat = 80000, gross = 580000 where number = 3");
        assertThat(run("verify"))
                .isEqualTo(
                        new Run(
                                1,
                                """
                                sources   1 file kept is the one that was imported, byte for byte
                                entries   2 differences:
                                  entry 3 [vat]: found '8.00'; expected '10.00', as row 4 of quarter.csv has it
                                  entry 3 [gross]: found '58.00'; expected '60.00', as row 4 of quarter.csv has it
                                returns   7 differences:
                                  2026-09 entry 3 [vat]: found '10.00' frozen; worked out again it is '8.00'
                                  2026-09 entry 3 [claim]: found '10.00' frozen; worked out again it is '8.00'
                                  2026-09 entry 3 [box 4]: found '10.00' frozen; worked out again it is '8.00'
                                  2026-09 box 4: found '16.00' frozen; worked out again it is '14.00'
                                  2026-09 box 4 before rounding: found '16.00' frozen; worked out again it is '14.00'
                                  2026-09 box 5: found '8.00' frozen; worked out again it is '10.00'
                                  2026-09 box 5 before rounding: found '8.00' frozen; worked out again it is '10.00'
                                numbers   entries 1 to 6, without a gap
                                9 differences.
                                """,
                                ""));
    }

    @Test
    void whatACloseFrozeChanged() throws SQLException {
        tamper(
                "update closed_entry set vat = 70000, boxes = '4:7.0000 7:50.0000' where number = 3",
                "update close_box set figure = 190000 where box = '1'");
        assertThat(run("verify"))
                .isEqualTo(
                        new Run(
                                1,
                                """
                                sources   1 file kept is the one that was imported, byte for byte
                                entries   6 entries are what their files say
                                returns   5 differences:
                                  2026-09 entry 3 [vat]: found '7.00' frozen; worked out again it is '10.00'
                                  2026-09 entry 3 [box 4]: found '7.00' frozen; worked out again it is '10.00'
                                  2026-09 box 1: found '19.00' frozen; worked out again it is '24.00'
                                  2026-09 box 4: found 16.00 frozen before rounding; its frozen entries and adjustments add up to 13.00
                                  2026-09 VAT account, allowable portion: found 13.00; expected the 16.00 of the boxes it feeds, 4
                                numbers   entries 1 to 6, without a gap
                                5 differences.
                                """,
                                ""));
    }

    @Test
    void aFrozenEntryRemovedAndAnotherMoved() throws SQLException {
        tamper(
                "delete from closed_entry where number = 6",
                "update closed_entry set day = day + 1 where number = 3");
        assertThat(run("verify").out())
                .contains(
                        """
                        returns   3 differences:
                          2026-09 entry 3: found nothing frozen; worked out again it is uk-purchase on 2026-08-01
                          2026-09 entry 6: found nothing frozen; worked out again it is money-only on 2026-09-30
                          2026-09 entry 3: found uk-purchase on 2026-08-02 frozen; worked out again it is not in the period
                        """);
    }

    @Test
    void anEntryRemoved() throws SQLException {
        tamper("delete from entry where number = 2", "delete from closed_entry where number = 2");
        Run run = run("verify");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out())
                .contains(
                        """
                        entries   1 difference:
                          quarter.csv: row 3 makes an entry; expected entry 2 of it in the ledger, where there is none
                        """)
                .contains(
                        """
                        numbers   1 difference:
                          quarter.csv: 5 of its entries are there; expected the 6 from 1 to 6
                        """)
                .contains(
                        "  2026-09 box 1: found '24.00' frozen; worked out again it is '26.00'\n");
    }

    /** Nothing can be read of a ledger that names what is not there. */
    @Test
    void aRowThatOthersNameRemoved() throws SQLException {
        tamper("delete from profile where kind = 'payout'");
        assertThat(run("verify"))
                .isEqualTo(
                        new Run(
                                1,
                                """
                                sources   0 files kept are those that were imported, byte for byte
                                entries   0 entries are what their files say
                                returns   no closed return to work out again
                                numbers   1 difference:
                                  ledger: row 6 of entry names a row of profile that is not there
                                1 difference; the ledger is broken, so files and returns were not looked at.
                                """,
                                ""));
    }

    @Test
    void anEntryOfNoFile() throws SQLException {
        tamper(
                "insert into entry (number, row, tax_point, profile, item, gross)"
                        + " select 7, row, tax_point, profile, item, gross from entry where number = 1");
        assertThat(run("verify").out())
                .contains(
                        """
                        numbers   1 difference:
                          ledger: 1 entries belong to no file; expected none above 6
                        """);
    }

    @Test
    void aDecisionRemovedOrATableChanged() throws SQLException {
        decide("--entry", "3", "--set-aside");
        tamper("delete from decision where id = 1");
        assertThat(run("verify").out())
                .contains(
                        """
                        numbers   1 difference:
                          decisions: 1 are there; expected every number from 1 to 2
                        """);
        tamper(
                "update law_text set text = replace(text, 'standard,20', 'standard,25') where text like '%standard,20%'");
        Run run = run("verify");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out())
                .containsPattern(
                        "  2026-09 rates\\.csv: its text is not that of its SHA-256, [0-9a-f]{64}; the return cannot be worked out again\n");
    }

    /** A closed return is worked out with the decisions it knew: one slipped in later shows. */
    @Test
    void aDecisionSlippedUnderTheClose() throws SQLException {
        tamper(
                "update decision set target = 'entry', about = '3', action = 'disallow' where id = 1");
        assertThat(run("verify").out())
                .contains(
                        "  2026-09 entry 3 [treatment]: found 'uk-purchase' frozen; worked out again it is 'disallowed'\n")
                .contains("  2026-09 box 4: found '16.00' frozen; worked out again it is '6.00'\n");
    }

    @Test
    void aSourceFileChanged() throws IOException {
        Path copy = copy();
        assertThat(copy.toFile().setWritable(true)).isTrue();
        Files.writeString(copy, Files.readString(copy).replace("60.00", "61.00"));
        assertThat(run("verify"))
                .isEqualTo(
                        new Run(
                                1,
                                """
                                sources   1 difference:
                                  quarter.csv: the copy sources/d35fdbb4f181-quarter.csv is not the file that was imported; expected the SHA-256 %s; put the file back from another copy
                                entries   0 entries are what their files say
                                returns   2026-09: worked out again from 6 entries, the same to the penny
                                numbers   entries 1 to 6, without a gap
                                1 difference.
                                """
                                        .formatted(SmallBook.QUARTER_SHA256),
                                ""));
    }

    @Test
    void aSourceFileGone() throws IOException {
        Files.delete(copy());
        Run run = run("verify", "--json");
        assertThat(run)
                .isEqualTo(
                        new Run(
                                1,
                                """
                                {"well":false,"sources":1,"entries":0,"returns":["2026-09"],"differences":[{"check":"sources","place":"quarter.csv","text":"found no copy in sources; expected a file with the SHA-256 %s; put the file back from another copy"}]}
                                """
                                        .formatted(SmallBook.QUARTER_SHA256),
                                ""));
    }

    /** A file is read again with the layout as it was when it came, whatever became of it. */
    @Test
    void anOwnLayoutChangedOrGoneSince() throws IOException {
        Path layout = book.resolve("layouts/stall.yaml");
        Files.writeString(layout, stall("sale"));
        SmallBook.enter(
                book,
                SmallBook.file(folder, "stall.csv", "When,What,Takings\n2026-10-02,Day,12.00\n"));
        Run well = run("verify");
        assertThat(well.out())
                .contains("entries   7 entries are what their files say\n")
                .endsWith("All is as it must be.\n");
        Files.writeString(layout, stall("compensation"));
        assertThat(run("verify")).isEqualTo(well);
        Files.writeString(layout, "nothing: sound\n");
        assertThat(run("verify")).isEqualTo(well);
        Files.delete(layout);
        assertThat(run("verify")).isEqualTo(well);
    }

    /** A book of before layouts were kept with their files: they may have changed since. */
    @Test
    void anOwnLayoutChangedOrGone() throws IOException, SQLException {
        Path layout = book.resolve("layouts/stall.yaml");
        Files.writeString(layout, stall("sale"));
        SmallBook.enter(
                book,
                SmallBook.file(folder, "stall.csv", "When,What,Takings\n2026-10-02,Day,12.00\n"));
        Files.writeString(layout, stall("compensation"));
        tamper("delete from source_layout");
        assertThat(run("verify").out())
                .contains(
                        """
                        entries   2 differences:
                          entry 7 [kind]: found 'sale'; expected 'compensation', as row 2 of stall.csv has it
                          stall.csv: the layout stall is the book's own, and may have changed since the file came
                        """);
        Files.delete(layout);
        assertThat(run("verify").out())
                .contains(
                        """
                        entries   1 difference:
                          stall.csv: it was read with the layout stall, which is not there now; expected it in the book's folder layouts
                        """);
    }

    /** Such a book has no note of what was asked of rows, and asked it in other words. */
    @Test
    void rowsAskedAboutBeforeThatWasNoted() throws IOException, SQLException {
        Files.writeString(
                book.resolve("layouts/stall.yaml"),
                stall("other-money").replace("enter:", "ask: \"what?\"\n    enter:"));
        SmallBook.enter(
                book,
                SmallBook.file(folder, "stall.csv", "When,What,Takings\n2026-10-02,Day,12.00\n"));
        tamper("delete from asked_entry");
        assertThat(run("verify").out())
                .contains(
                        """
                        entries   1 difference:
                          stall.csv: found otherwise in the ledger whether a question is about entry 7
                        """);
        tamper("delete from source_layout");
        tamper("update raised_query set question = 'what, if not that?'");
        assertThat(run("verify").out())
                .contains("entries   7 entries are what their files say\n")
                .endsWith("All is as it must be.\n");
    }

    private static String stall(String kind) {
        return """
                layout: stall
                title: A market stall
                file: {delimiter: ",", encoding: UTF-8, header_row: 1}
                dates: {pattern: "yyyy-MM-dd"}
                numbers: {decimal: "."}
                signs: document
                currency: GBP
                fields: {date: When}
                rows:
                  - when: {What: [Day]}
                    enter:
                      - {kind: %s, gross: Takings}
                amounts: [Takings]
                """
                .formatted(kind);
    }

    private Path copy() throws IOException {
        try (Stream<Path> files = Files.list(book.resolve("sources"))) {
            return files.findFirst().orElseThrow();
        }
    }

    /** What no command does: changes to the ledger's file, its guards taken away first. */
    private void tamper(String... changes) throws SQLException {
        try (Connection raw =
                        DriverManager.getConnection(
                                "jdbc:sqlite:" + book.resolve("ledger.sqlite"));
                Statement statement = raw.createStatement()) {
            List<String> triggers = new ArrayList<>();
            try (ResultSet rows =
                    statement.executeQuery(
                            "select name from sqlite_master where type = 'trigger'")) {
                while (rows.next()) {
                    triggers.add(rows.getString(1));
                }
            }
            for (String trigger : triggers) {
                statement.execute("drop trigger " + trigger);
            }
            for (String change : changes) {
                assertThat(statement.executeUpdate(change)).as(change).isPositive();
            }
        }
    }

    private void decide(String... what) {
        List<String> all = new ArrayList<>(List.of("decide"));
        all.addAll(List.of(what));
        all.addAll(List.of("--why", "Known", "--who", "Anne", "--on", "2026-11-01"));
        Run run = run(all.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
    }

    private Run run(String... args) {
        List<Object> all = new ArrayList<>(List.of("--book", book));
        all.addAll(List.of(args));
        return Run.of(all.toArray());
    }
}

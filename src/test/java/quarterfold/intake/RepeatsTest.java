package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.intake.ImportResult.Entered;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.SetAside;
import quarterfold.money.Amount;

/** Files of one layout meet as multisets; a real book in a folder, and real files. */
class RepeatsTest {

    /** A report with a note in columns of its own. */
    private static final String REPORT =
            """
            layout: report
            dates: {pattern: "yyyy-MM-dd HH:mm"}
            signs: owner
            currency: GBP
            fields: {date: When, order: Order, settlement: Statement}
            rows:
              - when: {Type: Sale}
                enter:
                  - {kind: sale, gross: Price}
                  - {kind: fee, gross: Charge}
              - when: {Type: [Rent, Advert]}
                enter: [{kind: fee, gross: Charge}]
              - when: {Type: Payout}
                enter: [{kind: payout, gross: Price}]
              - when: {Type: Note}
                set_aside: "information only, no money"
            amounts: [Price, Charge]
            """;

    private static final String HEADER = "Line,When,Statement,Order,Type,Price,Charge,Remark\n";
    private static final String SALE = "7,2026-08-03 10:00,S-1,A-1,Sale,12.00,-1.50,\n";
    private static final String OTHER = "8,2026-08-04 10:00,S-1,A-2,Sale,24.00,-3.00,gift\n";

    @TempDir private Path folder;
    private Desk desk;

    @BeforeEach
    void open() throws IOException {
        desk = new Desk(folder).layout("report", REPORT);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private Entered enter(String name, String rows) throws IOException {
        ImportResult result = desk.enter(name, HEADER + rows);
        assertThat(result.problems()).isEmpty();
        return (Entered) result;
    }

    private List<String> refused(String name, String rows) throws IOException {
        return desk.enter(name, HEADER + rows).problems().stream().map(Problem::toString).toList();
    }

    /** What reading every file again finds: nothing, ever. */
    private void verify() {
        assertThat(desk.findings()).isEmpty();
    }

    /** In A so often and in B so often: as often as in the one that has it most. */
    @ParameterizedTest(name = "{0} and {1}: {2}, of the second {3} set aside")
    @CsvSource({
        "0, 0, 0, 0", "0, 1, 1, 0", "0, 2, 2, 0", "0, 3, 3, 0",
        "1, 0, 1, 0", "1, 1, 1, 1", "1, 2, 2, 1", "1, 3, 3, 1",
        "2, 0, 2, 0", "2, 1, 2, 1", "2, 2, 2, 2", "2, 3, 3, 2",
        "3, 0, 3, 0", "3, 1, 3, 1", "3, 2, 3, 2"
    })
    void asOftenAsTheFileThatHasItMost(int inA, int inB, int entered, int repeated)
            throws IOException {
        enter("a.csv", OTHER + SALE.repeat(inA));
        Entered b = enter("b.csv", SALE.repeat(inB) + "\n" + OTHER);
        assertThat(desk.lines().stream().filter(l -> l.order().equals("A-1")))
                .hasSize(2 * entered); // a sale and its charge each
        assertThat(desk.lines().stream().filter(l -> l.order().equals("A-2"))).hasSize(2);
        assertThat(b.repeated().rows()).isEqualTo(repeated + 1);
        assertThat(b.rowsRead()).isEqualTo(inB + 1);
        assertThat(b.source().rowsEntered() + b.setAside()).isEqualTo(b.rowsRead());
        assertThat(b.source().moneyEntered().plus(b.repeated().money()))
                .isEqualTo(new Amount(inB * 105_000L + 210_000L));
        verify();
    }

    @Test
    void saysWhatIsRepeated() throws IOException {
        enter("a.csv", "1,2026-08-02 09:00,S-1,,Note,,,hello\n" + SALE);
        Entered b = enter("b.csv", OTHER + SALE);
        assertThat(desk.setAside(2))
                .containsExactly(
                        new SetAside(2, 3, "repeats row 3 of a.csv, source 1: it is entry 1"));
        assertThat(b.repeated()).isEqualTo(new Repeated(1, Amount.of("10.50")));
        assertThat(b.source().moneyIn()).hasToString("21.00");
        assertThat(b.source().moneyEntered()).hasToString("21.00");
        assertThat(b.queries()).isEmpty();
        assertThat(desk.lines()).hasSize(4);
        verify();
    }

    /**
     * Entries stay one unbroken run; a file of which nothing is new is a source without entries.
     */
    @Test
    void aFileOfWhichNothingIsNew() throws IOException {
        enter("a.csv", SALE + OTHER);
        Entered b = enter("b.csv", OTHER + SALE);
        assertThat(b.entries()).isZero();
        assertThat(b.setAside()).isEqualTo(2);
        assertThat(b.source().dates()).isEmpty();
        Entered c = enter("c.csv", OTHER + SALE + "9,2026-08-05 10:00,S-1,A-3,Sale,6.00,-1.00,\n");
        assertThat(c.source().firstEntry()).isEqualTo(5);
        assertThat(desk.setAside(3))
                .extracting(SetAside::reason)
                .containsExactly(
                        "repeats row 3 of a.csv, source 1: it is entry 3",
                        "repeats row 2 of a.csv, source 1: it is entry 1");
        verify();
    }

    /** Three files, in each order: once, twice, and twice with another. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"012", "021", "102", "120", "201", "210"})
    void threeFilesInEachOrder(String order) throws IOException {
        List<String> files = List.of(SALE + OTHER, SALE + SALE, OTHER + SALE + SALE + OTHER);
        for (int i = 0; i < order.length(); i++) {
            int file = order.charAt(i) - '0';
            enter(file + ".csv", files.get(file));
        }
        assertThat(desk.lines().stream().filter(l -> l.order().equals("A-1"))).hasSize(4);
        assertThat(desk.lines().stream().filter(l -> l.order().equals("A-2"))).hasSize(4);
        verify();
    }

    /** Every cell counts, whether the layout reads it or not; how the columns stand does not. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "'7,2026-08-03 10:01,S-1,A-1,Sale,12.00,-1.50,', 0",
        "'7,2026-08-03 10:00,S-2,A-1,Sale,12.00,-1.50,', 0",
        "'7,2026-08-03 10:00,S-1,A-1,Sale,12.00,-1.50,late', 0",
        "'7,2026-08-03 10:00,S-1,A-1,Sale,12.00,-1.51,', 0",
        "'7, 2026-08-03 10:00 ,S-1,A-1,Sale,12.00,-1.50,', 1"
    })
    void everyCellCounts(String row, int repeated) throws IOException {
        enter("a.csv", SALE + OTHER);
        assertThat(enter("b.csv", OTHER + row + '\n').repeated().rows()).isEqualTo(repeated + 1);
        verify();
    }

    @Test
    void columnsInAnotherOrderAndOneMore() throws IOException {
        enter("a.csv", SALE);
        Entered b =
                (Entered)
                        desk.enter(
                                "b.csv",
                                """
                                Remark,Type,Order,Line,Shop,When,Statement,Charge,Price
                                ,Sale,A-1,7,,2026-08-03 10:00,S-1,-1.50,12.00
                                ,Sale,A-1,7,North,2026-08-03 10:00,S-1,-1.50,12.00
                                """);
        assertThat(b.repeated().rows()).isEqualTo(1);
        assertThat(desk.setAside(2)).extracting(SetAside::row).containsExactly(2L);
        verify();
    }

    /** Kinds that the ledger has as one, such as rent and an advert, are two to the file. */
    @Test
    void whatTheLedgerDoesNotKeepCountsToo() throws IOException {
        enter("a.csv", SALE + OTHER + "9,2026-08-04 12:00,S-1,,Rent,,-5.00,\n");
        Entered b = enter("b.csv", SALE + OTHER + "9,2026-08-04 12:00,S-1,,Advert,,-5.00,\n");
        assertThat(b.entries()).isEqualTo(1);
        verify();
    }

    /** By the rows of the whole file, though most of them came before. */
    @Test
    void payoutsTieByAllRows() throws IOException {
        String payout = "9,2026-08-09 10:00,S-1,,Payout,-31.50,,\n";
        enter("a.csv", SALE);
        assertThat(enter("b.csv", SALE + OTHER + payout).queries()).isEmpty();
        Entered wrong = enter("c.csv", SALE + OTHER + payout.replace("31.50", "30.00"));
        assertThat(wrong.repeated().rows()).isEqualTo(2);
        assertThat(wrong.queries())
                .containsExactly(
                        new RaisedQuery(
                                3,
                                "payout-does-not-tie",
                                "S-1",
                                "settlement S-1 states a payout of GBP 30.00; its other rows, 4 of them,"
                                        + " sum to 31.50; the difference is -1.50: which rows are missing,"
                                        + " or which are not of this settlement?"));
        verify();
    }

    /** Rows that are set aside do not make up for those that are entered, and nothing breaks. */
    @Test
    void entriesThatAddUpToTooMuch() throws IOException {
        String in = "7,2026-08-03 10:00,S-1,A-1,Payout,9999999999999.99,,\n".repeat(60);
        String out = "7,2026-08-03 10:00,S-1,A-1,Payout,-9999999999999.99,,\n".repeat(60);
        enter("a.csv", in);
        assertThat(refused("b.csv", out + in + out))
                .containsExactly(
                        "b.csv: found entries up to row 154 that add up to more than 922 million million; expected less, such as the file in parts");
        assertThat(desk.lines()).hasSize(60);
        verify();
    }

    /** A payout and rows that are further apart than an amount can say. */
    @Test
    void aDifferenceBeyondAmounts() throws IOException {
        String payout = "7,2026-08-03 10:00,S-1,,Payout,-9999999999999.99,,\n";
        String fee = "7,2026-08-03 10:00,S-1,,Rent,,-9999999999999.99,\n";
        assertThat(enter("a.csv", (payout + fee).repeat(46)).queries())
                .extracting(RaisedQuery::question)
                .containsExactly(
                        "settlement S-1 states a payout of GBP 459999999999999.54; its other rows, 46 of them, sum to -459999999999999.54; the difference is 919999999999999.08: which rows are missing, or which are not of this settlement?");
    }

    /** A report that numbers its rows anew is refused: nothing is entered twice in silence. */
    @Test
    void rowsNumberedAnew() throws IOException {
        enter("a.csv", SALE + OTHER);
        String anew = SALE.replace("7,", "1,") + OTHER.replace("8,", "2,");
        assertThat(refused("b.csv", anew))
                .containsExactly(
                        "b.csv: found 2 of 2 rows of the same days that make the entries of an earlier"
                                + " export in other words, such as row 2 and row 2 of a.csv, source 1;"
                                + " expected the rows as that export has them; where a column numbers"
                                + " the rows of each export anew, name it in the layout, such as"
                                + " repeats: {ignore: [Line]}; where they are other rows, say"
                                + " repeats: {rows: each}");
        assertThat(desk.lines()).hasSize(4);

        desk.layout("report", REPORT + "repeats: {ignore: [Line]}\n");
        assertThat(enter("b.csv", anew).repeated().rows()).isEqualTo(2);
        verify();
        desk.layout("report", REPORT + "repeats: {rows: each}\n");
        assertThat(enter("c.csv", anew + "\n").entries()).isEqualTo(4);
    }

    /** Half of the rows may be alike by chance, and are asked about; more may not. */
    @Test
    void aFewRowsAlikeAreAskedAbout() throws IOException {
        enter("a.csv", SALE + OTHER);
        Entered b = enter("b.csv", SALE.replace("10:00", "11:00") + OTHER);
        assertThat(b.entries()).isEqualTo(2);
        assertThat(b.queries())
                .containsExactly(
                        new RaisedQuery(
                                2,
                                "rows-alike",
                                "rows",
                                "1 row makes the entries of an earlier export in other words, such as row 2"
                                        + " and row 2 of a.csv, source 1, entry 1; they are entered: has a"
                                        + " column come or gone between the two? If they are the same,"
                                        + " decide duplicate-of for each of their entries. Set this query"
                                        + " aside once that is done, or if they are not"));
        assertThat(refused("c.csv", SALE.replace("10:00", "12:00"))).hasSize(1);
        verify();
    }

    /** What names no order and no document may be another sale, where most rows differ. */
    @Test
    void rowsThatNameNothing() throws IOException {
        String rent = "5,2026-08-03 12:00,,,Rent,,-5.00,\n";
        enter("a.csv", SALE + rent + OTHER);
        assertThat(enter("b.csv", SALE + rent + OTHER + "\n").queries()).isEmpty();
        String others =
                Stream.of("A-7", "A-8", "A-9")
                        .map(order -> SALE.replace("A-1", order))
                        .collect(Collectors.joining());
        assertThat(enter("c.csv", rent + others).queries())
                .containsExactly(
                        new RaisedQuery(
                                3,
                                "rows-repeated",
                                "rows",
                                "1 row says the same as one of an earlier file, such as row 2 and row 3 of"
                                        + " a.csv, source 1, entry 3; they are set aside as the same, but"
                                        + " most rows of those days differ, and these name no order and no"
                                        + " document: are they the same? If not, enter them on a plain"
                                        + " sheet"));
        verify();
    }

    /** Rows of a plain sheet are entered again, and asked about. */
    @Test
    void plainSheetsAreAsked() throws IOException {
        String sheet = "date,kind,gross,rate\n2026-08-03,sale,12.00,20\n";
        desk.enter("a.csv", sheet);
        Entered b =
                (Entered)
                        desk.enter(
                                "b.csv",
                                sheet + "2026-08-03,sale,12.00,20\n2026-08-05,sale,6.00,20\n");
        assertThat(desk.lines()).hasSize(4);
        assertThat(b.repeated()).isEqualTo(new Repeated(0, Amount.ZERO));
        assertThat(b.queries())
                .containsExactly(
                        new RaisedQuery(
                                2,
                                "rows-repeated",
                                "rows",
                                "1 row says the same as one of an earlier file, such as row 2 and row 2 of"
                                        + " a.csv, source 1, entry 1; they are entered again, 12.00"
                                        + " together, since two rows of a plain sheet may be for two"
                                        + " events: are they the same? If so, decide duplicate-of for each"
                                        + " of their entries. Set this query aside once that is done, or if"
                                        + " they are not"));
        verify();
    }

    /** A list of documents that has grown: what it had is entered once. */
    @Test
    void aListThatHasGrown() throws IOException {
        String list =
                """
                Date,Receipt no,Shop or supplier,Country,VAT no,Category,What was bought,Total paid,VAT,VAT rate,Receipt,Business use %,Paid on,Remark
                2026-08-05,,Inkwell Nook Ltd,GB,GB000480437,stationery,Paper,27.89,-,20,simplified,,2026-08-05,
                """;
        desk.enter("august.csv", list);
        Entered grown =
                (Entered)
                        desk.enter(
                                "september.csv",
                                list
                                        + "2026-09-02,R13,Inkwell Nook Ltd,GB,GB000480437,stationery,Ink,12.00,-,20,simplified,,2026-09-02,\n");
        assertThat(grown.entries()).isEqualTo(1);
        assertThat(grown.repeated()).isEqualTo(new Repeated(1, Amount.of("-27.89")));
        verify();
    }

    /** Other layouts and other days are never compared, nor their files opened. */
    @Test
    void onlyFilesOfTheSameLayoutAndDaysAreOpened() throws IOException {
        enter("july.csv", SALE.replace("2026-08", "2026-07"));
        desk.layout("other", REPORT.replace("layout: report", "layout: other"));
        desk.enter(desk.file("other.csv", HEADER + SALE), "other");
        desk.lose("july.csv");
        desk.lose("other.csv");
        ImportResult b = desk.enter(desk.file("b.csv", HEADER + SALE + "\n"), "report");
        assertThat(b.problems()).isEmpty();
        assertThat(b.entries()).isEqualTo(2);
    }

    /** Without the earlier file's bytes nobody can say what repeats it. */
    @Test
    void theEarlierFileIsGone() throws IOException {
        enter("a.csv", SALE);
        desk.lose("a.csv");
        assertThat(refused("b.csv", SALE + OTHER))
                .containsExactly(
                        "a.csv: found no whole copy of this file in the book's folder sources, where it is"
                                + " source 1 and its rows are needed to compare; put it back from another"
                                + " copy");
        assertThat(desk.lines()).hasSize(2);
        assertThat(desk.archive()).isEmpty();
    }

    /** The earlier file is then read as it was, and rows that make the same are asked about. */
    @Test
    void theLayoutDoesNotReadTheEarlierFileAnyMore() throws IOException {
        String nameless = SALE.replace("A-1", "");
        enter("a.csv", nameless);
        desk.layout("report", REPORT.replace("date: When", "date: Day"));
        Entered b =
                (Entered)
                        desk.enter(
                                "b.csv",
                                HEADER.replace("When", "Day")
                                        + nameless.replace("12.00", "13.00")
                                        + nameless.replace("12.00", "14.00")
                                        + nameless);
        assertThat(b.queries())
                .extracting(RaisedQuery::question)
                .containsExactly(
                        "1 row makes the entries of an earlier export in other words, such as row 4 and row 2 of a.csv, source 1, entry 1; they are entered: has a column come or gone between the two? If they are the same, decide duplicate-of for each of their entries. Set this query aside once that is done, or if they are not");
    }

    @Test
    void theLayoutReadsTheEarlierFileOtherwise() throws IOException {
        enter("a.csv", SALE);
        desk.layout("report", REPORT + "repeats: {ignore: [Line, Type]}\n");
        assertThat(desk.enter("c.csv", HEADER + OTHER).problems().stream().map(Problem::toString))
                .containsExactly(
                        "report.yaml:18 [repeats.ignore]: found 'Type'; expected a column that the layout reads"
                                + " nothing from, such as one that numbers the rows of an export");
    }

    @Test
    void aRuleThatIsNone() throws IOException {
        desk.layout("report", REPORT + "repeats: {rows: never}\n");
        assertThat(desk.enter("c.csv", HEADER + OTHER).problems().stream().map(Problem::toString))
                .containsExactly(
                        "report.yaml:18 [repeats.rows]: found 'never'; expected once or each, such as once");
    }

    /** Files are compared again as they were when they came, whatever the layout says by now. */
    @Test
    void verifyReadsWithTheLayoutAsItWas() throws IOException {
        enter("a.csv", SALE + OTHER);
        enter("b.csv", SALE + OTHER + "\n");
        desk.layout("report", REPORT + "repeats: {rows: each}\n");
        assertThat(desk.findings()).isEmpty();
    }

    /** The same bytes twice are one source, as ever. */
    @Test
    void theSameFile() throws IOException {
        enter("a.csv", SALE);
        assertThat(desk.enter(desk.file("copy.csv", HEADER + SALE)))
                .isInstanceOf(ImportResult.AlreadyThere.class);
        assertThat(desk.sources()).hasSize(1);
    }

    /** Texts that only differ where one ends are other texts; so are letters beyond ASCII. */
    @Test
    void marksTellTextsApart() {
        List<List<String>> texts =
                List.of(
                        List.of("a", "b"),
                        List.of("ab", ""),
                        List.of("", "ab"),
                        List.of("a\0b", ""),
                        List.of("\u0001", "\u0101"),
                        List.of("\u0100", "\u0001"),
                        List.of("ü", "€"),
                        List.of("€", "ü"));
        TextDigest digest = new TextDigest();
        List<Long> digests = new ArrayList<>();
        for (List<String> each : texts) {
            each.forEach(digest::add);
            digests.add(digest.take().getLong());
        }
        assertThat(digests).doesNotHaveDuplicates();
        digest.add("a").add("b");
        assertThat(digest.take().getLong()).isEqualTo(digests.get(0));
        digest.add("x".repeat(10_000));
        assertThat(digest.take().remaining()).isEqualTo(32);
    }

    @Test
    void aTableOfMarks() {
        MarkTable table = new MarkTable(3);
        RowMark mark = new RowMark(2, -1, 7);
        table.add(mark, 0);
        table.add(new RowMark(5, -1, 8), 4);
        table.add(new RowMark(9, -1, 7), 6);
        int first = table.meet(mark);
        assertThat(table.row(first)).isEqualTo(2);
        assertThat(table.entry(first)).isZero();
        assertThat(table.row(table.meet(mark))).isEqualTo(9);
        assertThat(table.meet(mark)).isEqualTo(-1);
        assertThat(table.meet(new RowMark(1, -2, 8))).isEqualTo(-1);
    }

    /** The bytes of an earlier file in another encoding of the same texts are the same rows. */
    @Test
    void savedAgainInAnotherEncoding() throws IOException {
        String rows = HEADER + OTHER.replace("gift", "fürs Büro");
        enter("a.csv", OTHER.replace("gift", "fürs Büro"));
        Path marked = desk.path("b.csv");
        Files.write(marked, ("\uFEFF" + rows).getBytes(StandardCharsets.UTF_8));
        assertThat(((Entered) desk.enter(marked)).repeated().rows()).isEqualTo(1);
        verify();
    }
}

package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.SetAside;

/** A layout learned from one month's report, and reports of later months that say other things. */
class LaterMonthsTest {
    private static final String NAMES = "Date,Order,Type,Amount\n";
    private static final String JULY =
            """
            2026-07-03,N-1,Sale,10.00
            2026-07-05,N-2,Sale,20.00
            2026-07-09,N-2,Fee,-3.00
            """;

    @TempDir private Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private String learn(String text) throws IOException {
        return learn(text, StandardCharsets.UTF_8);
    }

    private String learn(String text, Charset charset) throws IOException {
        Path july = desk.file("july.csv", text, charset);
        Learned learned = new Learner(Desk.settings()).learn(july, "report", Map.of());
        assertThat(learned.isProved()).as(learned.toString()).isTrue();
        desk.layout("report", learned.yaml().orElseThrow());
        return learned.yaml().orElseThrow();
    }

    private List<String> problems(String text) throws IOException {
        return desk.problems("august.csv", text);
    }

    private List<String> money(String text) throws IOException {
        return money(text, StandardCharsets.UTF_8);
    }

    private List<String> money(String text, Charset charset) throws IOException {
        Path august = desk.file("august.csv", text, charset);
        assertThat(desk.enter(august).problems()).isEmpty();
        return desk.lines().stream()
                .map(l -> l.profile().kind().code() + " " + l.signedMoney())
                .toList();
    }

    @Test
    void aNewColumnOfMoneyIsRefused() throws IOException {
        assertThat(learn(NAMES + JULY))
                .contains(
                        """
                        # Amounts in a column that is not named, here or above, are refused.
                        unread: []
                        """);

        String august =
                """
                Date,Order,Type,Amount,Delivery,Parcels,Fee
                2026-08-03,N-3,Sale,10.00,0.00,2,
                2026-08-04,N-4,Sale,11.00,2.50,1,-4
                2026-08-05,N-5,Sale,12.00,2.50,1,-4
                """;
        assertThat(problems(august))
                .containsExactly(
                        "august.csv:3 [Delivery]: found '2.50'; expected no amount, for layout report reads nothing from that column; if it is money, learn the report again with --name report --accept; if it is of no account, make the layout's line: unread: [Delivery]",
                        "august.csv:3 [Fee]: found '-4'; expected no amount, for layout report reads nothing from that column; if it is money, learn the report again with --name report --accept; if it is of no account, make the layout's line: unread: [Fee]");
    }

    /** In a dress that the layout does not know, money is money. */
    @Test
    void aNewColumnOfMoneyDressedOtherwise() throws IOException {
        learn(NAMES + JULY);

        assertThat(
                        problems(
                                "Date,Order,Type,Amount,Commission\n2026-08-03,N-3,Sale,10.00,2.50 CR\n"))
                .containsExactly(
                        "august.csv:2 [Commission]: found '2.50 CR'; expected no amount, for layout report reads nothing from that column; if it is money, learn the report again with --name report --accept; if it is of no account, make the layout's line: unread: [Commission]");
    }

    @ParameterizedTest
    @CsvSource({"Currency, EUR", "Status, Cancelled", "VAT rate, 0%", "Ship country, DE"})
    void aNewColumnThatRowsAreTaxedBy(String name, String text) throws IOException {
        learn(NAMES + JULY);

        assertThat(
                        problems(
                                "Date,Order,Type,Amount,%s\n2026-08-03,N-3,Sale,10.00,\n2026-08-04,N-4,Sale,9.00,%s\n"
                                        .formatted(name, text)))
                .containsExactly(
                        "august.csv:3 [%1$s]: found '%2$s'; expected nothing, for layout report reads nothing from that column; if rows count or are taxed by it, learn the report again with --name report --accept; if it is of no account, make the layout's line: unread: [%1$s]"
                                .formatted(name, text));
    }

    @Test
    void thousandsMarksThatNoEarlierAmountHad() throws IOException {
        learn("Date;Order;Type;Amount\n2026-07-03;N-1;Sale;10,00\n2026-07-04;N-2;Sale;9,50\n");

        assertThat(
                        money(
                                "Date;Order;Type;Amount\n2026-08-03;N-3;Sale;1 010,00\n2026-08-04;N-4;Sale;2.020,50\n2026-08-05;N-5;Sale;3\u202f030,00\n"))
                .containsExactly("sale 1010.00", "sale 2020.50", "sale 3030.00");
    }

    @Test
    void aColumnOfNoughtThatHoldsMoneyLaterIsRefused() throws IOException {
        learn("Date,Type,Amount,Adjustment\n2026-07-03,Sale,10.00,0.00\n2026-07-04,Sale,9.00,\n");

        assertThat(problems("Date,Type,Amount,Adjustment\n2026-08-03,Sale,10.00,-4.00\n"))
                .containsExactly(
                        "august.csv:2 [Adjustment]: found '-4.00'; expected no amount, for layout report reads nothing from that column; if it is money, learn the report again with --name report --accept; if it is of no account, make the layout's line: unread: [Adjustment]");
    }

    @Test
    void aColumnThatIsOfNoAccountMayHoldAmounts() throws IOException {
        String names = "Date,Order,Type,Amount,Weight\n";
        String yaml =
                learn(names + "2026-07-03,N-1,Sale,10.00,0.35\n2026-07-04,N-2,Sale,9.00,1.20\n");
        assertThat(yaml).contains("\nunread: [Weight]\n");
        assertThat(money(names + "2026-08-03,N-3,Sale,11.00,7.75\n")).containsExactly("sale 11.00");
    }

    /** A layout written by hand that says nothing of other columns reads as it did. */
    @Test
    void aLayoutWithoutTheKeyTakesAnyColumn() throws IOException {
        String yaml = learn(NAMES + JULY);
        desk.layout("report", yaml.replace("unread: []\n", ""));
        assertThat(money("Date,Order,Type,Amount,Delivery\n2026-08-03,N-3,Sale,10.00,2.50\n"))
                .containsExactly("sale 10.00");
    }

    @Test
    void aStatusThatNoEarlierRowHadIsRefused() throws IOException {
        String names = "Date,Order,Status,Goods,Delivery,Total\n";
        String yaml =
                learn(
                        names
                                + "2026-07-03,N-1,Done,10.00,3.00,13.00\n2026-07-04,N-2,Done,20.00,3.00,23.00\n2026-07-05,N-3,Done,20.00,3.00,23.00\n");
        assertThat(yaml)
                .contains(
                        """
                        # Rows with other texts there are refused: they may be no sales.
                        expect: {Status: Done}
                        """);
        String august =
                names
                        + "2026-08-03,N-4,Done,10.00,3.00,13.00\n2026-08-04,N-5,Cancelled,20.00,3.00,23.00\n2026-08-05,N-6,Refunded,20.00,3.00,23.00\n";
        assertThat(problems(august))
                .containsExactly(
                        "august.csv:3 [Status]: found 'Cancelled'; expected a text that layout report knows there, such as 'Done'; where such rows count as the others do, make the layout's line: expect: {Status: [Done, Cancelled]}; where they do not count, add to the layout: other_rows: [{when: {Status: Cancelled}, why: of no account}]",
                        "august.csv:4 [Status]: found 'Refunded'; expected a text that layout report knows there, such as 'Done'; where such rows count as the others do, make the layout's line: expect: {Status: [Done, Refunded]}; where they do not count, add to the layout: other_rows: [{when: {Status: Refunded}, why: of no account}]");

        desk.layout(
                "report",
                yaml.replace("expect: {Status: Done}", "expect: {Status: [Done, Refunded]}")
                        + "other_rows: [{when: {Status: Cancelled}, why: of no account}]\n");
        assertThat(money(august))
                .containsExactly("sale 10.00", "delivery 3.00", "sale 20.00", "delivery 3.00");
        assertThat(desk.setAside(1)).extracting(SetAside::reason).containsExactly("of no account");
    }

    @Test
    void statesOfMoneyGivenBackAreAsked() throws IOException {
        String text =
                "Date,Order,Status,Amount\n2026-07-03,N-1,Done,10.00\n2026-07-04,N-2,Partially refunded,20.00\n";
        Path july = desk.file("sales.csv", text);
        Learner learner = new Learner(Desk.settings());
        assertThat(learner.learn(july, "report", Map.of("rows", "sale")).open())
                .containsExactly(
                        new Question(
                                "refunded/Status",
                                "do rows count whose 'Status' is Partially refunded? no row is a refund; answer yes if refunds come in a report of their own",
                                List.of("yes", "no"),
                                true));
        Learned without =
                learner.learn(july, "report", Map.of("rows", "sale", "refunded/Status", "no"));
        assertThat(without.isProved()).isTrue();
        desk.layout("report", without.yaml().orElseThrow());
        assertThat(money(text)).containsExactly("sale 10.00");
    }

    @Test
    void expectedTextsAreSaid() throws IOException {
        desk.layout("report", learn(NAMES + JULY) + "expect: {Status: []}\n");
        assertThat(problems(NAMES + JULY).get(0))
                .startsWith("report.yaml:")
                .endsWith(
                        " [expect.Status]: found ''; expected texts, such as expect: {Status: [Sent]}");
    }

    @Test
    void columnNamesThatMoved() throws IOException {
        learn("A report\nof one stall\n" + NAMES + JULY);
        assertThat(money("A report\nof one stall\nthat moved\nto town\n" + NAMES + JULY))
                .containsExactly("sale 10.00", "sale 20.00", "fee -3.00");
        assertThat(desk.differences()).isEmpty();
    }

    @Test
    void columnNamesThatMovedUp() throws IOException {
        learn("A report\nof one stall\n" + NAMES + JULY);
        assertThat(money(NAMES + JULY)).containsExactly("sale 10.00", "sale 20.00", "fee -3.00");
    }

    /** Rows of the table above the names that were found, or the names twice, are no such move. */
    @Test
    void columnNamesThatMayNotHaveMoved() throws IOException {
        learn(NAMES + JULY);
        String unknown =
                "august.csv: found no header that a layout knows; expected the columns of a layout or of the plain sheet, such as date,kind,gross; or a layout for it, which this works out: quarterfold learn FILE";
        assertThat(problems("2026-08-01,N-9,Sale,9.00\n" + NAMES + JULY)).containsExactly(unknown);
        assertThat(problems("August\n" + NAMES + NAMES + JULY)).containsExactly(unknown);
    }

    @Test
    void numbersDressedOtherwise() throws IOException {
        String names = "Datum;Bestellung;Typ;Betrag\n";
        learn(
                names
                        + "13.07.2026;A7;Verkauf;1234,56\n14.07.2026;B7;Verkauf;20,00\n14.07.2026;B7;Gebühr;-2,00\n");
        assertThat(
                        money(
                                names
                                        + "13.08.2026;A8;Verkauf;1.234,56\n14.08.2026;B8;Verkauf;+£20,00\n14.08.2026;B8;Gebühr;2,00-\n15.08.2026;B9;Gebühr;(3,00)\n16.08.2026;B9;Gebühr;GBP -4,00\n"))
                .containsExactly(
                        "sale 1234.56", "sale 20.00", "fee -2.00", "fee -3.00", "fee -4.00");
    }

    /** Another currency's sign is not read as the book's. */
    @Test
    void columnNamesInOtherCapitalsAndSpaces() throws IOException {
        learn("Order date,Order,Type,Amount\n" + JULY);
        assertThat(money("ORDER\u00a0DATE,order,Type ,AMOUNT\n" + JULY))
                .containsExactly("sale 10.00", "sale 20.00", "fee -3.00");
    }

    /** Of two that read the same, neither is meant unless one is the name itself. */
    @Test
    void columnNamesThatReadTheSame() {
        Header header = new Header(List.of("date", "AMOUNT", "Amount ", "Net", "NET"));
        assertThat(header.column("Date")).isZero();
        assertThat(header.column("Amount")).isEqualTo(-1);
        assertThat(header.column("AMOUNT")).isEqualTo(1);
        assertThat(header.column("Net")).isEqualTo(3);
        assertThat(header.column("net")).isEqualTo(-1);
    }

    @Test
    void anEncodingThatAnAsciiReportDidNotShow() throws IOException {
        String names = "Date,Order,Type,Item,Amount\n";
        String cafe = names + "2026-08-03,N-3,Sale,Café cup,10.00\n";
        assertThat(learn(names + "2026-07-03,N-1,Sale,Mug,10.00\n2026-07-04,N-2,Sale,Cup,9.00\n"))
                .contains("  encoding: any\n");
        assertThat(money(cafe, Charset.forName("windows-1252"))).containsExactly("sale 10.00");
        assertThat(desk.lines().get(0).item().description()).isEqualTo("Café cup");
        assertThat(desk.raised())
                .extracting(RaisedQuery::question)
                .containsExactly(
                        "the text is no UTF-8 and was read as windows-1252, such as 'Café': is it? Say so in the layout, as encoding: windows-1252, and it is not asked again");
    }

    @Test
    void encodingsThatShowThemselves() throws IOException {
        String names = "Date,Order,Type,Item,Amount\n";
        learn(names + "2026-07-03,N-1,Sale,Mug,10.00\n2026-07-04,N-2,Sale,Cup,9.00\n");
        assertThat(money(names + "2026-08-03,N-3,Sale,Café cup,10.00\n", StandardCharsets.UTF_16))
                .containsExactly("sale 10.00");
        assertThat(money(names + "2026-09-03,N-4,Sale,Café cup,11.00\n"))
                .containsExactly("sale 10.00", "sale 11.00");
        assertThat(desk.raised()).isEmpty();
    }

    @Test
    void anEncodingThatMayBeSeveral() throws IOException {
        String names = "Date,Order,Type,Item,Amount\n";
        learn(names + "2026-07-03,N-1,Sale,Mug,10.00\n2026-07-04,N-2,Sale,Cup,9.00\n");
        Path august =
                desk.file(
                        "august.csv",
                        names + "2026-08-03,N-3,Sale,Kubek żółty ąę,10.00\n",
                        Charset.forName("windows-1250"));
        assertThat(desk.problems(august).get(0))
                .startsWith(
                        "august.csv: found characters that are neither of UTF-8 nor of UTF-16, and that are not all letters and marks of windows-1252; expected one of them; say in the layout which encoding it is, such as encoding: ")
                .endsWith(", or save the report as UTF-8");
    }

    @Test
    void totalsAndCountsThatTie() throws IOException {
        learn(NAMES + JULY);
        assertThat(money(NAMES + JULY + "Grand total,,,27.00\nRows: 3\n3 rows,,,\n"))
                .containsExactly("sale 10.00", "sale 20.00", "fee -3.00");
        assertThat(desk.setAside(1))
                .extracting(SetAside::reason)
                .containsExactly("total", "count", "count");
    }

    @Test
    void totalsAndCountsThatDoNotTie() throws IOException {
        learn(NAMES + JULY);
        assertThat(
                        problems(
                                NAMES
                                        + JULY
                                        + "Grand total,,,30.00\nRows: 4\nThis report was made on 1 April\n"))
                .containsExactly(
                        "august.csv:5 [Amount]: found '30.00'; expected the sum of the 3 rows above, 27.00, in a row that says it is a total; are rows missing, or is one there twice?",
                        "august.csv:6: found 'Rows: 4'; expected the number of the rows above, 3; are rows missing, or is one there twice?",
                        "august.csv:7: found one cell, 'This report was made on 1 April'; expected a row of the table; if it is a line of words round the table, add to the layout report: other_rows: [{starts: This report was made on, why: words}]");
    }

    /** What learning proves, import reads: a number of rows that a text begins with. */
    @Test
    void aCountThatBeginsWithItsNumber() throws IOException {
        learn(NAMES + JULY + "3 rows\n");
        assertThat(money(NAMES + JULY + "3 rows\n"))
                .containsExactly("sale 10.00", "sale 20.00", "fee -3.00");
    }

    @Test
    void rowsNumberedAnewInEachReport() throws IOException {
        String names = "Line,Date,Order,Type,Amount\n";
        String yaml =
                learn(
                        names
                                + "1,2026-07-13,A-1,Sale,10.00\n2,2026-07-14,A-2,Sale,20.00\n3,2026-07-15,A-2,Fee,-5.00\n");
        assertThat(yaml).endsWith("repeats: {ignore: [Line]}\n");
        desk.enter(
                "july.csv", names + "1,2026-07-13,A-1,Sale,10.00\n2,2026-07-14,A-2,Sale,20.00\n");
        assertThat(money(names + "1,2026-07-14,A-2,Sale,20.00\n2,2026-07-15,A-2,Fee,-5.00\n"))
                .containsExactly("sale 10.00", "sale 20.00", "fee -5.00");
    }

    /** Numbers that go on from report to report tell sales apart. */
    @Test
    void numbersThatDoNotBeginAtOneAreCompared() throws IOException {
        assertThat(
                        learn(
                                "Line,Date,Order,Type,Amount\n7,2026-07-13,A-1,Sale,10.00\n8,2026-07-14,A-2,Sale,20.00\n"))
                .doesNotContain("repeats:");
    }

    /** What a message says to write into the layout is written as it says, and the file is read. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Sent,2026-08-03,0.35|make the layout's line: (unread: [^;]*)|1",
                "Shipped,2026-08-03,|make the layout's line: (expect: [^;]*)|1",
                "Shipped,2026-08-03,|add to the layout: (other_rows: .*)|0",
                "Lost,2026-08-03,|add to the layout under other_rows: (- .*)|0"
            })
    void theAdviceOfAMessageIsOfUseAsItStands(String cells, String advice, int sales)
            throws IOException {
        String names = "Status,Date,Weight,Order,Type,Amount\n";
        String yaml =
                learn(
                        "Status,Date,Order,Type,Amount\nSent,2026-07-03,N-1,Sale,10.00\nDone,2026-07-04,N-2,Sale,9.00\n");
        if (cells.startsWith("Lost")) {
            yaml += "other_rows:\n  - {when: {Status: Shipped}, why: of no account}\n";
            desk.layout("report", yaml);
        }
        String august = names + cells + ",N-3,Sale,11.00\n";
        String told = String.join("\n", problems(august));
        Matcher said = Pattern.compile(advice).matcher(told);
        assertThat(said.find()).as(told).isTrue();
        String line = said.group(1);
        String key = line.substring(0, line.indexOf(':') + 1);
        String changed =
                line.startsWith("-")
                        ? yaml.replace("other_rows:\n", "other_rows:\n  " + line + "\n")
                        : yaml.contains("\n" + key)
                                ? yaml.replaceAll("(?m)^" + key + ".*$", line)
                                : yaml + line + "\n";
        desk.layout("report", changed);

        assertThat(money(august)).hasSize(sales);
        assertThat(money(names + "Sent,2026-08-05,,N-4,Sale,8.00\n")).contains("sale 8.00");
    }

    /** Money in another currency is not told as if it were no money. */
    @ParameterizedTest
    @CsvSource({
        "10.00 EUR, EUR, report-eur",
        "€10.00, EUR, report-eur",
        "USD 10.00, USD, report-usd",
        "$10.00, another currency ($), report-other"
    })
    void amountsInAnotherCurrency(String amount, String currency, String name) throws IOException {
        learn(NAMES + JULY);

        assertThat(problems(NAMES + "2026-08-03,N-3,Sale,%s\n".formatted(amount)))
                .containsExactly(
                        "august.csv:2 [Amount]: found '%s'; expected an amount in GBP, which layout report reads, such as 1234.50, and this is in %s; where all of the file is, learn it with a name of its own, such as --name %3$s --accept, and import it with --layout %3$s; where some rows are, a column must state each row's currency"
                                .formatted(amount, currency, name));
    }

    /** As the message says, a layout of its own reads it. */
    @Test
    void aMonthInAnotherCurrencyWithALayoutOfItsOwn() throws IOException {
        learn(NAMES + JULY);
        Path august = desk.file("august.csv", NAMES + "2026-08-03,N-3,Sale,€10.00\n");
        Learned learned = new Learner(Desk.settings()).learn(august, "report-eur", Map.of());
        desk.layout("report-eur", learned.yaml().orElseThrow());

        assertThat(desk.enter(august, "report-eur").problems()).isEmpty();
        assertThat(desk.lines()).extracting(l -> l.profile().currency()).containsExactly("EUR");
    }

    @Test
    void aSignBesideAColumnOfCurrencies() throws IOException {
        String names = "Date,Order,Type,Amount,Currency\n";
        learn(names + "2026-07-03,N-1,Sale,10.00,EUR\n2026-07-04,N-2,Sale,9.00,GBP\n");

        assertThat(problems(names + "2026-08-03,N-3,Sale,€10.00,EUR\n"))
                .containsExactly(
                        "august.csv:2 [Amount]: found '€10.00'; expected an amount without a currency, which the column 'Currency' says, such as 1234.50");
    }
}

package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.RaisedQuery;

/** Months that write their dates, amounts or signs in another way than the one learned before. */
class WrittenOtherwiseTest {
    private static final String NAMES = "Date,Order,Type,Amount\n";
    private static final String PLAIN =
            NAMES + "2026-07-03,A-1,Sale,10.00\n2026-07-30,A-2,Fee,-2.00\n";
    private static final String LETTERS =
            NAMES + "2026-07-03,A-1,Sale,10.00 CR\n2026-07-30,A-2,Fee,2.00 DR\n";
    private static final String OUT =
            "Date,Order,Amount,Commission\n2026-07-03,A-1,10.00,1.00\n2026-07-04,A-2,20.00,2.00\n";
    private static final String MINUS =
            "Date,Order,Amount,Commission\n2026-08-03,B-1,11.00,-1.00\n2026-08-04,B-2,21.00,-2.00\n";
    private static final String APART =
            " from now on; to read both, learn each with a name of its own, such as --name report-2";

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

    /** CR is money in, whatever the rows are said to be: where a fee has it, it is asked. */
    @Test
    void lettersSayWhichWayMoneyGoes() throws IOException {
        Path file = desk.file("all.csv", LETTERS.replace("DR", "CR"));
        Learned learned =
                new Learner(Desk.settings()).learn(file, "report", Map.of(), Optional.empty());
        assertThat(learned.isProved()).isFalse();
        assertThat(learned.open())
                .extracting(Question::text)
                .containsExactly(
                        "what is 'Type: Fee' (1 row, 2.00)? By its words it is fee, but its money comes in.");
    }

    private Learned learn(String name, String text, Optional<String> before, String... answers)
            throws IOException {
        Map<String, String> given = new HashMap<>();
        for (String answer : answers) {
            int at = answer.indexOf('=');
            given.put(answer.substring(0, at), answer.substring(at + 1));
        }
        Path file = desk.file(name, text);
        Learned learned = new Learner(Desk.settings()).learn(file, "report", given, before);
        assertThat(learned.isProved()).as(learned.toString()).isTrue();
        desk.layout("report", learned.yaml().orElseThrow());
        return learned;
    }

    private List<String> again(String first, String second, String... answers) throws IOException {
        Optional<String> before = learn("july.csv", first, Optional.empty(), answers).yaml();
        return learn("august.csv", second, before, answers).notes().stream()
                .filter(note -> !note.contains("states no currency"))
                .toList();
    }

    private List<String> money(String name, String text) throws IOException {
        int before = desk.lines().size();
        assertThat(desk.enter(name, text).problems()).isEmpty();
        return desk.lines().stream()
                .skip(before)
                .map(l -> l.profile().kind().code() + " " + l.signedMoney())
                .toList();
    }

    /**
     * In a column that nothing is read from, an amount in a dress the layout has not is one too.
     */
    @ParameterizedTest
    @CsvSource({"1.00 DR", "£1.00cr", "€1.00", "1.00 USD", "'1.250,00 €'"})
    void moneyInAColumnThatCame(String amount) throws IOException {
        learn("july.csv", PLAIN, Optional.empty());

        assertThat(
                        desk.problems(
                                "august.csv",
                                "Date,Order,Type,Amount,Stallage\n2026-08-03,B-1,Sale,11.00,\"%s\"\n"
                                        .formatted(amount)))
                .containsExactly(
                        "august.csv:2 [Stallage]: found '%s'; expected no amount, for layout report reads nothing from that column; if it is money, learn the report again with --name report --accept; if it is of no account, make the layout's line: unread: [Stallage]"
                                .formatted(amount));
    }

    /** What looks alike and is no amount is not. */
    @ParameterizedTest
    @CsvSource({"12 Dr", "GB 12345", "Unit 3.5 DR-Q", "2026-08-03", "020 7946 0018"})
    void wordsInAColumnThatCame(String text) throws IOException {
        learn("july.csv", PLAIN, Optional.empty());

        assertThat(
                        money(
                                "august.csv",
                                "Date,Order,Type,Amount,Stall\n2026-08-03,B-1,Sale,11.00,%s\n"
                                        .formatted(text)))
                .containsExactly("sale 11.00");
    }

    private Path workbook(Object... amounts) throws IOException {
        Path file = folder.resolve("august.xlsx");
        try (XSSFWorkbook workbook = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(file)) {
            Sheet sheet = workbook.createSheet("Report");
            List<String> names = List.of("Date", "Order", "Type", "Amount");
            for (int r = 0; r <= amounts.length; r++) {
                Row row = sheet.createRow(r);
                List<String> texts =
                        r == 0
                                ? names
                                : List.of("2026-08-0" + r, "B-" + r, r == 1 ? "Sale" : "Fee");
                for (int c = 0; c < texts.size(); c++) {
                    row.createCell(c).setCellValue(texts.get(c));
                }
                if (r > 0 && amounts[r - 1] instanceof Double number) {
                    row.createCell(3).setCellValue(number);
                } else if (r > 0) {
                    row.createCell(3).setCellValue(amounts[r - 1].toString());
                }
            }
            workbook.write(out);
        }
        return file;
    }

    /** A number that a workbook stores has lost the letters that said which way it goes. */
    @Test
    void storedNumbersWhereLettersSayTheSign() throws IOException {
        learn("july.csv", LETTERS, Optional.empty());

        assertThat(desk.problems(workbook("10.00\u00a0CR", 2.0)))
                .containsExactly(
                        "august.xlsx:Report!D3 [Amount]: found '2'; expected an amount with at most 4 decimals and with CR or DR behind it, such as 1,234.50 CR");
        assertThat(desk.enter(workbook("10.00\u00a0CR", -2.0)).problems()).isEmpty();
        assertThat(desk.lines().get(1).signedMoney()).hasToString("-2.00");
    }

    /** A unit price says which way its money goes, the number of units says nothing. */
    @Test
    void unitsBesidePricesWithLetters() throws IOException {
        String names = "Date,Order,Type,Quantity,Unit price\n";
        learn(
                "july.csv",
                names
                        + "2026-07-03,A-1,Sale,2,5.00 CR\n2026-07-04,A-2,Sale,4,5.00 CR\n2026-07-30,A-2,Refund,1,5.00 DR\n",
                Optional.empty());

        assertThat(
                        money(
                                "august.csv",
                                names
                                        + "2026-08-03,B-1,Sale,3,5.00 CR\n2026-08-30,B-1,Refund,2,5.00 DR\n"))
                .containsExactly("sale 15.00", "sale-refund -10.00");
        assertThat(desk.enter("september.csv", names + "2026-09-03,C-1,Sale,3,6.00\n").problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "september.csv:2 [Money]: found Quantity: 3; Unit price: 6.00; expected CR or DR behind one of the two, such as 10 x 1.95 CR");
    }

    /** Columns that say which way money goes need no letters, though the balance has them. */
    @Test
    void lettersOfTheBalanceAlone() throws IOException {
        String names = "Bank statement\nDate,Details,Paid out,Paid in,Balance\n";
        learn(
                "july.csv",
                names
                        + "03/07/2026,Tape,40.00,,60.00 CR\n15/07/2026,Payout,,500.00,560.00 CR\n20/07/2026,Rent,600.00,,40.00 DR\n21/07/2026,Rent,10.00,,50.00 DR\n",
                Optional.empty());

        assertThat(
                        money(
                                "august.csv",
                                names
                                        + "03/08/2026,Tape,40.00,,90.00 DR\n15/08/2026,Payout,,500.00,410.00 CR\n"))
                .containsExactly("bank-line -40.00", "bank-line 500.00");
        assertThat(
                        desk.enter("september.csv", names + "03/09/2026,Tape,40.00 DR,,370.00 CR\n")
                                .problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "september.csv:3 [Paid out]: found '40.00 DR'; expected an amount with at most 4 decimals, such as 1,234.50");
    }

    @Test
    void feesBesideSalesThatBringMoneyAreAsked() throws IOException {
        learn("august.csv", MINUS, Optional.empty(), "sum=sum", "rows=sale");

        assertThat(money("july.csv", OUT))
                .containsExactly("sale 10.00", "fee 1.00", "sale 20.00", "fee 2.00");
        assertThat(desk.raised())
                .extracting(RaisedQuery::question)
                .containsExactly(
                        "2 rows of 'Commission', the first in row 2, are entered as fee, which takes money away, but by their sign they bring 3.00. If the file prints signs in another way than layout report says, correct outgoing there, which names columns printed without a minus though their money goes out; else set this aside: they are reversals");
    }

    /** One of several may be given back. */
    @Test
    void oneFeeBesideSalesThatComesBackIsNot() throws IOException {
        learn("august.csv", MINUS, Optional.empty(), "sum=sum", "rows=sale");

        money("july.csv", MINUS.replace("-1.00", "1.00"));
        assertThat(desk.raised()).isEmpty();
    }

    @Test
    void signsOfAColumnThatTurned() throws IOException {
        String now =
                " is read with the signs it is printed with now, and as money that goes out, printed without a minus before";
        String before =
                " is read as money that goes out, printed without a minus now, and with the signs it is printed with before";
        String told = ": a file written as before may be refused or entered the other way round";
        assertThat(again(OUT, MINUS, "sum=sum", "rows=sale"))
                .containsExactly("'Commission'" + now + told + APART);
        assertThat(again(MINUS, OUT, "sum=sum", "rows=sale"))
                .containsExactly("'Commission'" + before + told + APART);
    }

    @Test
    void datesThatTurned() throws IOException {
        String july = NAMES + "03/07/2026,A-1,Sale,10.00\n05/07/2026,A-2,Fee,-2.00\n";
        learn("july.csv", july, Optional.empty(), "dates=dd/MM/yyyy");
        Optional<String> before =
                Optional.of(Files.readString(folder.resolve("book/layouts/report.yaml")));
        assertThat(
                        learn(
                                        "august.csv",
                                        NAMES
                                                + "08/13/2026,B-1,Sale,10.00\n08/14/2026,B-2,Fee,-2.00\n",
                                        before)
                                .notes())
                .contains(
                        "dates are read as MM/dd/yyyy now, and as dd/MM/yyyy before: a file written as before may be refused or read as other days"
                                + APART);
    }

    @Test
    void amountsThatTurned() throws IOException {
        String told = ": a file written as before may be refused or read as other amounts";
        assertThat(again(LETTERS, PLAIN))
                .containsExactly(
                        "amounts are read as 1234.50 now, and as 1234.50 CR before" + told + APART);
        assertThat(
                        again(
                                PLAIN,
                                PLAIN.replace("10.00", "\"10,00\"")
                                        .replace("2.00", "\"2,00\"")
                                        .replace("-\"", "\"-")))
                .containsExactly(
                        "amounts are read as 1234,50 now, and as 1234.50 before" + told + APART);
    }

    @Test
    void amountsOfAnotherCurrency() throws IOException {
        assertThat(again(PLAIN, PLAIN.replace("10.00", "€10.00").replace("-2.00", "-€2.00")))
                .containsExactly(
                        "amounts are in EUR now, and in GBP before: a file written as before may be refused or read as EUR"
                                + APART);
    }

    /** A month that turns all its signs has sales that take money. */
    @Test
    void salesThatTakeMoneyAreAsked() throws IOException {
        learn("july.csv", LETTERS, Optional.empty());

        assertThat(
                        money(
                                "august.csv",
                                NAMES
                                        + "2026-08-03,B-1,Sale,10.00 DR\n2026-08-04,B-2,Sale,20.00 DR\n2026-08-05,B-2,Sale,1.00 CR\n"))
                .containsExactly("sale -10.00", "sale -20.00", "sale 1.00");
        assertThat(desk.raised())
                .extracting(RaisedQuery::question)
                .containsExactly(
                        "2 rows of 'Type: Sale', the first in row 2, are entered as sale, which brings money, but by their sign they take 30.00. If the file prints signs in another way than layout report says, correct signs there, for the rule alone if need be; else set this aside: they are reversals");
    }

    @Test
    void salesOfARuleForAllRowsThatTakeMoney() throws IOException {
        learn("august.csv", MINUS, Optional.empty(), "sum=sum", "rows=sale");

        money("july.csv", "Date,Order,Amount,Commission\n2026-07-03,A-1,-10.00,\n");
        assertThat(desk.raised())
                .extracting(RaisedQuery::question)
                .containsExactly(
                        "1 row of 'all rows', the first in row 2, is entered as sale, which brings money, but by their sign they take 10.00. If the file prints signs in another way than layout report says, correct signs there, for the rule alone if need be; else set this aside: they are reversals");
    }

    /** What stood for an empty cell stands for one still. */
    @Test
    void textsForEmptyCellsStay() throws IOException {
        String july =
                "Date,Order,Type,Amount,Commission\n2026-07-03,A-1,Sale,10.00,-1.00\n2026-07-04,A-2,Sale,20.00,-\n";
        again(july, july.replace(",-\n", ",n/a\n"), "sum=sum");

        assertThat(money("july.csv", july))
                .containsExactly("sale 10.00", "fee -1.00", "sale 20.00");
        assertThat(money("august.csv", july.replace("-07-", "-08-").replace(",-\n", ",n/a\n")))
                .containsExactly("sale 10.00", "fee -1.00", "sale 20.00");
    }
}

package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Exchange rates from import to the closed return. The rates are the tax authority's for July and
 * August 2026, from a public copy of its files (secondary source).
 */
class RatesCommandTest {

    private static final String JULY =
            """
            Country/Territories,Currency,Currency Code,Currency Units per £1,Start date,End date
            DE,Euro,EUR,1.1564,01/07/2026,31/07/2026
            US,Dollar,USD,1.3404,01/07/2026,31/07/2026
            """;

    private static final String AUGUST =
            """
            Period,countryName,countryCode,currencyName,currencyCode,rateNew
            01/Aug/2026 to 31/Aug/2026,Germany,DE,Euro,EUR,1.1719
            """;

    private static final String SALES =
            """
            date,kind,order,currency,gross
            2026-07-31,sale,A,EUR,2340.00
            2026-08-01,sale,B,EUR,2340.00
            2026-08-02,sale,C,,120.00
            """;

    @TempDir private Path folder;
    private Path book = Path.of("");

    @BeforeEach
    void sales() throws IOException {
        book = SmallBook.empty(folder);
        SmallBook.enter(book, SmallBook.file(folder, "sales.csv", SALES));
    }

    private Run run(Object... args) {
        Object[] all = new Object[args.length + 2];
        all[0] = "--book";
        all[1] = book;
        System.arraycopy(args, 0, all, 2, args.length);
        return Run.of(all);
    }

    private void rates() throws IOException {
        SmallBook.enter(book, SmallBook.file(folder, "july.csv", JULY));
        SmallBook.enter(book, SmallBook.file(folder, "august.csv", AUGUST));
    }

    @Test
    void noneIsHeld() {
        assertThat(run("rates")).isEqualTo(new Run(0, "No exchange rate is held.\n", ""));
        assertThat(run("rates", "--currency", "EUR").out())
                .isEqualTo("No such exchange rate is held.\n");
        assertThat(run("rates", "--json")).isEqualTo(new Run(0, "", ""));
    }

    @Test
    void theFilesSummary() throws IOException {
        Path july = SmallBook.file(folder, "july.csv", JULY);
        assertThat(run("import", july).out())
                .isEqualTo(
                        """
                        file      kind   layout         rows  entries  set aside  money
                        july.csv  rates  monthly-rates     2        0          0         2 rates
                        """);
        Path august = SmallBook.file(folder, "august.csv", AUGUST);
        assertThat(run("import", "--json", august).out())
                .contains(
                        "\"rows_read\":1,\"entries\":0,\"set_aside\":0,\"repeated\":0,\"money\":\"0.00\",\"documents\":0,\"rates\":1,\"problems\":[]");
    }

    /** Money of several currencies is shown with them, and not added up. */
    @Test
    void filesInSeveralCurrencies() throws IOException {
        Path home =
                SmallBook.file(
                        folder, "home.csv", "date,kind,gross\n2026-08-14,other-money,5.00\n");
        Path away =
                SmallBook.file(
                        folder,
                        "away.csv",
                        "date,kind,currency,gross\n2026-08-14,bank-line,EUR,7.00\n");
        Path both =
                SmallBook.file(
                        folder,
                        "both.csv",
                        "date,kind,currency,gross\n2026-08-15,bank-line,EUR,1.00\n2026-08-15,bank-line,,2.00\n");
        assertThat(run("import", home, away).out())
                .isEqualTo(
                        """
                        file      kind   layout       rows  entries  set aside     money
                        home.csv  money  plain-sheet     1        1          0  5.00 GBP  ties
                        away.csv  money  plain-sheet     1        1          0  7.00 EUR  ties
                        2 files          entered now     2        2          0            2 tie
                        """);
        Path foreign =
                SmallBook.file(
                        folder,
                        "foreign.csv",
                        "date,kind,currency,gross\n2026-08-16,bank-line,EUR,3.00\n");
        assertThat(run("import", foreign).out())
                .isEqualTo(
                        """
                        file         kind   layout       rows  entries  set aside     money
                        foreign.csv  money  plain-sheet     1        1          0  3.00 EUR  ties
                        """);
        assertThat(run("import", both).out())
                .isEqualTo(
                        """
                        file      kind   layout       rows  entries  set aside     money
                        both.csv  money  plain-sheet     2        2          0  EUR, GBP  ties
                        """);
        assertThat(run("ledger").out().lines().skip(4).limit(2))
                .containsExactly(
                        "       4  2026-08-14  other-money                                                           5.00          0.00          5.00  money-only",
                        "       5  2026-08-14  bank-line                                                             7.00          0.00          7.00  bank-line; in EUR");
    }

    @Test
    void whatIsHeld() throws IOException {
        rates();
        assertThat(run("rates").out())
                .isEqualTo(
                        """
                        currency             units  for one  published by       from        to          file and row
                        EUR                 1.1564  GBP      the tax authority  2026-07-01  2026-07-31  july.csv row 2
                        USD                 1.3404  GBP      the tax authority  2026-07-01  2026-07-31  july.csv row 3
                        EUR                 1.1719  GBP      the tax authority  2026-08-01  2026-08-31  august.csv row 2
                        """);
        assertThat(run("rates", "--currency", "EUR", "--month", "2026-08", "--json"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                {"publisher":"tax-authority","currency":"EUR","from":"2026-08-01","to":"2026-08-31","units":"1.1719","base":"GBP","file":"august.csv","row":2}
                                """,
                                ""));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    --currency | euro | --currency: found 'euro'; expected three capital letters, such as EUR
                    --month | 2026-13 | --month: found '2026-13'; expected a month, such as 2026-08
                    """)
    void wrongUsage(String option, String value, String message) {
        assertThat(run("rates", option, value)).isEqualTo(new Run(2, "", message + "\n"));
    }

    /** A rate that comes after the entries closes their question by itself. */
    @Test
    void aRateClosesTheQuery() throws IOException {
        assertThat(run("queries", "2026-09").out()).contains("E1/no-exchange-rate", "E2/no-exch");
        assertThat(run("close", "2026-09").code()).isEqualTo(1);
        rates();
        assertThat(run("queries", "2026-09").out()).isEqualTo("No query is open.\n");
    }

    @Test
    void theLedgerShowsAmountRateAndSource() throws IOException {
        rates();
        assertThat(run("ledger").out().lines().skip(1))
                .containsExactly(
                        "       1  2026-07-31  sale                A                                           1,686.2677      337.2536    2,023.5213  uk-sale; EUR 2,340.00 at 1.1564 EUR for 1 GBP (the tax authority, 2026-07-01 to 2026-07-31, july.csv row 2)",
                        "       2  2026-08-01  sale                B                                           1,663.9645      332.7929    1,996.7574  uk-sale; EUR 2,340.00 at 1.1719 EUR for 1 GBP (the tax authority, 2026-08-01 to 2026-08-31, august.csv row 2)",
                        "       3  2026-08-02  sale                C                                               100.00         20.00        120.00  uk-sale");
        assertThat(run("ledger", "--json").out().lines())
                .element(1)
                .asString()
                .contains(
                        "\"currency\":\"EUR\",\"net\":\"1663.9645\",\"vat\":\"332.7929\",\"gross\":\"2340.00\"",
                        "\"exchange\":{\"money\":\"1996.7574\",\"rates\":[{\"publisher\":\"tax-authority\",\"currency\":\"EUR\",\"from\":\"2026-08-01\",\"to\":\"2026-08-31\",\"units\":\"1.1719\",\"base\":\"GBP\",\"file\":\"august.csv\",\"row\":2}]}");
    }

    @Test
    void anEntrysStoryAndItsBox() throws IOException {
        rates();
        assertThat(run("vouch", "2").out())
                .contains(
                        """
                          Exchange rate          1.1719 EUR for 1 GBP
                                                 the tax authority, 2026-08-01 to 2026-08-31, august.csv row 2
                          In GBP                 1,996.7574
                          Value without VAT      1,663.9645
                        """);
        assertThat(run("vouch", "2026-09", "--box", "1").out())
                .contains(
                        "sales.csv row 3; EUR 2,340.00 at 1.1719 EUR for 1 GBP (the tax authority, 2026-08-01 to 2026-08-31, august.csv row 2)\n");
    }

    /** Frozen with the rate; verified with the rates known then; unmoved by what comes later. */
    @Test
    void aClosedReturnKeepsItsRates() throws IOException {
        rates();
        assertThat(run("close", "2026-09").code()).isZero();
        String closed = run("ledger", "--json").out();
        String vatReturn = run("return", "2026-09", "--json").out();
        assertThat(closed).contains("\"exchange\":{\"money\":\"1996.7574\"");

        Path more =
                SmallBook.file(
                        folder,
                        "more.csv",
                        JULY.replace("01/07", "01/09").replace("31/07", "30/09"));
        SmallBook.enter(book, more);

        assertThat(run("ledger", "--json").out()).isEqualTo(closed);
        assertThat(run("return", "2026-09", "--json").out()).isEqualTo(vatReturn);
        Run verified = run("verify");
        assertThat(verified.out()).contains("All is as it must be.");
        assertThat(verified.code()).isZero();
    }

    /** What was left as it was at the close, without a rate, stays so when the rate comes. */
    @Test
    void aRateThatComesAfterTheCloseChangesNothing() throws IOException {
        SmallBook.setAside(book, "E1/no-exchange-rate");
        SmallBook.setAside(book, "E2/no-exchange-rate");
        assertThat(run("close", "2026-09").code()).isZero();
        String vatReturn = run("return", "2026-09", "--json").out();
        rates();

        assertThat(run("return", "2026-09", "--json").out()).isEqualTo(vatReturn);
        assertThat(run("verify").out()).contains("All is as it must be.");
        assertThat(run("return", "2026-12", "--json").out()).contains("\"1\":\"0.00\"");
    }

    @Test
    void aChangedFileIsFound() throws IOException {
        rates();
        Path sources = book.resolve("sources");
        try (var files = Files.list(sources)) {
            Path kept =
                    files.filter(f -> f.toString().endsWith("august.csv"))
                            .findFirst()
                            .orElseThrow();
            assertThat(kept.toFile().setWritable(true)).isTrue();
            Files.writeString(kept, AUGUST.replace("1.1719", "1.1720"));
        }
        assertThat(run("verify").code()).isEqualTo(1);
    }

    /** Triggers gone, as by another program: what the file states and the close froze say so. */
    @Test
    void aRateChangedInTheLedgerIsFound() throws IOException, SQLException {
        rates();
        assertThat(run("close", "2026-09").code()).isZero();
        try (Connection ledger =
                        DriverManager.getConnection(
                                "jdbc:sqlite:" + book.resolve("ledger.sqlite"));
                Statement statement = ledger.createStatement()) {
            statement.execute("drop trigger exchange_rate_is_not_updated");
            statement.execute("update exchange_rate set units = '1.2' where id = 3");
        }
        Run verified = run("verify");
        assertThat(verified.code()).isEqualTo(1);
        assertThat(verified.out())
                .contains(
                        """
                        entries   2 differences:
                          august.csv: it states 1.1719 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 2); expected it in the ledger
                          august.csv: it does not state 1.2 EUR for 1 GBP from 2026-08-01 to 2026-08-31 (row 2); found it in the ledger
                        """)
                .contains(
                        "2026-09 entry 2 [exchange]: found '1996.7574 3' frozen; worked out again it is '1950.00 3'");
    }

    @Test
    void thePapersListTheRates() throws IOException {
        rates();
        Run papers = run("papers", "2026-09");
        assertThat(papers.code()).as(papers.err()).isZero();
        try (Workbook workbook =
                WorkbookFactory.create(
                        book.resolve("papers/2026-09-draft/workbook.xlsx").toFile(), "", true)) {
            Sheet rates = workbook.getSheet("Exchange rates");
            assertThat(rates.getRow(0).getCell(0)).hasToString("Exchange rates");
            assertThat(cells(rates.getRow(3)))
                    .containsExactly(
                            "Currency",
                            "Units",
                            "For one",
                            "Published by",
                            "Holds from",
                            "Holds to",
                            "Entries",
                            "Row in file",
                            "Source file",
                            "SHA-256 of the file");
            assertThat(cells(rates.getRow(5)).subList(0, 4))
                    .containsExactly("EUR", "1.1719", "GBP", "the tax authority");
            assertThat(cells(rates.getRow(5)).subList(6, 9))
                    .containsExactly("1.0", "2.0", "august.csv");
            Sheet sales = workbook.getSheet("Sales");
            List<String> headings = cells(sales.getRow(3));
            assertThat(headings).contains("In sterling", "Exchange rate", "Rate from");
            List<String> row = cells(sales.getRow(5));
            assertThat(row.get(headings.indexOf("Cur."))).isEqualTo("EUR");
            assertThat(row.get(headings.indexOf("Printed gross"))).isEqualTo("2340.0");
            assertThat(row.get(headings.indexOf("In sterling"))).isEqualTo("1996.7574");
            assertThat(row.get(headings.indexOf("Exchange rate")))
                    .isEqualTo("1.1719 EUR for 1 GBP");
            assertThat(row.get(headings.indexOf("Rate from")))
                    .isEqualTo("the tax authority, 2026-08-01 to 2026-08-31, august.csv row 2");
        }
    }

    private static List<String> cells(Row row) {
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < row.getLastCellNum(); i++) {
            cells.add(row.getCell(i) == null ? "" : row.getCell(i).toString());
        }
        return cells;
    }

    @Test
    void aBookInSterlingHasNoSuchSheet() throws IOException {
        Path sterling = SmallBook.quarter(Files.createDirectory(folder.resolve("sterling")));
        assertThat(Run.of("--book", sterling, "papers", "2026-09").code()).isZero();
        try (Workbook workbook =
                WorkbookFactory.create(
                        sterling.resolve("papers/2026-09-draft/workbook.xlsx").toFile(),
                        "",
                        true)) {
            assertThat(workbook.getSheet("Exchange rates")).isNull();
            assertThat(cells(workbook.getSheet("Sales").getRow(3))).doesNotContain("Exchange rate");
        }
    }
}

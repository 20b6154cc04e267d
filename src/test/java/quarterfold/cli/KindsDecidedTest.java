package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rows of which a layout does not know what they are, from the question to the return and back: a
 * person says it once, and it holds for the rows there are, for a closed return that had them
 * otherwise, and for files to come.
 */
class KindsDecidedTest {
    private static final String QUERY = "S1/kind-unknown/Type: Shelf bonus";

    /** A fee in the currency of the book whose VAT, at 20 in 120, is 4.00 and 6.00. */
    private static final String REPORT =
            """
            Date,Type,Order,Amount
            2026-07-02,Sale,Q-1,120.00
            2026-07-05,Sale,Q-2,60.00
            2026-07-11,Shelf bonus,,-24.00
            2026-07-20,Shelf bonus,,-36.00
            2026-07-31,Payout,,-120.00
            """;

    @TempDir private Path folder;
    private Path book = Path.of("");

    @BeforeEach
    void aReportWithRowsNobodyKnows() throws IOException {
        book = SmallBook.empty(folder);
        Path report = SmallBook.file(folder, "july.csv", REPORT);
        assertThat(run("learn", report, "--name", "corner-stall", "--accept").code()).isZero();
        SmallBook.enter(book, report);
    }

    private Run run(Object... what) {
        List<Object> args = new ArrayList<>(List.of("--book", book));
        args.addAll(List.of(what));
        return Run.of(args.toArray());
    }

    private Run decide(String... what) {
        List<Object> args = new ArrayList<>(List.of("decide"));
        args.addAll(List.of(what));
        args.addAll(
                List.of("--why", "So their terms", "--who", "Anne Weaver", "--on", "2026-11-01"));
        return run(args.toArray());
    }

    private String boxes(String period) {
        return Json.flat(run("return", period, "--json").out()).entrySet().stream()
                .filter(value -> value.getKey().startsWith("boxes/"))
                .map(value -> value.getKey().substring(6) + "=" + value.getValue())
                .collect(Collectors.joining(" "));
    }

    /** The evidence that a reclaim of a fee needs: VATA 1994 s.24(6); VAT Regulations reg 29(2). */
    private void evidenced(int... entries) {
        for (int entry : entries) {
            String number = Integer.toString(entry);
            decide("--entry", number, "--state", "party_country=GB");
            decide("--entry", number, "--state", "party_vat=GB101747696");
            decide("--entry", number, "--state", "rate=20");
            assertThat(decide("--entry", number, "--evidence-seen", "invoice").code()).isZero();
        }
    }

    @Test
    void theQueryNamesTheCommand() {
        assertThat(run("queries", "2026-09").out())
                .contains(
                        """
                        S1/kind-unknown/Type: Shelf bonus  july.csv
                          what is 'Type: Shelf bonus'? (Type: Shelf bonus: 2 rows, -60.00, entered as other-money.) Say what they are with --state and their kind, such as --state kind=fee: it holds for these rows, and in the layout for those to come. If what they are entered as is right, leave it with --set-aside
                          quarterfold decide --query "S1/kind-unknown/Type: Shelf bonus" --state kind=KIND --why WHY --who NAME
                        """);
    }

    /** Said on the question, it is told like any decision, and what became of the layout. */
    @Test
    void decidedOnTheQuestion() {
        assertThat(decide("--query", QUERY, "--state", "kind=fee"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                Decision 1 of 1 November 2026 by Anne Weaver: query S1/kind-unknown/Type: Shelf bonus, state kind=fee
                                  So their terms

                                In 2026-09:
                                  answered: S1/kind-unknown/Type: Shelf bonus
                                  asked now: E3/supplier-country-missing
                                  asked now: E4/supplier-country-missing
                                  2 queries are still open.

                                The layout corner-stall says so too: 'Type: Shelf bonus' is fee, for files to come.
                                """,
                                ""));
        evidenced(3, 4);
        // 24.00 and 36.00 with VAT of 20 in 120
        assertThat(boxes("2026-09"))
                .isEqualTo("1=30.00 2=0.00 3=30.00 4=10.00 5=20.00 6=150 7=50 8=0 9=0");
        assertThat(run("vouch", "3").out())
                .contains("Entry 3: fee of 11 July 2026\n")
                .contains(
                        "  Kind                   fee by decision 1, as Anne Weaver said on 2026-11-01: So their terms\n")
                .contains("  Printed                net -, VAT -, gross 24.00, GBP\n");
        assertThat(run("queries", "2026-09").out()).doesNotContain("kind-unknown");
        assertThat(run("verify").out()).endsWith("All is as it must be.\n");
    }

    @Test
    void decidedOnTheQuestionForPrograms() {
        assertThat(decide("--query", QUERY, "--state", "kind=fee", "--json").out())
                .isEqualTo(
                        """
                        {"id":1,"target":"query","about":"S1/kind-unknown/Type: Shelf bonus","action":"state","value":"kind=fee","why":"So their terms","who":"Anne Weaver","day":"2026-11-01","changes":[{"period":"2026-09","boxes":{},"answered":["S1/kind-unknown/Type: Shelf bonus"],"asked":["E3/supplier-country-missing","E4/supplier-country-missing"],"queries":2}],"closed":[],"layout":"The layout corner-stall says so too: 'Type: Shelf bonus' is fee, for files to come."}
                        """);
    }

    /** A month to come is entered so at once, and asks nothing of it; both months tell alike. */
    @Test
    void theMonthsToCome() throws IOException {
        decide("--query", QUERY, "--state", "kind=fee");
        Path next = SmallBook.file(folder, "aug.csv", REPORT.replace("2026-07", "2026-08"));
        Run entered = run("import", next);
        assertThat(entered.code()).isZero();
        assertThat(entered.err()).isEmpty();
        evidenced(3, 4, 8, 9);
        assertThat(boxes("2026-09"))
                .isEqualTo("1=60.00 2=0.00 3=60.00 4=20.00 5=40.00 6=300 7=100 8=0 9=0");
        assertThat(run("verify").out()).endsWith("All is as it must be.\n");
    }

    /** The same rows in an export that overlaps are the same, though the layout calls them more. */
    @Test
    void anExportThatOverlaps() throws IOException {
        decide("--query", QUERY, "--state", "kind=fee");
        Path longer =
                SmallBook.file(folder, "longer.csv", REPORT + "2026-08-01,Shelf bonus,,-12.00\n");
        assertThat(run("import", longer).out())
                .contains("longer.csv  purchases  corner-stall     6        1          5  -12.00")
                .endsWith("5 rows of earlier files, 0.00, entered once\n");
        assertThat(run("verify").out()).endsWith("All is as it must be.\n");
    }

    /** Of rows that all came before, and were asked about then, nothing is asked again. */
    @Test
    void anExportThatOverlapsBeforeDeciding() throws IOException {
        Path longer = SmallBook.file(folder, "longer.csv", REPORT + "2026-08-01,Sale,,12.00\n");
        assertThat(run("import", longer).err()).doesNotContain("Shelf bonus");
        decide("--query", QUERY, "--state", "kind=fee");
        assertThat(run("queries", "2026-09").out()).doesNotContain("kind-unknown");
        assertThat(run("verify").out()).endsWith("All is as it must be.\n");
    }

    /** A payout nobody knew as one is held against the other rows, as an import holds it. */
    @Test
    void aPayoutByDecision() throws IOException {
        String rows = REPORT.replace("Payout", "Swept").replaceAll(".*Shelf bonus.*\n", "");
        Path tied = SmallBook.file(folder, "tied.csv", rows.replace("-120.00", "-180.00"));
        assertThat(run("learn", tied, "--name", "swept", "--accept").code()).isZero();
        assertThat(run("import", "--layout", "swept", tied).code()).isZero();
        String query = "S2/kind-unknown/Type: Swept";
        assertThat(decide("--query", query, "--state", "kind=payout").out())
                .contains("answered: " + query)
                .doesNotContain("asked now");
        decide("--undo", "1");
        assertThat(decide("--entry", "8", "--state", "kind=payout").out())
                .doesNotContain("asked now");
        Path torn =
                SmallBook.file(
                        folder,
                        "torn.csv",
                        rows.replace("2026-07", "2026-08").replace("-120.00", "-181.50"));
        assertThat(run("import", "--layout", "swept", torn).code()).isZero();
        assertThat(decide("--query", "S3/kind-unknown/Type: Swept", "--state", "kind=payout").out())
                .contains("asked now: S3/payout-does-not-tie/torn.csv\n");
        assertThat(run("queries", "2026-09").out())
                .contains(
                        "settlement torn.csv states a payout of GBP 181.50; its other rows, 2 of them, sum to 180.00; the difference is 1.50: which rows are missing, or which are not of this settlement?");
        assertThat(decide("--entry", "11", "--state", "kind=transfer").out())
                .contains("answered: S3/payout-does-not-tie/torn.csv\n");
    }

    /** A payout that was none: its settlement states no payout any more. */
    @Test
    void noPayoutByDecision() {
        assertThat(decide("--entry", "5", "--state", "kind=transfer").out())
                .doesNotContain("asked now");
        assertThat(decide("--entry", "5", "--state", "kind=fee").out())
                .doesNotContain("payout-does-not-tie");
    }

    /** A second thought counts; the first need not be taken back before. */
    @Test
    void decidedAnew() throws IOException {
        decide("--query", QUERY, "--state", "kind=fee");
        assertThat(decide("--query", QUERY, "--state", "kind=transfer").out())
                .endsWith(
                        """
                        In 2026-09:
                          answered: E3/supplier-country-missing
                          answered: E4/supplier-country-missing
                          No query is open.

                        The layout corner-stall says so too: 'Type: Shelf bonus' is transfer, for files to come.
                        """);
        assertThat(decide("--undo", "2").out())
                .endsWith("'Type: Shelf bonus' is fee, for files to come.\n");
    }

    @Test
    void takenBack() throws IOException {
        String layout = Files.readString(book.resolve("layouts/corner-stall.yaml"));
        String before = boxes("2026-09");
        decide("--query", QUERY, "--state", "kind=fee");
        assertThat(decide("--undo", "1").out())
                .endsWith(
                        """
                        In 2026-09:
                          answered: E3/supplier-country-missing
                          answered: E4/supplier-country-missing
                          asked now: S1/kind-unknown/Type: Shelf bonus
                          1 query is still open.

                        The layout corner-stall asks again what 'Type: Shelf bonus' is.
                        """);
        assertThat(boxes("2026-09")).isEqualTo(before);
        assertThat(Files.readString(book.resolve("layouts/corner-stall.yaml"))).isEqualTo(layout);
    }

    /** What was decided on one row alone stays, and is told. */
    @Test
    void decidedOnOneAndThenOnAll() {
        decide("--entry", "4", "--state", "kind=transfer");
        assertThat(decide("--query", QUERY, "--state", "kind=fee").out())
                .contains("\n1 entry stays as decided on it alone: 4.\n");
        decide("--entry", "3", "--state", "kind=reserve");
        assertThat(decide("--query", QUERY, "--state", "kind=expense").out())
                .contains("\n2 entries stay as decided on each alone: 3, 4.\n");
    }

    /** Money that goes the other way makes reversals: a slip in the kind is told at once. */
    @Test
    void moneyAgainstItsKind() {
        assertThat(decide("--query", QUERY, "--state", "kind=compensation").out())
                .contains(
                        "\nThe money of 2 entries goes the other way than that of such rows, so they are reversals: 3, 4. If that is not meant, the kind is another.\n");
        assertThat(decide("--entry", "3", "--state", "kind=sale").out())
                .contains(
                        "\nThe money of 1 entry goes the other way than that of such rows, so it is a reversal: 3. If that is not meant, the kind is another.\n");
        assertThat(decide("--entry", "3", "--state", "kind=transfer").out())
                .doesNotContain("reversal");
        assertThat(decide("--query", QUERY, "--state", "kind=sale", "--json").out())
                .contains("\"closed\":[],\"own\":[3],\"against\":[4],\"layout\":");
        assertThat(decide("--undo", "1").out()).doesNotContain("reversal");
    }

    /** Each of its entries may be of another kind; then the question is answered too. */
    @Test
    void decidedOnEachEntry() {
        assertThat(decide("--entry", "3", "--state", "kind=fee").out())
                .contains("asked now: E3/supplier-country-missing\n")
                .doesNotContain("answered", "layout");
        assertThat(decide("--entry", "4", "--state", "kind=transfer").out())
                .contains("answered: " + QUERY + "\n");
        assertThat(run("ledger", "--json").out().lines())
                .filteredOn(line -> line.contains("\"number\":4,"))
                .singleElement()
                .asString()
                .contains("\"kind\":\"transfer\"", "\"gross\":\"-36.00\"");
    }

    /** A closed return stays; what is wrong in it is an error of the next: reg 34. */
    @Test
    void afterTheClose() {
        SmallBook.setAside(book, QUERY);
        assertThat(run("close", "2026-09").code()).isZero();
        assertThat(decide("--query", QUERY, "--state", "kind=fee").out())
                .contains(
                        """
                        2 entries are in 2026-09, which is closed: that return does not change.
                        What would be different there is taken up as a correction in the next open period, 2026-12.
                        """);
        evidenced(3, 4);
        assertThat(boxes("2026-09"))
                .isEqualTo("1=30.00 2=0.00 3=30.00 4=0.00 5=30.00 6=150 7=0 8=0 9=0");
        // boxes 6 to 9 are left as they are by the book's choice
        assertThat(boxes("2026-12"))
                .isEqualTo("1=0.00 2=0.00 3=0.00 4=10.00 5=10.00 6=0 7=0 8=0 9=0");
        assertThat(run("vouch", "3").out())
                .contains("Treated as money-only by rule M03")
                .contains("Treated as uk-purchase by rule U15a")
                .contains("  Value without VAT      20.00\n  VAT                    4.00\n")
                .contains("  Adds to box 4          4.00\n  Belongs to             2026-09\n");
        assertThat(run("return", "2026-12").out()).contains("10.00");
        assertThat(run("verify").out()).endsWith("All is as it must be.\n");
        decide("--undo", "2");
        assertThat(boxes("2026-12"))
                .isEqualTo("1=0.00 2=0.00 3=0.00 4=0.00 5=0.00 6=0 7=0 8=0 9=0");
    }

    /** What is wrong is told whole; nothing is recorded. */
    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    2  | --entry;3;--state;kind=banana | --state: found 'kind=banana'; expected for kind one of sale, sale-refund, delivery, delivery-refund, discount, discount-reversed, private-use, gift, fuel-scale, voucher, voucher-redeemed, stock-on-hand, fee, fee-refund, purchase, purchase-credit, expense, expense-credit, import-vat-paid, import-vat-postponed, import-duty, stock-moved, payout, reserve, compensation, customer-payment, supplier-payment, transfer, bank-line, other-money, such as fee
                    2  | --entry;3;--state;kind=gift | --state: found 'kind=gift', a kind that moves no money; expected one that moves some, as entry 3 of kind other-money does: sale, sale-refund, delivery, delivery-refund, discount, discount-reversed, voucher, fee, fee-refund, purchase, purchase-credit, expense, expense-credit, import-vat-paid, import-duty, payout, reserve, compensation, customer-payment, supplier-payment, transfer, bank-line, other-money, such as fee
                    2  | --entry;3;--state;kind=other-money | --state: found 'kind=other-money', which the entry is already; expected another kind, such as kind=fee
                    2  | --query;S1/kind-unknown/Type: Shelf bonus;--state;kind=other-money | --state: found 'kind=other-money', which its entries are already; expected another kind, such as kind=fee
                    2  | --query;S1/kind-unknown/Type: Shelf bonus;--state;rate=20 | --query: found --state with it; expected --set-aside alone, or the entry the question is about, such as --entry 4
                    2  | --query;S1/kind-unknown/Type: Shelf bonus;--disallow | --query: found --disallow with it; expected --set-aside alone, or the entry the question is about, such as --entry 4
                    2  | --query;S1/no-such/x;--state;kind=fee | --query: found --state with it; expected --set-aside alone, or the entry the question is about, such as --entry 4
                    65 | --query;S1/kind-unknown/Type: Other;--state;kind=fee | --query: found 'S1/kind-unknown/Type: Other'; expected the name of a query that is asked, as the command queries lists it
                    2  | --party;Corner;--state;kind=fee | --party: found 'Corner'; expected a party or channel as the ledger has it, and it has none
                    65 | --entry;99;--state;kind=fee | --entry: found 99; expected the number of an entry, 1 to 5
                    """)
    void refused(int code, String what, String message) {
        Run run = decide(what.split(";", -1));
        assertThat(run.err().lines().findFirst().orElse("")).isEqualTo(message);
        if (!what.startsWith("--party")) {
            assertThat(run.code()).isEqualTo(code);
        }
        assertThat(run("decisions").out()).isEqualTo("No decision is recorded.\n");
    }

    /** A kind of many entries at once is asked of their report, and of nobody's entries. */
    @Test
    void notOfAParty() throws IOException {
        SmallBook.enter(book, SmallBook.file(folder, "quarter.csv", SmallBook.QUARTER));
        assertThat(decide("--party", "Corner Shop", "--state", "kind=fee").err())
                .startsWith(
                        "--state: found 'kind=fee' with --party; expected one entry, such as --entry 4, or with --query the question that asks what rows are\n");
    }

    /** What was decided of an entry as a fee would say nothing of it as a transfer. */
    @Test
    void whatGoesByTheKind() {
        decide("--query", QUERY, "--state", "kind=fee");
        decide("--entry", "3", "--disallow");
        assertThat(decide("--undo", "1").err())
                .startsWith(
                        "--undo: found decision 2, disallow of entry 3, which goes by the kind that the entry has; expected it taken back first: --undo 2\n");
        assertThat(decide("--query", QUERY, "--state", "kind=transfer").err())
                .startsWith(
                        "--state: found decision 2, disallow of entry 3, which goes by the kind that the entry has; expected it taken back first: --undo 2\n");
        assertThat(decide("--entry", "3", "--state", "kind=expense").err())
                .startsWith("--state: found decision 2, disallow of entry 3,");
        assertThat(decide("--entry", "4", "--state", "kind=expense").code()).isZero();
        decide("--undo", "2");
        assertThat(decide("--undo", "1").code()).isZero();
    }
}

package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What people read, whole, on a small book. */
class TextTest {

    private static final String CAUTION =
            """
            These figures are prepared for checking by a qualified person against current guidance and local law before anything is declared.
            They are not tax, legal or accounting advice, and the law tables behind them may be out of date or incomplete.
            Nothing is filed or paid: no return is sent to any tax authority.
            """;

    private static final String RETURN =
            """
            Fernmoor Crafts, GB101747696
            VAT return 2026-09, 1 July 2026 to 30 September 2026, draft

              1  VAT due on sales and other outputs                                  24.00
              2  VAT due on goods acquired in Northern Ireland from EU
                 member states                                                        0.00
              3  Total VAT due: box 1 plus box 2                                     24.00
              4  VAT reclaimed on purchases and other inputs, goods
                 acquired from the EU included                                       16.00
              5  Difference between box 3 and box 4                                   8.00
              6  Total value of sales and all other outputs, without VAT               120
              7  Total value of purchases and all other inputs, without
                 VAT                                                                   100
              8  Value of goods dispatched from Northern Ireland to EU
                 member states and related costs, without VAT                            0
              9  Value of goods acquired in Northern Ireland from EU
                 member states and related costs, without VAT                            0

            Pay 8.00 by 7 November 2026.
            1 query is open: quarterfold queries 2026-09

            """;

    @TempDir private static Path folder;
    private static Path book = Path.of("");
    private static Run imported = new Run(0, "", "");

    @BeforeAll
    static void makesTheBook() throws IOException {
        book = SmallBook.empty(folder);
        imported =
                Run.of(
                        "--book",
                        book,
                        "import",
                        SmallBook.file(folder, "quarter.csv", SmallBook.QUARTER));
    }

    @Test
    void imported() {
        assertThat(imported)
                .isEqualTo(
                        done(
                                """
                                file         kind   layout       rows  entries  set aside   money
                                quarter.csv  mixed  plain-sheet     6        6          0  -51.00  ties
                                """));
    }

    @Test
    void importedAgain() {
        assertThat(run("import", folder.resolve("quarter.csv")))
                .isEqualTo(
                        done(
                                """
                                file         kind   layout       rows  entries  set aside  money
                                quarter.csv  mixed  plain-sheet     6        6          0         already there as source 1: nothing changed
                                """));
    }

    /** A bad file says everything that is wrong with it; the good one beside it is entered. */
    @Test
    void badFileIsRefusedAndTheNextOneEntered(@TempDir Path other) throws IOException {
        Path mixed = SmallBook.empty(other);
        Path bad =
                SmallBook.file(
                        other,
                        "bad.csv",
                        """
                        date,kind,gross
                        2026-07-03,sale,£5
                        3 July,sail,1.00
                        2026-07-04,sale,1.00
                        """);
        Path good = SmallBook.file(other, "quarter.csv", SmallBook.QUARTER);

        assertThat(Run.of("--book", mixed, "import", bad, good))
                .isEqualTo(
                        new Run(
                                65,
                                """
                                file         kind   layout       rows  entries  set aside   money
                                bad.csv             plain-sheet     3        0          0          refused: nothing was entered
                                quarter.csv  mixed  plain-sheet     6        6          0  -51.00  ties
                                2 files             entered now     6        6          0  -51.00  1 tie, 1 refused
                                """,
                                """
                                bad.csv:2 [gross]: found '£5'; expected an amount with at most 4 decimals, such as 1234.50
                                bad.csv:3 [date]: found '3 July'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30
                                bad.csv:3 [kind]: found 'sail'; expected one of sale, sale-refund, delivery, delivery-refund, discount, discount-reversed, private-use, gift, fuel-scale, voucher, voucher-redeemed, stock-on-hand, fee, fee-refund, purchase, purchase-credit, expense, expense-credit, import-vat-paid, import-vat-postponed, import-duty, stock-moved, payout, reserve, compensation, customer-payment, supplier-payment, transfer, bank-line, other-money, such as sale
                                """));
        assertThat(Run.of("--book", mixed, "ledger", "--json").out().lines()).hasSize(6);
        assertThat(mixed.resolve("sources").toFile().list()).hasSize(1);
    }

    @Test
    void draftReturn() {
        assertThat(run("return", "2026-09")).isEqualTo(done(RETURN + CAUTION));
    }

    @Test
    void returnToBeRepaidAndReturnOfNothing(@TempDir Path other) throws IOException {
        Path repaid = SmallBook.empty(other);
        SmallBook.enter(
                repaid,
                SmallBook.file(
                        other,
                        "stock.csv",
                        """
                        date,kind,document,party,party_country,party_vat,category,net,vat,gross,rate,evidence
                        2026-08-01,purchase,P-1,Fernmoor Pottery Ltd,GB,GB000472729,stock,5000.00,1000.00,6000.00,20,invoice
                        """));
        assertThat(Run.of("--book", repaid, "return", "2026-09").out())
                .contains("\n1,000.00 to be repaid; the return is due by 7 November 2026.\n\n");
        assertThat(Run.of("--book", repaid, "return", "2026-12").out())
                .contains("\nNothing to pay; the return is due by 7 February 2027.\n\n");
    }

    @Test
    void closed(@TempDir Path other) throws IOException {
        Path closing = SmallBook.quarter(other);
        SmallBook.setAside(closing, "E4/evidence-missing");
        String closed =
                RETURN.replace("draft", "closed")
                        .replace("1 query is open: quarterfold queries 2026-09\n", "");
        assertThat(Run.of("--book", closing, "close", "2026-09").calling(closing, "BOOK"))
                .isEqualTo(
                        done(
                                closed
                                        + "Closed. The working papers are in BOOK/papers/2026-09\n\n"
                                        + CAUTION));
        assertThat(Run.of("--book", closing, "return", "2026-09"))
                .isEqualTo(done(closed + CAUTION));
        assertThat(Run.of("--book", closing, "papers", "2026-09").calling(closing, "BOOK"))
                .isEqualTo(done("The working papers are in BOOK/papers/2026-09\n"));
    }

    @Test
    void draftPapersHaveAFolderOfTheirOwn() {
        assertThat(run("papers", "2026-09").calling(book, "BOOK"))
                .isEqualTo(done("The working papers are in BOOK/papers/2026-09-draft\n"));
        assertThat(book.resolve("papers").toFile().list()).containsExactly("2026-09-draft");
        assertThat(book.resolve("papers/2026-09-draft/return.json").toFile()).exists();
    }

    @Test
    void queries() {
        assertThat(run("queries", "2026-09"))
                .isEqualTo(
                        done(
                                """
                                E4/evidence-missing  quarter.csv row 5
                                  No document is held for 24.00, so its VAT of 4.00 is not reclaimed. Find the invoice, or leave it out.
                                  quarterfold decide --entry 4 --evidence-seen invoice --why WHY --who NAME

                                1 query is open.
                                """));
        assertThat(run("queries", "2026-12")).isEqualTo(done("No query is open.\n"));
    }

    @Test
    void ledger() {
        assertThat(run("ledger"))
                .isEqualTo(
                        done(
                                """
                                   entry  date        kind                document          party                            net           VAT         gross  treatment
                                       1  2026-07-03  sale                W-1                                             100.00         20.00        120.00  uk-sale
                                       2  2026-07-20  sale-refund         W-1                                              10.00          2.00         12.00  uk-sale-reduced
                                       3  2026-08-01  purchase            P-1               Fernmoor Pottery Ltd           50.00         10.00         60.00  uk-purchase
                                       4  2026-08-09  expense             R-7               Corner Shop                    20.00          4.00         24.00  unclaimed
                                       5  2026-09-30  fee                 F-1               Adverts Abroad                 30.00          6.00         30.00  reverse-charge
                                       6  2026-09-30  payout                                                               45.00          0.00         45.00  money-only
                                """));
    }

    @Test
    void vouchedBox() {
        assertThat(run("vouch", "2026-09", "--box", "4"))
                .isEqualTo(
                        done(
                                """
                                Box 4 of 2026-09: VAT reclaimed on purchases and other inputs, goods acquired from the EU included
                                16.00 (exactly 16.00)

                                   entry  date        document            party                                 adds  rule   file and row
                                       3  2026-08-01  P-1                 Fernmoor Pottery Ltd                 10.00  U15a   quarter.csv row 4
                                       5  2026-09-30  F-1                 Adverts Abroad                        6.00  R10    quarter.csv row 6

                                R10   6.00 from 1 entry
                                      A service from abroad: the customer accounts for the VAT and reclaims it as far as it is deductible.
                                      VATA 1994 s.7A and s.8; VAT Notice 741A section 5 (secondary source)
                                U15a  10.00 from 1 entry
                                      Purchase in the United Kingdom with the evidence held: VAT as printed is reclaimed.
                                      VATA 1994 s.24 to s.26; VAT Regulations 1995 reg 29
                                """));
    }

    @Test
    void vouchedBoxThatIsWorkedOutOrEmpty() {
        assertThat(run("vouch", "2026-09", "--box", "5"))
                .isEqualTo(
                        done(
                                """
                                Box 5 of 2026-09: Difference between box 3 and box 4
                                8.00 (exactly 8.00)

                                It is worked out from boxes 3 and 4: vouch those.
                                """));
        assertThat(run("vouch", "2026-09", "--box", "9"))
                .isEqualTo(
                        done(
                                """
                                Box 9 of 2026-09: Value of goods acquired in Northern Ireland from EU member states and related costs, without VAT
                                0 (exactly 0.00)

                                No entry adds to it.
                                """));
    }

    @Test
    void vouchedEntry() {
        assertThat(run("vouch", "4"))
                .isEqualTo(
                        done(
                                """
                                Entry 4: expense of 9 August 2026

                                  From                   quarter.csv, row 5
                                  Read as                plain-sheet
                                  SHA-256                d35fdbb4f181da6f6244bfbff2905e9ad69c1d8bc86f689386fd65a2909b95ed
                                  Document               R-7
                                  Party                  Corner Shop
                                  Party's country        GB
                                  Description            Paper
                                  Category               stationery
                                  Evidence               missing
                                  Printed                net -, VAT -, gross 24.00, GBP, rate 20

                                Treated as unclaimed by rule U07a: No document that supports a reclaim: the VAT stays out of box 4.
                                  Authority              VAT Regulations 1995 reg 29(2); VATA 1994 s.24(6): evidence is held before VAT is reclaimed
                                  Rate                   20%
                                  Value without VAT      20.00
                                  VAT                    4.00
                                  Evidence               none
                                                         missing: Nothing is held: no claim until a document is; other proof is at the discretion of the authority
                                  Adds to box 7          20.00
                                  Period                 2026-09, open

                                Open query E4/evidence-missing:
                                  No document is held for 24.00, so its VAT of 4.00 is not reclaimed. Find the invoice, or leave it out.
                                """));
    }

    @Test
    void vouchedEntryOutsideTheBoxes() {
        assertThat(run("vouch", "6"))
                .isEqualTo(
                        done(
                                """
                                Entry 6: payout of 30 September 2026

                                  From                   quarter.csv, row 7
                                  Read as                plain-sheet
                                  SHA-256                d35fdbb4f181da6f6244bfbff2905e9ad69c1d8bc86f689386fd65a2909b95ed
                                  Description            To the bank
                                  Evidence               unstated
                                  Printed                net -, VAT -, gross 45.00, GBP

                                Treated as money-only by rule M03: Money that moves without a supply: a payout, a reserve, a payment of a document, a transfer, wages, drawings, a loan.
                                  Authority              VAT Notice 700/12 boxes 6 and 7 (from memory); the tax authority's page on boxes 6 and 7
                                  Value without VAT      45.00
                                  VAT                    0.00
                                  It is in no box.
                                  Period                 2026-09, open
                                """));
    }

    /** A draft changes nothing: asking leaves the book as it was. */
    @ParameterizedTest
    @ValueSource(strings = {"return 2026-09", "queries 2026-09", "vouch 3", "ledger --json"})
    void askingTwiceGivesTheSame(String command) {
        Object[] words = command.split(" ", -1);
        assertThat(run(words)).isEqualTo(run(words));
    }

    private static Run run(Object... args) {
        Object[] all = new Object[args.length + 2];
        all[0] = "--book";
        all[1] = book;
        System.arraycopy(args, 0, all, 2, args.length);
        return Run.of(all);
    }

    private static Run done(String out) {
        return new Run(0, out, "");
    }
}

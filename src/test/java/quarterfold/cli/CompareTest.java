package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A return beside earlier ones, and the VAT account behind it, as people read them. */
class CompareTest {

    private static final String CAUTION =
            """

            These figures are prepared for checking by a qualified person against current guidance and local law before anything is declared.
            They are not tax, legal or accounting advice, and the law tables behind them may be out of date or incomplete.
            Nothing is filed or paid: no return is sent to any tax authority.
            """;

    @TempDir private Path folder;

    @Test
    void besideThePeriodBefore() throws IOException {
        Path book = SmallBook.quarter(folder);
        SmallBook.setAside(book, "E4/evidence-missing");
        assertThat(Run.of("--book", book, "close", "2026-09").code()).isZero();
        SmallBook.enter(
                book,
                SmallBook.file(
                        folder,
                        "next.csv",
                        """
                        date,kind,document,party,party_country,party_vat,category,net,vat,gross,rate,evidence
                        2026-10-03,sale,,,,,,,,60.00,20,
                        2026-11-01,purchase,P-2,Fernmoor Pottery Ltd,GB,GB000472729,stock,500.00,100.00,600.00,20,invoice
                        """));
        assertThat(Run.of("--book", book, "return", "2026-12", "--compare"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                Fernmoor Crafts, GB101747696
                                VAT return 2026-12, draft, beside earlier ones

                                The period before, 2026-09, closed

                                  box           2026-12         2026-09      difference
                                  1               10.00           24.00          -14.00
                                  2                0.00            0.00            0.00
                                  3               10.00           24.00          -14.00
                                  4              100.00           16.00          +84.00
                                  5               90.00            8.00          -98.00
                                  6                  50             120             -70
                                  7                 500             100            +400
                                  8                   0               0               0
                                  9                   0               0               0
                                  In 2026-12 the money is to be repaid.

                                  What changed box 1 by -14.00, before rounding:
                                    treatment                                difference  2026-12  2026-09
                                    uk-sale                                      -10.00        1        1
                                    reverse-charge                                -6.00        0        1
                                    uk-sale-reduced                               +2.00        0        1
                                    entry 1        2026-07-03                                      20.00  in 2026-09
                                    entry 7        2026-10-03                                      10.00  in 2026-12
                                    entry 5        2026-09-30  Adverts Abroad                       6.00  in 2026-09

                                  What changed box 4 by +84.00, before rounding:
                                    treatment                                difference  2026-12  2026-09
                                    uk-purchase                                  +90.00        1        1
                                    reverse-charge                                -6.00        0        1
                                    entry 8        2026-11-01  Fernmoor Pottery Ltd               100.00  in 2026-12
                                    entry 3        2026-08-01  Fernmoor Pottery Ltd                10.00  in 2026-09
                                    entry 5        2026-09-30  Adverts Abroad                       6.00  in 2026-09

                                  What changed box 6 by -70.00, before rounding:
                                    treatment                                difference  2026-12  2026-09
                                    uk-sale                                      -50.00        1        1
                                    reverse-charge                               -30.00        0        1
                                    uk-sale-reduced                              +10.00        0        1
                                    entry 1        2026-07-03                                     100.00  in 2026-09
                                    entry 7        2026-10-03                                      50.00  in 2026-12
                                    entry 5        2026-09-30  Adverts Abroad                      30.00  in 2026-09

                                  What changed box 7 by +400.00, before rounding:
                                    treatment                                difference  2026-12  2026-09
                                    uk-purchase                                 +450.00        1        1
                                    reverse-charge                               -30.00        0        1
                                    unclaimed                                    -20.00        0        1
                                    entry 8        2026-11-01  Fernmoor Pottery Ltd               500.00  in 2026-12
                                    entry 3        2026-08-01  Fernmoor Pottery Ltd                50.00  in 2026-09
                                    entry 5        2026-09-30  Adverts Abroad                      30.00  in 2026-09

                                The same period last year: none, or nothing is in it.
                                """
                                        + CAUTION,
                                ""));
    }

    /** The first period of a book has nothing before it. */
    @Test
    void besideNothingAndBesideLastYear() throws IOException {
        Path book = SmallBook.quarter(folder);
        assertThat(Run.of("--book", book, "return", "2024-03", "--compare").out())
                .isEqualTo(
                        """
                        Fernmoor Crafts, GB101747696
                        VAT return 2024-03, draft, beside earlier ones

                        The period before: none, or nothing is in it.

                        The same period last year: none, or nothing is in it.
                        """
                                + CAUTION);
        SmallBook.enter(
                book,
                SmallBook.file(
                        folder, "year.csv", "date,kind,gross,rate\n2025-08-01,sale,240.00,20\n"));
        Map<String, String> json =
                Json.flat(Run.of("--book", book, "return", "2026-09", "--compare", "--json").out());
        assertThat(json)
                .containsEntry("period", "2026-09")
                .containsEntry("last_year/period", "2025-09")
                .containsEntry("last_year/status", "draft")
                .containsEntry("last_year/boxes/1/now", "24.00")
                .containsEntry("last_year/boxes/1/then", "40.00")
                .containsEntry("last_year/boxes/1/difference", "-16.00")
                .containsEntry("last_year/boxes/1/treatments/0/treatment", "uk-sale")
                .containsEntry("last_year/boxes/1/treatments/0/difference", "-20.00")
                .containsEntry("last_year/boxes/1/largest/0/entry", "7")
                .containsEntry("last_year/boxes/1/largest/0/period", "2025-09");
        assertThat(json.keySet()).noneMatch(path -> path.startsWith("before/"));
    }

    @Test
    void vatAccount() throws IOException {
        Path book = SmallBook.quarter(folder);
        assertThat(Run.of("--book", book, "return", "2026-09", "--account"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                Fernmoor Crafts, GB101747696
                                VAT account 2026-09, 1 July 2026 to 30 September 2026, draft

                                  VAT payable portion                                           entries              VAT
                                  Output tax on sales and other supplies                              2            18.00
                                    VAT Regulations 1995 reg 32(3)(a)
                                  VAT on services from abroad, accounted for by the
                                  customer                                                            1             6.00
                                    VAT Regulations 1995 reg 32(3)(a); VATA 1994 s.8: treated as the customer's own supply
                                  Total                                                                            24.00
                                  On the return: boxes 1 and 2                                                     24.00

                                  VAT allowable portion                                         entries              VAT
                                  Input tax on purchases and other inputs                             1            10.00
                                    VAT Regulations 1995 reg 32(4)(a)
                                  VAT on services from abroad, deducted by the customer               1             6.00
                                    VAT Regulations 1995 reg 32(4)(a)
                                  Total                                                                            16.00
                                  On the return: box 4                                                             16.00
                                """
                                        + CAUTION,
                                ""));
        assertThat(Run.of("--book", book, "return", "2026-09", "--account", "--compare").err())
                .startsWith(
                        "found --compare and --account; expected one of them, such as --compare\n");
    }
}

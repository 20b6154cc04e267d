package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The deadlines command, whole. Days and costs are proved by the published examples. */
class DeadlinesTextTest {

    private static final String CAUTION =
            """
            These figures are prepared for checking by a qualified person against current guidance and local law before anything is declared.
            They are not tax, legal or accounting advice, and the law tables behind them may be out of date or incomplete.
            Nothing is filed or paid: no return is sent to any tax authority.
            """;

    @TempDir private static Path folder;
    private static Path book = Path.of("");

    /** VAT of 10,000.00 in one sale, as in T-713 and T-716. */
    @BeforeAll
    static void makesTheBook() throws IOException {
        book = SmallBook.empty(folder);
        SmallBook.enter(
                book,
                SmallBook.file(
                        folder, "sale.csv", "date,kind,gross,rate\n2026-07-03,sale,60000.00,20\n"));
    }

    private static Run run(Object... args) {
        Object[] all = new Object[args.length + 3];
        all[0] = "--book";
        all[1] = book;
        all[2] = "deadlines";
        System.arraycopy(args, 0, all, 3, args.length);
        return Run.of(all);
    }

    @Test
    void aroundADay() {
        assertThat(run("--today", "2026-10-20", "--paid-on", "2027-01-05"))
                .isEqualTo(
                        new Run(
                                0,
                                """
Deadlines, seen from 20 October 2026

2026-09, 1 July 2026 to 30 September 2026, draft
  Return due         Sat 7 November 2026

  10,000.00 to pay with the return, as the figures stand; this book pays by faster-payment
  faster-payment     there by Sat 7 November 2026
  direct-debit       set up before the return is sent, by Tue 3 November 2026 (another official text: Wed 4 November 2026)
                     taken Wed 11 November 2026
  card               send by Wed 4 November 2026; there by Fri 6 November 2026
  chaps              there by Fri 6 November 2026
  bacs               send by Wed 4 November 2026; there by Fri 6 November 2026

  If all is paid late                       penalty     interest     together
  day 1, Sun 8 November 2026                   0.00         2.12         2.12
  day 16, Mon 23 November 2026               300.00        33.97       333.97
  day 31, Tue 8 December 2026                602.74        65.82       668.56
  day 40, Thu 17 December 2026               627.40        84.93       712.33
  day 59, Tue 5 January 2027                 679.45       125.27       804.72
  Interest is at 7.75% a year, the newest rate in the tables, from 9 January
  2026; look for a later one.

  A late return: 1 of 4 points (quarterly returns), no penalty yet. The point is
  gone at the end of 30 November 2028.

2026-12, 1 October 2026 to 31 December 2026, draft
  Return due         Sun 7 February 2027

  Nothing to pay with the return, as the figures stand; this book pays by faster-payment
  faster-payment     there by Sun 7 February 2027
  direct-debit       set up before the return is sent, by Tue 2 February 2027 (another official text: Wed 3 February 2027)
                     taken Wed 10 February 2027
  card               send by Wed 3 February 2027; there by Fri 5 February 2027
  chaps              there by Fri 5 February 2027
  bacs               send by Wed 3 February 2027; there by Fri 5 February 2027

  A late return: 1 of 4 points (quarterly returns), no penalty yet. The point is
  gone at the end of 28 February 2029.

"""
                                        + CAUTION,
                                ""));
    }

    @Test
    void onePeriodAtTheThreshold() {
        assertThat(
                        run(
                                "2026-09",
                                "--today",
                                "2026-10-20",
                                "--points",
                                "3",
                                "--paid-on",
                                "2026-11-07"))
                .isEqualTo(
                        new Run(
                                0,
                                """
Deadlines, seen from 20 October 2026

2026-09, 1 July 2026 to 30 September 2026, draft
  Return due         Sat 7 November 2026

  10,000.00 to pay with the return, as the figures stand; this book pays by faster-payment
  faster-payment     there by Sat 7 November 2026
  direct-debit       set up before the return is sent, by Tue 3 November 2026 (another official text: Wed 4 November 2026)
                     taken Wed 11 November 2026
  card               send by Wed 4 November 2026; there by Fri 6 November 2026
  chaps              there by Fri 6 November 2026
  bacs               send by Wed 4 November 2026; there by Fri 6 November 2026

  If all is paid late                       penalty     interest     together
  day 1, Sun 8 November 2026                   0.00         2.12         2.12
  day 16, Mon 23 November 2026               300.00        33.97       333.97
  day 31, Tue 8 December 2026                602.74        65.82       668.56
  day 40, Thu 17 December 2026               627.40        84.93       712.33
  Paid by 7 November 2026 it is not late.
  Interest is at 7.75% a year, the newest rate in the tables, from 9 January
  2026; look for a later one.

  A late return: 4 of 4 points (quarterly returns), a penalty of 200.00. All
  points go after every return is on time from 1 December 2026 to 30 November
  2027 and those due in the 24 months before are in.

"""
                                        + CAUTION,
                                ""));
    }

    @Test
    void asJson() {
        assertThat(run("2026-09", "--today", "2026-10-20", "--points", "3", "--json"))
                .isEqualTo(
                        new Run(
                                0,
                                """
{"period":{"name":"2026-09","start":"2026-07-01","end":"2026-09-30","due":"2026-11-07"},"status":"draft","owed":"10000.00","last_day":"2026-11-07","interims":[],"payments":[{"method":"faster-payment","act_by":"2026-11-07","arrives_by":"2026-11-07"},{"method":"direct-debit","act_by":"2026-11-03","other_act_by":"2026-11-04","arrives_by":"2026-11-07","taken":"2026-11-11"},{"method":"card","act_by":"2026-11-04","arrives_by":"2026-11-06"},{"method":"chaps","act_by":"2026-11-06","arrives_by":"2026-11-06"},{"method":"bacs","act_by":"2026-11-04","arrives_by":"2026-11-06"}],"late":[{"day":1,"paid_on":"2026-11-08","penalty":"0.00","interest":"2.12"},{"day":16,"paid_on":"2026-11-23","penalty":"300.00","interest":"33.97"},{"day":31,"paid_on":"2026-12-08","penalty":"602.74","interest":"65.82"},{"day":40,"paid_on":"2026-12-17","penalty":"627.40","interest":"84.93"}],"late_return":{"frequency":"quarterly","points_before":3,"points_after":4,"threshold":4,"penalty":"200.00","on_time_from":"2026-12-01","on_time_to":"2027-11-30"}}
""",
                                ""));
    }

    @Test
    void beforeTheRegistration() {
        assertThat(run("--today", "2023-12-31"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                Deadlines, seen from 31 December 2023

                                No period is open or due then. Name one: quarterfold deadlines 2026-09

                                """
                                        + CAUTION,
                                ""));
    }

    /** A year under annual accounting, paid by direct debit. */
    @Test
    void aYearWithInstalments(@TempDir Path other) throws IOException {
        Path annual = SmallBook.empty(other);
        setting(
                annual,
                "annual_accounting",
                "{from: 2026-04-01, instalments: quarterly, last_year_vat: 8000.00}");
        setting(annual, "pays_by", "direct-debit");
        assertThat(Run.of("--book", annual, "deadlines", "2027-03", "--today", "2026-10-20"))
                .isEqualTo(
                        new Run(
                                0,
                                """
Deadlines, seen from 20 October 2026

2027-03, 1 April 2026 to 31 March 2027, draft
  Return due         Mon 31 May 2027
  Payment within     Fri 31 July 2026; 2,000.00
  Payment within     Fri 30 October 2026; 2,000.00
  Payment within     Fri 29 January 2027; 2,000.00

  Nothing to pay with the return, as the figures stand; this book pays by direct-debit
  direct-debit       set up before the return is sent, by Tue 25 May 2027 (another official text: Wed 26 May 2027)
                     no text read says when it is taken
  faster-payment     there by Fri 28 May 2027
  card               send by Wed 26 May 2027; there by Fri 28 May 2027
  chaps              there by Fri 28 May 2027
  bacs               send by Wed 26 May 2027; there by Fri 28 May 2027

  A late return: 1 of 2 points (annual returns), no penalty yet. The point is
  gone at the end of 30 June 2029.

"""
                                        + CAUTION,
                                ""));
    }

    /** The default surcharge of before 2023 is in no table. */
    @Test
    void aPeriodBeforeTheTables(@TempDir Path other) throws IOException {
        Path old = SmallBook.empty(other);
        setting(old, "registered_from", "2020-01-01");
        SmallBook.enter(
                old,
                SmallBook.file(
                        other, "sale.csv", "date,kind,gross,rate\n2022-07-03,sale,600.00,20\n"));
        assertThat(Run.of("--book", old, "deadlines", "2022-09", "--today", "2026-10-20"))
                .isEqualTo(
                        new Run(
                                0,
                                """
Deadlines, seen from 20 October 2026

2022-09, 1 July 2022 to 30 September 2022, draft
  Return due         Mon 7 November 2022

  100.00 to pay with the return, as the figures stand; this book pays by faster-payment
  faster-payment     there by Mon 7 November 2022
  direct-debit       set up before the return is sent, by Wed 2 November 2022 (another official text: Thu 3 November 2022)
                     taken Thu 10 November 2022
  card               send by Thu 3 November 2022; there by Mon 7 November 2022
  chaps              there by Mon 7 November 2022
  bacs               send by Thu 3 November 2022; there by Mon 7 November 2022

  If all is paid late                       penalty     interest     together
  day 1, Tue 8 November 2022              not known    not known    not known
  day 16, Wed 23 November 2022            not known    not known    not known
  day 31, Thu 8 December 2022             not known    not known    not known
  day 40, Sat 17 December 2022            not known    not known    not known
  The period began before the penalties in the tables; what held before, the
  default surcharge, is not worked out.
  The tables have no rate of interest for some of these days.

  A late return: the period began before points for late returns, and the tables
  have no penalty for it.

"""
                                        + CAUTION,
                                ""));
    }

    private static void setting(Path book, String name, String value) throws IOException {
        Path yaml = book.resolve("book.yaml");
        String before = Files.readString(yaml);
        String after = before.replaceFirst("(?m)^(# )?" + name + ": .*$", name + ": " + value);
        assertThat(after).isNotEqualTo(before);
        Files.writeString(yaml, after);
    }

    @Test
    void settingsThatDoNotFitTogetherAreRefused(@TempDir Path other) throws IOException {
        Path bad = SmallBook.empty(other);
        setting(bad, "scheme", "{2024-01-01: standard, 2026-07-15: cash}");
        assertThat(Run.of("--book", bad, "deadlines"))
                .isEqualTo(
                        new Run(
                                65,
                                "",
                                "book.yaml [scheme]: found a change of scheme on 2026-07-15, within the period from 2026-07-01 to 2026-09-30; expected the first day of a period, such as 2026-10-01\n"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    --today   | tomorrow | --today: found 'tomorrow'; expected year-month-day, such as 2026-10-31
                    --paid-on | 1.2.2026 | --paid-on: found '1.2.2026'; expected year-month-day, such as 2026-10-31
                    --points  | -1       | --points: found '-1'; expected a number of points, such as 3
                    """)
    void wrongUse(String option, String value, String message) {
        assertThat(run(option + "=" + value))
                .isEqualTo(new Run(2, "", message + "\nHelp: quarterfold deadlines --help\n"));
    }
}

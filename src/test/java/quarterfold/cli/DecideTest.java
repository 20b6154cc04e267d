package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.law.Law;
import quarterfold.law.TableFile;
import quarterfold.ledger.StatedFacts;

/** Decisions as people record them, and the close that waits for them. */
class DecideTest {

    @TempDir private Path folder;
    private Path book = Path.of("");

    @BeforeEach
    void aQuarter() throws IOException {
        book = SmallBook.quarter(folder);
    }

    /** What is wrong is told whole; nothing is recorded. */
    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
                    2  | --disallow                              | found none; expected one thing to decide about: --entry, --party, --product or --query, such as --entry 4
                    2  | --entry 4 --party Quaylark --disallow   | found --entry and --party; expected one thing to decide about: --entry, --party, --product or --query, such as --entry 4
                    2  | --entry 4                               | found none; expected one decision: --treat-as, --state, --evidence-seen, --disallow, --duplicate-of, --set-aside or --undo, such as --evidence-seen invoice
                    2  | --entry 4 --disallow --set-aside        | found --disallow and --set-aside; expected one decision: --treat-as, --state, --evidence-seen, --disallow, --duplicate-of, --set-aside or --undo, such as --evidence-seen invoice
                    2  | --entry 4 --undo 1                      | --undo: found --entry with it; expected the number of a decision alone, such as --undo 3
                    2  | --query E4/evidence-missing --disallow  | --query: found --disallow with it; expected --set-aside alone, or the entry the question is about, such as --entry 4
                    2  | --party Corner\u00a0Shop --duplicate-of 3 | --duplicate-of: found --party with it; expected one entry, such as --entry 4
                    65 | --entry 7 --disallow                    | --entry: found 7; expected the number of an entry, 1 to 6
                    65 | --entry four --disallow                 | --entry: found four; expected the number of an entry, 1 to 6
                    65 | --party Cornershop --disallow           | --party: found 'Cornershop'; expected a party or channel as the ledger has it, such as Corner Shop
                    65 | --product KETTLE --treat-as uk-sale     | --product: found 'KETTLE'; expected a product's code as the ledger has it, and it has none
                    65 | --query E3/evidence-missing --set-aside | --query: found 'E3/evidence-missing'; expected the name of a query that is asked, as the command queries lists it
                    2  | --entry 4 --evidence-seen bill          | --evidence-seen: found 'bill'; expected a kind of evidence.csv: invoice, simplified, none-needed, import-certificate, postponed-statement, export, self-billed, alternative, such as invoice
                    2  | --entry 4 --evidence-seen missing       | --evidence-seen: found 'missing'; expected a kind of evidence.csv: invoice, simplified, none-needed, import-certificate, postponed-statement, export, self-billed, alternative, such as invoice
                    2  | --entry 4 --state party_country=UK      | --state: found 'party_country=UK'; expected for party_country an ISO 3166 country code, or XI for Northern Ireland, such as GB
                    2  | --entry 4 --state held=soon             | --state: found 'held=soon'; expected for held a date such as 2026-09-30
                    65 | --entry 1 --disallow                    | --disallow: found a row of kind sale; expected a purchase, an expense, a fee or an import, whose VAT could be reclaimed, such as expense
                    65 | --entry 4 --duplicate-of 4              | --duplicate-of: found 4, the entry itself; expected the number of another entry of kind fee or purchase or expense or import-vat-paid or import-vat-postponed in GBP, 1 to 6
                    65 | --entry 4 --duplicate-of 1              | --duplicate-of: found 1, which is of kind sale in GBP; expected the number of another entry of kind fee or purchase or expense or import-vat-paid or import-vat-postponed in GBP, 1 to 6
                    65 | --entry 1 --duplicate-of 4              | --duplicate-of: found 4, which is of kind expense in GBP; expected the number of another entry of kind sale in GBP, 1 to 6
                    65 | --entry 4 --duplicate-of 99             | --duplicate-of: found 99; expected the number of another entry of kind fee or purchase or expense or import-vat-paid or import-vat-postponed in GBP, 1 to 6
                    65 | --undo 1                                | --undo: found 1; expected a decision to undo, and there is none
                    2  | --entry 4 --disallow --on 2026-02-30    | --on: found '2026-02-30'; expected year-month-day, such as 2026-10-31
                    """)
    void refused(int code, String what, String message) {
        Run run = decide(what.split(" ", -1));
        assertThat(run.err().lines().findFirst().orElse("")).isEqualTo(message);
        assertThat(run.code()).isEqualTo(code);
        assertThat(run.out()).isEmpty();
        assertThat(run("decisions").out()).isEqualTo("No decision is recorded.\n");
    }

    @Test
    void whyAndWhoAreNeeded() {
        Run noWhy = run("decide", "--entry", "4", "--disallow", "--who", "Anne");
        assertThat(noWhy.code()).isEqualTo(2);
        assertThat(noWhy.err())
                .startsWith(
                        "--why: found nothing; expected a reason, such as \"The invoice came by post\"\n");
        Run noWho = run("decide", "--entry", "4", "--disallow", "--why", "Lost", "--who", " ");
        assertThat(noWho.code()).isEqualTo(2);
        assertThat(noWho.err())
                .startsWith(
                        "--who: found nothing; expected a person's name, such as \"Anne Weaver\"\n");
    }

    /** A treatment of another kind of entry would put its money into the wrong boxes. */
    @Test
    void treatmentsThatDoNotFitTheKindAreRefused() {
        Run run = decide("--entry", "1", "--treat-as", "uk-purchase");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err())
                .startsWith(
                        "--treat-as: found 'uk-purchase'; expected a treatment of treatments.csv for a row of kind sale on 2026-07-03: ")
                .contains("export, ", "uk-sale")
                .doesNotContain("uk-purchase,", "disallowed", "duplicate,");
        assertThat(decide("--entry", "1", "--treat-as", "export").code()).isZero();
    }

    @Test
    void whatADecisionChangesIsTold() {
        assertThat(decide("--entry", "4", "--evidence-seen", "invoice"))
                .isEqualTo(
                        done(
                                """
                                Decision 1 of 5 October 2026 by Anne Weaver: entry 4, evidence-seen invoice
                                  Looked at

                                In 2026-09:
                                  answered: E4/evidence-missing
                                  asked now: E4/supplier-number-missing
                                  1 query is still open.
                                """));
        assertThat(decide("--party", "Corner Shop", "--state", "party_vat=GB000472729"))
                .isEqualTo(
                        done(
                                """
                                Decision 2 of 5 October 2026 by Anne Weaver: party Corner Shop, state party_vat=GB000472729
                                  Looked at

                                In 2026-09:
                                  box 4  16.00 -> 20.00
                                  box 5  8.00 -> 4.00
                                  answered: E4/supplier-number-missing
                                  No query is open.
                                """));
        assertThat(decide("--undo", "1").out())
                .isEqualTo(
                        """
                        Decision 3 of 5 October 2026 by Anne Weaver: entry 4, undo 1
                          Looked at

                        In 2026-09:
                          box 4  20.00 -> 16.00
                          box 5  4.00 -> 8.00
                          asked now: E4/evidence-missing
                          1 query is still open.
                        """);
        assertThat(run("decisions").out())
                .isEqualTo(
                        """
                        Decision 1 of 5 October 2026 by Anne Weaver: entry 4, evidence-seen invoice [undone by decision 3]
                          Looked at
                        Decision 2 of 5 October 2026 by Anne Weaver: party Corner Shop, state party_vat=GB000472729
                          Looked at
                        Decision 3 of 5 October 2026 by Anne Weaver: entry 4, undo 1
                          Looked at
                        3 decisions; 1 hold.
                        """);
        assertThat(decide("--undo", "1").err())
                .isEqualTo(
                        "--undo: found 1; expected the number of a decision that holds, such as 3\n");
    }

    @Test
    void json() {
        assertThat(decide("--entry", "5", "--disallow", "--json").out())
                .isEqualTo(
                        """
                        {"id":1,"target":"entry","about":"5","action":"disallow","value":"","why":"Looked at","who":"Anne Weaver","day":"2026-10-05",\
                        "changes":[{"period":"2026-09","boxes":{"4":["16.00","10.00"],"5":["8.00","14.00"]},"answered":[],"asked":[],"queries":1}],"closed":[]}
                        """);
        assertThat(decide("--entry", "3", "--disallow", "--json").out())
                .isEqualTo(
                        """
                        {"id":2,"target":"entry","about":"3","action":"disallow","value":"","why":"Looked at","who":"Anne Weaver","day":"2026-10-05",\
                        "changes":[{"period":"2026-09","boxes":{"4":["10.00","0.00"],"5":["14.00","24.00"]},"answered":[],"asked":[],"queries":1}],"closed":[]}
                        """);
        decide("--undo", "2");
        assertThat(run("decisions", "--json").out())
                .isEqualTo(
                        """
                        {"id":1,"target":"entry","about":"5","action":"disallow","value":"","why":"Looked at","who":"Anne Weaver","day":"2026-10-05","undone":false}
                        {"id":2,"target":"entry","about":"3","action":"disallow","value":"","why":"Looked at","who":"Anne Weaver","day":"2026-10-05","undone":true,"undone_by":3}
                        {"id":3,"target":"entry","about":"3","action":"undo","value":"2","why":"Looked at","who":"Anne Weaver","day":"2026-10-05","undone":false}
                        """);
    }

    @Test
    void aQuestionSetAsideIsAskedAgainOnceThatIsUndone() {
        SmallBook.setAside(book, "E4/evidence-missing");
        assertThat(run("queries", "2026-09").out()).endsWith("No query is open. 1 is set aside.\n");
        assertThat(decide("--undo", "1").out())
                .isEqualTo(
                        """
                        Decision 2 of 5 October 2026 by Anne Weaver: query E4/evidence-missing, undo 1
                          Looked at

                        In 2026-09:
                          asked now: E4/evidence-missing
                          1 query is still open.
                        """);
        assertThat(run("close", "2026-09").code()).isEqualTo(1);
    }

    /** Of two that are each other's duplicates none would count. */
    @Test
    void duplicatesDoNotGoRound() throws IOException {
        SmallBook.enter(
                book,
                SmallBook.file(
                        folder, "more.csv", "date,kind,gross,rate\n2026-07-03,sale,120.00,20\n"));
        assertThat(decide("--entry", "7", "--duplicate-of", "1").out())
                .contains("  box 1  44.00 -> 24.00\n", "  box 6  220 -> 120\n");
        assertThat(decide("--entry", "1", "--duplicate-of", "7").err())
                .isEqualTo(
                        "--duplicate-of: found 7, which decision 1 calls a duplicate of 1 itself, so that neither would count; expected the entry that counts, such as 1\n");
    }

    /** What a query suggests is a decision that can be recorded, once its words are filled in. */
    @Test
    void suggestedAnswersAreDecisions() {
        Law law = Law.of("GB");
        TableFile table =
                law.files().stream()
                        .filter(f -> f.name().equals("answers.csv"))
                        .findFirst()
                        .orElseThrow();
        List<String> rows = table.text().lines().skip(1).toList();
        assertThat(rows).hasSizeGreaterThan(20);
        for (String row : rows) {
            String query = row.substring(0, row.indexOf(','));
            String[] words = law.answer(query).orElseThrow().split(" ", -1);
            assertThat(law.query(query).question()).as(row).isNotEmpty();
            assertThat(words).as(row).hasSize(2);
            assertThat(words[0]).as(row).isIn("--state", "--evidence-seen");
            if (words[0].equals("--state")) {
                assertThat(words[1]).as(row).matches("[a-z_]+=[A-Z-]+");
                assertThat(StatedFacts.fields()).as(row).contains(words[1].replaceFirst("=.*", ""));
            } else {
                assertThat(law.evidence(words[1], LocalDate.of(2026, 9, 30))).as(row).isPresent();
            }
        }
        assertThat(law.answer("late")).isEmpty();
    }

    /** The day is today's in the book's zone where none is said. */
    @Test
    void today() {
        LocalDate before = LocalDate.now(ZoneId.of("Europe/London"));
        Run run =
                run(
                        "decide",
                        "--entry",
                        "4",
                        "--disallow",
                        "--why",
                        "Lost",
                        "--who",
                        "Anne",
                        "--json");
        LocalDate after = LocalDate.now(ZoneId.of("Europe/London"));
        assertThat(Json.flat(run.out()).get("day")).isIn(before.toString(), after.toString());
    }

    @Test
    void closeIsHeldUntilItsQueriesAreAnswered() throws IOException {
        SmallBook.enter(
                book,
                SmallBook.file(
                        folder,
                        "export.csv",
                        "date,kind,gross,from,to\n2026-09-02,sale,90.00,GB,US\n"));
        Run held = run("close", "2026-09");
        assertThat(held)
                .isEqualTo(
                        new Run(
                                1,
                                "",
                                """
                                2026-09 is not closed: 1 open query holds it, and nothing was written. Answer each, or leave it as it is with --set-aside.

                                E4/evidence-missing  quarter.csv row 5
                                  No document is held for 24.00, so its VAT of 4.00 is not reclaimed. Find the invoice, or leave it out.
                                  quarterfold decide --entry 4 --evidence-seen invoice --why WHY --who NAME

                                Open, but no close waits for it:

                                E7/export-evidence  export.csv row 2
                                  Export of 90.00 without evidence yet. It is zero-rated here; hold evidence of export within 3 months of 2026-09-02, or its VAT falls due then.
                                  quarterfold decide --entry 7 --evidence-seen export --why WHY --who NAME

                                """));
        assertThat(book.resolve("papers").toFile().list()).isEmpty();
        Map<String, String> json = Json.flat(run("close", "2026-09", "--json").out());
        assertThat(json)
                .containsEntry("status", "held")
                .containsEntry("queries/0/id", "E4/evidence-missing")
                .containsEntry("queries/0/holds_close", "true")
                .containsEntry(
                        "queries/0/decide",
                        "quarterfold decide --entry 4 --evidence-seen invoice --why WHY --who NAME")
                .containsEntry("queries/1/id", "E7/export-evidence")
                .containsEntry("queries/1/holds_close", "false");
        assertThat(Json.flat(run("return", "2026-09", "--json").out()))
                .containsEntry("status", "draft");

        SmallBook.setAside(book, "E4/evidence-missing");
        Run closed = run("close", "2026-09");
        assertThat(closed.code()).isZero();
        assertThat(closed.out())
                .contains(
                        """
                        1 query is open: quarterfold queries 2026-09

                        Open, but no close waits for it:

                        E7/export-evidence  export.csv row 2
                        """);
        assertThat(run("queries", "2026-09").out())
                .endsWith(
                        """
                        E4/evidence-missing  quarter.csv row 5
                          No document is held for 24.00, so its VAT of 4.00 is not reclaimed. Find the invoice, or leave it out.
                          set aside by Anne Weaver on 2026-10-05: The receipt is lost

                        1 query is open. 1 is set aside.
                        """);
        assertThat(run("queries", "2026-09", "--json").out().lines().map(Json::flat))
                .extracting(q -> q.get("state") + " " + q.getOrDefault("answer", "-"))
                .containsExactly(
                        "open -",
                        "set-aside set aside by Anne Weaver on 2026-10-05: The receipt is lost");
    }

    @Test
    void aDecisionOnAClosedEntryChangesNoClosedReturn() {
        SmallBook.setAside(book, "E4/evidence-missing");
        assertThat(run("close", "2026-09").code()).isZero();
        String closed = run("return", "2026-09", "--json").out();
        assertThat(decide("--entry", "3", "--disallow").out())
                .endsWith(
                        """

                        1 entry is in 2026-09, which is closed: that return does not change.
                        What would be different there is taken up as a correction in the next open period, 2026-12.
                        """);
        assertThat(run("return", "2026-09", "--json").out()).isEqualTo(closed);
    }

    private Run decide(String... what) {
        List<String> all = new ArrayList<>(List.of("decide"));
        for (String word : what) {
            all.add(word.replace('\u00a0', ' '));
        }
        all.addAll(List.of("--why", "Looked at", "--who", "Anne Weaver"));
        if (!all.contains("--on")) {
            all.addAll(List.of("--on", "2026-10-05"));
        }
        return run(all.toArray(String[]::new));
    }

    private Run run(String... args) {
        List<Object> all = new ArrayList<>(List.of("--book", book));
        all.addAll(List.of(args));
        return Run.of(all.toArray());
    }

    private static Run done(String out) {
        return new Run(0, out, "");
    }
}

package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Decision.Action;
import quarterfold.ledger.Decision.Target;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.RaisedQuery;

/**
 * What people say that rows are goes into the layout that asked, and nothing else of it changes.
 */
class LayoutKindsTest {
    private static final String HEAD =
            """
            layout: stall
            title: A market stall
            file: {delimiter: ",", encoding: UTF-8, header_row: 1}
            dates: {pattern: "yyyy-MM-dd"}
            numbers: {decimal: "."}
            currency: GBP
            fields: {date: When}
            amounts: [Money]
            """;
    private static final String ROWS =
            "When,What,Money\n2026-10-02,Day,12.00\n2026-10-03,Levy,-3.00\n2026-10-04,Levy,1.00\n";

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

    private String layout() throws IOException {
        return Files.readString(desk.path("book/layouts/stall.yaml"));
    }

    private String decide(Action action, String value) {
        RaisedQuery.Name query = new RaisedQuery.Name(1, RaisedQuery.KIND_UNKNOWN, "What: Levy");
        decide(query, action, value);
        return desk.keep(query);
    }

    private Decision decide(RaisedQuery.Name query, Action action, String value) {
        return desk.ledger()
                .decide(
                        new Decision(
                                0,
                                Target.QUERY,
                                query.toString(),
                                action,
                                value,
                                "why",
                                "who",
                                LocalDate.of(2026, 11, 1)));
    }

    private String decide(String value) {
        return decide(Action.STATE, value);
    }

    private void enter(String yaml) throws IOException {
        desk.layout("stall", yaml);
        assertThat(desk.enter("stall.csv", ROWS)).isInstanceOf(ImportResult.Entered.class);
    }

    /** As learning writes a rule. */
    @Test
    void aRuleOfLines() throws IOException {
        String yaml =
                HEAD
                        + """
                        signs: owner
                        rows:
                          - when: {What: Day}   # takings
                            enter: [{kind: sale, gross: Money}]

                          # Since October.
                          - when: {What: Levy}
                            # Open: give the kind in place of other-money, and take this question away.
                            ask: "what is 'What: Levy'?"
                            enter:
                              - {kind: other-money, gross: Money, set: {category: channel-fee}}

                        # The end.
                        """;
        enter(yaml);
        assertThat(decide("kind=fee"))
                .isEqualTo("The layout stall says so too: 'What: Levy' is fee, for files to come.");
        assertThat(layout())
                .isEqualTo(
                        yaml.replaceAll(" {4}(# Open|ask).*\n", "")
                                .replace("kind: other-money", "kind: fee"));
        assertThat(decide("kind=expense"))
                .isEqualTo(
                        "The layout stall says so too: 'What: Levy' is expense, for files to come.");
        assertThat(layout()).contains("{kind: expense, gross: Money, set");
        assertThat(decide(Action.UNDO, "2"))
                .isEqualTo("The layout stall says so too: 'What: Levy' is fee, for files to come.");
        assertThat(decide(Action.UNDO, "1"))
                .isEqualTo("The layout stall asks again what 'What: Levy' is.");
        assertThat(layout()).isEqualTo(yaml);
    }

    /** A file of the same layout to come is read with what was decided, and asks nothing. */
    @Test
    void filesToCome() throws IOException {
        enter(
                HEAD
                        + """
                        signs: owner
                        rows:
                        - when: {What: Day}
                          enter: [{kind: sale, gross: Money}]
                        - when: {What: Levy}
                          ask: What is a levy
                          enter: [{kind: other-money, gross: Money}]
                        """);
        decide("kind=fee");
        ImportResult.Entered next =
                (ImportResult.Entered) desk.enter("next.csv", ROWS.replace("2026-10", "2026-11"));
        assertThat(next.queries()).isEmpty();
        assertThat(desk.lines().subList(3, 6))
                .extracting(l -> l.profile().kind().code() + " " + l.amounts().money())
                .containsExactly("sale 12.00", "fee 3.00", "fee -1.00");
    }

    /** A rule on one line, of a layout whose amounts are as printed: the money must stay. */
    @Test
    void aRuleOnOneLine() throws IOException {
        String yaml =
                HEAD
                        + """
                        signs: document
                        rows:
                          - {when: {What: Day}, enter: [{kind: sale, gross: Money}]}
                          - {when: {What: Levy}, ask: 'what, pray, is it', enter: [{kind: other-money, gross: Money}]}
                        """;
        enter(yaml);
        decide("kind=expense");
        assertThat(layout())
                .isEqualTo(
                        yaml.replace("ask: 'what, pray, is it'", "signs: owner")
                                .replace("other-money", "expense"));
        desk.enter("next.csv", ROWS.replace("2026-10", "2026-11"));
        assertThat(desk.lines().subList(4, 6))
                .extracting(l -> l.profile().kind().code() + " " + l.amounts().money())
                .containsExactly("expense 3.00", "expense -1.00");
        assertThat(decide("kind=compensation")).contains("is compensation");
        assertThat(decide(Action.UNDO, "2")).contains("is expense");
        assertThat(decide(Action.UNDO, "1")).contains("asks again");
        assertThat(layout())
                .contains("signs: owner, ask: \"what, pray, is it\", enter: [{kind: other-money,");
    }

    /** The one amount of a customs entry is its VAT. */
    @Test
    void aCustomsEntry() throws IOException {
        String yaml =
                HEAD
                        + """
                        signs: owner
                        rows:
                          - {when: {What: Day}, enter: [{kind: sale, gross: Money}]}
                          - when: {What: Levy}
                            ask: "which?"
                            enter: [{kind: other-money, gross: Money}]
                        """;
        enter(yaml);
        decide("kind=import-vat-paid");
        assertThat(layout()).contains("enter: [{kind: import-vat-paid, vat: Money}]");
        decide("kind=import-duty");
        assertThat(layout()).contains("enter: [{kind: import-duty, gross: Money}]");
        decide(Action.UNDO, "2");
        assertThat(layout()).contains("enter: [{kind: import-vat-paid, vat: Money}]");
    }

    /** Of a rule with several entries the one is meant of which it is not known what it is. */
    @Test
    void oneOfSeveralEntries() throws IOException {
        desk.layout(
                "stall",
                HEAD.replace("[Money]", "[Money, Cut]")
                        + """
                        signs: owner
                        rows:
                          - when: {What: Day}
                            ask: "what is the cut?"
                            enter:
                              - {kind: sale, gross: Money}
                              - {kind: other-money, gross: Cut}
                        """);
        desk.enter("cut.csv", "When,What,Money,Cut\n2026-10-02,Day,12.00,-2.00\n");
        RaisedQuery.Name query = new RaisedQuery.Name(1, RaisedQuery.KIND_UNKNOWN, "What: Day");
        assertThat(desk.ledger().asked(1)).hasSize(1);
        assertThat(desk.ledger().asked(1).get(0).first()).isEqualTo(2);
        decide(query, Action.STATE, "kind=fee");
        assertThat(desk.keep(query)).contains("'What: Day' is fee");
        assertThat(layout())
                .contains("- {kind: sale, gross: Money}\n      - {kind: fee, gross: Cut}\n");
    }

    /** A rule may ask something else of entries of which each is known what it is. */
    @Test
    void anotherQuestion() throws IOException {
        desk.layout(
                "stall",
                HEAD.replace("[Money]", "[Money, Cut]")
                        + """
                        signs: owner
                        rows:
                          - when: {What: Day}
                            ask: "is the cut a fee?"
                            enter:
                              - {kind: sale, gross: Money}
                              - {kind: fee, gross: Cut}
                        """);
        ImportResult.Entered entered =
                (ImportResult.Entered)
                        desk.enter("cut.csv", "When,What,Money,Cut\n2026-10-02,Day,12.00,-2.00\n");
        assertThat(desk.ledger().asked(1)).isEmpty();
        assertThat(entered.queries())
                .extracting(q -> q.name() + " " + q.question())
                .containsExactly(
                        "S1/layout-asks/What: Day is the cut a fee? (What: Day: 1 row, 10.00, entered as the layout says.) If that is right, leave it with --set-aside. Else state of each entry what it is, such as --entry 4 --state kind=fee, and correct the layout, for files to come");
    }

    /** Two files that ask the same: the last that was said holds for those to come. */
    @Test
    void theSameQuestionOfTwoFiles() throws IOException {
        enter(
                HEAD
                        + """
                        signs: owner
                        rows:
                          - {when: {What: Day}, enter: [{kind: sale, gross: Money}]}
                          - when: {What: Levy}
                            ask: "which?"
                            enter: [{kind: other-money, gross: Money}]
                        """);
        desk.enter("second.csv", ROWS.replace("2026-10", "2026-11"));
        decide("kind=fee");
        RaisedQuery.Name second = new RaisedQuery.Name(2, RaisedQuery.KIND_UNKNOWN, "What: Levy");
        Decision later = decide(second, Action.STATE, "kind=expense");
        assertThat(desk.keep(second)).contains("'What: Levy' is expense");
        decide(second, Action.UNDO, Long.toString(later.id()));
        assertThat(desk.keep(second)).contains("'What: Levy' is fee");
    }

    /** Which of several entries was asked about is known when another is of the same kind now. */
    @Test
    void secondThoughtsOnOneOfSeveralEntries() throws IOException {
        String yaml =
                HEAD.replace("[Money]", "[Money, Cut]")
                        + """
                        signs: owner
                        rows:
                          - when: {What: Levy}
                            # Open: give the kind in place of other-money, and take this question away.
                            ask: "what is it?"
                            enter: [{kind: fee, gross: Cut}, {kind: other-money, gross: Money}]
                        """;
        desk.layout("stall", yaml);
        desk.enter("cut.csv", "When,What,Money,Cut\n2026-10-02,Levy,-12.00,-2.00\n");
        assertThat(decide("kind=fee")).contains("'What: Levy' is fee, for");
        assertThat(decide("kind=expense")).contains("'What: Levy' is expense, for");
        assertThat(layout())
                .contains("    enter: [{kind: fee, gross: Cut}, {kind: expense, gross: Money}]\n");
        assertThat(decide(Action.UNDO, "2")).contains("'What: Levy' is fee, for");
        assertThat(decide(Action.UNDO, "1")).contains("asks again");
        assertThat(layout()).isEqualTo(yaml);
    }

    /** Two tables of one file that ask in the same words ask one question. */
    @Test
    void theSameQuestionOfTwoTables() throws IOException {
        String yaml =
                HEAD
                        + """
                        signs: owner
                        rows:
                          - when: {What: Levy}
                            # Open: give the kind in place of other-money, and take this question away.
                            ask: "which?"
                            enter: [{kind: other-money, gross: Money}]
                        shapes:
                          - fields: {date: Day}
                            amounts: [Cut]
                            rows:
                              - when: {What: Levy}
                                # Open: give the kind in place of other-money, and take this question away.
                                ask: "which of them?"
                                enter: [{kind: transfer, gross: Cut}]
                        """;
        desk.layout("stall", yaml);
        desk.enter(
                "two.csv",
                "When,What,Money\n2026-10-02,Levy,-12.00\nDay,What,Cut\n2026-10-03,Levy,-1.00\n");
        assertThat(decide("kind=fee")).contains("'What: Levy' is fee, for");
        assertThat(layout())
                .isEqualTo(
                        yaml.replaceAll(" +(# Open|ask).*\n", "")
                                .replaceAll("other-money|transfer", "fee"));
        assertThat(decide(Action.UNDO, "1")).contains("asks again");
        assertThat(layout()).isEqualTo(yaml);
    }

    /** What a person wrote in other ways stays as it is, to the ends of its lines. */
    @Test
    void otherWaysToWriteIt() throws IOException {
        String rule = "    ask: \"which?\"\n    enter: [{kind: other-money, gross: Money}]\n";
        enter(SHORT);
        for (List<String> other :
                List.of(
                        List.of(SHORT.replace("\n", "\r\n"), "    ask: \"which?\"\r\n"),
                        List.of(SHORT.stripTrailing(), "    ask: \"which?\"\n"),
                        List.of(
                                SHORT.replace(rule, "# kind: other-money?\n" + rule),
                                "    ask: \"which?\"\n"),
                        List.of(
                                SHORT.replace(rule, "\t# a tab\n\n" + rule),
                                "    ask: \"which?\"\n"),
                        List.of(
                                SHORT.replace("kind: other-money", "kind: 'other-money'"),
                                "    ask: \"which?\"\n"),
                        List.of(
                                SHORT.replace(
                                        "- when: {What: Levy}\n" + rule,
                                        "- enter: [{kind: other-money, gross: Money}]\n    ask: \"which?\"\n    when: {What: Levy}\n"),
                                "    ask: \"which?\"\n"))) {
            desk.layout("stall", other.get(0));
            int decision = desk.decisions() + 1;
            assertThat(decide("kind=fee")).as(other.get(0)).contains("says so too");
            assertThat(layout())
                    .isEqualTo(
                            other.get(0)
                                    .replace(other.get(1), "")
                                    .replaceAll("(\\{kind: '?)other-money", "$1fee"));
            assertThat(decide(Action.UNDO, Integer.toString(decision)))
                    .as(other.get(0))
                    .contains("asks again");
        }
    }

    /** Who could read a layout still can. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void permissionsStay() throws IOException {
        enter(SHORT);
        Set<PosixFilePermission> shared = PosixFilePermissions.fromString("rw-rw-r--");
        Files.setPosixFilePermissions(desk.path("book/layouts/stall.yaml"), shared);
        assertThat(decide("kind=fee")).contains("says so too");
        assertThat(Files.getPosixFilePermissions(desk.path("book/layouts/stall.yaml")))
                .isEqualTo(shared);
    }

    /** A rule's own signs are put right in their place. */
    @Test
    void aRuleWithSigns() throws IOException {
        String yaml = SHORT.replace("    ask", "    signs: document # as printed\n    ask");
        enter(yaml);
        assertThat(decide("kind=fee")).contains("says so too");
        assertThat(layout())
                .isEqualTo(
                        yaml.replace("signs: document", "signs: owner")
                                .replace("    ask: \"which?\"\n", "")
                                .replace("other-money", "fee"));
    }

    private static final String SHORT =
            HEAD
                    + """
                    signs: owner
                    rows:
                      - {when: {What: Day}, enter: [{kind: sale, gross: Money}]}
                      - when: {What: Levy}
                        ask: "which?"
                        enter: [{kind: other-money, gross: Money}]
                    """;
    private static final String NOT =
            "The layout stall was not changed: no rule about just 'What: Levy' could be found in it and changed; say there what such rows are, for files to come.";
    private static final String OTHERWISE =
            "The layout stall was not changed: with the change stall.csv could not be read again to the same money; say there what such rows are, for files to come.";

    /** What cannot be said in it surely is left to a person. */
    @Test
    void aLayoutThatIsNotChanged() throws IOException {
        enter(SHORT);
        for (String other :
                List.of(
                        SHORT.replace("{What: Levy}", "{What: [Levy, Tax]}"),
                        SHORT.replace("\"which?\"", "|\n      which\n      is it?"),
                        SHORT.replace(
                                "[{kind: other-money, gross: Money}]",
                                "&it [{'kind': 'other-money', gross: Money}]"))) {
            desk.layout("stall", other);
            assertThat(decide("kind=fee")).as(other).isEqualTo(NOT);
            assertThat(layout()).isEqualTo(other);
        }
        desk.layout("stall", SHORT.replace("Money", "Monies"));
        assertThat(decide("kind=fee")).isEqualTo(OTHERWISE);
        desk.layout("stall", SHORT + "nothing: sound\n");
        assertThat(decide("kind=fee"))
                .isEqualTo(
                        "The layout stall was not changed, for it cannot be read: stall.yaml:15 [nothing]: found a key that means nothing here; expected one of layout, title, file, dates, numbers, signs, currency, fields, constants, worked_out, rows, tax, check, amounts, payout, outgoing, sign, other_rows, balance, repeats, optional, text, when, shapes, above, tables_below, unread, expect, such as layout");
        Path file = desk.path("book/layouts/stall.yaml");
        Files.write(file, new byte[] {(byte) 0xE9, '\n'});
        assertThatThrownBy(() -> decide("kind=fee"))
                .isInstanceOf(LedgerException.class)
                .hasMessage(
                        file
                                + ": found bytes that are not UTF-8; expected a text in UTF-8, such as the layout saved again in that encoding");
        Files.delete(file);
        assertThat(decide("kind=fee"))
                .isEqualTo(
                        "No layout was changed: the book's folder layouts has no stall.yaml; say in the layout that reads such files what such rows are, for files to come.");
        desk.layout("stall", SHORT);
        try (var copies = Files.list(desk.path("book/sources"))) {
            for (Path copy : copies.toList()) {
                Files.delete(copy);
            }
        }
        assertThat(decide("kind=fee")).isEqualTo(OTHERWISE);
        assertThat(desk.keep(new RaisedQuery.Name(9, RaisedQuery.KIND_UNKNOWN, "x")))
                .isEqualTo("No layout was changed: there is no source 9.");
    }
}

package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Book;
import quarterfold.ledger.Close;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;

/** Everything a close froze is compared when it is worked out again, each field by its name. */
class RecomputationTest {

    private static final String RULING =
            "insert into ruling (treatment, rule, rate, taken_up) select %s from closed_entry c join ruling r on r.id = c.ruling where c.number = 1; "
                    + "update closed_entry set ruling = (select max(id) from ruling) where number = 1";

    @TempDir private Path folder;

    private void closed(Settings settings, SampleLine... lines) {
        try (TempBook book = new TempBook(folder, settings)) {
            book.enter("quarter.csv", lines);
            book.close("2026-09");
            assertThat(book.differences()).as("as it was closed").isEmpty();
        }
    }

    private static SampleLine sale(String net, String vat) {
        return SampleLine.of("sale").printed(net, vat).rate("20");
    }

    /** What is told after changes to the ledger's file, its guards taken away first. */
    private List<String> after(String... changes) throws SQLException {
        try (Connection raw =
                        DriverManager.getConnection(
                                "jdbc:sqlite:" + folder.resolve("ledger.sqlite"));
                Statement statement = raw.createStatement()) {
            List<String> triggers = new ArrayList<>();
            try (ResultSet rows =
                    statement.executeQuery(
                            "select name from sqlite_master where type = 'trigger'")) {
                while (rows.next()) {
                    triggers.add(rows.getString(1));
                }
            }
            for (String trigger : triggers) {
                statement.execute("drop trigger " + trigger);
            }
            for (String change : changes) {
                assertThat(statement.executeUpdate(change)).as(change).isPositive();
            }
        }
        Book book = Book.open(folder);
        List<String> found = new ArrayList<>();
        try (Ledger ledger = book.ledger()) {
            for (Close close : ledger.closes()) {
                Recomputation.check(
                        book, ledger, close, f -> found.add(f.place() + ": " + f.text()));
            }
        }
        return found;
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    treatment | 'zero', r.rule, r.rate, r.taken_up               | found 'zero' frozen; worked out again it is 'uk-sale'
                    rule      | r.treatment, 'Z99', r.rate, r.taken_up           | found 'Z99' frozen; worked out again it is '%s'
                    rate      | r.treatment, r.rule, '17.5%', r.taken_up         | found '17.5%' frozen; worked out again it is '20%'
                    taken up  | r.treatment, r.rule, r.rate, 'late-claim'        | found 'late-claim' frozen; worked out again it is 'in-its-period'
                    """)
    void aRulingChanged(String field, String columns, String text) throws SQLException {
        closed(SampleSettings.GB, sale("100", "20"));
        String rule;
        try (Ledger ledger = Book.open(folder).ledger()) {
            rule = ledger.closedEntry(1).get(0).rule();
        }
        assertThat(after(RULING.formatted(columns).split("; ")))
                .containsExactly(
                        "2026-09 entry 1 [%s]: ".formatted(field) + text.replace("%s", rule));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    net = net + 10000                | [net]: found '101.00' frozen; worked out again it is '100.00'
                    claim = claim - 5000             | [claim]: found '-0.50' frozen; worked out again it is '0.00'
                    boxes = '1:20.0000 6:100.0000 8:1.0000' | [box 8]: found '1.00' frozen; worked out again it is '0.00'
                    """)
    void anAmountChanged(String change, String told) throws SQLException {
        closed(SampleSettings.GB, sale("100", "20"));
        assertThat(after("update closed_entry set " + change + " where number = 1"))
                .contains("2026-09 entry 1 " + told)
                .filteredOn(f -> f.contains("entry 1"))
                .hasSize(1);
    }

    /** A frozen occasion that was only moved is as missing on its day as it is new on another. */
    @Test
    void anOccasionMoved() throws SQLException {
        closed(SampleSettings.GB, sale("100", "20"), sale("10", "2"));
        assertThat(after("update closed_entry set day = day + 1 where number = 1"))
                .containsExactly(
                        "2026-09 entry 1: found nothing frozen; worked out again it is uk-sale on 2026-08-01",
                        "2026-09 entry 1: found uk-sale on 2026-08-02 frozen; worked out again it is not in the period");
    }

    @Test
    void anAdjustmentSlippedIn() throws SQLException {
        closed(SampleSettings.GB, sale("100", "20"));
        assertThat(
                        after(
                                "insert into close_adjustment values ('2026-09', 1, 'partial-exemption', 'a quarter', 'a reason', 'a law', 0, 0, -10000, '4:-1.0000')"))
                .containsExactly(
                        "2026-09 box 4: found 0.00 frozen before rounding; its frozen entries and adjustments add up to -1.00",
                        "2026-09 adjustments: found 1 frozen; worked out again they are 0, or others",
                        "2026-09 VAT account, allowable portion: found -1.00; expected the 0.00 of the boxes it feeds, 4");
    }

    /** VATA 1994 s.26B: what no entry makes is part of the sums too, here 7.5% of 12,000.00. */
    @Test
    void anAdjustmentRemoved() throws SQLException {
        closed(SampleSettings.scheme("flat-rate", "044"), sale("10000", "2000"));
        List<String> found = after("delete from close_adjustment");
        assertThat(found)
                .contains(
                        "2026-09 adjustments: found 0 frozen; worked out again they are 1, or others")
                .anySatisfy(
                        f ->
                                assertThat(f)
                                        .matches(
                                                "2026-09 box 1: found [0-9.]+ frozen before rounding; its frozen entries and adjustments add up to 0\\.00"));
    }

    /** A return is worked out again with the lists of goods it was closed with. */
    @Test
    void theListsOfGoodsAreThoseOfTheClose() throws IOException {
        try (TempBook book = new TempBook(folder, SampleSettings.GB)) {
            book.products("BOOK,zero,2003-01-01,\n");
            book.enter("quarter.csv", SampleLine.of("sale").net("100").product("BOOK"));
            VatReturn closed = book.close("2026-09");
            assertThat(closed.box("1").text()).isEqualTo("0.00");
            book.products("BOOK,standard,2003-01-01,\n");
            assertThat(book.differences()).isEmpty();
            assertThat(book.returns().pack(closed.period()).law().files())
                    .as("the law of the close is the law's tables alone")
                    .isEqualTo(TempBook.LAW.files());
        }
    }
}

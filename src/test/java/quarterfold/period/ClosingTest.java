package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.law.Law;
import quarterfold.law.TableFile;
import quarterfold.law.Tables;
import quarterfold.ledger.Close;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Source;
import quarterfold.ledger.TableText;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;
import quarterfold.treatment.Treated;

/** Closing: what a close froze never moves, and what comes late is taken up next. */
class ClosingTest {

    @TempDir Path folder;

    private TempBook book;

    @BeforeEach
    void aQuarter() {
        book =
                new TempBook(
                        folder, SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"));
        try (FileEntry file = book.begin("quarter.csv")) {
            file.setAside(40, "a total");
            file.raise("payout-does-not-tie", "QL-1", "Payout QL-1 is 1.00 less than its rows.");
            TempBook.commit(
                    file,
                    1,
                    sale("2026-07-01", "9.99").product("KETTLE"),
                    sale("2026-08-01", "9.99").product("KETTLE"),
                    sale("2026-09-30", "9.99").product("KETTLE"),
                    SampleLine.of("expense")
                            .on("2026-08-08")
                            .printed("100", "20")
                            .rate("20")
                            .party("Example supplier", "GB", "GB101747696")
                            .evidence("missing"),
                    SampleLine.of("fee")
                            .on("2026-09-30")
                            .gross("30")
                            .channel("Quaylark", "no")
                            .settlement("QL-1"),
                    sale("2026-10-01", "120"));
        }
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine sale(String day, String gross) {
        return SampleLine.of("sale").on(day).gross(gross);
    }

    @Test
    void aCloseFreezesTheDraft() {
        book.setAside("2026-09");
        VatReturn draft = book.of("2026-09");
        VatReturn closed = book.close("2026-09");
        assertThat(closed.status()).isEqualTo(VatReturn.Status.CLOSED);
        assertThat(closed.status().code()).isEqualTo("closed");
        assertThat(closed.boxes()).isEqualTo(draft.boxes());
        assertThat(closed.direction()).isEqualTo(draft.direction());
        assertThat(closed.period()).isEqualTo(draft.period());
        assertThat(closed.queries()).isEqualTo(draft.queries());
        assertThat(TempBook.figures(closed))
                .containsExactly("5.00", "0.00", "5.00", "0.00", "5.00", "24", "100", "0", "0");
        assertThat(TempBook.queries(closed))
                .containsExactly(
                        "E4/evidence-missing",
                        "2026-09/Quaylark/fees-without-invoice",
                        "S1/payout-does-not-tie/QL-1");
        assertThat(book.of("2026-09")).isEqualTo(closed);
        assertThat(book.returns().isClosed(YearMonth.of(2026, 9))).isTrue();
        assertThat(book.returns().isClosed(YearMonth.of(2026, 12))).isFalse();
    }

    @Test
    void whatTheLedgerKeepsOfAClose() {
        book.close("2026-09");
        Close close = book.ledger().close(YearMonth.of(2026, 9)).orElseThrow();
        assertThat(close.start()).isEqualTo(LocalDate.of(2026, 7, 1));
        assertThat(close.end()).isEqualTo(LocalDate.of(2026, 9, 30));
        assertThat(close.due()).isEqualTo(LocalDate.of(2026, 11, 7));
        assertThat(close.direction()).isEqualTo("pay");
        assertThat(close.lastEntry()).isEqualTo(6);
        assertThat(close.exact().get("1")).isEqualTo(Amount.of("4.995"));
        assertThat(close.figures().get("1")).isEqualTo(Amount.of("5.00"));
        assertThat(close.otherRounding().get("1")).isEqualTo(Amount.of("5.01"));
        assertThat(close.figures().keySet())
                .containsExactly("1", "2", "3", "4", "5", "6", "7", "8", "9");
        assertThat(close.tables())
                .extracting(t -> new TableFile(t.name(), t.sha256(), t.text()))
                .containsExactlyElementsOf(TempBook.LAW.files());
    }

    @Test
    void thePackOfAClosedPeriodIsThatOfTheDraftItFroze() {
        book.setAside("2026-09");
        Pack draft = book.returns().pack(book.period("2026-09"));
        List<Treated> treated = TempBook.treated(draft);
        List<Source> sources = draft.sources();
        List<SetAside> setAside = draft.setAside();
        Map<String, Amount> other = draft.otherRounding();
        book.close("2026-09");
        Pack closed = book.returns().pack(book.period("2026-09"));
        assertThat(TempBook.treated(closed)).isEqualTo(treated).hasSize(5);
        assertThat(closed.sources()).isEqualTo(sources).hasSize(1);
        assertThat(closed.setAside()).isEqualTo(setAside).hasSize(1);
        assertThat(closed.otherRounding()).isEqualTo(other).hasSize(9);
        assertThat(closed.settings()).isEqualTo(draft.settings());
        assertThat(closed.law().files()).isEqualTo(draft.law().files());
    }

    /** Law, products and files may all change: what is closed stays. */
    @Test
    void nothingMovesAClosedPeriod() throws IOException {
        VatReturn closed = book.close("2026-09");
        List<Treated> treated = TempBook.treated(book.returns().pack(closed.period()));
        book.products("KETTLE,zero,2026-01-01,\n");
        book.enter("later.csv", sale("2026-08-15", "1200"), sale("2026-11-01", "12"));
        Returns returns = book.returns(dearer());
        assertThat(returns.of(closed.period())).isEqualTo(closed);
        Pack pack = returns.pack(closed.period());
        assertThat(pack.vatReturn()).isEqualTo(closed);
        assertThat(TempBook.treated(pack)).isEqualTo(treated);
        assertThat(pack.sources()).extracting(Source::name).containsExactly("quarter.csv");
        assertThat(pack.law().files()).isEqualTo(TempBook.LAW.files());
        assertThat(pack.otherRounding().get("1")).isEqualTo(Amount.of("5.01"));
        assertThat(returns.of(book.period("2026-12")).box("1").figure())
                .as("an open period takes the new rate, and the late sale: 1,332.00 x 25 / 125")
                .isEqualTo(Amount.of("266.40"));
    }

    @Test
    void productsMoveADraft() throws IOException {
        book.products("KETTLE,zero,2026-01-01,\n");
        assertThat(book.of("2026-09").box("1").figure()).isEqualTo(Amount.ZERO);
        assertThat(book.of("2026-09").box("6").exact()).isEqualTo(Amount.of("29.97"));
    }

    /** Nothing is written, and what holds it is told. */
    @Test
    void openQuestionsHoldTheClose() {
        CloseResult held = book.closing().close(book.period("2026-09"));
        assertThat(held).isInstanceOf(CloseResult.Held.class);
        assertThat(((CloseResult.Held) held).draft().holdingClose())
                .extracting(Query::id)
                .containsExactly(
                        "E4/evidence-missing",
                        "2026-09/Quaylark/fees-without-invoice",
                        "S1/payout-does-not-tie/QL-1");
        assertThat(book.ledger().closes()).isEmpty();
        assertThat(book.ledger().closedEntry(1)).isEmpty();
        assertThat(book.of("2026-09").status()).isEqualTo(VatReturn.Status.DRAFT);
    }

    /** queries.csv: the three months for export evidence run on, so that a close does not wait. */
    @Test
    void aQuestionThatHoldsNoCloseStaysOpenOnTheClosedReturn() {
        book.enter("export.csv", sale("2026-09-02", "90").goods("GB", "US"));
        VatReturn closed = book.close("2026-09");
        assertThat(closed.openQueries())
                .extracting(Query::id)
                .containsExactly("E7/export-evidence");
        assertThat(closed.holdingClose()).isEmpty();
        assertThat(closed.setAsideQueries()).hasSize(3);
        assertThat(closed.setAsideQueries().get(0).answer())
                .isEqualTo("set aside by A. Tester on 2026-10-31: Known");
    }

    @Test
    void aPeriodOutOfTurnIsNotClosed() {
        assertThat(book.closing().close(book.period("2026-12")))
                .isEqualTo(
                        new CloseResult.OutOfTurn(book.period("2026-12"), book.period("2026-09")));
        assertThat(book.ledger().closes()).isEmpty();
    }

    /** What made the figures is all there: the decisions known, and the list of products. */
    @Test
    void aCloseKeepsTheDecisionsKnownAndTheProducts() throws IOException {
        book.products("KETTLE,zero,2026-01-01,\n");
        book.close("2026-09");
        Close close = book.ledger().close(YearMonth.of(2026, 9)).orElseThrow();
        assertThat(close.lastDecision()).isEqualTo(3);
        assertThat(close.tables())
                .filteredOn(t -> t.name().equals("products.csv"))
                .extracting(TableText::text)
                .containsExactly("product,liability,from,to\nKETTLE,zero,2026-01-01,\n");
    }

    /** VAT Regulations 1995 reg 34: 1,200 x 20 / 120 is an error of the closed return. */
    @Test
    void whatComesAfterACloseIsTakenUpByTheNextOpenPeriod() {
        book.close("2026-09");
        try (FileEntry late = book.begin("late.csv")) {
            late.raise("payout-does-not-tie", "QL-2", "Payout QL-2 is 2.00 less than its rows.");
            TempBook.commit(late, 0, sale("2026-08-15", "1200"));
        }
        book.enter("in-time.csv", sale("2026-11-01", "12"));
        assertThat(book.of("2026-12").box("1").figure()).isEqualTo(Amount.of("222"));
        assertThat(book.of("2026-12").box("6").figure()).isEqualTo(Amount.of("110"));
        assertThat(TempBook.queries(book.of("2026-12")))
                .as("what the late file raised is asked where its entries are taken up")
                .containsExactly("S1/payout-does-not-tie/QL-1", "S2/payout-does-not-tie/QL-2");
        assertThat(book.of("2027-03").box("1").figure())
                .as("taken up in the earliest open period alone")
                .isEqualTo(Amount.ZERO);
        book.close("2026-12");
        assertThat(book.of("2027-03").box("1").figure()).isEqualTo(Amount.ZERO);
    }

    @Test
    void periodsAreClosedInOrder() {
        book.enter("spring.csv", sale("2026-02-02", "12"), sale("2026-05-05", "12"));
        assertThat(book.closing().openBefore(book.period("2026-09")).map(p -> p.name().toString()))
                .contains("2026-03");
        book.close("2026-03");
        assertThat(book.closing().openBefore(book.period("2026-09")).map(p -> p.name().toString()))
                .contains("2026-06");
        assertThat(book.closing().openBefore(book.period("2026-06"))).isEmpty();
        book.close("2026-06");
        assertThat(book.closing().openBefore(book.period("2026-09"))).isEmpty();
        assertThat(book.closing().openBefore(book.period("2026-12")).map(p -> p.name().toString()))
                .contains("2026-09");
    }

    @Test
    void anEmptyPeriodBeforeNeedNotBeClosed() {
        assertThat(book.closing().openBefore(book.period("2026-09"))).isEmpty();
        assertThat(book.closing().openBefore(book.period("2026-03"))).isEmpty();
    }

    @Test
    void aSecondCloseIsRefused() {
        VatReturn closed = book.close("2026-09");
        assertThatThrownBy(() -> book.close("2026-09"))
                .isInstanceOf(LedgerException.class)
                .hasMessage(
                        "2026-09 is closed already, and a closed period never changes; nothing was"
                                + " changed");
        assertThat(book.of("2026-09")).isEqualTo(closed);
        assertThat(book.ledger().closes()).hasSize(1);
    }

    /** Entries before the registration stay out of every box, and are asked about once. */
    @Test
    void beforeTheRegistration() {
        book.enter("old.csv", sale("2025-12-31", "120"));
        assertThat(TempBook.queries(book.of("2026-09"))).contains("E7/before-registration");
        assertThat(TempBook.queries(book.of("2026-12"))).doesNotContain("E7/before-registration");
        book.close("2026-09");
        assertThat(TempBook.queries(book.of("2026-12"))).contains("E7/before-registration");
    }

    @Test
    void storiesOfClosedLateAndOpenEntries() {
        book.close("2026-09");
        book.enter("late.csv", sale("2026-08-15", "1200"));
        Returns returns = book.returns(dearer());
        assertThat(returns.treated(1).stream().map(t -> t.vat().toString())).contains("1.665");
        assertThat(returns.treated(4).stream().map(t -> t.queries().get(0).id()))
                .contains("E4/evidence-missing");
        assertThat(returns.treated(6).stream().map(t -> t.vat().toString())).contains("24.00");
        assertThat(returns.treated(7).stream().map(t -> t.vat().toString()))
                .as("late: as its own period would treat it now")
                .contains("240.00");
        List<Treated> all = new ArrayList<>();
        returns.forEachTreated(all::add);
        assertThat(all)
                .extracting(t -> t.entry().number() + " " + t.rate() + " " + t.vat())
                .containsExactly(
                        "1 20% 1.665",
                        "2 20% 1.665",
                        "3 20% 1.665",
                        "4 20% 20.00",
                        "5  0.00",
                        "6 25% 24.00",
                        "7 25% 240.00");
        assertThat(all.get(0).why()).startsWith("Sale in the United Kingdom");
        assertThat(all.get(0).citation()).startsWith("VATA 1994 s.1");
    }

    private static Law dearer() {
        return Tables.with(
                "rates.csv", text -> text.replace("standard,20,2011", "standard,25,2011"));
    }

    /** An entry no rule fits is frozen as such, and is told in the same words. */
    @Test
    void anUndecidedEntryIsFrozenToo() {
        TempBook old = new TempBook(folder.resolve("old"), SampleSettings.GB);
        try (old) {
            old.enter(
                    "imports.csv",
                    SampleLine.of("import-vat-postponed").vat("20").on("2020-12-31"));
            old.setAside("2020-12");
            List<Treated> draft = TempBook.treated(old.returns().pack(old.period("2020-12")));
            VatReturn closed = old.close("2020-12");
            assertThat(TempBook.queries(closed)).containsExactly("E1/no-rule");
            assertThat(TempBook.treated(old.returns().pack(closed.period()))).isEqualTo(draft);
            assertThat(draft.get(0).why()).isEqualTo("No rule of the table fits this entry");
        }
    }
}

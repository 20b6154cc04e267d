package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.FileEntry;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Query;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/** Draft returns worked out from a ledger on disk. */
class ReturnsTest {

    @TempDir Path folder;

    private TempBook book;

    @BeforeEach
    void open() {
        book =
                new TempBook(
                        folder, SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"));
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine sale(String day, String gross) {
        return SampleLine.of("sale").on(day).gross(gross);
    }

    private static SampleLine expense(String net, String vat) {
        return SampleLine.of("expense")
                .printed(net, vat)
                .rate("20")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    @Test
    void anEmptyQuarter() {
        VatReturn empty = book.of("2026-09");
        assertThat(empty.status()).isEqualTo(VatReturn.Status.DRAFT);
        assertThat(empty.status().code()).isEqualTo("draft");
        assertThat(TempBook.figures(empty))
                .containsExactly("0.00", "0.00", "0.00", "0.00", "0.00", "0", "0", "0", "0");
        assertThat(empty.direction()).isEqualTo(Direction.NIL);
        assertThat(empty.queries()).isEmpty();
        assertThat(empty.box("5").figure()).isEqualTo(Amount.ZERO);
        assertThatThrownBy(() -> empty.box("10"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the form has no box 10");
    }

    /** Lines of T-106: VAT Regulations 1995 regs 32 and 39. */
    @Test
    void aDraft() {
        book.enter(
                "quarter.csv",
                sale("2026-07-01", "24000"),
                SampleLine.of("sale-refund").on("2026-09-30").gross("1200"),
                expense("2500", "500").category("channel-fee"),
                expense("300", "60").category("car-hire"),
                SampleLine.of("payout").gross("21000"));
        VatReturn draft = book.of("2026-09");
        assertThat(TempBook.figures(draft))
                .containsExactly(
                        "3800.00", "0.00", "3800.00", "530.00", "3270.00", "19000", "2800", "0",
                        "0");
        assertThat(draft.direction()).isEqualTo(Direction.PAY);
        assertThat(draft.direction().code()).isEqualTo("pay");
        assertThat(draft.queries()).isEmpty();
        assertThat(draft.period().due()).isEqualTo(LocalDate.of(2026, 11, 7));
    }

    @Test
    void onlyThePeriodsOwnDays() {
        book.enter(
                "half-year.csv",
                sale("2026-06-30", "120"),
                sale("2026-07-01", "12"),
                sale("2026-09-30", "1.20"),
                sale("2026-10-01", "1200"));
        assertThat(book.of("2026-09").box("1").figure()).isEqualTo(Amount.of("2.20"));
        assertThat(book.of("2026-06").box("1").figure()).isEqualTo(Amount.of("20"));
        assertThat(book.of("2026-12").box("1").figure()).isEqualTo(Amount.of("200"));
    }

    /** T-204, VATREC12020: exact and rounded once, or each to the penny. */
    @Test
    void bothRoundings() {
        book.enter(
                "sales.csv",
                sale("2026-08-01", "9.99"),
                sale("2026-08-02", "9.99"),
                sale("2026-08-03", "9.99"));
        Period period = book.period("2026-09");
        assertThat(book.of("2026-09").box("1").figure()).isEqualTo(Amount.of("5.00"));
        assertThat(book.returns().otherRounding(period))
                .containsEntry("1", Amount.of("5.01"))
                .containsEntry("3", Amount.of("5.01"))
                .containsEntry("5", Amount.of("5.01"))
                .containsEntry("6", Amount.of("24"))
                .hasSize(9);
        assertThat(book.returns().pack(period).otherRounding())
                .isEqualTo(book.returns().otherRounding(period));
    }

    @Test
    void feesOfNoChannelAreAskedAboutToo() {
        try (FileEntry file = book.begin("statement.csv")) {
            TempBook.commit(file, 0, SampleLine.of("fee").gross("11").settlement("S1"));
        }

        assertThat(book.of("2026-09").queries())
                .extracting(Query::question)
                .containsExactly(
                        "A channel that no row names took fees of 11.00 off its settlements in the"
                                + " period, but no invoice for its fees is entered. Ask the channel"
                                + " for it: its VAT is reclaimed, or the reverse charge is due, on"
                                + " that document.");
    }

    @Test
    void everyQuestionIsOnTheReturn() {
        try (FileEntry file = book.begin("statement.csv")) {
            file.setAside(9, "a heading repeated in the middle of the file");
            file.raise(
                    "payout-does-not-tie", "QL-0003", "Payout QL-0003 is 1.00 more than its rows.");
            TempBook.commit(
                    file,
                    1,
                    expense("100", "20").evidence("missing"),
                    SampleLine.of("fee")
                            .gross("30")
                            .channel("Quaylark", "no")
                            .settlement("QL-0003"));
        }
        VatReturn draft = book.of("2026-09");
        assertThat(draft.queries())
                .containsExactly(
                        new Query(
                                "E1/evidence-missing",
                                OptionalLong.of(1),
                                "statement.csv row 2",
                                "No document is held for 120.00, so its VAT of 20.00 is not"
                                        + " reclaimed. Find the invoice, or leave it out.",
                                Amount.of("20")),
                        new Query(
                                "2026-09/Quaylark/fees-without-invoice",
                                OptionalLong.empty(),
                                "",
                                "Quaylark took fees of 30.00 off its settlements in the period, but"
                                        + " no invoice for its fees is entered. Ask the channel for"
                                        + " it: its VAT is reclaimed, or the reverse charge is due,"
                                        + " on that document.",
                                Amount.of("30")),
                        new Query(
                                "S1/payout-does-not-tie/QL-0003",
                                OptionalLong.empty(),
                                "statement.csv",
                                "Payout QL-0003 is 1.00 more than its rows.",
                                Amount.ZERO));
        Pack pack = book.returns().pack(book.period("2026-09"));
        assertThat(pack.sources()).extracting(Source::name).containsExactly("statement.csv");
        assertThat(pack.setAside())
                .containsExactly(
                        new SetAside(1, 9, "a heading repeated in the middle of the file"));
        assertThat(book.of("2026-12").queries()).isEmpty();
        Pack later = book.returns().pack(book.period("2026-12"));
        assertThat(later.sources()).isEmpty();
        assertThat(later.setAside()).isEmpty();
    }

    private static SampleLine settlementFee(String kind, String channel, String gross) {
        return SampleLine.of(kind).gross(gross).channel(channel, "no").settlement("ST-1");
    }

    @Test
    void feesAreWatchedByChannelAndPeriod() {
        book.enter(
                "statements.csv",
                settlementFee("fee", "Quaylark", "30"),
                settlementFee("fee-refund", "Quaylark", "4"),
                settlementFee("fee", "Norrowby", "10"),
                settlementFee("fee", "Norrowby", "7").on("2026-10-05"),
                SampleLine.of("fee")
                        .printed("10", "2")
                        .rate("20")
                        .channel("Norrowby", "no")
                        .party("Norrowby", "GB", "GB101747696")
                        .evidence("invoice"));
        assertThat(book.of("2026-09").queries())
                .extracting(Query::id, q -> q.money().toString())
                .containsExactly(tuple("2026-09/Quaylark/fees-without-invoice", "26.00"));
        assertThat(TempBook.queries(book.of("2026-12")))
                .containsExactly("2026-12/Norrowby/fees-without-invoice");
    }

    /** A fee on a settlement whose document is stated is itself the invoice. */
    @Test
    void aSettlementFeeWithItsOwnDocument() {
        book.enter(
                "statement.csv",
                settlementFee("fee", "Quaylark", "30"),
                SampleLine.of("fee")
                        .printed("10", "2")
                        .rate("20")
                        .settlement("ST-1")
                        .channel("Quaylark", "no")
                        .party("Quaylark", "GB", "GB101747696")
                        .evidence("invoice"));
        assertThat(book.of("2026-09").queries()).isEmpty();
    }

    /** VATA 1994 s.3: sales before the registration are in no return and ask nothing. */
    @Test
    void salesBeforeTheRegistration() {
        book.enter("old.csv", sale("2025-12-31", "120"), sale("2026-01-01", "60"));
        assertThat(TempBook.figures(book.of("2026-03"))).startsWith("10.00");
        assertThat(book.of("2026-03").queries()).isEmpty();
        assertThat(book.returns().treated(1))
                .extracting(Treated::treatment, t -> t.boxes().size(), Treated::takenUp)
                .containsExactly(tuple("before-registration-sale", 0, TakenUp.NOWHERE));
    }

    /** VAT Notice 700 s.31: goods of one file, their delivery in another. */
    @Test
    void deliveryFollowsGoodsOfTheWholeLedger() throws IOException {
        book.products("BOOK,zero,2026-01-01,\n");
        book.enter("june.csv", sale("2026-06-30", "12").product("BOOK").order("Q-1"));
        book.enter(
                "july.csv",
                SampleLine.of("delivery").on("2026-07-02").gross("3.60").order("Q-1"),
                SampleLine.of("delivery").on("2026-07-02").gross("3.60").order("Q-2"));
        assertThat(TempBook.figures(book.of("2026-09")))
                .containsExactly("0.60", "0.00", "0.60", "0.00", "0.60", "6", "0", "0", "0");
        assertThat(TempBook.figures(book.of("2026-06"))).startsWith("0.00").contains("12");
    }

    @Test
    void deliveryFollowsARateStatedOnTheGoods() {
        book.enter(
                "july.csv",
                sale("2026-07-01", "12").rate("0").order("Q-1"),
                SampleLine.of("delivery").on("2026-07-02").gross("3.60").order("Q-1"));
        assertThat(book.of("2026-09").box("1").figure()).isEqualTo(Amount.ZERO);
    }

    private static SampleLine bill(String product) {
        return SampleLine.of("expense")
                .party("Example platform", "IE", "")
                .document("A-1")
                .product(product)
                .net("0.13")
                .evidence("invoice");
    }

    @Test
    void oneEntrysStory() {
        book.enter("bills.csv", bill("FIRST"), bill("SECOND"), sale("2025-12-01", "120"));
        Returns returns = book.returns();
        assertThat(returns.treated(1).stream().map(t -> t.vat().toString())).contains("0.03");
        assertThat(returns.treated(2).stream().map(t -> t.vat().toString()))
                .as("its part of its document")
                .contains("0.02");
        assertThat(returns.treated(3).stream().map(Treated::treatment))
                .contains("before-registration-sale");
        assertThat(returns.treated(4)).isEmpty();
        List<Treated> all = new ArrayList<>();
        returns.forEachTreated(all::add);
        assertThat(all)
                .extracting(t -> t.entry().number() + " " + t.vat())
                .containsExactly("1 0.03", "2 0.02", "3 0.00");
    }

    @Test
    void whatADraftsPackHolds() {
        book.enter("sales.csv", sale("2026-08-01", "120"), sale("2026-10-01", "60"));
        Pack pack = book.returns().pack(book.period("2026-09"));
        assertThat(pack.vatReturn()).isEqualTo(book.of("2026-09"));
        assertThat(pack.law()).isSameAs(TempBook.LAW);
        assertThat(pack.settings().name()).isEqualTo("Fernmoor Crafts");
        assertThat(TempBook.treated(pack)).extracting(t -> t.entry().number()).containsExactly(1L);
    }

    /** VATA 1994 Sch 4 para 5(2)(a): gifts of earlier periods count towards the limit of 50. */
    @Test
    void giftsOfSeveralPeriods() {
        SampleLine gift = SampleLine.of("gift").party("A customer", "GB", "");
        book.enter("spring.csv", gift.on("2026-05-10").net("30"));
        book.enter("summer.csv", gift.on("2026-08-10").without().net("25"));
        assertThat(book.of("2026-06").box("1").text()).isEqualTo("0.00");
        assertThat(book.of("2026-09").box("1").text()).isEqualTo("11.00");
    }

    /** VAT Notice 718: what the goods cost stands in a purchase of an earlier period. */
    @Test
    void marginGoodsBoughtEarlier() {
        SampleLine chair = SampleLine.of("purchase").product("CHAIR-1").rate("margin");
        book.enter("spring.csv", chair.on("2026-05-10").gross("1000"));
        book.enter(
                "summer.csv",
                SampleLine.of("sale")
                        .on("2026-08-10")
                        .product("CHAIR-1")
                        .rate("margin")
                        .gross("1600"));
        assertThat(book.of("2026-09").box("1").text()).isEqualTo("100.00");
        assertThat(book.of("2026-09").queries()).isEmpty();
    }

    /** The same where the list of goods or a decision says that they are on the scheme. */
    @Test
    void marginGoodsByListOrDecision() throws IOException {
        book.enter(
                "spring.csv",
                SampleLine.of("purchase").on("2026-05-10").product("CHAIR-1").gross("1000"));
        book.enter(
                "summer.csv",
                SampleLine.of("sale").on("2026-08-10").product("CHAIR-1").gross("1600"));
        book.decide("entry", "1", "state", "rate=margin");
        book.decide("entry", "2", "state", "rate=margin");
        assertThat(book.of("2026-09").box("1").text()).isEqualTo("100.00");
        book.decide("entry", "2", "undo", "2");
        assertThat(book.of("2026-09").box("1").text()).isEqualTo("266.67");
        book.products("CHAIR-1,margin,,\n");
        assertThat(book.of("2026-09").box("1").text()).isEqualTo("100.00");
    }
}

package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static quarterfold.intake.MadeStatement.balance;
import static quarterfold.intake.MadeStatement.entry;
import static quarterfold.intake.MadeStatement.message;
import static quarterfold.intake.MadeStatement.messageOf;
import static quarterfold.intake.MadeStatement.ofVersion;
import static quarterfold.intake.MadeStatement.statement;
import static quarterfold.intake.MadeStatement.transactions;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Customer;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Item;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.ledger.Profile;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Bank statements of ISO 20022. What elements mean is by the definitions of the message's own
 * schema, camt.053.001.08, which stand beside what is asserted.
 */
class BankStatementTest {
    private static final Particulars ACCOUNT =
            new Particulars(Map.of(Particular.ACCOUNT, MadeStatement.ACCOUNT));
    private static final LocalDate DAY = LocalDate.of(2026, 9, 30);

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

    private static Profile profile(String party) {
        return new Profile(
                Kind.BANK_LINE,
                "GBP",
                StatedRate.NONE,
                party,
                "",
                "",
                "",
                "",
                "",
                Customer.CONSUMER,
                "",
                "",
                ChannelCollects.NO,
                "",
                Evidence.UNSTATED,
                Percent.HUNDRED);
    }

    private static Amounts amount(String amount) {
        return Amounts.ofGross(Amount.of(amount));
    }

    private List<String> money() {
        return desk.lines().stream().map(l -> l.signedMoney().toString()).toList();
    }

    private List<String> notes() {
        return desk.lines().stream().map(Line::notes).toList();
    }

    private List<String> questions() {
        return desk.raised().stream()
                .map(q -> q.code() + "/" + q.about() + ": " + q.question())
                .toList();
    }

    /** The status is a plain code at first and a choice later; so are parties. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14})
    void readsEveryVersionAlike(int version) throws IOException {
        ImportResult result = desk.enter("september.xml", ofVersion(version));

        assertThat(result).isInstanceOf(ImportResult.Entered.class);
        assertThat(result.layout()).isEqualTo("camt.053");
        assertThat(result.rowsRead()).isEqualTo(3);
        assertThat(desk.lines())
                .containsExactly(
                        new Line(
                                1,
                                DAY,
                                profile("Quaylark Payments"),
                                new Item("", "Quaylark payout QL-0418, September sales"),
                                "QL-0418",
                                "HB-77120",
                                amount("18600"),
                                Optional.of(LocalDate.of(2026, 10, 1)),
                                ACCOUNT,
                                "",
                                "NtryRef: 1; BkTxCd/Domn/Cd: PMNT; BkTxCd/Domn/Fmly/Cd: RCDT;"
                                        + " BkTxCd/Domn/Fmly/SubFmlyCd: DMCT;"
                                        + " RltdPties/DbtrAcct/Id/IBAN: GB97QFLD00000087654321"),
                        new Line(
                                2,
                                DAY,
                                profile("Harbour Boxes & Tape"),
                                new Item("", "Faster payment"),
                                "HX-2210",
                                "HB-77121",
                                amount("-240"),
                                Optional.empty(),
                                ACCOUNT,
                                "",
                                "BkTxCd/Prtry/Cd: FPO"));
        assertThat(desk.setAside(1))
                .containsExactly(new SetAside(1, 3, "not booked: its status is PDNG, GBP -99.50"));
        assertThat(desk.raised()).isEmpty();
    }

    /**
     * Example 11-A. ISO 20022 of {@code RvslInd}: "If the CreditDebitIndicator is CRDT and
     * ReversalIndicator is Yes, the original operation was a debit entry": the indicator of the
     * entry says which way the entry itself goes.
     */
    @ParameterizedTest
    @CsvSource({
        "CRDT, '',      18600.00",
        "CRDT, 'false', 18600.00",
        "CRDT, 'true',  18600.00",
        "DBIT, '',     -18600.00",
        "DBIT, 'true', -18600.00",
        "DBIT, '1',    -18600.00"
    })
    void anEntryGoesTheWayItSaysAlsoAsAReversal(String indicator, String reversal, String booked)
            throws IOException {
        String marked = reversal.isEmpty() ? "" : "<RvslInd>%s</RvslInd>".formatted(reversal);
        String entry =
                entry("18600.00", "")
                        .replace(
                                "<CdtDbtInd>CRDT</CdtDbtInd>",
                                "<CdtDbtInd>%s</CdtDbtInd>%s".formatted(indicator, marked));
        String closing = Amount.of(booked).plus(Amount.of("100")).toString();
        desk.enter(
                "a.xml",
                message(
                        statement(
                                "S", balance("OPBD", "100.00"), balance("CLBD", closing), entry)));

        assertThat(money()).containsExactly(booked);
        assertThat(notes())
                .containsExactly(
                        reversal.equals("true") || reversal.equals("1") ? "RvslInd: true" : "");
        assertThat(desk.raised()).isEmpty();
    }

    @Test
    void aReversalNamesThePartyOfThePaymentItTakesBack() throws IOException {
        String parties =
                transactions(
                        "<RltdPties><Dbtr><Pty><Nm>Alder</Nm></Pty></Dbtr>"
                                + "<Cdtr><Pty><Nm>Harbour Boxes</Nm></Pty></Cdtr></RltdPties>"
                                + "<RtrInf><Rsn><Cd>AC04</Cd></Rsn></RtrInf>");
        desk.enter(
                "a.xml",
                message(
                        statement(
                                "S",
                                balance("PRCD", "0"),
                                balance("CLBD", "480.00"),
                                entry("240.00", parties)
                                        .replace("<Sts>", "<RvslInd>true</RvslInd><Sts>"),
                                entry("240.00", parties))));

        assertThat(desk.lines().stream().map(l -> l.profile().party()))
                .containsExactly("Harbour Boxes", "Alder");
        assertThat(notes())
                .containsExactly(
                        "RvslInd: true; Dbtr: Alder; RtrInf/Rsn/Cd: AC04",
                        "Cdtr: Harbour Boxes; RtrInf/Rsn/Cd: AC04");
        assertThat(desk.raised()).isEmpty();
    }

    @Test
    void aStatementThatDoesNotTieIsAsked() throws IOException {
        desk.enter(
                "a.xml",
                message(
                        statement(
                                "2026-09",
                                balance("OPBD", "-50.00"),
                                balance("CLBD", "200.00"),
                                entry("300.00", ""),
                                entry("-60.00", ""))));

        assertThat(money()).containsExactly("300.00", "-60.00");
        assertThat(questions())
                .containsExactly(
                        "statement-does-not-tie/2026-09: statement 2026-09 of account GB24QFLD00000012345678 opens with -50.00; with its booked entries (2, 240.00 in all) that makes 190.00, but it closes with 200.00; the difference is 10.00: which entries are missing, or which are not of this statement?");
    }

    @Test
    void reversalsThatWouldTieTheOtherWayAreNamed() throws IOException {
        desk.enter(
                "a.xml",
                message(
                        statement(
                                "2026-09",
                                balance("OPBD", "100.00"),
                                balance("CLBD", "130.00"),
                                entry("50.00", ""),
                                entry("20.00", "")
                                        .replace("<Sts>", "<RvslInd>true</RvslInd><Sts>"))));

        assertThat(questions())
                .containsExactly(
                        "statement-does-not-tie/2026-09: statement 2026-09 of account GB24QFLD00000012345678 opens with 100.00; with its booked entries (2, 70.00 in all) that makes 170.00, but it closes with 130.00; the difference is -40.00: it would tie if its reversals (1, 20.00 in all) went the other way; does the bank say of them which way the payments they take back went?");
    }

    @Test
    void missingBalancesAreTold() throws IOException {
        desk.enter(
                "a.xml",
                message(
                        statement("A", balance("OPBD", "1.00"), entry("300.00", "")),
                        statement("B", balance("CLBD", "1.00"), entry("1.00", "")),
                        statement("B", entry("1.00", ""), entry("2.00", "")),
                        statement("C", balance("ITBD", "1.00"), balance("CLAV", "9.00"))));

        assertThat(questions())
                .containsExactly(
                        "statement-balance-missing/A: statement A of account GB24QFLD00000012345678 states no closing balance (CLBD), so nothing proves that its booked entries (1, 300.00 in all) are all there; hold them against what the bank shows",
                        "statement-balance-missing/B: statement B of account GB24QFLD00000012345678 states no opening balance (OPBD or PRCD), so nothing proves that its booked entries (1, 1.00 in all) are all there; hold them against what the bank shows",
                        "statement-balance-missing/B (2): statement B of account GB24QFLD00000012345678 states no opening balance (OPBD or PRCD) and no closing one (CLBD), so nothing proves that its booked entries (2, 3.00 in all) are all there; hold them against what the bank shows",
                        "statement-balance-missing/C: statement C of account GB24QFLD00000012345678 states no opening balance (OPBD or PRCD) and no closing one (CLBD), so nothing proves that its booked entries (0, 0.00 in all) are all there; hold them against what the bank shows");
    }

    @Test
    void amountsOfTwoCurrenciesProveNothing() throws IOException {
        desk.enter(
                "a.xml",
                message(
                        statement(
                                "S",
                                balance("OPBD", "1.00"),
                                balance("CLBD", "3.00"),
                                entry("2.00", "").replace("\"GBP\"", "\"EUR\""))));

        assertThat(desk.lines().get(0).profile().currency()).isEqualTo("EUR");
        assertThat(questions())
                .containsExactly(
                        "statement-currencies-differ/S: statement S of account GB24QFLD00000012345678 states amounts in EUR and GBP; expected one currency, that of the account: nothing proves that its entries are all there");
    }

    @Test
    void statementsOfAnAccountFollowEachOtherEitherWay() throws IOException {
        String july = statement("07", balance("OPBD", "0"), balance("CLBD", "5"), entry("5", ""));
        String august = statement("08", balance("OPBD", "5"), balance("CLBD", "9"), entry("4", ""));
        String october =
                statement("10", balance("OPBD", "2"), balance("CLBD", "3"), entry("1", ""));
        desk.enter("up.xml", message(july, august));
        desk.enter("down.xml", message(august, july));
        assertThat(desk.raised()).isEmpty();

        desk.enter("gap.xml", message(july, august, october));
        assertThat(questions())
                .containsExactly(
                        "statement-missing/10: statement 10 of account GB24QFLD00000012345678 opens with 2.00, but statement 08 before it in the file closes with 9.00: is a statement between them missing?");
    }

    @Test
    void aStatementThatIsThereTwiceIsAsked() throws IOException {
        String july = statement("07", balance("OPBD", "0"), balance("CLBD", "5"), entry("5", ""));
        desk.enter("twice.xml", message(july, july));

        assertThat(money()).containsExactly("5.00", "5.00");
        assertThat(questions())
                .containsExactly(
                        "statement-repeated/07: statement 07 of account GB24QFLD00000012345678 is in the file twice with the same balances; its booked entries (1, 5.00 in all) are entered each time: is the second one a copy?");
    }

    /**
     * The sample message that ISO 20022 publishes for the statement, camt.053.001.02: its account,
     * balances, amounts, references and times are the sample's; what it says besides is left out.
     */
    @Test
    void thePublishedSampleTies() throws IOException {
        String sample =
                """
                <?xml version="1.0" encoding="UTF-8"?>
                <Document xmlns="urn:iso:std:iso:20022:tech:xsd:camt.053.001.02">
                <BkToCstmrStmt>
                <GrpHdr><MsgId>AAAASESS-FP-STAT001</MsgId></GrpHdr>
                <Stmt>
                  <Id>AAAASESS-FP-STAT001</Id>
                  <Acct><Id><Othr><Id>50000000054910000003</Id></Othr></Id></Acct>
                  <Bal><Tp><CdOrPrtry><Cd>OPBD</Cd></CdOrPrtry></Tp><Amt Ccy="SEK">500000</Amt><CdtDbtInd>CRDT</CdtDbtInd></Bal>
                  <Bal><Tp><CdOrPrtry><Cd>CLBD</Cd></CdOrPrtry></Tp><Amt Ccy="SEK">435678.50</Amt><CdtDbtInd>CRDT</CdtDbtInd></Bal>
                  <Ntry>
                    <Amt Ccy="SEK">105678.50</Amt><CdtDbtInd>CRDT</CdtDbtInd><Sts>BOOK</Sts>
                    <BookgDt><DtTm>2010-10-18T13:15:00+01:00</DtTm></BookgDt>
                    <AcctSvcrRef>AAAASESS-FP-CN_98765/01</AcctSvcrRef>
                    <NtryDtls><TxDtls>
                      <Refs><EndToEndId>MUELL/FINP/RA12345</EndToEndId></Refs>
                      <RltdPties><Dbtr><Nm>MUELLER</Nm></Dbtr></RltdPties>
                    </TxDtls></NtryDtls>
                  </Ntry>
                  <Ntry>
                    <Amt Ccy="SEK">200000</Amt><CdtDbtInd>DBIT</CdtDbtInd><Sts>BOOK</Sts>
                    <BookgDt><DtTm>2010-10-18T13:15:00+01:00</DtTm></BookgDt>
                    <AcctSvcrRef>AAAASESS-FP-ACCR-01</AcctSvcrRef>
                    <NtryDtls><Btch><NbOfTxs>20</NbOfTxs></Btch></NtryDtls>
                  </Ntry>
                  <Ntry>
                    <Amt Ccy="SEK">30000</Amt><CdtDbtInd>CRDT</CdtDbtInd><Sts>BOOK</Sts>
                    <BookgDt><DtTm>2010-10-18T13:15:00+01:00</DtTm></BookgDt>
                    <AcctSvcrRef>AAAASESS-FP-CONF-FX</AcctSvcrRef>
                    <NtryDtls><TxDtls><Refs><EndToEndId>AAAASS1085FINPSS</EndToEndId></Refs></TxDtls></NtryDtls>
                  </Ntry>
                </Stmt>
                </BkToCstmrStmt>
                </Document>
                """;
        desk.enter("sample.xml", sample);

        assertThat(desk.lines())
                .extracting(
                        l -> l.taxPoint().toString(),
                        l -> l.signedMoney().toString(),
                        l -> l.profile().currency(),
                        l -> l.profile().party(),
                        Line::document,
                        Line::order,
                        Line::notes)
                .containsExactly(
                        tuple(
                                "2010-10-18",
                                "105678.50",
                                "SEK",
                                "MUELLER",
                                "MUELL/FINP/RA12345",
                                "AAAASESS-FP-CN_98765/01",
                                ""),
                        tuple(
                                "2010-10-18",
                                "-200000.00",
                                "SEK",
                                "",
                                "",
                                "AAAASESS-FP-ACCR-01",
                                "Btch/NbOfTxs: 20"),
                        tuple(
                                "2010-10-18",
                                "30000.00",
                                "SEK",
                                "",
                                "AAAASS1085FINPSS",
                                "AAAASESS-FP-CONF-FX",
                                ""));
        assertThat(desk.raised()).isEmpty(); // 500000 + 105678.50 - 200000 + 30000 = 435678.50
    }

    /** Pages of one statement prove it together; a page alone by its interim balances. */
    @Test
    void pagesAreOneStatement() throws IOException {
        String first = page(1, false, balance("OPBD", "10"), entry("5", ""), balance("ITBD", "15"));
        String second =
                page(2, false, balance("ITBD", "15"), entry("1", ""), balance("ITBD", "16"));
        String third = page(3, true, balance("ITBD", "16"), entry("4", ""), balance("CLBD", "20"));
        desk.enter("all.xml", message(first, second, third));
        desk.enter("1.xml", message(first));
        desk.enter("2.xml", message(second));
        desk.enter("3.xml", message(third));
        assertThat(desk.raised()).isEmpty();
        assertThat(money()).containsExactly("5.00", "1.00", "4.00");

        desk.enter("without-2.xml", message(first, third));
        assertThat(questions())
                .containsExactly(
                        "statement-missing/S: statement S of account GB24QFLD00000012345678 opens with 16.00, but statement S before it in the file closes with 15.00: is a statement between them missing?");
    }

    private static String page(int number, boolean last, String... parts) {
        return statement("S", parts)
                .replace(
                        "</Id>\n      <Acct>",
                        "</Id><StmtPgntn><PgNb>%d</PgNb><LastPgInd>%s</LastPgInd></StmtPgntn><Acct>"
                                .formatted(number, last));
    }

    @Test
    void earlyVersionsNumberThePagesOfTheMessage() throws IOException {
        String pages = "<MsgPgntn><PgNb>2</PgNb><LastPgInd>false</LastPgInd></MsgPgntn></GrpHdr>";
        desk.enter(
                "a.xml",
                messageOf(
                                "camt.053.001.02",
                                statement(
                                        "S",
                                        balance("ITBD", "15"),
                                        balance("ITBD", "16"),
                                        entry("1", "").replaceAll("</?Cd>", "")))
                        .replace("</GrpHdr>", pages));

        assertThat(money()).containsExactly("1.00");
        assertThat(desk.raised()).isEmpty();
    }

    @Test
    void anEntryIsTheTransactionsThatAddUpToIt() throws IOException {
        desk.enter(
                "a.xml",
                message(
                        statement(
                                "S",
                                balance("OPBD", "0"),
                                balance("CLBD", "-30"),
                                entry(
                                        "-30.00",
                                        "<AcctSvcrRef>HB-1</AcctSvcrRef>"
                                                + transactions(
                                                        "<Refs><AcctSvcrRef>HB-1/1</AcctSvcrRef><EndToEndId>P1</EndToEndId></Refs><Amt Ccy=\"GBP\">42.00</Amt><CdtDbtInd>DBIT</CdtDbtInd>",
                                                        "<Refs><EndToEndId>P2</EndToEndId></Refs><Amt Ccy=\"GBP\">12.00</Amt><CdtDbtInd>CRDT</CdtDbtInd>")))));

        assertThat(desk.lines())
                .extracting(Line::row, l -> l.signedMoney().toString(), Line::document, Line::order)
                .containsExactly(
                        tuple(1L, "-42.00", "P1", "HB-1/1"), tuple(1L, "12.00", "P2", "HB-1"));
        assertThat(notes()).containsExactly("TxDtls: 1 of 2; AcctSvcrRef: HB-1", "TxDtls: 2 of 2");
    }

    @ParameterizedTest
    @CsvSource({
        "GBP, 20.00, GBP, 11.00", // they come to more
        "GBP, 20.00, EUR, 10.00", // one is in another currency
        "GBP, 20.00, GBP, ''" // one states none
    })
    void anEntryWhoseTransactionsDoNotAddUpToItIsOneLine(
            String oneCurrency, String one, String otherCurrency, String other) throws IOException {
        String amount = "<Amt Ccy=\"%s\">%s</Amt>";
        desk.enter(
                "a.xml",
                message(
                        statement(
                                "S",
                                balance("OPBD", "0"),
                                balance("CLBD", "30"),
                                entry(
                                        "30.00",
                                        transactions(
                                                amount.formatted(oneCurrency, one),
                                                other.isEmpty()
                                                        ? "<AddtlTxInf>fee</AddtlTxInf>"
                                                        : amount.formatted(
                                                                otherCurrency, other))))));

        assertThat(money()).containsExactly("30.00");
        assertThat(notes()).containsExactly("TxDtls: 2");
    }

    @Test
    void whatTheAccountHadFromAbroadIsNoted() throws IOException {
        desk.enter(
                "a.xml",
                message(
                        statement(
                                "S",
                                balance("OPBD", "0"),
                                balance("CLBD", "79.17"),
                                entry(
                                        "79.17",
                                        transactions(
                                                "<AmtDtls><InstdAmt><Amt Ccy=\"USD\">100.00</Amt></InstdAmt><TxAmt><Amt Ccy=\"GBP\">79.17</Amt><CcyXchg><SrcCcy>USD</SrcCcy><XchgRate>0.7917</XchgRate></CcyXchg></TxAmt></AmtDtls>")))));

        assertThat(notes())
                .containsExactly(
                        "AmtDtls/InstdAmt/Amt@Ccy: USD; AmtDtls/InstdAmt/Amt: 100.00; AmtDtls/TxAmt/CcyXchg/XchgRate: 0.7917");
    }

    @Test
    void withoutADayOfBookingItsMoneysDayIsTaken() throws IOException {
        String dated = "<BookgDt><Dt>2026-09-30</Dt></BookgDt>";
        desk.enter(
                "a.xml",
                message(
                        statement(
                                "S",
                                balance("OPBD", "0"),
                                balance("CLBD", "5"),
                                entry("5", "")
                                        .replace(dated, "<ValDt><Dt>2026-09-29Z</Dt></ValDt>"))));
        assertThat(desk.lines().get(0).taxPoint()).isEqualTo(LocalDate.of(2026, 9, 29));
        assertThat(notes()).containsExactly("BookgDt: not stated");
    }

    @Test
    void nothingMovedIsAStatementToo() throws IOException {
        ImportResult empty =
                desk.enter(
                        "a.xml",
                        message(statement("S", balance("OPBD", "7"), balance("CLBD", "7"))));
        assertThat(empty).isInstanceOf(ImportResult.Entered.class);
        assertThat(empty.rowsRead()).isZero();

        desk.enter(
                "b.xml",
                message(
                        statement(
                                "S",
                                balance("OPBD", "7"),
                                balance("CLBD", "7"),
                                entry("0.00", ""))));
        assertThat(desk.setAside(2)).containsExactly(new SetAside(2, 1, "no amount"));
        assertThat(desk.raised()).isEmpty();
    }

    @Test
    void anAccountWithoutAnIbanHasItsOwnNumber() throws IOException {
        desk.enter(
                "a.xml",
                message(
                        statement("S", balance("OPBD", "0"), balance("CLBD", "1"), entry("1", ""))
                                .replace(
                                        "<IBAN>" + MadeStatement.ACCOUNT + "</IBAN>",
                                        "<Othr><Id>20-00-00 12345678</Id></Othr>")));
        assertThat(desk.lines().get(0).particulars().word(Particular.ACCOUNT))
                .contains("20-00-0012345678");
    }

    /** The ledger is what the file says: read again, nothing differs. */
    @Test
    void readsAgainAsItWasRead() throws IOException {
        desk.enter("a.xml", ofVersion(8));
        desk.enter("b.xml", message(statement("S", entry("1.00", ""))));
        assertThat(desk.reread()).isEmpty();
    }
}

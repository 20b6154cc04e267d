package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static quarterfold.intake.MadeStatement.balance;
import static quarterfold.intake.MadeStatement.entry;
import static quarterfold.intake.MadeStatement.message;
import static quarterfold.intake.MadeStatement.statement;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.SetAside;

/** Statements of one account that overlap: each entry of the bank once. */
class BankOverlapTest {
    private static final String PAYOUT = entry("600", "<AcctSvcrRef>HB-1</AcctSvcrRef>");
    private static final String PAYOUT_NUMBERED_ANEW =
            entry("600", "<NtryRef>9</NtryRef><AcctSvcrRef>HB-1</AcctSvcrRef>");
    private static final String ANOTHER = entry("600", "<AcctSvcrRef>HB-2</AcctSvcrRef>");

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

    /** An entry without a reference of the bank's is known by what its transaction says. */
    private static String paid(String words) {
        return entry(
                "-20",
                "<NtryDtls><TxDtls><RmtInf><Ustrd>%s</Ustrd></RmtInf></TxDtls></NtryDtls>"
                        .formatted(words));
    }

    private List<String> money() {
        return desk.lines().stream()
                .map(l -> l.signedMoney() + " " + l.item().description() + l.order())
                .toList();
    }

    @Test
    void entriesOfAnEarlierStatementAreSetAsideAndBothTie() throws IOException {
        desk.enter(
                "first.xml",
                message(
                        statement(
                                "S-1",
                                balance("OPBD", "0"),
                                PAYOUT,
                                paid("tape"),
                                paid("tape"),
                                balance("CLBD", "560"))));
        ImportResult second =
                desk.enter(
                        "second.xml",
                        message(
                                statement(
                                        "S-2",
                                        balance("OPBD", "0"),
                                        PAYOUT_NUMBERED_ANEW,
                                        paid("tape"),
                                        paid("tape"),
                                        paid("tape"),
                                        paid("boxes"),
                                        ANOTHER,
                                        balance("CLBD", "1120"))));
        assertThat(second.entries()).isEqualTo(3);
        assertThat(money())
                .containsExactly(
                        "600.00 HB-1",
                        "-20.00 tape",
                        "-20.00 tape",
                        "-20.00 tape",
                        "-20.00 boxes",
                        "600.00 HB-2");
        assertThat(desk.raised()).isEmpty();
        assertThat(desk.setAside(2)).extracting(SetAside::row).containsExactly(1L, 2L, 3L);
        assertThat(desk.findings()).isEmpty();
    }
}

package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.law.Law;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;

/** How late input tax may be claimed. */
class ClaimLimitTest {

    private static final Law LAW = Law.of("GB");

    /**
     * T-507: VAT Regulations 1995 reg 29(1A) as amended by SI 2009/586, HMRC manual VAEC7410; the
     * month end as in the example of HMRC manual VRM8300 (a June quarter: 31 July).
     */
    @ParameterizedTest(name = "{0}, of {1} claimed on {2}: in time {4}")
    @CsvSource({
        "due-day, 2022-03, 2026-03, 2026-05-07, true",
        "due-day, 2022-03, 2026-06, 2026-05-07, false",
        "due-day, 2022-06, 2026-06, 2026-08-07, true",
        "due-day, 2021-12, 2026-03, 2026-02-07, false",
        "month-end, 2022-06, 2026-03, 2026-07-31, true",
        "month-end, 2022-06, 2026-06, 2026-07-31, false"
    })
    void lastDay(String choice, String first, String claiming, LocalDate last, boolean inTime) {
        Settings settings = SampleSettings.choosing(Map.of("claim-cap-from", choice));
        Calendar calendar = new Calendar(settings, LAW);
        Period one = calendar.named(YearMonth.parse(first)).orElseThrow();
        Period other = calendar.named(YearMonth.parse(claiming)).orElseThrow();
        ClaimLimit limit = new ClaimLimit(LAW, settings);
        assertThat(limit.lastDay(one, other.end())).contains(last);
        assertThat(limit.isInTime(one, other)).isEqualTo(inTime);
    }
}

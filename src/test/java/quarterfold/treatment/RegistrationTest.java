package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** What is bought before a registration and what is on hand when it ends. */
class RegistrationTest {

    private static final Treating BOOK =
            Treating.of(
                    SampleSettings.on(
                            new Periods(
                                    LocalDate.of(2026, 4, 1),
                                    Optional.of(LocalDate.of(2026, 8, 15)),
                                    SampleSettings.months("3 6 9 12"),
                                    List.of(),
                                    Optional.empty(),
                                    Optional.empty(),
                                    Optional.empty())));

    private static SampleLine bought(String day) {
        return SampleLine.of("purchase")
                .on(day)
                .party("Example supplier", "GB", "GB101747696")
                .document("S-1")
                .evidence("invoice")
                .rate("20")
                .printed("100", "20");
    }

    /**
     * VAT Regulations 1995 reg 111; HMRC manual VIT32000: goods as far as they are still held, on
     * the first day of the registration or when the document came.
     */
    @ParameterizedTest(name = "{0}, {1} held, document held {2}: {3}")
    @CsvSource({
        "2026-03-31, 100, '', 2026-04-01 supply pre-registration: 4=20.00",
        "2026-03-31, 60, '', 2026-04-01 supply pre-registration: 4=12.00",
        "2026-03-31, 0, '', 2026-04-01 supply before-registration-purchase: no box",
        "2026-03-31, 100, 2026-03-20, 2026-04-01 supply pre-registration: 4=20.00",
        "2026-03-31, 100, 2026-04-02, 2026-04-02 supply pre-registration: 4=20.00",
        "2026-04-01, 60, '', 2026-04-01 supply uk-purchase: 4=20.00 7=100.00"
    })
    void goodsBoughtBefore(String day, String onHand, String held, String happens) {
        SampleLine line = bought(day).particular(Particular.ON_HAND, onHand);
        assertThat(BOOK.happens(held.isEmpty() ? line : line.particular(Particular.HELD, held)))
                .containsExactly(happens);
    }

    /** A person may say later what is still held, and when the document came. */
    @Test
    void goodsBoughtBeforeByDecision() {
        assertThat(stating("on_hand=60").happens(bought("2026-03-31")))
                .containsExactly("2026-04-01 supply pre-registration: 4=12.00");
        assertThat(
                        stating("held=2026-04-02")
                                .happens(
                                        bought("2026-03-31").particular(Particular.ON_HAND, "100")))
                .containsExactly("2026-04-02 supply pre-registration: 4=20.00");
    }

    private static Treating stating(String fact) {
        return BOOK.deciding(
                new Decision(
                        1,
                        Decision.Target.ENTRY,
                        "1",
                        Decision.Action.STATE,
                        fact,
                        "counted",
                        "A. Keeper",
                        LocalDate.of(2026, 10, 5)));
    }

    /** Sales of that time, and fee lines without a document, are in no return. */
    @Test
    void whatIsNotTakenUp() {
        BeforeRegistration before =
                new BeforeRegistration(
                        SampleSettings.registered(LocalDate.of(2026, 4, 1), "3"), Answers.NONE);
        assertThat(before.isClaimOf(bought("2026-03-31").entry(1))).isTrue();
        assertThat(before.isClaimOf(bought("2026-04-01").entry(1))).isFalse();
        assertThat(before.isClaimOf(SampleLine.of("sale").on("2026-03-31").gross("1").entry(1)))
                .isFalse();
        assertThat(BeforeRegistration.isBought(SampleLine.of("fee").settlement("Q").entry(1)))
                .isFalse();
        assertThat(BOOK.happens(SampleLine.of("sale").on("2026-03-31").gross("120")))
                .containsExactly("2026-03-31 supply before-registration-sale: no box");
    }

    /** How it is told: on which side of the first day it lies. */
    @ParameterizedTest
    @CsvSource({"2026-03-31, BEFORE_REGISTRATION", "2026-04-01, IN_ITS_PERIOD"})
    void howItIsTakenUp(String day, TakenUp takenUp) {
        assertThat(BOOK.one(bought(day)).takenUp()).isEqualTo(takenUp);
    }

    private static SampleLine stock(String net) {
        return SampleLine.of("stock-on-hand").on("2026-08-15").net(net);
    }

    /** VATA 1994 Sch 4 para 8(1)(c): not where the VAT on all of it is not more than 1,000. */
    @ParameterizedTest(name = "{0} at {1}: {2}")
    @CsvSource({
        "5000.00, '', no box",
        "5000.05, '', 1=1000.01 6=5000.05",
        "5000.00, 20, no box",
        "5000.05, 20, 1=1000.01 6=5000.05",
        "20000.00, 5, no box",
        "20000.20, 5, 1=1000.01 6=20000.20",
        "90000.00, 0, no box"
    })
    void stockOnHandAtTheEnd(String net, String rate, String boxes) {
        assertThat(BOOK.happens(stock(net).rate(rate)))
                .hasSize(1)
                .first()
                .asString()
                .endsWith(": " + boxes);
    }

    /** What was entered twice by decision, or is dated another day, does not count. */
    @Test
    void whatCountsTowardsTheLimit() {
        assertThat(BOOK.told(stock("5100").on("2026-08-14"))).endsWith("asks stock-day");
        Treating twice =
                BOOK.deciding(
                        new Decision(
                                1,
                                Decision.Target.ENTRY,
                                "2",
                                Decision.Action.DUPLICATE_OF,
                                "1",
                                "the same shelf",
                                "A. Keeper",
                                LocalDate.of(2026, 10, 5)));
        assertThat(twice.happens(stock("3000"), stock("3000")))
                .first()
                .asString()
                .endsWith(": no box");
        assertThat(BOOK.happens(stock("3000"), stock("3000").on("2026-08-14")))
                .first()
                .asString()
                .endsWith(": no box");
        assertThat(BOOK.happens(stock("3000"), stock("3000")))
                .first()
                .asString()
                .endsWith(": 1=600.00 6=3000.00");
    }
}

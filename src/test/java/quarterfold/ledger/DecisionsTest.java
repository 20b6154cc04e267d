package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Decisions are appended to the ledger, numbered by it, and read back as they were. */
class DecisionsTest {

    @TempDir Path folder;
    private Ledger ledger;

    @BeforeEach
    void open() {
        ledger = Book.create(folder.resolve("book"), Samples.SETTINGS).ledger();
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private static Decision decision(Decision.Action action, String value, String why) {
        return new Decision(
                0,
                Decision.Target.PARTY,
                "Østgård & Søn",
                action,
                value,
                why,
                "A. Keeper",
                LocalDate.of(2026, 10, 5));
    }

    @Test
    void numberedInTheirOrder() {
        assertThat(ledger.lastDecision()).isZero();
        Decision first =
                ledger.decide(
                        decision(Decision.Action.STATE, "party_country=DK", "seen on the bill"));
        Decision second = ledger.decide(decision(Decision.Action.UNDO, "1", "a slip"));
        assertThat(first.id()).isEqualTo(1);
        assertThat(second.id()).isEqualTo(2);
        assertThat(ledger.lastDecision()).isEqualTo(2);
        assertThat(ledger.decisions()).containsExactly(first, second);
        assertThat(first.about()).isEqualTo("Østgård & Søn");
    }

    @Test
    void neverWithoutAReason() {
        Decision bare = decision(Decision.Action.DISALLOW, "", "");
        assertThatThrownBy(() -> ledger.decide(bare))
                .hasMessageContaining("CHECK constraint failed: why <> ''");
        assertThat(ledger.decisions()).isEmpty();
    }
}

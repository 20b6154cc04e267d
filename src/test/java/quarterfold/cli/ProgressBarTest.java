package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import quarterfold.intake.Watch;

class ProgressBarTest {
    private final StringWriter written = new StringWriter();
    private long now;

    private ProgressBar bar() {
        return new ProgressBar(new PrintWriter(written), () -> now);
    }

    private void after(long milliseconds) {
        now += milliseconds * 1_000_000;
    }

    @Test
    void workThatIsSoonDoneShowsNothing() {
        ProgressBar bar = bar();
        bar.file("a.csv", 0, 100);
        after(699);
        bar.rows(4_096);
        bar.wipe();

        assertThat(written.toString()).isEmpty();
    }

    @Test
    void longWorkShowsHowFarItIsAndWipesItAway() {
        ProgressBar bar = bar();
        bar.file("a.csv", 0, 200);
        after(700);
        bar.file("july/statement.csv", 50, 200);
        after(99);
        bar.rows(4_096);
        after(1);
        bar.rows(8_192);
        bar.wipe();
        bar.wipe();

        String first = "\r[######..................]  25%  july/statement.csv";
        String second = first + "  8,192 entries";
        assertThat(written.toString())
                .isEqualTo(
                        first
                                + " ".repeat(79 - first.length())
                                + second
                                + " ".repeat(79 - second.length())
                                + "\r"
                                + " ".repeat(78)
                                + "\r");
    }

    /** Ctrl-C leaves its mark behind the bar; what is said of it has a line of its own. */
    @Test
    void workThatIsBrokenOffLeavesTheBar() {
        ProgressBar bar = bar();
        after(700);
        bar.file("a.csv", 50, 100);
        bar.end();
        bar.end();
        bar.wipe();

        assertThat(written.toString())
                .isEqualTo(
                        "\r[############............]  50%  a.csv"
                                + " ".repeat(78 - 38)
                                + System.lineSeparator());
    }

    @Test
    void aLongNameIsCutInItsMiddleAndNothingGoesBeyondTheLine() {
        ProgressBar bar = bar();
        after(800);
        bar.file("quarter.zip/a-folder-of-folders/statement-2026-07.csv", 100, 100);

        assertThat(written.toString())
                .isEqualTo(
                        "\r[########################] 100%  quarter.…ement-2026-07.csv"
                                + " ".repeat(79 - 60));
    }

    /** A test has no terminal, and so shows none. */
    @Test
    void noTerminalNoBar() {
        assertThat(ProgressBar.on(new PrintWriter(written))).isSameAs(Watch.NOBODY);
    }
}

package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Imports that are stopped: what was entered stays whole, and of the file at work is nothing. */
class StopTest {
    private static final String HEADER = "date,kind,gross\n";
    private static final int ROWS = 20_000;

    @TempDir Path folder;
    private final Stop stop = new Stop();
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private Path sales(String name, int rows) throws IOException {
        return desk.file(name, HEADER + "2026-09-30,sale,%d.00\n".formatted(rows).repeat(rows));
    }

    /** Wishes to stop when so many rows of one of the files are entered. */
    private Watch stoppingAt(String file, long rows) {
        return new Watch() {
            private String now = "";

            @Override
            public void file(String name, long done, long all) {
                now = name;
                if (rows == 0 && name.equals(file)) {
                    stop.wish();
                }
            }

            @Override
            public void rows(long entered) {
                if (now.equals(file) && entered >= rows) {
                    stop.wish();
                }
            }

            @Override
            public void wipe() {}

            @Override
            public void end() {}
        };
    }

    private List<String> stopped(Watch watch, Path... files) {
        List<String> told = new ArrayList<>();
        assertThatThrownBy(
                        () ->
                                desk.delivery(watch, stop)
                                        .enter(
                                                List.of(files),
                                                Optional.empty(),
                                                result -> told.add(result.name())))
                .isInstanceOf(Stop.Stopped.class)
                .hasMessage(stop.outcome());
        return told;
    }

    @Test
    void inTheMidstOfTheFirstFile() throws IOException {
        assertThat(stopped(stoppingAt("a.csv", 8_192), sales("a.csv", ROWS))).isEmpty();

        assertThat(stop.outcome()).isEqualTo("Interrupted: nothing was entered.");
        assertThat(desk.lines()).isEmpty();
        assertThat(desk.path("book/sources")).isEmptyDirectory();
    }

    @Test
    void inTheMidstOfTheThird() throws IOException {
        assertThat(
                        stopped(
                                stoppingAt("c.csv", 4_096),
                                sales("a.csv", 1),
                                sales("b.csv", 2),
                                sales("c.csv", ROWS),
                                sales("d.csv", 3)))
                .containsExactly("a.csv", "b.csv");

        assertThat(stop.outcome())
                .isEqualTo(
                        "Interrupted: nothing of c.csv was entered; the 2 files entered before it are in the book whole.");
        assertThat(desk.lines()).hasSize(3);
        assertThat(desk.archive()).containsExactly("a.csv", "b.csv");
    }

    /** The wish comes once a file is entered for good, and the next is not begun. */
    @Test
    void betweenTwoFiles() throws IOException {
        List<Path> files = List.of(sales("a.csv", 1), sales("b.csv", 2));
        List<String> afterTheFirst = new ArrayList<>();
        assertThatThrownBy(
                        () ->
                                desk.delivery(Watch.NOBODY, stop)
                                        .enter(
                                                files,
                                                Optional.empty(),
                                                result -> {
                                                    stop.wish();
                                                    afterTheFirst.add(stop.outcome());
                                                }))
                .isInstanceOf(Stop.Stopped.class)
                .hasMessage(
                        "Interrupted: nothing of b.csv was entered; the file entered before it is in the book whole.");

        assertThat(afterTheFirst)
                .containsExactly(
                        "Interrupted: the file entered is in the book whole; nothing else was entered.");
        assertThat(desk.lines()).hasSize(1);
        assertThat(desk.archive()).containsExactly("a.csv");
    }

    /** All its rows are there, and yet it is not entered: no one could tell the person so. */
    @Test
    void justBeforeAFileIsEntered() throws IOException {
        assertThat(stopped(stoppingAt("b.csv", 0), sales("a.csv", 1), sales("b.csv", 2)))
                .containsExactly("a.csv");

        assertThat(stop.outcome())
                .isEqualTo(
                        "Interrupted: nothing of b.csv was entered; the file entered before it is in the book whole.");
        assertThat(desk.lines()).hasSize(1);
        assertThat(desk.archive()).containsExactly("a.csv");
    }
}

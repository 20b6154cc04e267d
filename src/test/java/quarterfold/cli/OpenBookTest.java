package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.junit.jupiter.api.Test;
import quarterfold.law.Law;
import quarterfold.law.LawException;

/** What is told where the law's tables, read on a thread of their own, cannot be used. */
class OpenBookTest {

    @Test
    void theFaultOfATableIsItself() {
        CompletableFuture<Law> tables = CompletableFuture.supplyAsync(() -> Law.of("ZZ"));
        assertThatThrownBy(tables::get)
                .isInstanceOfSatisfying(
                        ExecutionException.class,
                        e ->
                                assertThat(OpenBook.fault(e))
                                        .isInstanceOf(LawException.class)
                                        .hasMessageMatching(
                                                "there are no tables for the country ZZ: [a-z-]+\\.csv is missing"));
    }

    @Test
    void anErrorIsItself() {
        Error error = new OutOfMemoryError("made");
        assertThatThrownBy(() -> OpenBook.fault(new ExecutionException(error))).isSameAs(error);
    }

    @Test
    void whatIsNeitherIsWrapped() {
        IOException cause = new IOException("made");
        assertThat(OpenBook.fault(new ExecutionException(cause)))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("the law's tables could not be read")
                .hasCause(cause);
    }
}

package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LawTest {
    private final Law law = Law.of("GB");

    @Test
    void shippedTablesAreReadAndAgree() {
        assertThat(law.files()).hasSize(11);
        assertThat(law.treatments().rows()).isNotEmpty();
    }
}

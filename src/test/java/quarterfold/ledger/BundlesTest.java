package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Bundles.Part;
import quarterfold.ledger.LedgerException.Fault;
import quarterfold.money.Amount;

class BundlesTest {
    private static final String HEADER = "bundle,product,shelf_price,from,to\n";

    @TempDir Path folder;

    private Bundles read(String text) throws IOException {
        return Bundles.read(Files.writeString(folder.resolve("bundles.csv"), text));
    }

    @Test
    void aBundleHasItsPartsFromTheFirstDayToTheLast() throws IOException {
        Bundles bundles =
                read(
                        HEADER
                                + "HAMPER,TEA-1,6.00,,2000-12-31\n"
                                + "HAMPER,TEA-2,7.00,2001-01-01,\n"
                                + "HAMPER,CUP,1.50,,\n");

        assertThat(bundles.parts("HAMPER", LocalDate.of(2000, 12, 31)))
                .containsExactly(
                        new Part("TEA-1", Amount.of("6")), new Part("CUP", Amount.of("1.50")));
        assertThat(bundles.parts("HAMPER", LocalDate.of(2001, 1, 1)))
                .containsExactly(
                        new Part("TEA-2", Amount.of("7")), new Part("CUP", Amount.of("1.50")));
        assertThat(bundles.parts("CUP", LocalDate.EPOCH)).isEmpty();
        assertThat(bundles.isEmpty()).isFalse();
        assertThat(Bundles.none().isEmpty()).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    ,TEA,6.00,,                          | bundles.csv:2 [bundle]: found ''; expected the product code it is sold under, such as HAMPER
                    HAMPER,,6.00,,                       | bundles.csv:2 [product]: found ''; expected the code of a product in it, such as TEA-1
                    HAMPER,HAMPER,6.00,,                 | bundles.csv:2 [product]: found 'HAMPER'; expected the code of a product in it, such as TEA-1
                    HAMPER,TEA,0,,                       | bundles.csv:2 [shelf_price]: found '0'; expected an amount above nothing, such as 6.00
                    HAMPER,TEA,£6,,                      | bundles.csv:2 [shelf_price]: found '£6'; expected an amount above nothing, such as 6.00
                    HAMPER,TEA,6.00,2024-13-01,          | bundles.csv:2 [from]: found '2024-13-01'; expected year-month-day or nothing, such as 2024-01-01
                    HAMPER,TEA,6.00,2024-01-01,2023-12-31 | bundles.csv:2 [to]: found '2023-12-31'; expected a day not before 2024-01-01
                    HAMPER,TEA,6.00                      | bundles.csv:2: found 3 columns; expected 5, such as HAMPER,TEA-1,6.00,2024-01-01,
                    HAMPER,TEA,6.00,,¶HAMPER,TEA,1.00,,  | bundles.csv:3 [product]: found 'TEA'; expected days no other row of the product in this bundle covers; give several of one product as one row with their price together
                    """)
    void problemsAreToldWithTheirLine(String rows, String expected) {
        assertThatThrownBy(() -> read(HEADER + rows.replace('¶', '\n') + "\n"))
                .isInstanceOfSatisfying(
                        LedgerException.class,
                        e -> assertThat(e.fault()).isEqualTo(Fault.BAD_INPUT))
                .hasMessage(expected);
    }

    @Test
    void anotherHeaderIsRefused() {
        assertThatThrownBy(() -> read("bundle,product\n"))
                .hasMessage(
                        "bundles.csv:1: found the header bundle,product; expected"
                                + " bundle,product,shelf_price,from,to");
    }
}

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
import quarterfold.ledger.LedgerException.Fault;

class ProductsTest {
    private static final String HEADER = "product,liability,from,to\n";

    @TempDir Path folder;

    private Products read(String text) throws IOException {
        return Products.read(Files.writeString(folder.resolve("products.csv"), text));
    }

    @Test
    void aLiabilityHoldsFromItsFirstDayToItsLast() throws IOException {
        Products products =
                read(
                        HEADER
                                + "TOWEL,standard,,2000-12-31\n"
                                + "\n"
                                + " TOWEL , zero , 2001-01-01 , 2001-06-30\n"
                                + "TOWEL,reduced,2001-07-01,\n"
                                + "\"BOOK, large\",zero,,\n");

        assertThat(products.isEmpty()).isFalse();
        assertThat(products.liability("TOWEL", LocalDate.of(1900, 1, 1))).contains("standard");
        assertThat(products.liability("TOWEL", LocalDate.of(2000, 12, 31))).contains("standard");
        assertThat(products.liability("TOWEL", LocalDate.of(2001, 1, 1))).contains("zero");
        assertThat(products.liability("TOWEL", LocalDate.of(2001, 6, 30))).contains("zero");
        assertThat(products.liability("TOWEL", LocalDate.of(2001, 7, 1))).contains("reduced");
        assertThat(products.liability("BOOK, large", LocalDate.MAX)).contains("zero");
        assertThat(products.liability("towel", LocalDate.of(2001, 7, 1))).isEmpty();
        assertThat(Products.none().liability("TOWEL", LocalDate.EPOCH)).isEmpty();
        assertThat(Products.none().isEmpty()).isTrue();
    }

    @Test
    void aDayNoRowCoversHasNoLiability() throws IOException {
        Products products = read(HEADER + "TOWEL,zero,2001-01-01,2001-01-31\n");

        assertThat(products.liability("TOWEL", LocalDate.of(2000, 12, 31))).isEmpty();
        assertThat(products.liability("TOWEL", LocalDate.of(2001, 2, 1))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    KETTLE,Zero,,                                    | products.csv:2 [liability]: found 'Zero'; expected one of standard, reduced, zero, exempt, outside, margin, such as zero
                    ,zero,,                                          | products.csv:2 [product]: found ''; expected the product's own code, such as KETTLE-1
                    KETTLE,zero,1/1/2024,                            | products.csv:2 [from]: found '1/1/2024'; expected year-month-day or nothing, such as 2024-01-01
                    KETTLE,zero,,2024-02-30                          | products.csv:2 [to]: found '2024-02-30'; expected year-month-day or nothing, such as 2024-01-01
                    KETTLE,zero,2024-01-01,2023-12-31                | products.csv:2 [to]: found '2023-12-31'; expected a day not before 2024-01-01
                    KETTLE,zero                                      | products.csv:2: found 2 columns; expected 4, such as KETTLE-1,standard,2024-01-01,
                    KETTLE,zero,,¶"A¶B",zero,,¶KETTLE,zero,2024-01-01, | products.csv:5 [product]: found 'KETTLE'; expected days no other row of the product covers; end the earlier row first
                    ,wrong,x,y                                       | products.csv:2 [product]: found ''; expected the product's own code, such as KETTLE-1¶products.csv:2 [liability]: found 'wrong'; expected one of standard, reduced, zero, exempt, outside, margin, such as zero¶products.csv:2 [from]: found 'x'; expected year-month-day or nothing, such as 2024-01-01¶products.csv:2 [to]: found 'y'; expected year-month-day or nothing, such as 2024-01-01
                    """)
    void problemsAreToldWithTheirLine(String rows, String expected) {
        assertThatThrownBy(() -> read(HEADER + rows.replace('¶', '\n') + "\n"))
                .isInstanceOfSatisfying(
                        LedgerException.class,
                        e -> assertThat(e.fault()).isEqualTo(Fault.BAD_INPUT))
                .hasMessage(expected.replace('¶', '\n'));
    }

    @Test
    void anotherHeaderIsRefused() {
        assertThatThrownBy(() -> read("code,liability\n"))
                .hasMessage(
                        "products.csv:1: found the header code,liability; expected"
                                + " product,liability,from,to");
        assertThatThrownBy(() -> read(""))
                .hasMessage(
                        "products.csv:1: found an empty file; expected the header"
                                + " product,liability,from,to");
    }
}

package quarterfold;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Proves the checker: it passes the authority's own examples and sees each rule broken. */
class ReturnRulesTest {

    /**
     * The example of the API's specification: 105.5 - 100.45 = 5.05, and |5.05 - 105.15| = 100.10.
     */
    private static final String EXAMPLE = "105.5 -100.45 5.05 105.15 100.10 300 300 3000 3000";

    @ParameterizedTest
    @CsvSource(
            textBlock =
                    """
                    105.5 -100.45 5.05 105.15 100.10 300 300 3000 3000
                    100 100 200 100 100 300.00 300.00 0 0
                    -1.00 0.00 -1.00 0.00 1.00 -5 -6 -7 -8
                    9999999999999.99 0 9999999999999.99 9999999999999.99 0 9999999999999 -9999999999999 0 0
                    """)
    void good(String figures) {
        assertThat(ReturnRules.broken(boxes(figures))).isEmpty();
    }

    @ParameterizedTest(name = "box {0} = {1}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    1 | 105.500           | box 1 is 105.500, of more than 2 decimals
                    2 | -1E2              | box 2 is '-1E2', not a plain decimal number
                    4 | 105,15            | box 4 is '105,15', not a plain decimal number
                    4 | ''                | box 4 is '', not a plain decimal number
                    1 | 10000000000000.00 | box 1 is 10000000000000.00, not from -9999999999999.99 to 9999999999999.99
                    2 | -10000000000000   | box 2 is -10000000000000, not from -9999999999999.99 to 9999999999999.99
                    5 | -100.10           | box 5 is -100.10, not from 0 to 99999999999.99
                    5 | 100000000000.00   | box 5 is 100000000000.00, not from 0 to 99999999999.99
                    6 | 300.50            | box 6 is 300.50, not whole pounds
                    7 | 10000000000000    | box 7 is 10000000000000, not from -9999999999999 to 9999999999999
                    8 | 3000.01           | box 8 is 3000.01, not whole pounds
                    9 | -10000000000000   | box 9 is -10000000000000, not from -9999999999999 to 9999999999999
                    3 | 5.06              | VAT_TOTAL_VALUE: box 3 is 5.06; boxes 1 and 2 make 5.05;VAT_NET_VALUE: box 5 is 100.10; boxes 3 and 4 make 100.09
                    5 | 100.11            | VAT_NET_VALUE: box 5 is 100.11; boxes 3 and 4 make 100.10
                    """)
    void broken(String box, String figure, String rules) {
        Map<String, String> boxes = boxes(EXAMPLE);
        boxes.put(box, figure);
        assertThat(ReturnRules.broken(boxes)).containsExactly(rules.split(";(?=VAT)", -1));
    }

    @Test
    void everyBoxIsThereAndNoOther() {
        Map<String, String> eight = boxes(EXAMPLE);
        eight.remove("9");
        assertThat(ReturnRules.broken(eight))
                .containsExactly("the boxes are [1, 2, 3, 4, 5, 6, 7, 8], not 1 to 9");
        assertThat(ReturnRules.broken("{\"boxes\":{\"1\":\"0.00\"}}"))
                .containsExactly("the boxes are [1], not 1 to 9");
    }

    private static Map<String, String> boxes(String figures) {
        Map<String, String> boxes = new TreeMap<>();
        List.of(figures.split(" ", -1))
                .forEach(figure -> boxes.put(Integer.toString(boxes.size() + 1), figure));
        return boxes;
    }
}

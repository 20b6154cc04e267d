package quarterfold.independent;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;

/** The form, from the sums of the boxes that are filled from records. */
final class NineBoxes {

    private NineBoxes() {}

    /**
     * Boxes 1, 2 and 4 in pounds and pence; 3 the sum of 1 and 2; 5 the larger of 3 and 4 less the
     * smaller (published API schema VATReturnDeclaration); 6 to 9 without pence (form VAT100).
     */
    static List<String> of(Map<Integer, BigDecimal> sums) {
        BigDecimal one = pence(sums, 1);
        BigDecimal two = pence(sums, 2);
        BigDecimal three = one.add(two);
        BigDecimal four = pence(sums, 4);
        BigDecimal five = three.max(four).subtract(three.min(four));
        return List.of(
                one.toPlainString(),
                two.toPlainString(),
                three.toPlainString(),
                four.toPlainString(),
                five.toPlainString(),
                pounds(sums, 6),
                pounds(sums, 7),
                pounds(sums, 8),
                pounds(sums, 9));
    }

    private static BigDecimal pence(Map<Integer, BigDecimal> sums, int box) {
        return sums.getOrDefault(box, BigDecimal.ZERO).setScale(2, RoundingMode.HALF_UP);
    }

    private static String pounds(Map<Integer, BigDecimal> sums, int box) {
        return sums.getOrDefault(box, BigDecimal.ZERO)
                .setScale(0, RoundingMode.DOWN)
                .toPlainString();
    }
}

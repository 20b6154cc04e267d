package quarterfold;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import quarterfold.cli.Json;

/**
 * The tax authority's published rules for the nine figures of a return: {@code
 * VATReturnDeclaration} in {@code resources/public/api/conf/1.0/application.yaml} of its open VAT
 * API (hmrc/vat-api, commit 8ddd80d370132a172c7f0d79998c10f5393f7e58), and that repository's
 * validators for the two rules across boxes.
 */
final class ReturnRules {

    private static final Pattern PLAIN = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");
    private static final Set<String> BOXES = Set.of("1", "2", "3", "4", "5", "6", "7", "8", "9");
    private static final Set<String> WHOLE = Set.of("6", "7", "8", "9");
    private static final BigDecimal MOST = new BigDecimal("9999999999999.99");
    private static final BigDecimal MOST_WHOLE = new BigDecimal("9999999999999");
    private static final BigDecimal MOST_NET = new BigDecimal("99999999999.99");

    private final Map<String, String> boxes;
    private final List<String> broken = new ArrayList<>();

    private ReturnRules(Map<String, String> boxes) {
        this.boxes = boxes;
    }

    /** The rules that the boxes of {@code return --json} break. */
    static List<String> broken(String returnJson) {
        Map<String, String> boxes = new TreeMap<>();
        Json.flat(returnJson)
                .forEach(
                        (path, text) -> {
                            if (path.startsWith("boxes/")) {
                                boxes.put(path.substring("boxes/".length()), text);
                            }
                        });
        return broken(boxes);
    }

    /** The rules that figures by box break. */
    static List<String> broken(Map<String, String> boxes) {
        ReturnRules rules = new ReturnRules(boxes);
        if (!boxes.keySet().equals(BOXES)) {
            return List.of("the boxes are " + new TreeSet<>(boxes.keySet()) + ", not 1 to 9");
        }
        boxes.forEach(rules::figure);
        if (rules.broken.isEmpty()) {
            rules.acrossBoxes();
        }
        return rules.broken;
    }

    private void figure(String box, String text) {
        if (!PLAIN.matcher(text).matches()) {
            broken.add("box %s is '%s', not a plain decimal number".formatted(box, text));
            return;
        }
        BigDecimal figure = new BigDecimal(text);
        if (figure.scale() > 2) {
            broken.add("box %s is %s, of more than 2 decimals".formatted(box, text));
        }
        if (WHOLE.contains(box) && figure.stripTrailingZeros().scale() > 0) {
            broken.add("box %s is %s, not whole pounds".formatted(box, text));
        }
        BigDecimal most = box.equals("5") ? MOST_NET : WHOLE.contains(box) ? MOST_WHOLE : MOST;
        BigDecimal least = box.equals("5") ? BigDecimal.ZERO : most.negate();
        if (figure.compareTo(least) < 0 || figure.compareTo(most) > 0) {
            broken.add("box %s is %s, not from %s to %s".formatted(box, text, least, most));
        }
    }

    private void acrossBoxes() {
        BigDecimal due = box("1").add(box("2"));
        if (box("3").compareTo(due) != 0) {
            broken.add(
                    "VAT_TOTAL_VALUE: box 3 is %s; boxes 1 and 2 make %s".formatted(box("3"), due));
        }
        BigDecimal net = box("3").max(box("4")).subtract(box("3").min(box("4")));
        if (box("5").compareTo(net) != 0) {
            broken.add(
                    "VAT_NET_VALUE: box 5 is %s; boxes 3 and 4 make %s".formatted(box("5"), net));
        }
    }

    private BigDecimal box(String box) {
        return new BigDecimal(boxes.getOrDefault(box, ""));
    }
}

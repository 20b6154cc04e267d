package quarterfold.ledger;

import java.util.LinkedHashMap;
import java.util.Map;
import quarterfold.money.Amount;

/** Boxes as one text, such as {@code 1:20.0000 6:100.0000}; no boxes are the empty text. */
final class BoxesText {
    private BoxesText() {}

    static String of(Map<String, Amount> boxes) {
        StringBuilder text = new StringBuilder();
        boxes.forEach(
                (box, amount) -> {
                    if (box.isEmpty() || box.indexOf(' ') >= 0 || box.indexOf(':') >= 0) {
                        throw new IllegalArgumentException("a box cannot be named '" + box + "'");
                    }
                    text.append(text.isEmpty() ? "" : " ").append(box).append(':');
                    text.append(amount.decimal().toPlainString());
                });
        return text.toString();
    }

    static Map<String, Amount> parse(String text) {
        Map<String, Amount> boxes = new LinkedHashMap<>();
        int at = 0;
        while (at < text.length()) {
            int colon = text.indexOf(':', at);
            int space = text.indexOf(' ', colon);
            int end = space < 0 ? text.length() : space;
            boxes.put(text.substring(at, colon), Amount.of(text.substring(colon + 1, end)));
            at = end + 1;
        }
        return boxes;
    }
}

package quarterfold.papers;

/**
 * How many lines a text takes in a column. Spreadsheet programs differ in whether they work out row
 * heights when they open a file, so the workbook states them.
 */
final class Wrapping {

    static final float LINE = 12.75f;
    private static final float TALLEST = 400;
    private static final String NARROW = "iljtfrI.,:;'|!()[] ";

    private Wrapping() {}

    /**
     * Lines of a text broken at spaces, and inside words that are too long.
     *
     * @param width in digits of the sheet's letter, the unit of column widths
     */
    static int lines(String text, double width) {
        if (text.length() * 2 <= width && text.indexOf('\n') < 0) {
            return 1;
        }
        int lines = 0;
        for (String line : text.lines().toList()) {
            lines += linesOfOne(line, width);
        }
        return Math.max(1, lines);
    }

    private static int linesOfOne(String text, double width) {
        int lines = 1;
        double used = 0;
        double word = 0;
        for (int i = 0; i < text.length(); i++) {
            double letter = width(text.charAt(i));
            word += letter;
            if (used + word > width) {
                lines++;
                used = 0;
                word = word > width ? letter : word;
            }
            if (text.charAt(i) == ' ' || text.charAt(i) == '-') {
                used += word;
                word = 0;
            }
        }
        return lines;
    }

    private static double width(char letter) {
        if (letter >= 0x1100) {
            return 1.9;
        }
        if (NARROW.indexOf(letter) >= 0) {
            return 0.6;
        }
        return Character.isUpperCase(letter) || letter == 'm' || letter == 'w' ? 1.3 : 1;
    }

    /** The height in points of a row of so many lines, within what a row may have. */
    static float height(int lines) {
        return Math.min(TALLEST, lines * LINE + 4);
    }
}

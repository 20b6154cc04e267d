package quarterfold.intake;

/**
 * Something in a file that cannot be entered as it stands, said to the person who has to mend it.
 *
 * @param place the file and where in it: {@code sales.csv:3} (a line), {@code sales.xlsx:Sheet!C14}
 *     (a cell), {@code sales.csv} (the file as a whole)
 * @param column the name of the column or key, or empty
 * @param fault {@code found …; expected … such as …}
 */
public record Problem(String place, String column, String fault) {

    static Problem found(String place, String column, String text, String expected) {
        return new Problem(place, column, "found " + quoted(text) + "; expected " + expected);
    }

    /** The text in quotes, made safe to print: control characters shown, long texts cut. */
    static String quoted(String text) {
        StringBuilder shown = new StringBuilder("'");
        int end = Math.min(text.length(), 60);
        for (int i = 0; i < end; i++) {
            char c = text.charAt(i);
            if (Character.isISOControl(c)) {
                shown.append("\\u%04x".formatted((int) c));
            } else {
                shown.append(c);
            }
        }
        return shown.append(end < text.length() ? "…'" : "'").toString();
    }

    /** {@code sales.csv:3 [gross]: found '£5'; expected an amount …, such as 1234.50}. */
    @Override
    public String toString() {
        return place + (column.isEmpty() ? "" : " [" + column + "]") + ": " + fault;
    }
}

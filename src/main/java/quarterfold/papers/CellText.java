package quarterfold.papers;

import java.util.regex.Pattern;

/**
 * A text as a spreadsheet cell can hold it. Nothing a file says becomes a formula, a broken
 * document or another text: line breaks turn to spaces, characters XML 1.0 cannot carry to U+FFFD,
 * and a text the format would read as an escape ({@code _x0041_}, ECMA-376 part 1 ST_Xstring) is
 * escaped.
 */
final class CellText {

    /** The most characters a cell holds in the Office Open XML spreadsheets in use. */
    static final int LONGEST = 32_767;

    private static final Pattern BREAKS = Pattern.compile("[\\t\\n\\r]+");
    private static final Pattern ESCAPE = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");
    private static final String CUT = " … (cut here; the source file has the whole text)";

    private CellText() {}

    static String of(String text) {
        if (isPlain(text)) {
            return text;
        }
        String clean = xml(BREAKS.matcher(text).replaceAll(" "));
        String escaped = clean.contains("_x") ? ESCAPE.matcher(clean).replaceAll("_x005F_") : clean;
        if (escaped.length() <= LONGEST) {
            return escaped;
        }
        int end = LONGEST - CUT.length();
        return escaped.substring(
                        0, Character.isHighSurrogate(escaped.charAt(end - 1)) ? end - 1 : end)
                + CUT;
    }

    /** Whether nothing in the text needs a second look, as in nearly every cell. */
    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < 0x20 || c > 0x7E || c == '_') {
                return false;
            }
        }
        return text.length() <= LONGEST;
    }

    /** Whether a spreadsheet program would take the text for a formula if it were typed in. */
    static boolean looksLikeFormula(String text) {
        return !text.isEmpty() && "=+-@".indexOf(text.charAt(0)) >= 0;
    }

    /**
     * The text with U+FFFD for what XML 1.0 production 2 (Char) leaves out, and for the controls it
     * advises against.
     */
    static String xml(String text) {
        if (text.codePoints().allMatch(CellText::isXmlCharacter)) {
            return text;
        }
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints().forEach(c -> clean.appendCodePoint(isXmlCharacter(c) ? c : 0xFFFD));
        return clean.toString();
    }

    private static boolean isXmlCharacter(int c) {
        if (c < 0x20) {
            return c == '\t' || c == '\n' || c == '\r';
        }
        boolean control = c >= 0x7F && c <= 0x9F;
        boolean half = Character.getType(c) == Character.SURROGATE;
        return !control && !half && c != 0xFFFE && c != 0xFFFF;
    }
}

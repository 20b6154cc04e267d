package quarterfold.papers;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.function.UnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A PDF without chance in it. OpenPDF draws two things at random, the file identifier (ISO 32000-1,
 * 14.4) and the tag of each font subset (9.6.4); both are set here from a digest of the rest. Each
 * keeps its length, so every offset in the file stays true.
 */
final class SteadyPdf {

    private static final Pattern ID = Pattern.compile("(?<=<)[0-9a-f]{32}(?=>)");
    private static final Pattern TRAILER_ID =
            Pattern.compile("/ID ?\\[<\\p{XDigit}{32}><\\p{XDigit}{32}>\\]");
    private static final Pattern TAG = Pattern.compile("(?<=/)[A-Z]{6}(?=\\+Liberation)");
    private static final int TAG_LETTERS = 6;

    private SteadyPdf() {}

    static byte[] of(byte[] pdf) {
        // Each byte is one character here, so nothing but what is replaced changes.
        String text = new String(pdf, StandardCharsets.ISO_8859_1);
        String blank = withId(TAG.matcher(text).replaceAll("AAAAAA"), "0".repeat(32));
        byte[] digest = sha256(blank.getBytes(StandardCharsets.ISO_8859_1));
        String tagged = TAG.matcher(text).replaceAll(tag -> tag(digest, text, tag));
        String steady = withId(tagged, HexFormat.of().formatHex(digest, 0, 16));
        return steady.getBytes(StandardCharsets.ISO_8859_1);
    }

    private static String withId(String text, String id) {
        UnaryOperator<String> both = found -> ID.matcher(found).replaceAll(id);
        return TRAILER_ID
                .matcher(text)
                .replaceAll(r -> Matcher.quoteReplacement(both.apply(r.group())));
    }

    /** A tag of its own for each font, named after the tag by the font's name. */
    private static String tag(byte[] digest, String text, MatchResult found) {
        boolean bold = text.startsWith("+LiberationSans-Bold", found.end());
        StringBuilder tag = new StringBuilder();
        for (int i = 0; i < TAG_LETTERS; i++) {
            tag.append((char) ('A' + Byte.toUnsignedInt(digest[bold ? i : i + TAG_LETTERS]) % 26));
        }
        return tag.toString();
    }

    private static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}

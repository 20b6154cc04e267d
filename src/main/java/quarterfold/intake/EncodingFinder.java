package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.mozilla.universalchardet.UniversalDetector;

/** Finds how the characters of a text file are encoded, from all of it up to a limit. */
final class EncodingFinder {
    private static final int LIMIT = 64 << 20;

    /** What a layout has where a report showed no character that is not ASCII: any will do. */
    static final Charset ANY = StandardCharsets.US_ASCII;

    static final Charset WESTERN = Charset.forName("windows-1252");

    /**
     * An encoding.
     *
     * @param twice whether it is UTF-8 encoded twice
     * @param sure whether the bytes themselves bear it out: of UTF-8 and UTF-16 by their form, of
     *     windows-1252 where every one that is not ASCII is a letter or a mark of western reports
     */
    record Found(Charset charset, boolean twice, boolean sure) {}

    private EncodingFinder() {}

    static Found find(Path file) throws IOException {
        byte[] bytes;
        try (InputStream in = Files.newInputStream(file)) {
            bytes = in.readNBytes(LIMIT);
        }
        if (starts(bytes, 0xFF, 0xFE) || starts(bytes, 0xFE, 0xFF)) {
            return new Found(StandardCharsets.UTF_16, false, true);
        }
        Optional<Charset> wide = wide(bytes);
        if (wide.isPresent()) {
            return new Found(wide.get(), false, true);
        }
        Optional<CharBuffer> text = utf8(bytes, bytes.length == LIMIT);
        if (text.isPresent()) {
            return new Found(StandardCharsets.UTF_8, isTwice(text.get()), true);
        }
        return isWestern(new String(bytes, WESTERN))
                ? new Found(WESTERN, false, true)
                : new Found(detected(bytes), false, false);
    }

    /** What a layout says of an encoding: nothing where the bytes of the next report will. */
    static Charset of(Layout.Shape shape, List<Grid.Line> lines) {
        boolean plain =
                lines.stream()
                        .flatMap(line -> line.cells().stream())
                        .allMatch(cell -> cell.chars().allMatch(c -> c < 0x80));
        boolean wide = shape.encoding().name().startsWith("UTF-16");
        return (plain && !shape.twice()) || wide ? ANY : shape.encoding();
    }

    private static boolean starts(byte[] bytes, int first, int second) {
        return bytes.length >= 2 && (bytes[0] & 0xff) == first && (bytes[1] & 0xff) == second;
    }

    /** UTF-16 without a mark: of every other byte most are nought. */
    private static Optional<Charset> wide(byte[] bytes) {
        int[] noughts = new int[2];
        int length = Math.min(bytes.length, 4_096);
        for (int i = 0; i < length; i++) {
            noughts[i % 2] += bytes[i] == 0 ? 1 : 0;
        }
        if (noughts[1] > length / 4 && noughts[0] < length / 50) {
            return Optional.of(StandardCharsets.UTF_16LE);
        }
        return noughts[0] > length / 4 && noughts[1] < length / 50
                ? Optional.of(StandardCharsets.UTF_16BE)
                : Optional.empty();
    }

    private static Optional<CharBuffer> utf8(byte[] bytes, boolean cut) {
        for (int less = 0; less <= (cut ? 3 : 0); less++) {
            try {
                return Optional.of(
                        StandardCharsets.UTF_8
                                .newDecoder()
                                .decode(ByteBuffer.wrap(bytes, 0, bytes.length - less)));
            } catch (CharacterCodingException e) {
                // not UTF-8, or cut within a character
            }
        }
        return Optional.empty();
    }

    /**
     * Whether undoing one encoding leaves UTF-8 again, with fewer characters that are not ASCII.
     */
    private static boolean isTwice(CharBuffer text) {
        CharSequence body =
                text.length() > 0 && text.charAt(0) == '\uFEFF'
                        ? text.subSequence(1, text.length())
                        : text;
        if (body.chars().allMatch(c -> c < 0x80)) {
            return false;
        }
        try {
            Optional<CharBuffer> inner = utf8(TwiceEncoded.undo(body), false);
            return inner.filter(i -> i.length() < body.length()).isPresent();
        } catch (CharacterCodingException e) {
            return false;
        }
    }

    /** Whether all that is not ASCII is a letter or a mark that western reports have. */
    private static boolean isWestern(String text) {
        return text.chars()
                .filter(c -> c >= 0x80)
                .allMatch(
                        c ->
                                (Character.isLetter(c) && c != 0xaa && c != 0xba && c != 0xb5)
                                        || "\u00a0\u00a3\u20ac\u2013\u2014\u2018\u2019\u201c\u201d\u2026\u00b0\u00b7\u00ba\u00aa\u00ae\u2122"
                                                        .indexOf(c)
                                                >= 0);
    }

    /** The detector's word, but for those sets of which windows-1252 is the usual larger one. */
    private static Charset detected(byte[] bytes) {
        UniversalDetector detector = new UniversalDetector();
        detector.handleData(bytes, 0, bytes.length);
        detector.dataEnd();
        String name = detector.getDetectedCharset();
        if (name == null || name.startsWith("ISO-8859-1") || name.equals("US-ASCII")) {
            return WESTERN;
        }
        try {
            Charset charset = Charset.forName(name);
            charset.newDecoder().decode(ByteBuffer.wrap(bytes));
            return charset;
        } catch (CharacterCodingException e) {
            return WESTERN;
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            return WESTERN;
        }
    }
}

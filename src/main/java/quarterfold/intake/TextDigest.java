package quarterfold.intake;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;

/** A digest of texts, one after the other, that tells where each ends. For one thread. */
final class TextDigest {
    private static final byte END = 0;
    private static final byte WIDE = 1;

    private final MessageDigest sha256;
    private byte[] bytes = new byte[1024];
    private int length;

    TextDigest() {
        try {
            sha256 = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java platform has it
        }
    }

    /** Adds a text. */
    TextDigest add(String text) {
        int most = length + 3 * text.length() + 1;
        if (most > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(most, 2 * bytes.length));
        }
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c > WIDE && c < 0x80) {
                bytes[length++] = (byte) c;
            } else {
                bytes[length++] = WIDE;
                bytes[length++] = (byte) (c >> 8);
                bytes[length++] = (byte) c;
            }
        }
        bytes[length++] = END;
        return this;
    }

    /** The digest of all texts since the last one, of which the first bytes are as good as any. */
    ByteBuffer take() {
        sha256.update(bytes, 0, length);
        length = 0;
        return ByteBuffer.wrap(sha256.digest());
    }
}

package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import quarterfold.ledger.Bytes;

/** What a file can be at all, by its first bytes. */
enum Nature {
    /** A text, or a file that ends as tables do and so is to be read as one. */
    TABLE,
    PACKED,
    DOCUMENT,
    PICTURE,
    /** A ZIP that says it holds nothing. */
    NOTHING,
    OTHER;

    private static final int LOOKED_AT = 4_096;
    private static final String TABLES = "csv|tsv|tab|txt|psv|xls|xlsx";

    static Nature of(String name, Bytes bytes) throws IOException {
        byte[] head;
        try (InputStream in = bytes.open()) {
            head = in.readNBytes(LOOKED_AT);
        }
        if (starts(head, 0, "PK\3\4")) {
            return PACKED;
        }
        if (starts(head, 0, "PK\5\6")) {
            return NOTHING;
        }
        int from = starts(head, 0, "\u00ef\u00bb\u00bf") ? 3 : 0;
        if (starts(head, 0, "%PDF-") || starts(head, from, "<")) {
            return DOCUMENT;
        }
        if (isPicture(head)) {
            return PICTURE;
        }
        boolean old = starts(head, 0, "\u00d0\u00cf\u0011\u00e0");
        boolean text = starts(head, 0, "\u00ff\u00fe") || starts(head, 0, "\u00fe\u00ff");
        if (hasTableEnding(name) || YamlTables.isNamed(name) || text || (!old && !hasNul(head))) {
            return TABLE;
        }
        return OTHER;
    }

    /** Whether the name ends as those of tables do. */
    static boolean hasTableEnding(String name) {
        return name.toLowerCase(Locale.ROOT).matches(".*\\.(" + TABLES + ")");
    }

    private static boolean isPicture(byte[] head) {
        return starts(head, 0, "\u00ff\u00d8\u00ff") // JPEG
                || starts(head, 0, "\u0089PNG\r\n")
                || starts(head, 0, "GIF8")
                || starts(head, 0, "II*\0") // TIFF, in both its orders
                || starts(head, 0, "MM\0*")
                || (starts(head, 0, "RIFF") && starts(head, 8, "WEBP"))
                || (starts(head, 0, "BM") && starts(head, 6, "\0\0\0\0"))
                || (starts(head, 0, "\0\0\0") && starts(head, 4, "ftyp")); // HEIC and its kin
    }

    private static boolean hasNul(byte[] head) {
        for (byte b : head) {
            if (b == 0) {
                return true;
            }
        }
        return false;
    }

    private static boolean starts(byte[] head, int from, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        for (int i = 0; i < bytes.length; i++) {
            if (from + i >= head.length || head[from + i] != bytes[i]) {
                return false;
            }
        }
        return true;
    }
}

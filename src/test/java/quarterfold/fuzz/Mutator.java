package quarterfold.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Makes broken files out of sound ones: bits flipped, bytes cut, repeated, swapped or taken from
 * another file, and words put in that readers of such files are known to trip over. The same seed
 * gives the same bytes.
 */
final class Mutator {
    /** Words that mean something to a reader of text tables, XML or YAML. */
    static final List<String> WORDS =
            List.of(
                    ",",
                    ";",
                    "\t",
                    "\"",
                    "\"\"",
                    "'",
                    "\n",
                    "\r",
                    "\r\n",
                    "\n\n",
                    "\0",
                    "\uFEFF",
                    "\u00a3",
                    "\u20ac",
                    "\u2212",
                    "\u00a0",
                    "\u202e",
                    "\u0663",
                    "\ud83e\uded6",
                    "-",
                    "--",
                    "+",
                    "(",
                    ")",
                    "%",
                    "NaN",
                    "Infinity",
                    "1e9",
                    "1E400",
                    "-0",
                    "0.00005",
                    "1,234.50",
                    "1.234,50",
                    "922337203685477.5807",
                    "922337203685477.5808",
                    "99999999999999999999",
                    "=1+1",
                    "@x",
                    "2026-02-29",
                    "2026-02-30",
                    "0000-00-00",
                    "9999-12-31",
                    "-9999-01-01",
                    "29/02/2028",
                    "31/12/26",
                    "2026-09-30T24:00:00Z",
                    "Sale",
                    "sale",
                    "payout",
                    "other-money",
                    "fee",
                    "GBP",
                    "EUR",
                    "XXX",
                    "null",
                    "true",
                    "no",
                    "~",
                    "&lt;",
                    "&#0;",
                    "&e;",
                    "<!DOCTYPE x [<!ENTITY e \"e\">]>",
                    "]]>",
                    "<![CDATA[",
                    "<!--",
                    "<v>",
                    "</v>",
                    "<c>",
                    "</c>",
                    "<row>",
                    "</row>",
                    "<f>",
                    "<is><t>",
                    "r=\"A1\"",
                    "r=\"ZZZZ9\"",
                    "r=\"\"",
                    "t=\"s\"",
                    "t=\"e\"",
                    "t=\"str\"",
                    "t=\"b\"",
                    "s=\"-1\"",
                    "s=\"99\"",
                    "<v>-1</v>",
                    "<v>99999999999</v>",
                    "xml:space=\"preserve\"",
                    "{",
                    "}",
                    "[",
                    "]",
                    "{}",
                    "[]",
                    ": ",
                    "- ",
                    "? ",
                    "&a ",
                    "*a",
                    "!!int ",
                    "!x ",
                    "|\n",
                    ">\n",
                    "%YAML 9.9\n---\n",
                    "---\n",
                    "...\n",
                    "#",
                    "\\u0000",
                    "<<: *a",
                    "kind:",
                    "when:",
                    "enter:",
                    "skip:",
                    "amounts:",
                    "fields:",
                    "header_row: 99");

    private static final int LARGEST = 1 << 18;

    private final Random lot;
    private final List<byte[]> seeds;

    Mutator(long seed, List<byte[]> seeds) {
        this.lot = new Random(seed);
        this.seeds = seeds;
    }

    byte[] seed() {
        return seeds.get(lot.nextInt(seeds.size()));
    }

    /** One of the seeds with one to six changes. */
    byte[] next() {
        return changed(seed());
    }

    byte[] changed(byte[] sound) {
        byte[] bytes = sound;
        int changes = 1 + lot.nextInt(lot.nextInt(3) == 0 ? 5 : 1);
        for (int i = 0; i < changes; i++) {
            bytes = change(bytes);
        }
        return bytes.length > LARGEST ? Arrays.copyOf(bytes, LARGEST) : bytes;
    }

    int below(int bound) {
        return lot.nextInt(bound);
    }

    private byte[] change(byte[] bytes) {
        if (bytes.length == 0) {
            return word();
        }
        if (lot.nextInt(5) < 2) {
            return shape(bytes);
        }
        int from = lot.nextInt(bytes.length);
        int to = from + 1 + lot.nextInt(Math.min(bytes.length - from, span()));
        return switch (lot.nextInt(11)) {
            case 0 -> flip(bytes, from);
            case 1 -> set(bytes, from, (byte) lot.nextInt(256));
            case 2 ->
                    set(
                            bytes,
                            from,
                            "0123456789.,-;\"\n<>&:{}[] "
                                    .getBytes(StandardCharsets.US_ASCII)[lot.nextInt(25)]);
            case 3 -> join(bytes, from, to, new byte[0]);
            case 4 -> Arrays.copyOf(bytes, from);
            case 5 -> join(bytes, to, to, repeated(Arrays.copyOfRange(bytes, from, to)));
            case 6 -> join(bytes, from, to, piece(seed()));
            case 7 -> join(bytes, from, to, piece(bytes));
            case 8 -> line(bytes, from);
            default -> join(bytes, from, lot.nextBoolean() ? from : to, word());
        };
    }

    /** Another letter in place of a letter, another digit in place of a digit, if one is found. */
    private byte[] shape(byte[] bytes) {
        for (int tries = 0; tries < 20; tries++) {
            int at = lot.nextInt(bytes.length);
            byte b = bytes[at];
            if (b >= '0' && b <= '9') {
                return set(bytes, at, (byte) ('0' + lot.nextInt(10)));
            }
            if ((b >= 'a' && b <= 'z') || (b >= 'A' && b <= 'Z')) {
                return set(bytes, at, (byte) ((b & 0x20) + 'A' + lot.nextInt(26)));
            }
        }
        return bytes;
    }

    private int span() {
        return lot.nextInt(4) == 0 ? 2_000 : 24;
    }

    private byte[] word() {
        return WORDS.get(lot.nextInt(WORDS.size())).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] piece(byte[] bytes) {
        if (bytes.length == 0) {
            return bytes;
        }
        int from = lot.nextInt(bytes.length);
        return Arrays.copyOfRange(
                bytes, from, from + 1 + lot.nextInt(Math.min(bytes.length - from, span())));
    }

    private byte[] repeated(byte[] piece) {
        int times = 1 + lot.nextInt(lot.nextInt(10) == 0 ? 2_000 : 4);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (int i = 0; i < times && out.size() < LARGEST; i++) {
            out.writeBytes(piece);
        }
        return out.toByteArray();
    }

    /** The line about a byte once more, or no more. */
    private byte[] line(byte[] bytes, int about) {
        int from = about;
        while (from > 0 && bytes[from - 1] != '\n') {
            from--;
        }
        int to = about;
        while (to < bytes.length && bytes[to] != '\n') {
            to++;
        }
        to = Math.min(bytes.length, to + 1);
        return lot.nextBoolean()
                ? join(bytes, from, to, new byte[0])
                : join(bytes, to, to, Arrays.copyOfRange(bytes, from, to));
    }

    private byte[] flip(byte[] bytes, int at) {
        return set(bytes, at, (byte) (bytes[at] ^ (1 << lot.nextInt(8))));
    }

    private static byte[] set(byte[] bytes, int at, byte value) {
        byte[] changed = bytes.clone();
        changed[at] = value;
        return changed;
    }

    private static byte[] join(byte[] bytes, int from, int to, byte[] instead) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(bytes, 0, from);
        out.writeBytes(instead);
        out.write(bytes, to, bytes.length - to);
        return out.toByteArray();
    }
}

package quarterfold.intake;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;

/**
 * The bytes of one file in a ZIP, unpacked while they are read: counted, so that a small ZIP cannot
 * become a vast file, and checked against the size and the checksum the ZIP states.
 */
final class Unpacked extends FilterInputStream {

    /** A file of less is none to be afraid of, however small it is packed. */
    private static final long RATIO_FROM = 8L << 20;

    /** Tables pack to a twentieth or so; what is packed smaller by far is made to do harm. */
    static final long RATIO = 200;

    private final String name;
    private final long packed;
    private final long stated;
    private final long checksum;
    private final CRC32 crc = new CRC32();
    private long count;
    private boolean ended;

    /**
     * @param name of the file, for messages
     * @param packed how many bytes it is in the ZIP
     * @param stated how many it should be
     */
    Unpacked(InputStream in, String name, long packed, long stated, long checksum) {
        super(in);
        this.name = name;
        this.packed = packed;
        this.stated = stated;
        this.checksum = checksum;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        int read;
        try {
            read = super.read(bytes, offset, length);
        } catch (IOException | RuntimeException e) {
            throw unsound("packed bytes that cannot be unpacked");
        }
        if (read > 0) {
            count += read;
            crc.update(bytes, offset, read);
            if (isBomb(count, packed)) {
                throw new BadBytes(name, bomb());
            }
        }
        if (count > stated) {
            throw unsound("a file that unpacks to more bytes than the ZIP says");
        }
        if (read < 0 && !ended) {
            ended = true;
            if (count != stated || crc.getValue() != checksum) {
                throw unsound("a file that is not the one that was packed, by its checksum");
            }
        }
        return read;
    }

    /** Whether so many bytes are more than so few may be packed from. */
    static boolean isBomb(long bytes, long packed) {
        return bytes > RATIO_FROM && bytes / RATIO > packed;
    }

    static String bomb() {
        return "found a file that unpacks to more than %d times its size in the ZIP; expected less, such as the file by itself"
                .formatted(RATIO);
    }

    private BadBytes unsound(String what) {
        return new BadBytes(
                name,
                "found %s; expected a sound ZIP, such as the files packed again".formatted(what));
    }
}

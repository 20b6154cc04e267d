package quarterfold.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.OptionalInt;

/**
 * How many files the directory of a ZIP says it has: the record that ends every ZIP (APPNOTE
 * 4.3.16) counts them, so that a directory that is broken in its midst does not lose the rest in
 * silence.
 */
final class ZipCount {
    private static final int SIGNATURE = 0x06054b50;
    private static final int RECORD = 22;
    private static final int COUNT_AT = 10;
    private static final int LONGEST_COMMENT = 0xFFFF;

    /** The record of a larger form of ZIP has the count then. */
    private static final int ELSEWHERE = 0xFFFF;

    private ZipCount() {}

    /** The count, or nothing where the ZIP does not say. */
    static OptionalInt of(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            int length = (int) Math.min(channel.size(), RECORD + LONGEST_COMMENT);
            ByteBuffer end = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
            channel.position(channel.size() - length);
            while (end.hasRemaining() && channel.read(end) >= 0) {}
            for (int at = end.position() - RECORD; at >= 0; at--) {
                if (end.getInt(at) == SIGNATURE) {
                    int count = Short.toUnsignedInt(end.getShort(at + COUNT_AT));
                    return count == ELSEWHERE ? OptionalInt.empty() : OptionalInt.of(count);
                }
            }
            return OptionalInt.empty();
        }
    }
}

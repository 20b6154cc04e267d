package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Why there is no table to be found in a file. */
final class NoTable {
    private static final int LOOKED_AT = 1 << 16;
    private static final Pattern LETTERS =
            Pattern.compile("(?i)\\d[.,]\\d{2}[ \\u00a0]?(?:cr|dr)(?![a-z])");

    private NoTable() {}

    /** {@code name}: of the file, as problems have it. */
    static BadFile of(Path file, String name) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            String text = new String(in.readNBytes(LOOKED_AT), StandardCharsets.ISO_8859_1);
            Matcher letters = LETTERS.matcher(text);
            return letters.find()
                    ? new BadFile(
                            name,
                            "found amounts such as %s; expected a minus on what goes out in place of letters, such as -12.34"
                                    .formatted(Problem.quoted(letters.group())))
                    : new BadFile(
                            name,
                            "found no row with a date and a number; expected a table of dated amounts, such as 2026-09-30,sale,120.00");
        }
    }
}

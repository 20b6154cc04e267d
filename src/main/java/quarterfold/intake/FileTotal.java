package quarterfold.intake;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a row of a file may state of the whole file. */
enum FileTotal {
    /** What the rows of all shapes come to, as the owner sees it. */
    MONEY,
    /** What they come to without the payouts among them. */
    PAYOUT,
    /** How many rows of all shapes there are. */
    ROWS,
    /** How many rows were read, those that are no rows of a table and this one included. */
    RECORDS;

    /** As a layout writes it. */
    String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Optional<FileTotal> of(String code) {
        return Arrays.stream(values()).filter(t -> t.code().equals(code)).findFirst();
    }

    boolean isMoney() {
        return this == MONEY || this == PAYOUT;
    }
}

package quarterfold.ledger;

/**
 * Something a check of a book found that is not as it must be.
 *
 * @param check which check
 * @param place such as a file, an entry or a box of a period
 * @param text what was found and what was expected
 */
public record Finding(Check check, String place, String text) {

    /** What is checked. */
    public enum Check implements Coded {
        /** The files kept are those that were imported. */
        SOURCES("sources"),
        /** The entries are what the files say. */
        ENTRIES("entries"),
        /** Closed returns come out as they were closed. */
        RETURNS("returns"),
        /** Entries are numbered without a gap, and every file's run of them is whole. */
        NUMBERS("numbers");

        private final String code;

        Check(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }
    }
}

package quarterfold.intake;

/**
 * A line of a printed page, its runs of spaces made one.
 *
 * @param page from 1
 * @param line from 1, top to bottom of the page
 */
record PrintedLine(int page, int line, String text) {
    static final int LINES_LIMIT = 999;

    /** The page in thousands and the line: 2014 is line 14 of page 2. */
    long number() {
        return page * 1_000L + line;
    }

    /** Such as {@code statement.pdf:page 2 line 14}. */
    String place(String file) {
        return "%s:page %d line %d".formatted(file, page, line);
    }
}

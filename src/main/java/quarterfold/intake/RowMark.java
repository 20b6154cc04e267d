package quarterfold.intake;

/**
 * All that a row says, but for its number: two rows of one layout say the same where these agree.
 * The digest is 96 bits, so that of a million rows against a million no two agree by chance.
 *
 * @param row the row's number, no part of what it says
 */
record RowMark(long row, long digest, int more) {}

package quarterfold.ledger;

/**
 * A document that a row of a source names as its evidence, such as a receipt's picture. It is kept
 * byte for byte, as sources are, and belongs to every entry of the row. It raises no evidence by
 * itself: how good that is, is what the entry states.
 *
 * @param source the source whose row names it
 * @param row the row
 * @param file its name as the row has it, such as {@code r12.jpg}
 * @param sha256 64 lower-case hexadecimal digits
 */
public record Attachment(long source, long row, String file, String sha256) {

    /** Whether it belongs to an entry. */
    public boolean isOf(Entry entry) {
        return entry.source() == source && entry.line().row() == row;
    }
}

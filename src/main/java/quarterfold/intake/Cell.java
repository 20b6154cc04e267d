package quarterfold.intake;

/**
 * Where one field is found: in a column, or fixed where that is blank or there is none.
 *
 * @param column from 0, or -1 for none
 */
record Cell(int column, String fixed) {
    static final Cell NONE = new Cell(-1, "");

    String text(Row row) {
        if (column < 0) {
            return fixed;
        }
        String text = row.text(column);
        return text.isEmpty() ? fixed : text;
    }
}

package quarterfold.intake;

/**
 * A document that a row names as its evidence.
 *
 * @param row the row, as a person counts it
 * @param place of the cell that names it
 * @param column the column's name
 * @param file its name, seen from where the file that names it is
 */
record Named(long row, String place, String column, String file) {

    Problem problem(String found, String expected) {
        return new Problem(
                place,
                column,
                "found %s%s; expected %s".formatted(Problem.quoted(file), found, expected));
    }
}

package quarterfold.law;

/**
 * A category that counts for a rule: a row of {@code counted-categories.csv}.
 *
 * @param set what it counts for, such as {@code relevant-goods}; a total of that name takes only
 *     entries of the set's categories
 */
record Counted(String set, String category) {

    static Counted of(Table.Row row) {
        return new Counted(row.needed("set"), row.needed("category"));
    }
}

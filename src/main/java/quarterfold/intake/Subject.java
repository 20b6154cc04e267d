package quarterfold.intake;

import java.util.List;

/** What the words round a table, and its columns, say that its rows are. */
enum Subject {
    SALES,
    /** Lines of a bank account's statement, with a balance that moves by them. */
    BANK,
    UNSAID;

    /** {@code file}: the file's own name, which may say it as the rows above the table may. */
    static Subject of(
            TableFinder.Found table, List<Column> columns, String file, Vocabulary words) {
        boolean balance = columns.stream().anyMatch(c -> c.role() == Role.BALANCE);
        if (balance && isSaid("bank", table, file, words)) {
            return BANK;
        }
        return isSaid("orders", table, file, words) ? SALES : UNSAID;
    }

    private static boolean isSaid(
            String label, TableFinder.Found table, String file, Vocabulary words) {
        return words.isLabel(file.replaceFirst("\\.[^.]*$", ""), label)
                || table.preamble().stream()
                        .anyMatch(l -> l.cells().stream().anyMatch(c -> words.isLabel(c, label)))
                || words.isLabel(table.grid().table(), label);
    }
}

package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The tables that a layout expects below the first, each under a row of its column names. */
final class StackedTables {
    private final List<Layout> tables;

    StackedTables(Layout layout) {
        tables = layout.tables();
    }

    /** How many columns they have together. */
    int columns() {
        return tables.stream().mapToInt(t -> t.columns().size()).sum();
    }

    /**
     * The columns of tables that do not begin in these rows: those the first table has not, where
     * there are any.
     */
    List<String> lacking(Header first, Rows rows) throws BadFile {
        List<Layout> missing = new ArrayList<>(tables);
        while (!missing.isEmpty() && rows.next()) {
            Header names = first.below(Header.texts(rows));
            missing.removeIf(table -> table.columns().stream().allMatch(names::has));
        }
        Set<String> columns = new LinkedHashSet<>();
        for (Layout table : missing) {
            List<String> own = table.columns().stream().filter(c -> !first.has(c)).toList();
            columns.addAll(own.isEmpty() ? table.columns() : own);
        }
        return List.copyOf(columns);
    }
}

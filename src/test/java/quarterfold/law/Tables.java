package quarterfold.law;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** The shipped tables, and the law they would state with one of them changed. */
public final class Tables {

    private Tables() {}

    /** The law with one table's text changed; refuses a change that changes nothing. */
    public static Law with(String table, UnaryOperator<String> change) {
        List<TableFile> files = new ArrayList<>();
        for (TableFile file : Law.of("GB").files()) {
            String text = file.name().equals(table) ? change.apply(file.text()) : file.text();
            if (file.name().equals(table) && text.equals(file.text())) {
                throw new IllegalArgumentException("the change does nothing to " + table);
            }
            files.add(Law.file(file.name(), text.getBytes(StandardCharsets.UTF_8)));
        }
        return Law.of(files);
    }

    /** The law with a line put below the header of a table. */
    static Law withFirstRow(String table, String row) {
        return with(table, text -> text.replaceFirst("\n", "\n" + row + "\n"));
    }
}

package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** A text file: one table, its cells parted by a delimiter. */
record TextTables(Path file, String name) implements Tables {

    @Override
    public List<String> names() {
        return List.of("");
    }

    @Override
    public Rows rows(String table, Layout.Shape shape) throws IOException {
        return new TextRows(file, name, shape);
    }

    @Override
    public boolean hasNativeDates() {
        return false;
    }

    @Override
    public void close() {}
}

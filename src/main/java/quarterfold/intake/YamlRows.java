package quarterfold.intake;

import java.util.List;
import quarterfold.intake.YamlTables.Item;

/** The items of a list in YAML as rows, below a first row of their keys. */
final class YamlRows implements Rows {
    private final String name;
    private final List<String> columns;
    private final List<Item> items;
    private int at = -2;

    YamlRows(String name, List<String> columns, List<Item> items) {
        this.name = name;
        this.columns = columns;
        this.items = items;
    }

    private boolean isHeader() {
        return at < 0;
    }

    @Override
    public boolean next() {
        at = Math.min(at + 1, items.size());
        return at < items.size();
    }

    @Override
    public long number() {
        return isHeader() ? 1 : items.get(at).line();
    }

    @Override
    public int width() {
        return columns.size();
    }

    @Override
    public String cell(int column) {
        if (column >= columns.size()) {
            return "";
        }
        String name = columns.get(column);
        return isHeader() ? name : items.get(at).texts().getOrDefault(name, "");
    }

    @Override
    public boolean isNumber(int column) {
        return false;
    }

    @Override
    public boolean isEven() {
        return false;
    }

    @Override
    public String place(int column) {
        return place();
    }

    @Override
    public String place() {
        return name + ":" + number();
    }

    @Override
    public void close() {}
}

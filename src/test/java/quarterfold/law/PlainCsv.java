package quarterfold.law;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The shipped tables split by hand, to hold against what the program makes of them. */
final class PlainCsv {

    static final Path FOLDER = Path.of("templates/law/gb");

    private PlainCsv() {}

    /** A row of a table. */
    record Row(String table, Map<String, String> cells) {

        /** The cell of a column that the table must have. */
        String at(String column) {
            String cell = cells.get(column);
            if (cell == null) {
                throw new IllegalArgumentException(table + ": has no column " + column);
            }
            return cell;
        }

        LocalDate from() {
            return LocalDate.parse(at("from"));
        }

        LocalDate to() {
            return at("to").isEmpty() ? LocalDate.MAX : LocalDate.parse(at("to"));
        }

        boolean isInForce(LocalDate day) {
            return !day.isBefore(from()) && !day.isAfter(to());
        }

        boolean meets(Row other) {
            return !from().isAfter(other.to()) && !other.from().isAfter(to());
        }
    }

    /** The names of the tables of law: the words for them are none. */
    static List<String> tables() {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(f -> f.getFileName().toString())
                    .filter(n -> n.endsWith(".csv") && !n.equals("words.csv"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Every row as its cells by column. */
    static List<Row> rows(String table) {
        List<String> lines = lines(table);
        List<String> columns = cells(lines.get(0));
        List<Row> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            List<String> cells = cells(line);
            if (cells.size() != columns.size()) {
                throw new IllegalStateException(table + ": " + line);
            }
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < cells.size(); i++) {
                row.put(columns.get(i), cells.get(i));
            }
            rows.add(new Row(table, row));
        }
        return rows;
    }

    static List<String> columns(String table) {
        return cells(lines(table).get(0));
    }

    private static List<String> lines(String table) {
        try {
            return Files.readString(FOLDER.resolve(table))
                    .lines()
                    .filter(l -> !l.isBlank())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Split at commas, but not at those between quotes. */
    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append(c);
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString().strip());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString().strip());
        return cells;
    }
}

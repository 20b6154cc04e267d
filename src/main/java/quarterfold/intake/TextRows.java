package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Iterator;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * The rows of a delimited text as RFC 4180 has them, with any one delimiter. A row's number is the
 * line it starts on.
 */
final class TextRows implements Rows {
    private final Path file;
    private final String name;
    private final Layout.Shape shape;
    private final StrictReader reader;
    private final CSVParser parser;
    private final Iterator<CSVRecord> records;
    private String[] cells = new String[0];
    private long line;
    private long characters;

    TextRows(Path file, String name, Layout.Shape shape) throws IOException {
        this.file = file;
        this.name = name;
        this.shape = shape;
        reader = StrictReader.of(file, shape);
        parser =
                CSVParser.builder()
                        .setReader(reader)
                        .setFormat(
                                CSVFormat.RFC4180
                                        .builder()
                                        .setDelimiter(shape.delimiter())
                                        .setQuote(shape.quote() == 0 ? null : shape.quote())
                                        .setIgnoreEmptyLines(false)
                                        .get())
                        .get();
        records = parser.iterator();
    }

    @Override
    public boolean next() throws BadFile {
        try {
            do {
                line = parser.getCurrentLineNumber() + 1;
                if (!records.hasNext()) {
                    return false;
                }
                CSVRecord row = records.next();
                cells = row.values();
                reader.rowEnded();
                refuseLongCells(row.getCharacterPosition());
                refuseManyCells();
            } while (isBlank());
            return true;
        } catch (UncheckedIOException e) {
            IOException cause = e.getCause();
            throw bad(cause == null ? new IOException(e) : cause);
        }
    }

    private boolean isBlank() {
        for (String cell : cells) {
            if (!cell.isBlank()) {
                return false;
            }
        }
        return true;
    }

    /** A cell can only be too long where all before this row was, or this row is. */
    private void refuseLongCells(long position) throws BadFile {
        if (reader.given() - characters <= CELL_LIMIT) {
            return;
        }
        characters = position;
        for (String cell : cells) {
            if (cell.length() > CELL_LIMIT) {
                throw new BadFile(
                        place(),
                        "found a cell of %,d characters; expected at most %,d; is a quote left open, as in \"blue, 12 cm?"
                                .formatted(cell.length(), CELL_LIMIT));
            }
        }
    }

    private void refuseManyCells() throws BadFile {
        if (cells.length > COLUMN_LIMIT) {
            throw new BadFile(
                    place(),
                    "found a row of %,d cells; expected at most %,d, such as the table without its empty columns"
                            .formatted(cells.length, COLUMN_LIMIT));
        }
    }

    private BadFile bad(IOException e) {
        if (e instanceof StrictReader.BadText) {
            return new BadFile(name + ":" + faultLine(), String.valueOf(e.getMessage()));
        }
        if (e instanceof CSVException) {
            boolean open = String.valueOf(e.getMessage()).contains("EOF");
            return new BadFile(
                    place(),
                    open
                            ? "found a quote that is opened and never closed; expected a closing quote, such as \"blue, 12 cm\""
                            : "found text after a closing quote; expected the delimiter there, and a quote inside quotes doubled, such as \"12\"\" ruler\"");
        }
        throw new UncheckedIOException(e);
    }

    private long faultLine() {
        try {
            return StrictReader.line(file, shape, reader.given());
        } catch (IOException e) {
            return line;
        }
    }

    @Override
    public long number() {
        return line;
    }

    @Override
    public int width() {
        return cells.length;
    }

    @Override
    public String cell(int column) {
        return column < cells.length ? cells[column] : "";
    }

    @Override
    public boolean isNumber(int column) {
        return false;
    }

    @Override
    public boolean isEven() {
        return true;
    }

    @Override
    public String place(int column) {
        return place();
    }

    @Override
    public String place() {
        return name + ":" + line;
    }

    @Override
    public void close() throws IOException {
        parser.close();
    }
}

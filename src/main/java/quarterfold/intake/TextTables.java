package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A text file: one table, its cells parted by a delimiter. For one thread. */
final class TextTables implements Tables {
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\d]*[^\\x00-\\x7f][\\p{L}\\d]*");

    private final Path file;
    private final String name;
    private Optional<EncodingFinder.Found> found = Optional.empty();
    private Optional<BadFile> fault = Optional.empty();

    TextTables(Path file, String name) {
        this.file = file;
        this.name = name;
    }

    @Override
    public List<String> names() {
        return List.of("");
    }

    @Override
    public Rows rows(String table, Layout.Shape shape) throws BadFile, IOException {
        return new TextRows(
                file, name, shape.encoding().equals(EncodingFinder.ANY) ? encoded(shape) : shape);
    }

    /** The shape with the encoding the file itself shows. */
    private Layout.Shape encoded(Layout.Shape shape) throws BadFile, IOException {
        EncodingFinder.Found known = found.isPresent() ? found.get() : EncodingFinder.find(file);
        found = Optional.of(known);
        if (!known.sure()) {
            BadFile bad =
                    new BadFile(
                            name,
                            "found characters that are neither of UTF-8 nor of UTF-16, and that are not all letters and marks of windows-1252; expected one of them; say in the layout which encoding it is, such as encoding: %s, or save the report as UTF-8"
                                    .formatted(known.charset().name()));
            fault = Optional.of(bad);
            throw bad;
        }
        return new Layout.Shape(
                shape.delimiter(),
                shape.quote(),
                known.charset(),
                known.twice(),
                shape.headerRow(),
                shape.columns(),
                shape.blanks());
    }

    /** Bytes of windows-1252 are letters in other sets too, some of them other ones. */
    @Override
    public Optional<String> encoding(Layout.Shape shape) throws IOException {
        boolean open =
                shape.encoding().equals(EncodingFinder.ANY)
                        && found.filter(f -> f.charset().equals(EncodingFinder.WESTERN)).isPresent();
        return open ? Optional.of(asked()) : Optional.empty();
    }

    private String asked() throws IOException {
        try (Stream<String> lines = Files.lines(file, EncodingFinder.WESTERN)) {
            Matcher word =
                    WORD.matcher(
                            lines.filter(l -> l.chars().anyMatch(c -> c >= 0x80))
                                    .findFirst()
                                    .orElse(""));
            return "the text is no UTF-8 and was read as windows-1252, such as %s: is it? Say so in the layout, as encoding: windows-1252, and it is not asked again"
                    .formatted(Problem.quoted(word.find() ? word.group() : ""));
        }
    }

    @Override
    public Optional<BadFile> fault() {
        return fault;
    }

    @Override
    public boolean hasNativeDates() {
        return false;
    }

    @Override
    public void close() {}
}

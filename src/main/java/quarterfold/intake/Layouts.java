package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The layouts at hand: those that ship and the book's own. Of two with one name the book's own
 * counts. What is wrong with a layout is a problem of its own file.
 */
final class Layouts {
    private static final String FOLDER = "/quarterfold/templates/layouts/";
    static final String NOT_UTF_8 =
            "found bytes that are not UTF-8; expected a text in UTF-8, such as the layout saved again in that encoding";

    private static final String INDEX = "index.txt";

    private final List<Form> own;
    private final List<Form> shipped;
    private final Map<String, String> texts;
    private final Problems problems;

    private Layouts(
            List<Form> own, List<Form> shipped, Map<String, String> texts, Problems problems) {
        this.own = own;
        this.shipped = shipped;
        this.texts = texts;
        this.problems = problems;
    }

    /** One layout alone, by its name and text. */
    static Layouts only(String name, String text) {
        Problems problems = new Problems();
        Layout layout = LayoutReader.read(name + ".yaml", text, problems);
        return new Layouts(List.of(layout), List.of(), Map.of(layout.name(), text), problems);
    }

    /** {@code files}: the book's own layouts. */
    static Layouts load(List<Path> files) {
        Problems problems = new Problems();
        Map<String, Form> own = new LinkedHashMap<>();
        Map<String, String> texts = new HashMap<>();
        for (Path file : files) {
            String text = text(file, problems);
            Layout layout = LayoutReader.read(file.getFileName().toString(), text, problems);
            own.put(layout.name(), layout);
            texts.put(layout.name(), text);
        }
        List<Form> shipped = new ArrayList<>();
        for (String name : shippedNames()) {
            String text = shippedText(name + ".yaml");
            Layout layout = LayoutReader.read(name + ".yaml", text, problems);
            if (!own.containsKey(layout.name())) {
                shipped.add(layout);
                texts.put(layout.name(), text);
            }
        }
        shipped.add(new PlainSheet(Layout.Shape.COMMA));
        shipped.add(new PlainSheet(Layout.Shape.TAB));
        return new Layouts(List.copyOf(own.values()), shipped, texts, problems);
    }

    /** The names of the layouts that ship, one per line of an index beside them. */
    static List<String> shippedNames() {
        return shippedText(INDEX).lines().filter(line -> !line.isBlank()).toList();
    }

    private static String shippedText(String file) {
        try (InputStream in = Layouts.class.getResourceAsStream(FOLDER + file)) {
            if (in == null) {
                throw new IllegalStateException("not packed with the program: " + FOLDER + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path file, Problems problems) {
        try {
            return Files.readString(file);
        } catch (CharacterCodingException e) {
            problems.add(new Problem(String.valueOf(file.getFileName()), "", NOT_UTF_8));
            return "{}";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The text of a layout as it is in its file; none for what has no file, as the plain sheet. */
    Optional<String> text(String name) {
        return Optional.ofNullable(texts.get(name));
    }

    /** What is wrong with the layouts' own files. */
    Problems problems() {
        return problems;
    }

    List<Form> own() {
        return own;
    }

    List<Form> shipped() {
        return shipped;
    }

    /** The forms of one name: one layout, or the plain sheet in both its delimiters. */
    Optional<List<Form>> named(String name) {
        List<Form> named = all().stream().filter(form -> form.name().equals(name)).toList();
        return named.isEmpty() ? Optional.empty() : Optional.of(named);
    }

    List<String> names() {
        return all().stream().map(Form::name).distinct().sorted().toList();
    }

    private List<Form> all() {
        List<Form> all = new ArrayList<>(own);
        all.addAll(shipped);
        return all;
    }
}

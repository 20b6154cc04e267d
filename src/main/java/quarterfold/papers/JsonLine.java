package quarterfold.papers;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.regex.Pattern;

/** One JSON object on one line. */
public final class JsonLine {

    private static final JsonFactory FACTORY = new JsonFactory();

    private static final Pattern COMMANDING = Pattern.compile("[\\x7f-\\x9f]");

    private JsonLine() {}

    /** Writes the fields of the object. */
    public interface Fields {
        void write(JsonGenerator json) throws IOException;
    }

    /** The object with these fields, without a line end. */
    public static String of(Fields fields) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.writeStartObject();
            fields.write(json);
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return harmless(text.toString());
    }

    /** Escapes the control characters that JSON itself lets stand and a terminal would obey. */
    private static String harmless(String json) {
        return COMMANDING
                .matcher(json)
                .replaceAll(found -> "\\\\u%04x".formatted((int) found.group().charAt(0)));
    }
}

package quarterfold.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;

/** JSON as a flat map from path to text, such as {@code boxes/1 -> 4960.00}. */
public final class Json {

    private Json() {}

    public static Map<String, String> flat(String text) {
        Map<String, String> values = new LinkedHashMap<>();
        try (JsonParser json = new JsonFactory().createParser(text)) {
            while (json.nextToken() != null) {
                if (json.currentToken().isScalarValue()) {
                    String path = json.getParsingContext().pathAsPointer().toString().substring(1);
                    values.put(
                            path,
                            json.currentToken() == JsonToken.VALUE_NULL ? "null" : json.getText());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return values;
    }
}

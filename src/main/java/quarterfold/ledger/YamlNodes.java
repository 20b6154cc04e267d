package quarterfold.ledger;

import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.composer.Composer;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ParserException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.parser.Parser;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;

/**
 * A text in YAML as nodes; no object is ever made. The library goes down into lists and keys
 * without a limit, so that a small file could use up the stack; here there is one.
 */
public final class YamlNodes {
    private static final int DEEPEST = 50;

    private YamlNodes() {}

    /**
     * The root of the one document; nothing where the text has none.
     *
     * @param place what the library's own messages call the text
     * @throws YamlEngineException if it is not YAML, or goes deeper than any list or settings do
     */
    public static Optional<Node> of(String place, String text) {
        LoadSettings settings = LoadSettings.builder().setLabel(place).build();
        Parser parser = new ParserImpl(settings, new StreamReader(settings, text));
        return new Composer(settings, new Shallow(parser)).getSingleNode();
    }

    /**
     * Why a text is not YAML.
     *
     * @param at the line, from 1, with a colon before it; empty where the library names none
     * @param problem in the library's words
     */
    public record NotYaml(String at, String problem) {}

    /** Why it is not YAML, of what {@link #of} throws. */
    public static NotYaml notYaml(YamlEngineException fault) {
        if (fault instanceof MarkedYamlEngineException marked) {
            String at = marked.getProblemMark().map(m -> ":" + (m.getLine() + 1)).orElse("");
            return new NotYaml(at, marked.getProblem());
        }
        return new NotYaml("", String.valueOf(fault.getMessage()));
    }

    /** The events of a text, counted as they go down. */
    private static final class Shallow implements Parser {
        private final Parser parser;
        private int depth;

        Shallow(Parser parser) {
            this.parser = parser;
        }

        @Override
        public boolean checkEvent(Event.ID choice) {
            return parser.checkEvent(choice);
        }

        @Override
        public Event peekEvent() {
            return parser.peekEvent();
        }

        @Override
        public boolean hasNext() {
            return parser.hasNext();
        }

        @Override
        public Event next() {
            Event event = parser.next();
            if (event instanceof CollectionStartEvent && ++depth > DEEPEST) {
                throw new ParserException(
                        "lists or keys within one another, more than %d deep".formatted(DEEPEST),
                        event.getStartMark());
            }
            if (event instanceof CollectionEndEvent) {
                depth--;
            }
            return event;
        }
    }
}

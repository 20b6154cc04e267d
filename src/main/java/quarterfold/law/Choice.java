package quarterfold.law;

import java.util.List;

/**
 * A point that sources leave open, settled by the book: a row of {@code choices.csv}.
 *
 * @param standard the value where the book says nothing
 * @param values every value it may take
 */
public record Choice(String name, String standard, List<String> values, String question) {
    public Choice {
        values = List.copyOf(values);
    }
}

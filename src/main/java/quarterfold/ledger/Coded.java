package quarterfold.ledger;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** A word of the plain sheet: an enum constant with the code that people write in files. */
public interface Coded {

    /** The code as written in files, such as {@code sale-refund}; never blank. */
    String code();

    /** The constant whose code is {@code text}, exactly. */
    static <E extends Enum<E> & Coded> Optional<E> find(Class<E> type, String text) {
        return Arrays.stream(type.getEnumConstants())
                .filter(e -> e.code().equals(text))
                .findFirst();
    }

    /** Every code of the type, for an error that says what was expected. */
    static <E extends Enum<E> & Coded> String codes(Class<E> type) {
        return Arrays.stream(type.getEnumConstants())
                .map(Coded::code)
                .collect(Collectors.joining(", "));
    }
}

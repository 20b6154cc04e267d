package quarterfold.ledger;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of the values used last. Bounded, so that a file of millions of different values
 * needs no more memory than one of a few.
 */
final class Recent<T> {
    private static final int MOST = 50_000;

    private final Map<T, Long> ids = new LinkedHashMap<>(1024, 0.75f, true);

    @Nullable Long id(T value) {
        return ids.get(value);
    }

    void put(T value, long id) {
        if (ids.size() == MOST) {
            ids.remove(ids.keySet().iterator().next());
        }
        ids.put(value, id);
    }
}

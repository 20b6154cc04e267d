package quarterfold.ledger;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of the values used last. Bounded, so that a file of millions of different values
 * needs no more memory than one of a few.
 *
 * <p>The reading side gives one object for the values it meets often, so the object itself is
 * looked for first: hashing sixteen texts for every line took a fifth of the writing thread.
 */
final class Recent<T> {
    private static final int MOST = 50_000;
    private static final int SLOTS = 1 << 13;

    private final Map<T, Long> ids = new LinkedHashMap<>(1024, 0.75f, true);
    private final @Nullable Object[] objects = new Object[SLOTS];
    private final long[] objectIds = new long[SLOTS];

    /** The value's number; 0 where it was not used lately. */
    long id(T value) {
        int slot = System.identityHashCode(value) & (SLOTS - 1);
        if (objects[slot] == value) {
            return objectIds[slot];
        }
        Long known = ids.get(value);
        if (known == null) {
            return 0;
        }
        objects[slot] = value;
        objectIds[slot] = known;
        return known;
    }

    void put(T value, long id) {
        if (ids.size() == MOST) {
            ids.remove(ids.keySet().iterator().next());
        }
        ids.put(value, id);
    }
}

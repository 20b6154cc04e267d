package quarterfold.law;

import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Dated values by name, where each name has one value on a day. */
final class Keyed<T> {

    private final Map<String, List<Dated<T>>> byName = new LinkedHashMap<>();

    /** Refuses two rows of one name in force together. */
    static <T> Keyed<T> read(TableFile file, String nameColumn, Function<Table.Row, T> value) {
        Keyed<T> keyed = new Keyed<>();
        for (Table.Row row : Table.read(file).rows()) {
            String name = row.needed(nameColumn);
            Dated<T> dated = row.dated(value.apply(row));
            List<Dated<T>> before = keyed.byName.getOrDefault(name, List.of());
            if (before.stream().anyMatch(dated::overlaps)) {
                throw row.fault("'%s' has another row in force on the same days".formatted(name));
            }
            keyed.byName.put(name, Stream.concat(before.stream(), Stream.of(dated)).toList());
        }
        return keyed;
    }

    Optional<Dated<T>> on(String name, LocalDate day) {
        return byName.getOrDefault(name, List.of()).stream()
                .filter(d -> d.isInForce(day))
                .findFirst();
    }

    Collection<String> names() {
        return byName.keySet();
    }

    List<Dated<T>> all(String name) {
        return byName.getOrDefault(name, List.of());
    }

    Stream<Dated<T>> stream() {
        return byName.values().stream().flatMap(List::stream);
    }
}

package quarterfold.law;

import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** The points sources leave open, each settled by the book or by a documented default. */
public final class Choices {

    private final Map<String, Choice> choices;

    Choices(TableFile file) {
        choices = Table.read(file).named("name", Choices::choice);
    }

    private static Choice choice(Table.Row row) {
        Choice choice =
                new Choice(
                        row.needed("name"),
                        row.needed("default"),
                        Arrays.asList(row.needed("values").split("\\|", -1)),
                        row.needed("question"));
        if (row.cell("source").isBlank() || !choice.values().contains(choice.standard())) {
            throw row.fault("needs a source, and a default among its values");
        }
        return choice;
    }

    public List<Choice> all() {
        return List.copyOf(choices.values());
    }

    /** Whether {@code name=value} is a choice there is. */
    boolean knows(String nameAndValue) {
        return all().stream()
                .anyMatch(
                        c ->
                                c.values().stream()
                                        .anyMatch(v -> nameAndValue.equals(c.name() + "=" + v)));
    }

    /** Whether a book that chose so, or kept the default, has {@code name=value}. */
    public boolean holds(String nameAndValue, Map<String, String> chosen) {
        return all().stream()
                .map(c -> c.name() + "=" + chosen.getOrDefault(c.name(), c.standard()))
                .anyMatch(nameAndValue::equals);
    }

    /** The choices a book made that are not in the table, or have another value than it allows. */
    public List<String> unknown(Map<String, String> chosen) {
        return chosen.entrySet().stream()
                .map(c -> c.getKey() + "=" + c.getValue())
                .filter(c -> !knows(c))
                .sorted()
                .toList();
    }
}

package quarterfold.intake;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Finds what each column is for, from its name, and its cells where they bear it out. */
final class RoleFinder {
    /** A column of kinds has few texts for its rows. */
    private static final int KINDS = 60;

    private final Vocabulary words;
    private final NumberText numbers;

    RoleFinder(Vocabulary words, NumberText numbers) {
        this.words = words;
        this.numbers = numbers;
    }

    static List<Column> columns(TableFinder.Found table) {
        return columns(table.body(), table.header(), false);
    }

    /**
     * The columns of rows.
     *
     * @param header their names
     * @param numbered whether a layout can name them by their numbers alone
     */
    static List<Column> columns(
            List<Grid.Line> body, Optional<Grid.Line> header, boolean numbered) {
        int width = body.stream().mapToInt(Grid.Line::width).max().orElse(0);
        width = Math.max(width, header.map(Grid.Line::width).orElse(0));
        List<Column> columns = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int i = 0; i < width; i++) {
            int column = i;
            names.add(header.map(h -> h.cell(column)).orElse(""));
        }
        for (int i = 0; i < width; i++) {
            int column = i;
            columns.add(
                    new Column(
                            i,
                            numbered ? "#" + (i + 1) : reference(names, i),
                            names.get(i),
                            body.stream().map(line -> line.cell(column)).toList()));
        }
        return columns;
    }

    /** How a layout names a column: by its name, or by its number too where that is not enough. */
    static String reference(List<String> names, int column) {
        String name = names.get(column);
        if (name.isEmpty()) {
            return "#" + (column + 1);
        }
        if (Collections.frequency(names, name) == 1) {
            return name;
        }
        return name + "#" + Collections.frequency(names.subList(0, column + 1), name);
    }

    void find(List<Column> columns) {
        for (Column column : columns) {
            fromName(column);
        }
        once(columns);
        for (Column column : columns) {
            if (column.role() == Role.NONE && column.meant().isEmpty()) {
                fromCells(column, columns);
            }
        }
        if (columns.stream().noneMatch(c -> c.role() == Role.TYPE)) {
            columns.stream()
                    .filter(this::tellsKinds)
                    .findFirst()
                    .ifPresent(c -> c.setRole(Role.TYPE));
        }
    }

    /** Whether a description is but a word of what each row is, such as {@code Refund}. */
    private boolean tellsKinds(Column column) {
        return column.role() == Role.DESCRIPTION
                && column.distinct().size() > 1
                && column.distinct().size() <= KINDS
                && column.texts().stream()
                        .allMatch(
                                t ->
                                        !words.meanings(t).isEmpty()
                                                && words.unknown(t).isEmpty()
                                                && t.chars().noneMatch(Character::isDigit));
    }

    /**
     * Of rows that all begin with one text, a column without a name may say more, though not each
     * of its texts is known: that of which most are.
     */
    void findType(List<Column> columns) {
        if (columns.stream().anyMatch(c -> c.role() == Role.TYPE)) {
            return;
        }
        long most = 0;
        Optional<Column> best = Optional.empty();
        for (Column column : columns) {
            boolean may =
                    column.role() == Role.NONE
                            && column.meant().isEmpty()
                            && column.distinct().size() <= KINDS;
            long known =
                    may
                            ? column.stated().stream()
                                    .filter(t -> !words.meanings(t).isEmpty())
                                    .count()
                            : 0;
            if (known > most) {
                most = known;
                best = Optional.of(column);
            }
        }
        best.ifPresent(c -> c.setRole(Role.TYPE));
    }

    private void fromName(Column column) {
        List<Role> roles = column.name().isEmpty() ? List.of() : words.roles(withoutUnit(column));
        if (roles.size() == 2
                && roles.containsAll(List.of(Role.FEE, Role.DELIVERY))
                && fits(column, Role.FEE)) {
            column.setMaybeDelivery();
            return;
        }
        if (roles.contains(Role.TAX) && column.name().contains("%")) {
            column.setRole(Role.RATE);
            return;
        }
        for (Role role : roles) {
            if (fits(column, role)) {
                column.setRole(role);
                return;
            }
        }
        if (!column.stated().isEmpty()) {
            words.wholeRole(withoutUnit(column)).ifPresent(column::setMeant);
        }
    }

    /**
     * The name without what it says of the currency: {@code Amount (GBP)}, {@code Betrag in EUR}.
     */
    private static String withoutUnit(Column column) {
        String name = column.name().replaceAll("\\([^)]*\\)|\\[[^\\]]*\\]|[£€$]", " ");
        name =
                name.replaceAll(
                        "\\b(?:in )?[A-Z]{3}\\b(?<=GBP|EUR|USD|PLN|CHF|SEK|DKK|NOK|CZK)", " ");
        name =
                name.replaceAll(
                        "(?i)\\b(?:in )?(?:pence|cents?|centimes|c[eé]ntimos|centesimi|centen|groszy|grosze|groszach|minor)\\b",
                        " ");
        return name.isBlank() ? column.name() : name;
    }

    private boolean fits(Column column, Role role) {
        List<String> stated = column.stated();
        if (role.isNumber()) {
            return stated.stream().allMatch(numbers::isNumber) && !isDates(stated);
        }
        return switch (role) {
            case DATE, PAID -> !stated.isEmpty() && isDates(stated);
            case CURRENCY -> stated.stream().allMatch(Words::isCurrency);
            case ACCOUNT -> column.distinct().size() == 1; // the other side's differ
            case TYPE, PART, STATUS, MARK -> column.distinct().size() <= KINDS && !isDates(stated);
            default -> true;
        };
    }

    private static boolean isDates(List<String> stated) {
        return !stated.isEmpty() && stated.stream().allMatch(DateFinder::isLike);
    }

    /** A text can have a role once; of several columns the first keeps it. */
    private static void once(List<Column> columns) {
        Set<Role> seen = EnumSet.noneOf(Role.class);
        for (Column column : columns) {
            Role role = column.role();
            boolean single = !role.isNumber() && role != Role.IGNORED && role != Role.DATE;
            if (role != Role.NONE && single && !seen.add(role)) {
                column.setRole(Role.IGNORED);
            }
        }
    }

    private void fromCells(Column column, List<Column> columns) {
        List<String> stated = column.stated();
        if (stated.isEmpty()) {
            return;
        }
        boolean named = !column.name().isEmpty();
        if (isDates(stated)) {
            if (columns.stream().noneMatch(c -> c.role() == Role.DATE)) {
                column.setRole(Role.DATE);
            }
        } else if (stated.stream().allMatch(Words::isCurrency)
                && columns.stream().noneMatch(c -> c.role() == Role.CURRENCY)) {
            column.setRole(Role.CURRENCY);
        } else if ((!named || column.distinct().size() > 1)
                && stated.stream().noneMatch(numbers::isNumber)
                && columns.stream().noneMatch(c -> c.role() == Role.TYPE)
                && column.distinct().size() <= KINDS
                && stated.stream().allMatch(t -> !words.meanings(t).isEmpty())) {
            column.setRole(Role.TYPE);
        }
    }
}

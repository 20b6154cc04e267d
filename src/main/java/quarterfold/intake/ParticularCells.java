package quarterfold.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;

/** Reads the facts that few lines state, where a file has columns for them. For one thread. */
final class ParticularCells {

    /** Where one particular is found; a day is read as the file writes its dates. */
    private record Found(Field field, Particular particular, Cell cell, DateReader dates) {}

    private final List<Found> found = new ArrayList<>();
    private Particulars stated = Particulars.NONE;

    ParticularCells(FieldCells cells, DateReader dates) {
        for (Field field : Field.values()) {
            Cell cell = cells.cell(field);
            if (field.particular().isPresent() && !cell.equals(Cell.NONE)) {
                found.add(new Found(field, field.particular().get(), cell, dates.another()));
            }
        }
    }

    /** Reads the row's particulars; false where a cell is not what it must be, as problems say. */
    boolean start(Row row) {
        stated = Particulars.NONE;
        if (found.isEmpty()) {
            return true;
        }
        Map<Particular, String> texts = new EnumMap<>(Particular.class);
        boolean good = true;
        for (Found one : found) {
            String text = one.cell().text(row);
            if (text.isEmpty()) {
                continue;
            }
            boolean day = one.field().isDate();
            Optional<String> plain = plain(one, text);
            if (plain.isEmpty()) {
                row.wrong(
                        one.cell().column(), day ? one.dates().expected() : one.field().expected());
                good = false;
            } else {
                texts.put(one.particular(), plain.get());
            }
        }
        stated = texts.isEmpty() ? Particulars.NONE : new Particulars(texts);
        return good && isOfAMonth(row);
    }

    /**
     * An amended document replaces that of its month, or corrects one it names: with neither it
     * would replace nothing.
     */
    private boolean isOfAMonth(Row row) {
        if (!stated.isYes(Particular.AMENDED)
                || stated.month(Particular.STATEMENT_MONTH).isPresent()
                || stated.word(Particular.FOLLOWS).isPresent()) {
            return true;
        }
        String month =
                column(Particular.STATEMENT_MONTH)
                        .map(c -> "column '%s'".formatted(row.header().name(c)))
                        .orElse("statement_month");
        String expected =
                "with it a month such as 2026-09 in %s, since an amended document replaces the one of its month"
                                .formatted(month)
                        + column(Particular.FOLLOWS)
                                .map(c -> row.header().name(c))
                                .map("; or in column '%s' the invoice it corrects"::formatted)
                                .orElse("");
        column(Particular.AMENDED)
                .ifPresentOrElse(
                        amended -> row.wrong(amended, expected),
                        () -> row.fault("amended", "found 'yes'; expected " + expected));
        return false;
    }

    private Optional<Integer> column(Particular particular) {
        return found.stream()
                .filter(one -> one.particular() == particular)
                .map(one -> one.cell().column())
                .filter(column -> column >= 0)
                .findFirst();
    }

    /** The text as a particular has it; nothing where it is none of the kind. */
    private static Optional<String> plain(Found one, String text) {
        return switch (one.particular().type()) {
            case DAY -> one.dates().read(text).map(LocalDate::toString);
            case MONTH -> MonthReader.read(text).map(YearMonth::toString);
            default -> Optional.of(text).filter(one.field()::accepts);
        };
    }

    Particulars stated() {
        return stated;
    }
}

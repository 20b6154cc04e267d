package quarterfold.intake;

import java.time.ZoneOffset;
import java.util.Set;

/** Whether a table without column names is of a layout: by the look of its first rows. */
final class Headerless {
    private static final int LOOKED_AT = 50;

    private final Layout layout;
    private final Header header;

    Headerless(Layout layout, Header header) {
        this.layout = layout;
        this.header = header;
    }

    /** Whether there is a row with all the columns, a date and an amount where they should be. */
    boolean fits(Rows rows) throws BadFile {
        Set<String> blanks = layout.shape().blanks();
        Row row = new Row(rows, header, blanks, new Problems());
        DateReader dates = new DateReader(layout.dates(), ZoneOffset.UTC, true);
        AmountReader amounts = new AmountReader(layout.numbers());
        int date = header.column(layout.fields().getOrDefault(Field.DATE, ""));
        for (int i = 0; i < LOOKED_AT && row.next(); i++) {
            if (row.isWhole() && dates.read(row.text(date)).isPresent() && readable(row, amounts)) {
                return true;
            }
        }
        return false;
    }

    private boolean readable(Row row, AmountReader amounts) {
        boolean any = false;
        for (String name : layout.amounts()) {
            int column = header.column(name);
            String text = row.text(column);
            boolean good = text.isEmpty() || amounts.read(text) != AmountReader.BAD;
            if (column >= 0 && !good && !row.isNumber(column)) {
                return false;
            }
            any |= column < 0 || !text.isEmpty();
        }
        return any;
    }
}

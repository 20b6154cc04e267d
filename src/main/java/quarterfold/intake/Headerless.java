package quarterfold.intake;

import java.time.ZoneOffset;
import java.util.List;

/** Whether a table without column names is of a layout: by the look of its first rows. */
final class Headerless {
    private static final int LOOKED_AT = 50;

    private final Layout layout;
    private final Row row;
    private final ShapeMark mark;
    private final DateReader dates;
    private final AmountReader amounts;
    private final int date;

    private Headerless(Layout layout, Rows rows) {
        this.layout = layout;
        Header header = new Header(Header.numbered(layout.shape().columns()));
        row = new Row(rows, header, layout.shape().blanks(), new Problems());
        mark = new ShapeMark(layout.when(), header);
        dates = new DateReader(layout.dates(), ZoneOffset.UTC, true);
        amounts = new AmountReader(layout.numbers());
        date = header.column(layout.fields().getOrDefault(Field.DATE, ""));
    }

    /**
     * Whether there is a row with all the columns of a shape, a date and an amount where they
     * should be.
     */
    static boolean fits(Layout layout, Rows rows) throws BadFile {
        List<Headerless> shapes =
                layout.all().stream().map(shape -> new Headerless(shape, rows)).toList();
        for (int i = 0; i < LOOKED_AT && rows.next(); i++) {
            if (shapes.stream().anyMatch(Headerless::fits)) {
                return true;
            }
        }
        return false;
    }

    private boolean fits() {
        return mark.fits(row)
                && row.isWhole()
                && dates.read(row.text(date)).isPresent()
                && readable();
    }

    private boolean readable() {
        boolean any = false;
        for (String name : layout.amounts()) {
            int column = row.header().column(name);
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

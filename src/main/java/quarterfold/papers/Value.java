package quarterfold.papers;

import java.time.LocalDate;
import org.apache.poi.ss.usermodel.Cell;
import quarterfold.money.Amount;

/** What a cell of a list holds, and how it is put there. */
sealed interface Value {

    /** Writes this value, and a style that suits it, into an empty cell of a column so wide. */
    void put(Cell cell, Look look, double width);

    /** How many lines it takes in a column so wide. */
    default int lines(double width) {
        return 1;
    }

    /** A text from a file or of ours; always text, never a formula. */
    record Text(String text) implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            String plain = CellText.of(text);
            if (!plain.isEmpty()) {
                cell.setCellValue(plain);
            }
            cell.setCellStyle(look.text(plain, lines(width) > 1));
        }

        @Override
        public int lines(double width) {
            return Wrapping.lines(text, width - 1);
        }
    }

    /** An amount, as a number. */
    record Money(Amount amount) implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            number(cell, amount);
            cell.setCellStyle(look.style(Look.Part.AMOUNT));
        }
    }

    record Day(LocalDate day) implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            cell.setCellValue(day);
            cell.setCellStyle(look.style(Look.Part.DAY));
        }
    }

    /** A number that names something: a row, an entry. */
    record Whole(long number) implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            cell.setCellValue((double) number);
            cell.setCellStyle(look.style(Look.Part.WHOLE));
        }
    }

    /** How many of something. */
    record Count(long number) implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            cell.setCellValue((double) number);
            cell.setCellStyle(look.style(Look.Part.COUNT));
        }
    }

    /** A cell with nothing in it, on the same line as its neighbours. */
    record Blank() implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            cell.setCellStyle(look.style(Look.Part.TEXT));
        }
    }

    /**
     * The one place where money meets the spreadsheet's own number: up to 15 digits stay exact, and
     * every sum in the workbook is rounded back to four decimals.
     */
    static void number(Cell cell, Amount amount) {
        cell.setCellValue(amount.decimal().doubleValue());
    }
}

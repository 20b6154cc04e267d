package quarterfold.papers;

import java.time.LocalDate;
import org.apache.poi.ss.usermodel.Cell;
import quarterfold.money.Amount;

/** What a cell of a list holds, and how it is put there. */
sealed interface Value {

    Value BLANK = new Blank();

    /** Writes this value, and a style that suits it, into an empty cell. */
    void put(Cell cell, Look look, double width);

    /** A text from a file or of ours; always text, never a formula. */
    record Text(String text) implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            if (!text.isEmpty()) {
                String plain = CellText.of(text);
                cell.setCellValue(plain);
                cell.setCellStyle(look.text(plain, width));
            }
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

    record Whole(long number) implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            cell.setCellValue((double) number);
            cell.setCellStyle(look.style(Look.Part.WHOLE));
        }
    }

    /** A formula that gives a text, with what it gives now for programs that do not recalculate. */
    record Formula(String formula, String now) implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            cell.setCellFormula(formula);
            cell.setCellValue(now);
            cell.setCellStyle(look.style(Look.Part.TEXT));
        }
    }

    record Blank() implements Value {
        @Override
        public void put(Cell cell, Look look, double width) {
            // a cell with nothing in it
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

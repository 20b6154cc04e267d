package quarterfold.intake;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.xssf.model.StylesTable;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;

/** What the numbers of a workbook's cells are: plain numbers, percentages, or dates, by style. */
final class SheetFormats {
    enum Form {
        NUMBER,
        PERCENT,
        DATE
    }

    /** XLSX keeps numbers as binary doubles, of which 15 significant digits are sure. */
    private static final MathContext SURE = new MathContext(15, RoundingMode.HALF_EVEN);

    private static final int LONGEST = 40;
    private static final BigDecimal SECONDS = new BigDecimal(86_400);

    private final Optional<StylesTable> styles;
    private final LocalDate dayZero;
    private final boolean from1904;
    private final Map<Integer, Form> forms = new HashMap<>();

    SheetFormats(StylesTable styles, boolean from1904) {
        this(Optional.of(styles), from1904);
    }

    /** For cells whose style is not named by an index. */
    static SheetFormats of(boolean from1904) {
        return new SheetFormats(Optional.empty(), from1904);
    }

    private SheetFormats(Optional<StylesTable> styles, boolean from1904) {
        this.styles = styles;
        this.from1904 = from1904;
        dayZero = from1904 ? LocalDate.of(1904, 1, 1) : LocalDate.of(1899, 12, 30);
    }

    /** {@code style} is the index a cell names. */
    Form form(int style) {
        return forms.computeIfAbsent(style, this::look);
    }

    private Form look(int style) {
        if (style < 0 || styles.filter(s -> style < s.getNumCellStyles()).isEmpty()) {
            return Form.NUMBER;
        }
        XSSFCellStyle cell = styles.get().getStyleAt(style);
        return form(cell.getDataFormat(), String.valueOf(cell.getDataFormatString()));
    }

    /** {@code index} and {@code format}: of a number format, by its number and its text. */
    static Form form(int index, String format) {
        if (DateUtil.isADateFormat(index, format)) {
            return Form.DATE;
        }
        return format.replaceAll("\"[^\"]*\"|\\\\.", "").contains("%") ? Form.PERCENT : Form.NUMBER;
    }

    /** A stored number as plain text; the text itself where it is no number of use here. */
    String text(String stored, Form form) {
        BigDecimal number;
        try {
            number = new BigDecimal(stored).round(SURE);
        } catch (NumberFormatException notANumber) {
            return stored;
        }
        if (Math.abs((long) number.scale()) > LONGEST || stored.length() > LONGEST) {
            return stored;
        }
        return switch (form) {
            case NUMBER -> plain(number);
            case PERCENT -> plain(number.movePointRight(2)) + "%";
            case DATE -> date(number);
        };
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    /** Days since day zero; the format counts a 29 February 1900 that never was, as day 60. */
    private String date(BigDecimal number) {
        BigDecimal days = number.setScale(0, RoundingMode.FLOOR);
        long seconds =
                number.subtract(days)
                        .multiply(SECONDS)
                        .setScale(0, RoundingMode.HALF_UP)
                        .longValueExact();
        boolean onCalendar =
                days.compareTo(new BigDecimal(2_958_465)) <= 0
                        && (from1904 ? days.signum() >= 0 : days.compareTo(BigDecimal.ONE) >= 0)
                        && (from1904 || days.intValueExact() != 60);
        if (!onCalendar) {
            return plain(number);
        }
        int day = days.intValueExact();
        LocalDate date = dayZero.plusDays(!from1904 && day < 60 ? day + 1 : day);
        LocalDateTime time = date.atStartOfDay().plusSeconds(seconds);
        return seconds == 0 ? date.toString() : time.withNano(0) + seconds(time);
    }

    /** The seconds that {@link LocalDateTime#toString} leaves out where they are zero. */
    private static String seconds(LocalDateTime time) {
        return time.getSecond() == 0 ? ":00" : "";
    }
}

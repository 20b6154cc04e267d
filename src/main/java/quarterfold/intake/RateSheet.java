package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.Publisher;

/**
 * Exchange rates as a comma-separated table, in one of the forms their publishers give them: the
 * tax authority's two monthly ones, with a row for each country or each currency, and the European
 * Central Bank's, with a row for each day and a column for each currency.
 */
final class RateSheet implements RateRows {

    private static final String CODE = "currency code";
    private static final String UNITS = "currency units per £1";
    private static final String START = "start date";
    private static final String END = "end date";
    private static final String PERIOD = "period";
    private static final String XML_CODE = "currencycode";
    private static final String NEW_RATE = "ratenew";
    private static final String DATE = "date";

    private final TextRows rows;
    private final List<String> header;
    private final Publisher publisher;

    private RateSheet(TextRows rows, List<String> header, Publisher publisher) {
        this.rows = rows;
        this.header = header;
        this.publisher = publisher;
    }

    /** The table of a file, where its header is that of a publisher's; the caller closes it. */
    static Optional<RateSheet> open(Brought file, Publisher publisher) throws IOException {
        TextRows rows = new TextRows(file.path(), file.name(), Layout.Shape.COMMA);
        Optional<RateSheet> table = Optional.empty();
        try {
            table =
                    Tables.header(rows, Layout.Shape.COMMA.headerRow())
                            .map(names -> names.stream().map(RateSheet::plain).toList())
                            .filter(names -> publisher(names).filter(publisher::equals).isPresent())
                            .map(names -> new RateSheet(rows, names, publisher));
            return table;
        } catch (BadFile e) {
            return Optional.empty(); // told by whoever takes it for another table
        } finally {
            if (table.isEmpty()) {
                rows.close();
            }
        }
    }

    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    private static Optional<Publisher> publisher(List<String> names) {
        if (names.containsAll(List.of(CODE, UNITS, START, END))
                || names.containsAll(List.of(PERIOD, XML_CODE, NEW_RATE))) {
            return Optional.of(Publisher.TAX_AUTHORITY);
        }
        List<String> others = names.stream().skip(1).filter(n -> !n.isEmpty()).toList();
        boolean daily =
                names.get(0).equals(DATE)
                        && !others.isEmpty()
                        && others.stream().allMatch(n -> n.matches("[a-z]{3}"));
        return daily ? Optional.of(Publisher.ECB) : Optional.empty();
    }

    @Override
    public boolean next() throws BadFile {
        return rows.next();
    }

    @Override
    public long number() {
        return rows.number();
    }

    @Override
    public String place() {
        return rows.place();
    }

    @Override
    public List<PublishedRate> rates(Problems problems) {
        RateCells cells = new RateCells(place(), problems);
        if (publisher == Publisher.ECB) {
            return ofDay(cells);
        }
        return (header.contains(START)
                        ? cells.rate(
                                number(),
                                publisher,
                                List.of("Currency Code", "Currency Units per £1"),
                                cell(CODE),
                                cells.days("Start date", cell(START), cell(END)),
                                cell(UNITS))
                        : cells.rate(
                                number(),
                                publisher,
                                List.of("currencyCode", "rateNew"),
                                cell(XML_CODE),
                                cells.period("Period", cell(PERIOD)),
                                cell(NEW_RATE)))
                .stream().toList();
    }

    private List<PublishedRate> ofDay(RateCells cells) {
        Optional<RateCells.Days> day = cells.day("Date", cell(DATE));
        List<PublishedRate> rates = new ArrayList<>();
        for (int i = 1; i < header.size(); i++) {
            String currency = header.get(i).toUpperCase(Locale.ROOT);
            String units = rows.cell(i).strip();
            if (!currency.isEmpty() && !units.isEmpty() && !units.equals("N/A")) {
                cells.rate(number(), publisher, List.of(currency, currency), currency, day, units)
                        .ifPresent(rates::add);
            }
        }
        return rates;
    }

    private String cell(String name) {
        return rows.cell(header.indexOf(name)).strip();
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}

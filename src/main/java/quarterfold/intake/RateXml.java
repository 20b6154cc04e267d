package quarterfold.intake;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.PublishedRate;
import quarterfold.ledger.Publisher;

/**
 * Exchange rates as XML. The tax authority's has {@code exchangeRate} for each country in an {@code
 * exchangeRateMonthList} whose attribute {@code Period} says the days; the European Central Bank's
 * a {@code Cube} for each currency in a {@code Cube} whose attribute {@code time} says the day. A
 * row is a rate, counted from the first of the file.
 */
final class RateXml implements RateRows {

    static final String MONTHLY_ROOT = "exchangeRateMonthList";
    static final String DAILY_ROOT = "Envelope";
    private static final String CUBE = "Cube";
    private static final String RATE = "exchangeRate";

    private final Publisher publisher;
    private final XmlPull xml;
    private String days = "";
    private Map<String, String> row = Map.of();
    private long number;
    private String line = "";
    private int within;

    private RateXml(Publisher publisher, XmlPull xml) {
        this.publisher = publisher;
        this.xml = xml;
    }

    static RateXml open(Brought file, Publisher publisher) throws BadFile, IOException {
        return new RateXml(publisher, XmlPull.open(file.path(), file.name()));
    }

    @Override
    public boolean next() throws BadFile {
        while (within >= 0) {
            if (!xml.child(within)) {
                within--;
            } else if (isRate()) {
                number++;
                return true;
            } else {
                within++;
            }
        }
        return false;
    }

    /** Whether the element it stands at is a rate, which is read then; of the rest, the days. */
    private boolean isRate() throws BadFile {
        line = xml.place();
        String element = xml.name();
        if (publisher == Publisher.ECB) {
            if (!element.equals(CUBE)) {
                return false;
            }
            String currency = xml.attribute("currency");
            String rate = xml.attribute("rate");
            String time = xml.attribute("time");
            boolean is = !currency.isEmpty() || !rate.isEmpty();
            days = is && time.isEmpty() ? days : time;
            row = Map.of("currency", currency, "rate", rate);
            return is;
        }
        if (element.equals(MONTHLY_ROOT)) {
            days = xml.attribute("Period");
        }
        if (!element.equals(RATE)) {
            return false;
        }
        Map<String, String> texts = new HashMap<>();
        xml.texts((path, text) -> texts.put(path.substring(path.indexOf('/') + 1), text));
        row = texts;
        return true;
    }

    @Override
    public long number() {
        return number;
    }

    @Override
    public String place() {
        return "%s %s[%d]".formatted(line, publisher == Publisher.ECB ? CUBE : RATE, number);
    }

    @Override
    public List<PublishedRate> rates(Problems problems) {
        RateCells cells = new RateCells(place(), problems);
        Optional<PublishedRate> rate =
                publisher == Publisher.ECB
                        ? cells.rate(
                                number,
                                publisher,
                                List.of("currency", "rate"),
                                text("currency"),
                                cells.day("time", days),
                                text("rate"))
                        : cells.rate(
                                number,
                                publisher,
                                List.of("currencyCode", "rateNew"),
                                text("currencyCode"),
                                cells.period("Period", days),
                                text("rateNew"));
        return rate.stream().toList();
    }

    private String text(String element) {
        return row.getOrDefault(element, "");
    }

    @Override
    public void close() throws IOException {
        xml.close();
    }
}

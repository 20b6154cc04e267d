package quarterfold.intake;

import static javax.xml.stream.XMLStreamConstants.CDATA;
import static javax.xml.stream.XMLStreamConstants.CHARACTERS;
import static javax.xml.stream.XMLStreamConstants.END_ELEMENT;
import static javax.xml.stream.XMLStreamConstants.START_ELEMENT;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
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

    private final String name;
    private final Publisher publisher;
    private final InputStream in;
    private final XMLStreamReader xml;
    private String days = "";
    private Map<String, String> row = Map.of();
    private long number;
    private long line = 1;

    private RateXml(String name, Publisher publisher, InputStream in, XMLStreamReader xml) {
        this.name = name;
        this.publisher = publisher;
        this.in = in;
        this.xml = xml;
    }

    static RateXml open(Brought file, Publisher publisher) throws BadFile, IOException {
        InputStream in = new BufferedInputStream(Files.newInputStream(file.path()));
        try {
            return new RateXml(file.name(), publisher, in, SafeXml.reader(in));
        } catch (XMLStreamException e) {
            in.close();
            throw broken(file.name() + ":1");
        }
    }

    @Override
    public boolean next() throws BadFile {
        try {
            while (xml.hasNext()) {
                if (xml.next() == START_ELEMENT && isRate()) {
                    number++;
                    return true;
                }
            }
            return false;
        } catch (XMLStreamException e) {
            throw broken(name + ":" + line);
        }
    }

    /** Whether the element it stands at is a rate, which is read then; of the rest, the days. */
    private boolean isRate() throws XMLStreamException {
        line = xml.getLocation().getLineNumber();
        String element = xml.getLocalName();
        if (publisher == Publisher.ECB) {
            days = element.equals(CUBE) ? attribute("time").orElse(days) : days;
            row =
                    Map.of(
                            "currency",
                            attribute("currency").orElse(""),
                            "rate",
                            attribute("rate").orElse(""));
            return element.equals(CUBE) && attribute("currency").isPresent();
        }
        if (element.equals(MONTHLY_ROOT)) {
            days = attribute("Period").orElse("");
        }
        if (!element.equals("exchangeRate")) {
            return false;
        }
        row = children();
        return true;
    }

    private Optional<String> attribute(String attribute) {
        return Optional.ofNullable(xml.getAttributeValue(null, attribute)).map(String::strip);
    }

    private Map<String, String> children() throws XMLStreamException {
        Map<String, String> texts = new HashMap<>();
        StringBuilder text = new StringBuilder();
        int depth = 1;
        while (depth > 0) {
            switch (xml.next()) {
                case START_ELEMENT -> {
                    depth++;
                    text.setLength(0);
                }
                case END_ELEMENT -> {
                    depth--;
                    texts.put(xml.getLocalName(), text.toString().strip());
                    text.setLength(0);
                }
                case CHARACTERS, CDATA -> {
                    if (text.length() + xml.getTextLength() > Rows.CELL_LIMIT) {
                        throw new XMLStreamException("a text that is too long");
                    }
                    text.append(xml.getText());
                }
                default -> {}
            }
        }
        return texts;
    }

    @Override
    public long number() {
        return number;
    }

    @Override
    public String place() {
        return "%s:%d %s[%d]"
                .formatted(name, line, publisher == Publisher.ECB ? CUBE : "exchangeRate", number);
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

    private static BadFile broken(String place) {
        return new BadFile(
                place,
                "found XML that breaks off, breaks the rules of XML, or has a document type; expected a whole file without one, such as the same downloaded again");
    }

    @Override
    public void close() throws IOException {
        try {
            xml.close();
        } catch (XMLStreamException e) {
            throw new IOException(e);
        } finally {
            in.close();
        }
    }
}

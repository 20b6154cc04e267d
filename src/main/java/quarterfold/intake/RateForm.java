package quarterfold.intake;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import quarterfold.ledger.Publisher;

/**
 * A form of file of exchange rates: of one publisher, as XML or as a table.
 *
 * @param root the local name of its XML's root element
 * @param namespace of that element; empty where there is none
 */
record RateForm(String name, Publisher publisher, String root, String namespace)
        implements DocumentForm {

    static final List<DocumentForm> ALL =
            List.of(
                    new RateForm(
                            "monthly-rates", Publisher.TAX_AUTHORITY, RateXml.MONTHLY_ROOT, ""),
                    new RateForm(
                            "daily-rates",
                            Publisher.ECB,
                            RateXml.DAILY_ROOT,
                            "http://www.gesmes.org/xml/2002-08-01"));

    @Override
    public boolean fits(Head head, Brought file) throws IOException {
        if (head.isXml() || head.isPdf()) {
            return isRoot(head);
        }
        Optional<RateSheet> sheet = RateSheet.open(file, publisher);
        if (sheet.isPresent()) {
            sheet.get().close();
        }
        return sheet.isPresent();
    }

    private boolean isRoot(Head head) {
        return head.root().equals(root) && head.namespace().equals(namespace);
    }

    @Override
    public Reading open(Brought file) throws BadFile, IOException {
        if (isRoot(Head.of(file.path()))) {
            return new RateReading(name, file, RateXml.open(file, publisher));
        }
        RateSheet sheet =
                RateSheet.open(file, publisher)
                        .orElseThrow(
                                () ->
                                        new BadFile(
                                                file.name(),
                                                "found no exchange rates of %s; expected its own file, such as XML with the root element %s"
                                                        .formatted(publisher.words(), root)));
        return new RateReading(name, file, sheet);
    }
}

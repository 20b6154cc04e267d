package quarterfold.ledger;

import java.time.LocalDate;
import java.util.Optional;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/** A line being put together, word by word as the plain sheet has them. */
public final class SampleLine {

    private final Kind kind;
    private LocalDate taxPoint = LocalDate.of(2026, 8, 1);
    private String currency = "GBP";
    private StatedRate rate = StatedRate.NONE;
    private String party = "";
    private String partyCountry = "";
    private String partyVat = "";
    private String category = "";
    private String from = "";
    private String to = "";
    private Customer customer = Customer.CONSUMER;
    private String customerVat = "";
    private String channel = "";
    private ChannelCollects channelCollects = ChannelCollects.NO;
    private String settlement = "";
    private Evidence evidence = Evidence.UNSTATED;
    private Percent businessUse = Percent.HUNDRED;
    private String product = "";
    private String document = "";
    private String order = "";
    private Optional<Amount> net = Optional.empty();
    private Optional<Amount> vat = Optional.empty();
    private Optional<Amount> gross = Optional.empty();
    private Optional<LocalDate> paid = Optional.empty();
    private Particulars particulars = Particulars.NONE;

    private SampleLine(Kind kind) {
        this.kind = kind;
    }

    /** A line of 1 August 2026, in sterling, of which nothing else is stated. */
    public static SampleLine of(String kind) {
        return new SampleLine(Coded.find(Kind.class, kind).orElseThrow());
    }

    /** Amounts as a document prints them. */
    public SampleLine printed(String newNet, String newVat) {
        return net(newNet).vat(newVat);
    }

    public SampleLine on(String day) {
        taxPoint = LocalDate.parse(day);
        return this;
    }

    public SampleLine currency(String code) {
        currency = code;
        return this;
    }

    public SampleLine rate(String text) {
        rate = StatedRate.parse(text).orElseThrow();
        return this;
    }

    public SampleLine party(String name, String country, String vatNumber) {
        party = name;
        partyCountry = country;
        partyVat = vatNumber;
        return this;
    }

    public SampleLine category(String word) {
        category = word;
        return this;
    }

    public SampleLine goods(String start, String end) {
        from = start;
        to = end;
        return this;
    }

    public SampleLine customer(String who, String vatNumber) {
        customer = Coded.find(Customer.class, who).orElseThrow();
        customerVat = vatNumber;
        return this;
    }

    public SampleLine channel(String name, String collects) {
        channel = name;
        channelCollects = Coded.find(ChannelCollects.class, collects).orElseThrow();
        return this;
    }

    public SampleLine settlement(String name) {
        settlement = name;
        return this;
    }

    public SampleLine evidence(String word) {
        evidence = Coded.find(Evidence.class, word).orElseThrow();
        return this;
    }

    public SampleLine businessUse(String percent) {
        businessUse = Percent.of(percent);
        return this;
    }

    public SampleLine product(String code) {
        product = code;
        return this;
    }

    public SampleLine document(String number) {
        document = number;
        return this;
    }

    public SampleLine order(String number) {
        order = number;
        return this;
    }

    public SampleLine net(String amount) {
        net = Optional.of(Amount.of(amount));
        return this;
    }

    public SampleLine vat(String amount) {
        vat = Optional.of(Amount.of(amount));
        return this;
    }

    public SampleLine gross(String amount) {
        gross = Optional.of(Amount.of(amount));
        return this;
    }

    /** The same without an amount. */
    public SampleLine without() {
        net = Optional.empty();
        vat = Optional.empty();
        gross = Optional.empty();
        return this;
    }

    public SampleLine paid(String day) {
        paid = Optional.of(LocalDate.parse(day));
        return this;
    }

    public SampleLine particular(Particular particular, String text) {
        particulars = particulars.with(particular, text);
        return this;
    }

    public Line line(long row) {
        return new Line(
                row,
                taxPoint,
                new Profile(
                        kind,
                        currency,
                        rate,
                        party,
                        partyCountry,
                        partyVat,
                        category,
                        from,
                        to,
                        customer,
                        customerVat,
                        channel,
                        channelCollects,
                        settlement,
                        evidence,
                        businessUse),
                new Item(product, ""),
                document,
                order,
                new Amounts(net, vat, gross),
                paid,
                particulars,
                "",
                "");
    }

    /** The line as entry {@code number}, from row {@code number + 1} of source 1. */
    public Entry entry(long number) {
        return new Entry(number, 1, line(number + 1));
    }
}

package quarterfold.period;

import quarterfold.law.Law;
import quarterfold.ledger.Book;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.StatedRate;
import quarterfold.treatment.Answers;
import quarterfold.treatment.Baskets;
import quarterfold.treatment.Context;
import quarterfold.treatment.DoubleClaims;
import quarterfold.treatment.Exchange;
import quarterfold.treatment.Gifts;
import quarterfold.treatment.Goods;
import quarterfold.treatment.Liabilities;
import quarterfold.treatment.Related;
import quarterfold.treatment.StockBook;
import quarterfold.treatment.Ties;
import quarterfold.treatment.Together;

/**
 * Makes what entries are treated in: the law and the settings, and what the ledger as it stands
 * says of several entries together.
 */
final class Contexts {
    private final Book book;
    private final Ledger ledger;
    private final Law law;
    private final Calendar calendar;

    Contexts(Book book, Ledger ledger, Law law, Calendar calendar) {
        this.book = book;
        this.ledger = ledger;
        this.law = law;
        this.calendar = calendar;
    }

    /** {@code fileName}: of a source, by its id. */
    Context make(Context.Files fileName) {
        Goods goods = new Goods(book.products(), book.bundles());
        Liabilities liabilities = new Liabilities(law, goods);
        Baskets baskets = baskets(liabilities);
        Answers answers = Answers.of(ledger.decisions(), ledger.kinds());
        Exchange exchange = new Exchange(law, book.settings(), ledger.rates()::of);
        Ties ties = Ties.of(ledger.search()::forEach, law, answers);
        boolean stock = ledger.search().hasKind(Kind.STOCK_ON_HAND);
        return new Context(
                law,
                book.settings(),
                goods,
                baskets,
                Together.of(
                        each -> ledger.search().forEach(DoubleClaims::mayConcern, each),
                        stock ? ledger::forEach : each -> {},
                        law,
                        book.settings(),
                        liabilities,
                        answers,
                        exchange,
                        new KnownEntries(ledger),
                        ties.imports()),
                answers,
                ties,
                fileName,
                book.settings().roundingPerLine(),
                related(liabilities, baskets, answers, exchange));
    }

    /** Gifts and margin-scheme goods are only looked for where there can be some. */
    private Related related(
            Liabilities liabilities, Baskets baskets, Answers answers, Exchange exchange) {
        boolean margin =
                ledger.search().hasRate(StatedRate.MARGIN)
                        || book.products().has(StatedRate.MARGIN.code())
                        || answers.state("rate=" + StatedRate.MARGIN.code());
        return new Related(
                ledger.search().hasKind(Kind.GIFT)
                        ? Gifts.of(ledger::forEach, law, liabilities, answers, exchange)
                        : Gifts.NONE,
                margin
                        ? StockBook.of(ledger::forEach, liabilities, baskets, answers, exchange)
                        : StockBook.NONE,
                day -> calendar.of(day).map(p -> new Related.Span(p.start(), p.end())),
                ledger.rates()::of);
    }

    /** Baskets are only looked for where something can be other than standard-rated. */
    private Baskets baskets(Liabilities liabilities) {
        return book.products().isEmpty()
                        && book.bundles().isEmpty()
                        && !ledger.search().hasStatedSaleRates()
                ? Baskets.NONE
                : Baskets.of(ledger::forEach, liabilities);
    }
}

package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import quarterfold.law.Law;
import quarterfold.period.VatReturn;
import quarterfold.treatment.Query;

/** Queries as people read them: the open ones with the command that answers each. */
final class QueryText {

    private final Law law;
    private final PrintWriter out;

    QueryText(Law law, PrintWriter out) {
        this.law = law;
        this.out = out;
    }

    void print(List<Query> queries) {
        for (Query query : queries) {
            out.println(
                    "%s  %s"
                            .formatted(Texts.plain(query.id()), Texts.plain(query.place()))
                            .strip());
            out.printf("  %s%n", Texts.cell(query.question(), 1_000));
            out.printf(
                    "  %s%n%n",
                    query.isOpen()
                            ? Answering.command(law, query)
                            : Texts.cell(query.answer(), 1_000));
        }
    }

    /** What of a period's queries is open, and what is not. */
    void counted(VatReturn vatReturn) {
        int open = vatReturn.openQueries().size();
        int aside = vatReturn.setAsideQueries().size();
        out.println(
                (open == 0
                                ? "No query is open."
                                : Texts.count(open, "query is open.", "queries are open."))
                        + (aside == 0
                                ? ""
                                : " " + Texts.count(aside, "is set aside.", "are set aside.")));
    }

    /** Why a period is not closed. */
    void held(VatReturn draft) {
        List<Query> holding = draft.holdingClose();
        out.printf(
                "%s is not closed: %s, and nothing was written. Answer each, or leave it as it is with --set-aside.%n%n",
                draft.period().name(),
                Texts.count(holding.size(), "open query holds it", "open queries hold it"));
        print(holding);
        notHolding(draft);
    }

    /** The open queries that a close does not wait for, where there are some. */
    void notHolding(VatReturn vatReturn) {
        List<Query> others = vatReturn.openQueries().stream().filter(q -> !q.holdsClose()).toList();
        if (!others.isEmpty()) {
            out.printf("Open, but no close waits for it:%n%n");
            print(others);
        }
    }
}

package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.ledger.RaisedQuery;
import quarterfold.money.Amount;

/**
 * Whether the statements of a file hold together: opening balance and booked entries make the
 * closing balance, and each statement of an account begins where the one before it ends. What holds
 * is forgotten, so that memory does not grow with the file.
 */
final class StatementProof {
    static final String DOES_NOT_TIE = "statement-does-not-tie";
    static final String NO_BALANCE = "statement-balance-missing";
    static final String CURRENCIES = "statement-currencies-differ";
    static final String GAP = "statement-missing";
    static final String REPEATED = "statement-repeated";

    /** Where the latest statement of an account begins and ends. */
    private record Reach(String name, Optional<Amount> opening, Optional<Amount> closing) {}

    private final List<RaisedQuery> raised = new ArrayList<>();
    private final Set<String> abouts = new HashSet<>();
    private final Map<String, Reach> reaches = new HashMap<>();
    private Optional<BankStatement> open = Optional.empty();
    private int statements;

    /** Takes a statement, or a page of one, that was read to its end. */
    void add(BankStatement statement) {
        statements++;
        if (open.filter(o -> o.isContinuedBy(statement)).isPresent()) {
            open.orElseThrow().join(statement);
            return;
        }
        finish();
        open = Optional.of(statement);
    }

    /** How many were read. */
    int statements() {
        return statements;
    }

    /** Raises a question for each statement that does not hold; once all are read. */
    void raise(Payouts.Raise raise) {
        finish();
        raised.forEach(q -> raise.query(q.code(), q.about(), q.question()));
    }

    private void finish() {
        open.ifPresent(
                statement -> {
                    prove(statement);
                    follow(statement);
                });
        open = Optional.empty();
    }

    private void prove(BankStatement statement) {
        Optional<Amount> opening = statement.opening();
        Optional<Amount> closing = statement.closing();
        if (statement.currencies().size() > 1) {
            raise(
                    CURRENCIES,
                    statement,
                    "%s states amounts in %s; expected one currency, that of the account: nothing proves that its entries are all there"
                            .formatted(
                                    named(statement),
                                    String.join(" and ", statement.currencies())));
        } else if (opening.isEmpty() || closing.isEmpty()) {
            raise(
                    NO_BALANCE,
                    statement,
                    "%s states no %s, so nothing proves that its booked entries (%s) are all there; hold them against what the bank shows"
                            .formatted(
                                    named(statement),
                                    opening.isPresent()
                                            ? "closing balance (CLBD)"
                                            : closing.isPresent()
                                                    ? "opening balance (OPBD or PRCD)"
                                                    : "opening balance (OPBD or PRCD) and no closing one (CLBD)",
                                    counted(statement.entries(), statement.sum())));
        } else {
            tie(statement, opening.get(), closing.get());
        }
    }

    private void tie(BankStatement statement, Amount opening, Amount closing) {
        Amount expected = opening.plus(statement.sum());
        Amount difference = closing.minus(expected);
        if (difference.isZero()) {
            return;
        }
        boolean turned =
                expected.minus(statement.reversed()).minus(statement.reversed()).equals(closing);
        raise(
                DOES_NOT_TIE,
                statement,
                "%s opens with %s; with its booked entries (%s) that makes %s, but it closes with %s; the difference is %s: %s"
                        .formatted(
                                named(statement),
                                opening,
                                counted(statement.entries(), statement.sum()),
                                expected,
                                closing,
                                difference,
                                turned
                                        ? "it would tie if its reversals (%s) went the other way; does the bank say of them which way the payments they take back went?"
                                                .formatted(
                                                        counted(
                                                                statement.reversals(),
                                                                statement.reversed()))
                                        : "which entries are missing, or which are not of this statement?"));
    }

    /** Statements of an account stand oldest first or newest first. */
    private void follow(BankStatement statement) {
        Reach reach = new Reach(statement.name(), statement.opening(), statement.closing());
        Reach before = reaches.put(statement.account(), reach);
        if (reach.equals(before) && statement.entries() > 0) {
            raise(
                    REPEATED,
                    statement,
                    "%s is in the file twice with the same balances; its booked entries (%s) are entered each time: is the second one a copy?"
                            .formatted(
                                    named(statement),
                                    counted(statement.entries(), statement.sum())));
            return;
        }
        if (before == null || !differ(before.closing(), reach.opening())) {
            return;
        }
        if (differ(reach.closing(), before.opening())) {
            raise(
                    GAP,
                    statement,
                    "%s opens with %s, but statement %s before it in the file closes with %s: is a statement between them missing?"
                            .formatted(
                                    named(statement),
                                    reach.opening().orElseThrow(),
                                    before.name(),
                                    before.closing().orElseThrow()));
        }
    }

    private static boolean differ(Optional<Amount> one, Optional<Amount> other) {
        return one.isPresent() && other.isPresent() && !one.equals(other);
    }

    private static String named(BankStatement statement) {
        return "statement %s of account %s".formatted(statement.name(), statement.account());
    }

    private static String counted(long entries, Amount sum) {
        return "%,d, %s in all".formatted(entries, sum);
    }

    /** Each question is about one statement by its name; one of the same name gets a number. */
    private void raise(String code, BankStatement statement, String question) {
        String name = statement.name();
        String about = name;
        for (int n = 2; !abouts.add(code + "/" + about); n++) {
            about = "%s (%d)".formatted(name, n);
        }
        raised.add(new RaisedQuery(0, code, about, question));
    }
}

package quarterfold.period;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import quarterfold.law.Adjusts;
import quarterfold.law.BoxRule;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.treatment.Context;
import quarterfold.treatment.Questions;
import quarterfold.treatment.Treated;

/**
 * What an adjuster may look at beside the entries it is shown.
 *
 * @param period of the return being worked out
 */
record Basis(Period period, Context context, Calendar calendar, Others others) {

    /** What is known of the book's other periods. */
    interface Others {

        /** Every entry of another period: as its close froze it, or as it is treated now. */
        void forEachTreated(Period period, Consumer<Treated> each);

        /** What a closed return took up; empty where the period is open. */
        Optional<List<Adjustment>> taken(Period period);

        /**
         * Whether anything in the book says that there are exempt supplies or purchases for such.
         */
        boolean mayBePartlyExempt();
    }

    Law law() {
        return context.law();
    }

    Settings settings() {
        return context.settings();
    }

    Questions questions() {
        return new Questions(context);
    }

    /** Whether the book chose {@code name=value}, or kept it as the default. */
    boolean chose(String nameAndValue) {
        return law().choices().holds(nameAndValue, settings().choices());
    }

    /**
     * An adjustment with the boxes its rows of {@code boxes.csv} give it.
     *
     * @param name in {@code adjustments.csv}
     * @param working how it was worked out, in whole sentences
     */
    Adjustment adjustment(
            String name, String about, String working, Amount net, Amount vat, Amount claim) {
        LocalDate day = period.end();
        Dated<Adjusts> row = law().adjustment(name, day);
        Map<String, Amount> boxes = new LinkedHashMap<>();
        for (Dated<BoxRule> rule : law().boxes(name, settings().schemeOn(day), day)) {
            Amount amount =
                    switch (rule.value().measure()) {
                        case NET -> net;
                        case VAT -> vat;
                        case CLAIM -> claim;
                        case GROSS -> net.plus(vat);
                    };
            if (!amount.isZero()) {
                boxes.merge(rule.value().box(), amount.times(rule.value().sign()), Amount::plus);
            }
        }
        return new Adjustment(
                name,
                about,
                row.value().why() + ". " + working,
                row.source(),
                net,
                vat,
                claim,
                boxes);
    }
}

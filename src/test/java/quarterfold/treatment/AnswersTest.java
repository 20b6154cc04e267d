package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Entry;
import quarterfold.ledger.SampleLine;
import quarterfold.money.Amount;

/** What people decided changes the facts, in a known order, and undoing is only appended. */
class AnswersTest {

    private static final LocalDate DAY = LocalDate.of(2026, 10, 5);

    private static Decision decided(
            long id, Decision.Target target, String about, Decision.Action action, String value) {
        return new Decision(
                id, target, about, action, value, "the bill was seen", "A. Keeper", DAY);
    }

    private static Decision entry(long id, Decision.Action action, String value) {
        return decided(id, Decision.Target.ENTRY, "1", action, value);
    }

    private static SampleLine bill() {
        return SampleLine.of("expense")
                .party("Example supplier", "GB", "GB101747696")
                .product("P-1")
                .printed("100", "20")
                .rate("20");
    }

    @Test
    void undoingAndUndoingThat() {
        Decision first = entry(1, Decision.Action.DISALLOW, "");
        Decision undo = entry(2, Decision.Action.UNDO, "1");
        Decision again = entry(3, Decision.Action.UNDO, "2");
        assertThat(Decision.inForce(List.of(first))).containsExactly(first);
        assertThat(Decision.inForce(List.of(first, undo))).isEmpty();
        assertThat(Decision.inForce(List.of(first, undo, again))).containsExactly(first);
        assertThat(Answers.of(List.of(first, undo)).about(bill().entry(1))).isEmpty();
    }

    @Test
    void evidenceSeenLetsTheVatIn() {
        assertThat(Treating.told(Treating.gb().one(bill())))
                .isEqualTo(
                        "unclaimed U07a 20%: 100.00 + 20.00, claim 0.00; 7=100.00; asks evidence-missing");
        assertThat(
                        Treating.told(
                                Treating.gb()
                                        .deciding(
                                                entry(1, Decision.Action.EVIDENCE_SEEN, "invoice"))
                                        .one(bill())))
                .isEqualTo(
                        "uk-purchase U15a 20%: 100.00 + 20.00, claim 20.00; 4=20.00 7=100.00; asks nothing");
    }

    @Test
    void theEntryWinsOverItsPartyAndTheLaterOverTheEarlier() {
        Decision party =
                decided(
                        3,
                        Decision.Target.PARTY,
                        "Example supplier",
                        Decision.Action.STATE,
                        "category=car-hire");
        Decision seen = entry(1, Decision.Action.EVIDENCE_SEEN, "invoice");
        Decision own = entry(2, Decision.Action.STATE, "category=client-entertaining");
        Decision later = entry(4, Decision.Action.STATE, "category=stock");
        assertThat(Treating.gb().deciding(seen, party).one(bill()).treatment())
                .isEqualTo("part-blocked");
        assertThat(Treating.gb().deciding(seen, own, party).one(bill()).treatment())
                .isEqualTo("blocked");
        assertThat(Treating.gb().deciding(seen, own, party, later).one(bill()).treatment())
                .isEqualTo("uk-purchase");
    }

    @Test
    void treatedAsDecidedAsksNothing() {
        Treated treated =
                Treating.gb()
                        .deciding(entry(1, Decision.Action.TREAT_AS, "reverse-charge"))
                        .one(bill().vat("0"));
        assertThat(treated.treatment()).isEqualTo("reverse-charge");
        assertThat(treated.queries()).isEmpty();
        assertThat(treated.boxes())
                .containsEntry("1", Amount.of("20"))
                .containsEntry("4", Amount.of("20"));
    }

    @Test
    void disallowedAndDuplicate() {
        assertThat(
                        Treating.told(
                                Treating.gb()
                                        .deciding(entry(1, Decision.Action.DISALLOW, ""))
                                        .one(bill().evidence("invoice"))))
                .isEqualTo(
                        "disallowed D02a 20%: 100.00 + 20.00, claim 0.00; 7=100.00; asks nothing");
        assertThat(
                        Treating.gb()
                                .deciding(entry(1, Decision.Action.DUPLICATE_OF, "2"))
                                .one(bill().evidence("invoice"))
                                .boxes())
                .isEmpty();
    }

    /** The question stays, with who left it and why, and no longer holds the close. */
    @Test
    void setAside() {
        Query query =
                Treating.gb()
                        .deciding(entry(1, Decision.Action.SET_ASIDE, ""))
                        .one(bill())
                        .queries()
                        .get(0);
        assertThat(query.isOpen()).isFalse();
        assertThat(query.id()).isEqualTo("E1/evidence-missing");
        assertThat(query.answer())
                .isEqualTo("set aside by A. Keeper on 2026-10-05: the bill was seen");
    }

    @Test
    void aQuestionOfItsOwn() {
        Query query = new Query("S4/x", OptionalLong.empty(), "a.csv", "What now?", Amount.ZERO);
        Decision answer = decided(1, Decision.Target.QUERY, "S4/x", Decision.Action.SET_ASIDE, "");
        assertThat(Answers.of(List.of(answer)).about(query)).contains(answer);
        assertThat(Answers.NONE.about(query)).isEmpty();
    }

    /** Only what states or shows something can move a day; questions and amounts stay. */
    @ParameterizedTest(name = "{0} {1} {2} {3}: {4}")
    @CsvSource({
        "PARTY, Example supplier, STATE, held=2026-10-01, true",
        "PARTY, Example supplier, EVIDENCE_SEEN, invoice, true",
        "PARTY, Example supplier, DISALLOW, '', false",
        "PARTY, Example supplier, SET_ASIDE, '', false",
        "PARTY, Another, STATE, held=2026-10-01, false",
        "PARTY, Quaylark, STATE, held=2026-10-01, true",
        "PRODUCT, Q-9, STATE, held=2026-10-01, true",
        "PRODUCT, Q-9, TREAT_AS, blocked, false",
        "ENTRY, 1, STATE, held=2026-10-01, false"
    })
    void whatMayMoveADay(
            Decision.Target target,
            String about,
            Decision.Action action,
            String value,
            boolean moves) {
        Answers answers = Answers.of(List.of(decided(1, target, about, action, value)));
        assertThat(answers.mayMove(bill().channel("Quaylark", "no").entry(1).profile()))
                .isEqualTo(moves);
    }

    @Test
    void whetherAnyDecisionStatesAFact() {
        Answers answers =
                Answers.of(
                        List.of(
                                entry(1, Decision.Action.STATE, "category=stock"),
                                decided(
                                        2,
                                        Decision.Target.PARTY,
                                        "Example supplier",
                                        Decision.Action.STATE,
                                        "rate=margin"),
                                entry(3, Decision.Action.TREAT_AS, "uk-purchase")));
        assertThat(answers.state("rate=margin")).isTrue();
        assertThat(answers.state("category=stock")).isTrue();
        assertThat(answers.state("rate=20")).isFalse();
        assertThat(answers.state("uk-purchase")).isFalse();
        assertThat(Answers.NONE.state("rate=margin")).isFalse();
    }

    @Test
    void anEntryWithWhatWasStatedSince() {
        Answers answers = Answers.of(List.of(entry(1, Decision.Action.STATE, "category=stock")));
        assertThat(answers.stated(bill().entry(1)).profile().category()).isEqualTo("stock");
        assertThat(answers.stated(bill().entry(2)).profile().category()).isEmpty();
        assertThat(Answers.NONE.stated(bill().entry(1)).profile().category()).isEmpty();
    }

    /** The last decision that sets an entry aside says who did and why; no other kind does. */
    @Test
    void theLastSettingAsideSettles() {
        Query query = new Query("E1/x", OptionalLong.of(1), "a.csv", "What now?", Amount.ZERO);
        Decision early = entry(1, Decision.Action.SET_ASIDE, "");
        Decision late =
                new Decision(
                        2,
                        Decision.Target.ENTRY,
                        "1",
                        Decision.Action.SET_ASIDE,
                        "",
                        "small",
                        "B. Keeper",
                        DAY.plusDays(1));
        Decision other = entry(3, Decision.Action.DISALLOW, "");
        assertThat(Answers.of(List.of(early, late, other)).settled(bill().entry(1), query).answer())
                .isEqualTo("set aside by B. Keeper on 2026-10-06: small");
        assertThat(Answers.of(List.of(other)).settled(bill().entry(1), query).isOpen()).isTrue();
        assertThat(Answers.of(List.of(early)).settled(bill().entry(2), query).isOpen()).isTrue();
    }

    /** A question's own answer stays where the entry is set aside as well. */
    @Test
    void theAnswerToTheQuestionGoesFirst() {
        Decision own =
                decided(
                        1,
                        Decision.Target.QUERY,
                        "E1/late-purchase",
                        Decision.Action.SET_ASIDE,
                        "");
        Decision ofTheEntry =
                new Decision(
                        2,
                        Decision.Target.ENTRY,
                        "1",
                        Decision.Action.SET_ASIDE,
                        "",
                        "small",
                        "B. Keeper",
                        DAY);
        assertThat(late(own, ofTheEntry))
                .isEqualTo("set aside by A. Keeper on 2026-10-05: the bill was seen");
        assertThat(late(ofTheEntry)).isEqualTo("set aside by B. Keeper on 2026-10-05: small");
        assertThat(late()).isEmpty();
    }

    private static String late(Decision... decisions) {
        Entry entry = bill().entry(1);
        return new Questions(Treating.gb().deciding(decisions).context(List.of(entry)))
                .ask("late-purchase", entry)
                .answer();
    }
}

package quarterfold.intake;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Customer;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Profile;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Percent;

/**
 * Makes the profile of an entry from the cells that vary. One object for each distinct combination
 * of cells, so that a million lines need only a few. For one thread.
 */
final class ProfileReader {
    private static final int KEPT = 10_000;
    private static final Field[] FIELDS = {
        Field.KIND,
        Field.CURRENCY,
        Field.RATE,
        Field.PARTY,
        Field.PARTY_COUNTRY,
        Field.PARTY_VAT,
        Field.CATEGORY,
        Field.FROM,
        Field.TO,
        Field.CUSTOMER,
        Field.CUSTOMER_VAT,
        Field.CHANNEL,
        Field.CHANNEL_COLLECTS,
        Field.SETTLEMENT,
        Field.EVIDENCE,
        Field.BUSINESS_USE
    };

    private final FieldCells cells;
    private final String currency;
    private final boolean spoken;
    private final Field[] varying;
    private final int[] columns;
    private String[] texts;
    private String[] lastTexts;
    private Optional<Profile> last = Optional.empty();
    private final Map<List<String>, Optional<Profile>> known = new HashMap<>();

    /** {@code cells} give the kind too; {@code currency} is for cells that give none. */
    ProfileReader(FieldCells cells, String currency) {
        this(cells, currency, true);
    }

    /** {@code spoken}: whether cells may say in words what has a code. */
    ProfileReader(FieldCells cells, String currency, boolean spoken) {
        this.cells = cells;
        this.currency = currency;
        this.spoken = spoken;
        varying = Stream.of(FIELDS).filter(f -> cells.column(f) >= 0).toArray(Field[]::new);
        columns = Stream.of(varying).mapToInt(cells::column).toArray();
        texts = new String[columns.length];
        lastTexts = new String[columns.length];
    }

    /** The row's profile, or nothing where cells are not of their vocabulary, as problems say. */
    Optional<Profile> read(Row row) {
        boolean same = last.isPresent();
        for (int i = 0; i < columns.length; i++) {
            String text = row.text(columns[i]);
            texts[i] = text;
            same = same && text.equals(lastTexts[i]);
        }
        if (same) {
            return last;
        }
        Optional<Profile> profile = known.get(Arrays.asList(texts));
        if (profile == null) {
            profile = check(row) ? Optional.of(make(row)) : Optional.empty();
            if (profile.isPresent()) {
                if (known.size() >= KEPT) {
                    known.clear();
                }
                known.put(List.of(texts), profile);
            }
        }
        String[] spare = lastTexts;
        lastTexts = texts;
        texts = spare;
        last = profile;
        return profile;
    }

    private boolean check(Row row) {
        boolean good = true;
        for (int i = 0; i < columns.length; i++) {
            boolean needed = varying[i] == Field.KIND;
            if (texts[i].isEmpty() ? needed : !varying[i].accepts(inCode(varying[i], texts[i]))) {
                row.wrong(columns[i], varying[i].expected());
                good = false;
            }
        }
        return good;
    }

    private Profile make(Row row) {
        String stated = text(Field.CURRENCY, row);
        return new Profile(
                code(Kind.class, Field.KIND, row, Kind.OTHER_MONEY),
                stated.isEmpty() ? currency : stated,
                StatedRate.parse(text(Field.RATE, row)).orElse(StatedRate.NONE),
                text(Field.PARTY, row),
                text(Field.PARTY_COUNTRY, row),
                text(Field.PARTY_VAT, row),
                text(Field.CATEGORY, row),
                text(Field.FROM, row),
                text(Field.TO, row),
                code(Customer.class, Field.CUSTOMER, row, Customer.CONSUMER),
                text(Field.CUSTOMER_VAT, row),
                text(Field.CHANNEL, row),
                code(ChannelCollects.class, Field.CHANNEL_COLLECTS, row, ChannelCollects.NO),
                text(Field.SETTLEMENT, row),
                code(Evidence.class, Field.EVIDENCE, row, Evidence.UNSTATED),
                text(Field.BUSINESS_USE, row).isEmpty()
                        ? Percent.HUNDRED
                        : Words.share(text(Field.BUSINESS_USE, row)));
    }

    private String text(Field field, Row row) {
        return inCode(field, cells.text(field, row));
    }

    private String inCode(Field field, String text) {
        return spoken ? InCodes.of(field, text) : text;
    }

    private <E extends Enum<E> & Coded> E code(Class<E> type, Field field, Row row, E otherwise) {
        return Coded.find(type, text(field, row)).orElse(otherwise);
    }
}

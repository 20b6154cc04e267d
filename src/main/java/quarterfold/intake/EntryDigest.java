package quarterfold.intake;

import java.util.IdentityHashMap;
import java.util.List;
import quarterfold.ledger.Line;
import quarterfold.ledger.Profile;

/**
 * What the entries of a row come to, in whatever words the file has it: all that is entered, but
 * for the notes, the amounts as written and the number of the row. For one thread.
 */
final class EntryDigest {
    private static final int PROFILES_HELD = 10_000;

    private final TextDigest digest = new TextDigest();
    private final IdentityHashMap<Profile, String> profiles = new IdentityHashMap<>();

    long of(List<Line> lines) {
        for (Line line : lines) {
            digest.add(line.taxPoint().toString())
                    .add(text(line.profile()))
                    .add(line.item().product())
                    .add(line.item().description())
                    .add(line.document())
                    .add(line.order())
                    .add(line.amounts().toString())
                    .add(line.paid().toString())
                    .add(line.particulars().toString());
        }
        return digest.take().getLong();
    }

    /** Entries share their profiles, and a profile is the longest part of a line. */
    private String text(Profile profile) {
        if (profiles.size() >= PROFILES_HELD) {
            profiles.clear();
        }
        return profiles.computeIfAbsent(profile, Profile::toString);
    }
}

package quarterfold.intake;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The documents that lists name as their evidence: they are not to be read as reports too. */
final class Claims {

    /** Who names a document, and whether that list was entered. */
    private record Claim(String by, boolean entered) {}

    private final Map<String, Claim> claims = new HashMap<>();

    void add(Piece document, String by, boolean entered) {
        claims.put(document.key(), new Claim(by, entered));
    }

    /** What becomes of a document, where a list names it. */
    Optional<ImportResult> of(Piece document) {
        return Optional.ofNullable(claims.get(document.key()))
                .map(
                        claim ->
                                claim.entered()
                                        ? new ImportResult.KeptAsEvidence(
                                                document.name(), claim.by())
                                        : new ImportResult.PassedOver(
                                                document.name(),
                                                "named by %s, which was refused"
                                                        .formatted(claim.by())));
    }
}

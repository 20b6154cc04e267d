package quarterfold.intake;

import java.util.Arrays;
import java.util.Optional;

/** A VAT category of EN 16931 (code list UNTDID 5305), with the name its rules have. */
enum VatCategory {
    /** Any rate above nought: the standard rate and the reduced ones. */
    TAXED("S", "S"),
    ZERO("Z", "Z"),
    EXEMPT("E", "E"),
    /** The customer accounts for the VAT. */
    REVERSE_CHARGE("AE", "AE"),
    /** Goods from one member state of the European Union to another. */
    INTRA_COMMUNITY("K", "IC"),
    /** Goods that leave the seller's territory. */
    EXPORT("G", "G"),
    /** Not subject to VAT. */
    OUTSIDE("O", "O"),
    /** The tax of the Canary Islands, which is no VAT. */
    CANARY_ISLANDS("L", "AF"),
    /** The tax of Ceuta and Melilla, which is no VAT. */
    CEUTA_AND_MELILLA("M", "AG");

    private final String code;
    private final String rules;

    VatCategory(String code, String rules) {
        this.code = code;
        this.rules = rules;
    }

    static Optional<VatCategory> of(String code) {
        return Arrays.stream(values()).filter(c -> c.code.equals(code)).findFirst();
    }

    String code() {
        return code;
    }

    /** The published rule of a number about this category, such as {@code BR-S-08}. */
    String rule(String number) {
        return "BR-" + rules + "-" + number;
    }

    /** Whether it may have a rate above nought. */
    boolean isTaxed() {
        return this == TAXED || isOfAnIsland();
    }

    /** Whether it is another tax than VAT. */
    boolean isOfAnIsland() {
        return this == CANARY_ISLANDS || this == CEUTA_AND_MELILLA;
    }
}

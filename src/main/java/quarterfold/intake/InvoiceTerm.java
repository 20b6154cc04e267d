package quarterfold.intake;

/** A business term of EN 16931-1 that a reader needs, with its words and an example. */
enum InvoiceTerm {
    NUMBER("BT-1", "the number of the document", "INV-1001"),
    ISSUED("BT-2", "the day of issue", ""),
    TYPE("BT-3", "the type of the document", "380 for an invoice or 381 for a credit note"),
    CURRENCY("BT-5", "the currency, a code of ISO 4217", "GBP"),
    VAT_CURRENCY("BT-6", "the currency of the VAT accounts, a code of ISO 4217", "GBP"),
    TAX_POINT("BT-7", "the tax point", ""),
    DUE("BT-9", "the day payment is due", ""),
    SELLER("BT-27", "the seller's name", "Fernmoor Pottery Ltd"),
    SELLER_COUNTRY("BT-40", "the seller's country, a code of ISO 3166", "GB"),
    BUYER("BT-44", "the buyer's name", "Alder & Wren"),
    BUYER_COUNTRY("BT-55", "the buyer's country, a code of ISO 3166", "GB"),
    DELIVERED("BT-72", "the day of delivery", ""),
    DELIVERED_TO("BT-80", "the country of delivery, a code of ISO 3166", "GB"),
    ADJUSTMENT("BT-92 or BT-99", "the amount of an allowance or charge", "5.00"),
    LINES("BT-106", "the sum of the lines", "100.00"),
    ALLOWANCES("BT-107", "the sum of the allowances", "5.00"),
    CHARGES("BT-108", "the sum of the charges", "5.00"),
    NET("BT-109", "the total without VAT", "100.00"),
    VAT("BT-110", "the total of VAT", "20.00"),
    ACCOUNTING_VAT("BT-111", "the total of VAT in the currency of the VAT accounts", "20.00"),
    GROSS("BT-112", "the total with VAT", "120.00"),
    PAID("BT-113", "the amount paid before", "50.00"),
    ROUNDING("BT-114", "the rounding of the amount due", "0.01"),
    PAYABLE("BT-115", "the amount due", "120.00"),
    TAXABLE("BT-116", "the amount VAT is charged on", "100.00"),
    TAX("BT-117", "the VAT on it", "20.00"),
    CATEGORY("BT-118", "a VAT category: S, Z, E, AE, K, G, O, L or M", "S"),
    RATE("BT-119", "the rate of VAT, a percentage from 0 to 100", "20"),
    LINE_NET("BT-131", "the net amount of the line", "100.00");

    private final String code;
    private final String words;
    private final String example;

    InvoiceTerm(String code, String words, String example) {
        this.code = code;
        this.words = words;
        this.example = example;
    }

    /** What is expected, with an example. */
    String expected() {
        return expected(example);
    }

    /** What is expected, with an example in the words of a syntax. */
    String expected(String written) {
        return "%s (%s), such as %s".formatted(words, code, written);
    }
}

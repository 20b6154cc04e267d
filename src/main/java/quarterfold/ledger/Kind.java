package quarterfold.ledger;

/**
 * What an entry is: the event, and with it the way its money goes. Amounts are positive as printed
 * on the document; the kind says whether the money comes to the business or leaves it.
 */
public enum Kind implements Coded {
    SALE("sale", Side.SALES, 1),
    SALE_REFUND("sale-refund", Side.SALES, -1),
    DELIVERY("delivery", Side.SALES, 1),
    DELIVERY_REFUND("delivery-refund", Side.SALES, -1),
    DISCOUNT("discount", Side.SALES, -1),
    DISCOUNT_REVERSED("discount-reversed", Side.SALES, 1),
    /** Goods of the business put to private use: no money moves. */
    PRIVATE_USE("private-use", Side.SALES, 0),
    /** Goods of the business given away; the party is who got them. */
    GIFT("gift", Side.SALES, 0),
    /** The charge for road fuel of the business that a car burns privately. */
    FUEL_SCALE("fuel-scale", Side.SALES, 0),
    /** A voucher issued for goods or services to come. */
    VOUCHER("voucher", Side.SALES, 1),
    /** Goods or services given for a voucher: its money came when it was issued. */
    VOUCHER_REDEEMED("voucher-redeemed", Side.SALES, 0),
    /** Goods held when the registration ended, at what they would cost then: no money moves. */
    STOCK_ON_HAND("stock-on-hand", Side.SALES, 0),
    FEE("fee", Side.PURCHASES, -1),
    FEE_REFUND("fee-refund", Side.PURCHASES, 1),
    PURCHASE("purchase", Side.PURCHASES, -1),
    PURCHASE_CREDIT("purchase-credit", Side.PURCHASES, 1),
    EXPENSE("expense", Side.PURCHASES, -1),
    EXPENSE_CREDIT("expense-credit", Side.PURCHASES, 1),
    IMPORT_VAT_PAID("import-vat-paid", Side.IMPORTS, -1),
    IMPORT_VAT_POSTPONED("import-vat-postponed", Side.IMPORTS, 0),
    IMPORT_DUTY("import-duty", Side.IMPORTS, -1),
    /** The seller's own goods taken to another country, unsold. */
    STOCK_MOVED("stock-moved", Side.IMPORTS, 0),
    /** Money the channel sent to the bank: it leaves the channel's account. */
    PAYOUT("payout", Side.MONEY, -1),
    /** Money the channel keeps back; a release is a negative reserve. */
    RESERVE("reserve", Side.MONEY, -1),
    COMPENSATION("compensation", Side.MONEY, 1),
    /** What a customer paid of a sale's document, where it is not all on the day of the sale. */
    CUSTOMER_PAYMENT("customer-payment", Side.MONEY, 1),
    /** What was paid of a supplier's document. */
    SUPPLIER_PAYMENT("supplier-payment", Side.MONEY, -1),
    TRANSFER("transfer", Side.MONEY, 1),
    /** What an account's statement states was booked: the money of what is entered elsewhere. */
    BANK_LINE("bank-line", Side.MONEY, 1),
    OTHER_MONEY("other-money", Side.MONEY, 1);

    /** The working papers' four heaps. */
    public enum Side {
        SALES,
        PURCHASES,
        IMPORTS,
        MONEY
    }

    private final String code;
    private final Side side;
    private final int direction;

    Kind(String code, Side side, int direction) {
        this.code = code;
        this.side = side;
        this.direction = direction;
    }

    @Override
    public String code() {
        return code;
    }

    public Side side() {
        return side;
    }

    /** 1 where the money comes to the business, -1 where it leaves, 0 where none moves. */
    public int direction() {
        return direction;
    }
}

package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A book small enough to be worked out by hand. Box 1: 20.00 in the sale of 120.00, less 2.00 in
 * the refund of 12.00, and 6.00 on the adverts from abroad; box 4: 10.00 printed on the purchase,
 * and the 6.00 again; the VAT of 4.00 on the paper is not reclaimed, since no receipt is held.
 */
public final class SmallBook {

    public static final String QUARTER =
            """
            date,kind,document,party,party_country,party_vat,description,category,net,vat,gross,rate,evidence,order
            2026-07-03,sale,,,,,Blue bowl,,,,120.00,20,,W-1
            2026-07-20,sale-refund,,,,,Blue bowl,,,,12.00,20,,W-1
            2026-08-01,purchase,P-1,Fernmoor Pottery Ltd,GB,GB000472729,Bowls,stock,50.00,10.00,60.00,20,invoice,
            2026-08-09,expense,R-7,Corner Shop,GB,,Paper,stationery,,,24.00,20,missing,
            2026-09-30,fee,F-1,Adverts Abroad,IE,,Adverts,advertising,30.00,,30.00,,invoice,
            2026-09-30,payout,,,,,To the bank,,,,45.00,,,
            """;

    /** Of {@link #QUARTER}, by sha256sum. */
    public static final String QUARTER_SHA256 =
            "d35fdbb4f181da6f6244bfbff2905e9ad69c1d8bc86f689386fd65a2909b95ed";

    private SmallBook() {}

    /** A book without entries, {@code folder/book}. */
    public static Path empty(Path folder) {
        Path book = folder.resolve("book");
        Run made =
                Run.of(
                        "--book",
                        book,
                        "new",
                        "--name",
                        "Fernmoor Crafts",
                        "--country",
                        "GB",
                        "--vat-number",
                        "GB101747696",
                        "--registered-from",
                        "2024-01-01",
                        "--period-ends",
                        "3,6,9,12");
        assertThat(made.code()).as(made.err()).isZero();
        return book;
    }

    /** A book with {@link #QUARTER} as {@code quarter.csv}. */
    public static Path quarter(Path folder) throws IOException {
        Path book = empty(folder);
        enter(book, file(folder, "quarter.csv", QUARTER));
        return book;
    }

    /** Leaves a query as it is, so that a period may be closed. */
    public static void setAside(Path book, String query) {
        Run decided =
                Run.of(
                        "--book",
                        book,
                        "decide",
                        "--query",
                        query,
                        "--set-aside",
                        "--why",
                        "The receipt is lost",
                        "--who",
                        "Anne Weaver",
                        "--on",
                        "2026-10-05");
        assertThat(decided.code()).as(decided.err()).isZero();
    }

    public static Path file(Path folder, String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    /** Imports a file that must be good. */
    public static void enter(Path book, Path file) {
        Run entered = Run.of("--book", book, "import", file);
        assertThat(entered.code()).as(entered.err()).isZero();
    }
}

package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The book is Alder & Wren, GB101747696. */
class InvoiceSideTest {

    @ParameterizedTest
    @CsvSource(
            textBlock =
                    """
                    Whatever Name,   GB101747696,     BUYER
                    Whatever Name,   GB 101 7476 96,  BUYER
                    Whatever Name,   101747696,       BUYER
                    Whatever Name,   XI101747696,     BUYER
                    Whatever Name,   GB101747696001,  BUYER
                    Alder & Wren,    '',              BUYER
                    ALDER AND WREN., '',              BUYER
                    Alder & Wren,    GB000480437,     NEITHER
                    Whatever Name,   IE101747696,     NEITHER
                    Whatever Name,   GB1017476,       NEITHER
                    Alder & Wren 2,  '',              NEITHER
                    Whatever Name,   '',              NEITHER
                    """)
    void byNumberThenByName(String name, String vat, InvoiceSide side) throws IOException {
        MadeInvoice made =
                new MadeInvoice("INV-1")
                        .to(new MadeInvoice.Party(name, "GB", vat))
                        .line("Bowls", "100.00", "S", "20");
        assertThat(InvoiceSide.of(Invoices.read(made.ubl()), Desk.settings())).isEqualTo(side);
    }

    @ParameterizedTest
    @CsvSource(
            textBlock =
                    """
                    Alder & Wren, GB101747696, SELLER
                    Alder & Wren, '',          SELLER
                    Harbour Tea,  GB000480437, NEITHER
                    """)
    void asSeller(String name, String vat, InvoiceSide side) throws IOException {
        MadeInvoice made =
                new MadeInvoice("INV-1")
                        .from(new MadeInvoice.Party(name, "GB", vat))
                        .to(new MadeInvoice.Party("A. Customer", "GB", ""))
                        .line("Bowls", "100.00", "S", "20");
        assertThat(InvoiceSide.of(Invoices.read(made.cii()), Desk.settings())).isEqualTo(side);
    }
}

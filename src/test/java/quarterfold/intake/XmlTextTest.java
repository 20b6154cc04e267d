package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UnsupportedEncodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.MalformedInputException;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** XML 1.0, 4.3.3 and appendix F: how the encoding of an entity is found (from memory). */
class XmlTextTest {

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "'', UTF-8, <a>£</a>",
        "EFBBBF, UTF-8, <a>£</a>",
        "FEFF, UTF-16BE, <a>£</a>",
        "FFFE, UTF-16LE, <a>£</a>",
        "'', UTF-16BE, <a>£</a>",
        "'', UTF-16LE, <a>£</a>",
        "'', ISO-8859-1, <?xml version='1.0' encoding='ISO-8859-1'?><a>£</a>",
        "EFBBBF, UTF-8, <?xml version='1.0' encoding='ISO-8859-1'?><a>£</a>",
    })
    void isDecodedByItsMarkElseByWhatItDeclaresElseAsUtf8(String mark, Charset charset, String text)
            throws IOException {
        byte[] bytes = text.replace('\'', '"').getBytes(charset);
        byte[] first = HexFormat.of().parseHex(mark);
        byte[] all = new byte[first.length + bytes.length];
        System.arraycopy(first, 0, all, 0, first.length);
        System.arraycopy(bytes, 0, all, first.length, bytes.length);

        assertThat(read(all)).isEqualTo(text.replace('\'', '"'));
    }

    @Test
    void whatIsNotOfTheEncodingIsRefused() {
        assertThatThrownBy(() -> read(new byte[] {'<', 'a', '>', (byte) 0xE9, '<'}))
                .isInstanceOf(MalformedInputException.class);
        byte[] unknown =
                "<?xml version=\"1.0\" encoding=\"no-such\"?><a/>"
                        .getBytes(Charset.forName("UTF-8"));
        assertThatThrownBy(() -> read(unknown))
                .isInstanceOf(UnsupportedEncodingException.class)
                .hasMessage("no-such");
    }

    private static String read(byte[] bytes) throws IOException {
        StringBuilder text = new StringBuilder();
        try (var in = XmlText.of(new ByteArrayInputStream(bytes), CodingErrorAction.REPORT)) {
            for (int c = in.read(); c >= 0; c = in.read()) {
                text.append((char) c);
            }
        }
        return text.toString();
    }
}

package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * The files attached to a PDF as a whole: those its catalog names as associated files ({@code /AF})
 * and those of the tree of embedded files ({@code /Names}), each once, whatever their names and
 * whatever relationship to the PDF is claimed (ISO 32000-2 7.11.4, 14.13; ISO 19005-3).
 */
final class PdfAttachments {
    private static final COSName AF = COSName.getPDFName("AF");
    private static final COSName FLATE = COSName.FLATE_DECODE;
    private static final int LARGEST = 50_000_000;
    private static final int MOST_NODES = 10_000;
    private static final int LONGEST_NAME = 60;

    private final Set<COSBase> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Map<COSStream, String> found = new LinkedHashMap<>();

    private PdfAttachments() {}

    /** One attached file. */
    record Attachment(String name, COSStream stream) {

        /**
         * Its bytes, unpacked here so that no more is unpacked than may be read.
         *
         * @throws IOException if it is not sound, is packed in an unusual way, or is too large
         */
        byte[] bytes() throws IOException {
            try (InputStream in = unpacked()) {
                byte[] bytes = in.readNBytes(LARGEST + 1);
                if (bytes.length > LARGEST) {
                    throw new IOException("more than %,d bytes".formatted(LARGEST));
                }
                return bytes;
            }
        }

        private InputStream unpacked() throws IOException {
            InputStream in = stream.createRawInputStream();
            COSBase filters = stream.getFilters();
            List<COSBase> all = new ArrayList<>();
            if (filters instanceof COSArray array) {
                array.forEach(all::add);
            } else if (filters != null) {
                all.add(filters);
            }
            for (COSBase filter : all) {
                if (!FLATE.equals(filter)) {
                    throw new IOException("packed with another filter than FlateDecode");
                }
                in = new InflaterInputStream(in);
            }
            return in;
        }
    }

    static List<Attachment> of(PdfFile pdf) {
        PdfAttachments attachments = new PdfAttachments();
        COSDictionary catalog = pdf.document().getDocumentCatalog().getCOSObject();
        attachments.files(catalog.getDictionaryObject(AF));
        if (catalog.getDictionaryObject(COSName.NAMES) instanceof COSDictionary names) {
            attachments.tree(names.getDictionaryObject(COSName.EMBEDDED_FILES));
        }
        return attachments.found.entrySet().stream()
                .map(f -> new Attachment(f.getValue(), f.getKey()))
                .toList();
    }

    private void files(COSBase associated) {
        if (associated instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                file(array.getObject(i));
            }
        } else {
            file(associated);
        }
    }

    /** A node of a name tree: pairs of name and file, or further nodes. No node counts twice. */
    private void tree(COSBase node) {
        if (!(node instanceof COSDictionary branch)
                || seen.size() > MOST_NODES
                || !seen.add(node)) {
            return;
        }
        if (branch.getDictionaryObject(COSName.NAMES) instanceof COSArray pairs) {
            for (int i = 1; i < pairs.size(); i += 2) {
                file(pairs.getObject(i));
            }
        }
        if (branch.getDictionaryObject(COSName.KIDS) instanceof COSArray kids) {
            for (int i = 0; i < kids.size(); i++) {
                tree(kids.getObject(i));
            }
        }
    }

    private void file(COSBase specification) {
        if (!(specification instanceof COSDictionary file)
                || !(file.getDictionaryObject(COSName.EF) instanceof COSDictionary embedded)) {
            return;
        }
        for (COSName key : List.of(COSName.UF, COSName.F)) {
            if (embedded.getDictionaryObject(key) instanceof COSStream stream) {
                found.putIfAbsent(stream, name(file));
                return;
            }
        }
    }

    /** As a message may print it. */
    private static String name(COSDictionary file) {
        String unicode = file.getString(COSName.UF, "");
        String name = unicode.isEmpty() ? file.getString(COSName.F, "") : unicode;
        String plain = name.replaceAll("\\p{C}", "").strip();
        return plain.length() <= LONGEST_NAME ? plain : plain.substring(0, LONGEST_NAME);
    }
}

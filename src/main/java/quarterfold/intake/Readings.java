package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Finds what a file is, a document or a table, and opens it for reading. */
final class Readings {

    /** The first that fits is the one. */
    private static final List<DocumentForm> DOCUMENTS =
            Stream.concat(RateForm.ALL.stream(), Stream.of(new BankStatements(), new EInvoice()))
                    .toList();

    private Readings() {}

    /**
     * Opens a file; what is wrong with a table's header becomes problems of the file.
     *
     * @param as the name of the form to read it in; found from its content where empty
     */
    static Reading open(Brought file, Optional<String> as) throws BadFile, IOException {
        Optional<DocumentForm> document =
                as.isPresent()
                        ? DOCUMENTS.stream().filter(d -> d.name().equals(as.get())).findFirst()
                        : fitting(file);
        if (document.isPresent()) {
            return document.get().open(file);
        }
        List<Form> forms = as.flatMap(name -> file.layouts().named(name)).orElse(List.of());
        Optional<Layout> printed =
                forms.stream().flatMap(form -> PdfReading.ofLines(form).stream()).findFirst();
        boolean isPdf = Head.of(file.path()).isPdf();
        if (isPdf ? printed.isEmpty() && !forms.isEmpty() : printed.isPresent()) {
            throw new BadFile(
                    file.name(),
                    "found %s, which layout %s does not read; expected %s"
                            .formatted(
                                    isPdf ? "a PDF" : "no PDF",
                                    as.orElse(""),
                                    isPdf
                                            ? "a table, such as the same report downloaded as .csv"
                                            : "a PDF, such as the one that was downloaded"));
        }
        return isPdf ? PdfReading.open(file, printed) : TableReading.open(file, forms);
    }

    /** Whether there is a form of the name. */
    static boolean has(Layouts layouts, String name) {
        return DOCUMENTS.stream().anyMatch(d -> d.name().equals(name))
                || layouts.named(name).isPresent();
    }

    /** The names of all forms. */
    static List<String> names(Layouts layouts) {
        return Stream.concat(layouts.names().stream(), DOCUMENTS.stream().map(DocumentForm::name))
                .sorted()
                .toList();
    }

    private static Optional<DocumentForm> fitting(Brought file) throws BadFile, IOException {
        Head head = Head.of(file.path());
        if (head.hasDocumentType()) {
            throw new BadFile(
                    file.name(),
                    "found a document type (<!DOCTYPE), as web pages have; expected XML without one, or a table, such as the same report downloaded as .csv");
        }
        if (head.isBrokenXml()) {
            throw new BadFile(
                    file.name(),
                    "found XML that breaks off or breaks the rules of XML before its first element; expected the whole file as it was issued; get it again");
        }
        List<DocumentForm> fitting = new ArrayList<>();
        for (DocumentForm form : DOCUMENTS) {
            if (fitting.isEmpty() && form.fits(head, file)) {
                fitting.add(form);
            }
        }
        if (fitting.isEmpty() && head.isXml()) {
            throw new BadFile(
                    file.name(),
                    "found XML with the root element %s; expected a form of XML that is known, or a table, such as the same report as .csv"
                            .formatted(Problem.quoted(head.root())));
        }
        return fitting.stream().findFirst();
    }
}

package quarterfold.intake;

import com.helger.diver.api.coord.DVRCoordinate;
import com.helger.phive.api.execute.ValidationExecutionManager;
import com.helger.phive.api.executorset.ValidationExecutorSetRegistry;
import com.helger.phive.api.validity.IValidityDeterminator;
import com.helger.phive.en16931.EN16931Validation;
import com.helger.phive.xml.source.IValidationSourceXML;
import com.helger.phive.xml.source.ValidationSourceXML;
import java.io.StringReader;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** The published schemas and rule artefacts of EN 16931, release 1.3.16. */
final class PublishedRules {
    private static final ValidationExecutorSetRegistry<IValidationSourceXML> RULES =
            new ValidationExecutorSetRegistry<>();

    static {
        EN16931Validation.initEN16931(RULES);
    }

    private PublishedRules() {}

    /** What a document breaks: rules by their names, faults against the schema by their words. */
    static Set<String> broken(String xml) {
        DVRCoordinate kind =
                xml.contains("CrossIndustryInvoice")
                        ? EN16931Validation.VID_CII_1316
                        : xml.contains("<CreditNote")
                                ? EN16931Validation.VID_UBL_CREDIT_NOTE_1316
                                : EN16931Validation.VID_UBL_INVOICE_1316;
        Set<String> broken = new TreeSet<>();
        ValidationExecutionManager.executeValidation(
                        IValidityDeterminator.createDefault(),
                        Objects.requireNonNull(RULES.getOfID(kind)),
                        ValidationSourceXML.create("invoice.xml", parsed(xml)))
                .getAllErrors()
                .forEach(
                        e ->
                                broken.add(
                                        e.getErrorID() != null && !e.getErrorID().isEmpty()
                                                ? e.getErrorID()
                                                : e.toString()));
        return broken;
    }

    private static Document parsed(String xml) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
        } catch (Exception e) {
            throw new IllegalArgumentException(xml, e);
        }
    }
}

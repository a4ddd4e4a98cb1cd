package trivet.report.web;

import jakarta.annotation.PostConstruct;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.StringReader;
import java.net.URI;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.sax.SAXResult;
import javax.xml.transform.stream.StreamSource;
import org.apache.fop.apps.FOUserAgent;
import org.apache.fop.apps.Fop;
import org.apache.fop.apps.FopFactory;
import org.apache.fop.apps.FopFactoryBuilder;
import org.apache.fop.apps.MimeConstants;

/** Prints XSL-FO as tagged PDF; nothing is fetched from anywhere while it does. */
@ApplicationScoped
public class Press {

    private FopFactory factory;

    @PostConstruct
    void setUp() {
        System.setProperty("java.awt.headless", "true");
        jdkParsers();
        FopFactoryBuilder builder = new FopFactoryBuilder(new File(".").toURI(), (org.apache.xmlgraphics.io.ResourceResolver) new NoResources());
        builder.setAccessibility(true);
        builder.setStrictFOValidation(false);
        factory = builder.build();
    }

    /** Some jars announce parsers that are not packaged; the JDK's own are named before any of those is looked for. */
    private static void jdkParsers() {
        System.setProperty("javax.xml.parsers.SAXParserFactory", javax.xml.parsers.SAXParserFactory.newDefaultInstance().getClass().getName());
        System.setProperty("javax.xml.parsers.DocumentBuilderFactory", javax.xml.parsers.DocumentBuilderFactory.newDefaultInstance().getClass().getName());
        System.setProperty("javax.xml.transform.TransformerFactory", TransformerFactory.newDefaultInstance().getClass().getName());
    }

    /** Refuses every resource: a report consists of itself. */
    private static final class NoResources implements org.apache.xmlgraphics.io.ResourceResolver {
        @Override
        public org.apache.xmlgraphics.io.Resource getResource(URI uri) throws java.io.IOException {
            throw new java.io.IOException("A report fetches nothing.");
        }

        @Override
        public java.io.OutputStream getOutputStream(URI uri) throws java.io.IOException {
            throw new java.io.IOException("A report writes nothing.");
        }
    }

    byte[] pdf(String formattingObjects) {
        try {
            FOUserAgent agent = factory.newFOUserAgent();
            agent.setTitle("Food safety records");
            agent.setProducer("Trivet");
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            Fop fop = factory.newFop(MimeConstants.MIME_PDF, agent, bytes);
            TransformerFactory.newDefaultInstance().newTransformer().transform(new StreamSource(new StringReader(formattingObjects)), new SAXResult(fop.getDefaultHandler()));
            return bytes.toByteArray();
        } catch (Exception failed) {
            throw new IllegalStateException("The report could not be printed.", failed);
        }
    }
}

package trivet.report.web;

import jakarta.annotation.PostConstruct;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.StringReader;
import java.net.URI;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.sax.SAXResult;
import javax.xml.transform.stream.StreamSource;
import org.apache.fop.apps.FOUserAgent;
import org.apache.fop.apps.Fop;
import org.apache.fop.apps.FopConfParser;
import org.apache.fop.apps.FopFactory;
import org.apache.fop.apps.FopFactoryBuilder;
import org.apache.fop.apps.MimeConstants;
import org.apache.xmlgraphics.io.Resource;
import org.apache.xmlgraphics.io.ResourceResolver;

/** Prints XSL-FO as tagged PDF; nothing is fetched from anywhere while it does. */
@ApplicationScoped
public class Press {

    private FopFactory factory;

    @PostConstruct
    void setUp() {
        System.setProperty("java.awt.headless", "true");
        jdkParsers();
        try (InputStream settings = Press.class.getResourceAsStream("/reports/fop.xml")) {
            FopFactoryBuilder builder = new FopConfParser(settings, URI.create("file:/"), new OnlyFonts()).getFopFactoryBuilder();
            builder.setStrictFOValidation(false);
            factory = builder.build();
        } catch (Exception broken) {
            throw new IllegalStateException("The settings of the reports are broken.", broken);
        }
    }

    /** Some jars announce parsers that are not packaged; the JDK's own are named before any of those is looked for. */
    private static void jdkParsers() {
        System.setProperty("javax.xml.parsers.SAXParserFactory", javax.xml.parsers.SAXParserFactory.newDefaultInstance().getClass().getName());
        System.setProperty("javax.xml.parsers.DocumentBuilderFactory", javax.xml.parsers.DocumentBuilderFactory.newDefaultInstance().getClass().getName());
        System.setProperty("javax.xml.transform.TransformerFactory", TransformerFactory.newDefaultInstance().getClass().getName());
    }

    /** Gives the fonts that are packaged and refuses everything else: a report consists of itself. */
    private static final class OnlyFonts implements ResourceResolver {
        @Override
        public Resource getResource(URI uri) throws IOException {
            String path = uri.getPath() == null ? "" : uri.getPath().replaceFirst("^/+", "");
            InputStream font = "file".equals(uri.getScheme()) && path.matches("(liberation|net/sf/jasperreports/fonts/dejavu)/[A-Za-z-]+\\.ttf") ? Thread.currentThread().getContextClassLoader().getResourceAsStream(path) : null;
            if (font == null) {
                throw new IOException("A report fetches nothing but its fonts.");
            }
            return new Resource(font);
        }

        @Override
        public OutputStream getOutputStream(URI uri) throws IOException {
            throw new IOException("A report writes nothing.");
        }
    }

    byte[] pdf(String formattingObjects) {
        try {
            FOUserAgent agent = factory.newFOUserAgent();
            agent.setTitle("Food safety records");
            agent.setProducer("Trivet");
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            Fop fop = factory.newFop(MimeConstants.MIME_PDF, agent, bytes);
            TransformerFactory.newDefaultInstance().newTransformer().transform(new StreamSource(new StringReader(ArabicLetters.joined(formattingObjects))), new SAXResult(fop.getDefaultHandler()));
            return bytes.toByteArray();
        } catch (Exception failed) {
            throw new IllegalStateException("The report could not be printed.", failed);
        }
    }
}

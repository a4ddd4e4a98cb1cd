package trivet.plan;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.plan.Translations.Translated;
import trivet.words.Words;

/** The texts of a plan in other languages, and what becomes of a translation when the text is changed. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class TranslationsTest {

    @Inject
    Translations translations;
    @Inject
    Plans plans;
    @Inject
    Clock clock;
    @ConfigProperty(name = "trivet.data")
    String data;

    private Plan plan() {
        return plans.approved().stream().map(ApprovedPlan::plan).filter(one -> one.product().equals("deep-quiche")).findFirst().orElseThrow();
    }

    private Translated label() {
        return translations.of(plan(), "es").stream().filter(one -> one.at().equals("own.label.what")).findFirst().orElseThrow();
    }

    @Test
    void a_text_is_told_in_the_language_of_the_reader_and_the_signed_one_stands_first_once_it_was_changed() throws IOException {
        String title = plan().title();
        String what = label().text();
        translations.write(plan(), "es", Map.of("title", "Quiche alta", "own.label.what", "La etiqueta", "nowhere", "x"), Set.of(), "olive");
        assertEquals("Quiche alta", Words.in("es", () -> translations.in(title)));
        assertEquals("A-0001 · Quiche alta", Words.in("es", () -> translations.in("A-0001 · " + title)), "behind the mark of a batch too");
        assertEquals(title, Words.in("pl", () -> translations.in(title)), "nothing for another language");
        assertEquals(title, translations.in(title));
        given().cookie("trivet-tablet", FreshDemo.tablet()).get("/tablet/kit.json").then().statusCode(200).body("texts.es['" + title + "']", org.hamcrest.Matchers.is("Quiche alta"));
        Path file = Path.of(data, "plans", "products", "deep-quiche", "plan.yaml");
        String before = Files.readString(file);
        assertTrue(before.contains(what), what);
        Files.writeString(file, before.replace(what, what + ", and the date").replace("\nversion: 1\n", "\nversion: 2\n"));
        plans.approve("deep-quiche", "olive", clock.instant(), "the date is looked at too");
        assertTrue(label().outOfDate() && label().says().equals("La etiqueta"));
        assertTrue(Words.in("es", () -> translations.in(what + ", and the date")).startsWith(what + ", and the date ("), "the signed text first");
        translations.write(plan(), "es", Map.of("own.label.what", "La etiqueta", "title", "Quiche muy alta"), Set.of(), "olive");
        assertTrue(label().outOfDate(), "kept beside another one, it stays out of date");
        translations.write(plan(), "es", Map.of("own.label.what", "La etiqueta"), Set.of("own.label.what"), "olive");
        assertFalse(label().outOfDate(), "somebody said that it is still right");
        translations.write(plan(), "es", Map.of("own.label.what", "La etiqueta y la fecha"), Set.of(), "olive");
        assertEquals("La etiqueta y la fecha", Words.in("es", () -> translations.in(what + ", and the date")));
        translations.write(plan(), "es", Map.of("own.label.what", " "), Set.of(), "olive");
        assertEquals(what + ", and the date", Words.in("es", () -> translations.in(what + ", and the date")), "an empty one is taken away");
    }

    @Test
    void a_language_that_is_not_there_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> translations.write(plan(), "tlh", Map.of("title", "x"), Set.of(), "olive"));
    }
}

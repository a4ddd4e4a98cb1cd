package trivet.plan.web;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.measure.Digest;
import trivet.plan.Drafts;
import trivet.plan.Plans;
import trivet.study.Examples;
import trivet.study.Proposals;
import trivet.study.Study;
import trivet.study.Study.Hazard;

/** A plan from an empty page to a signature, by the forms that a person fills; two people at once; a file from elsewhere. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class PlanPagesTest {

    private static String session;

    @Inject
    Drafts drafts;
    @Inject
    Plans plans;
    @ConfigProperty(name = "trivet.data")
    String data;

    private static RequestSpecification owner() {
        if (session == null) {
            session = given().redirects().follow(false).header("Sec-Fetch-Site", "same-origin").formParams(Map.of("person", "olive", "password", "thornfold-demo")).post("/session/owner").then().statusCode(303).extract().cookie("trivet-session");
        }
        return given().redirects().follow(false).cookie("trivet-tablet", FreshDemo.tablet()).cookie("trivet-session", session).header("Sec-Fetch-Site", "same-origin");
    }

    private static ValidatableResponse send(String path, Object... form) {
        RequestSpecification request = owner();
        for (int i = 0; i < form.length; i += 2) {
            request.formParam((String) form[i], form[i + 1]);
        }
        return request.post("/owner/plans" + path).then();
    }

    /** Fills fields of a form: each is announced, as the page does. */
    private ValidatableResponse fill(String product, String part, String item, Object... fields) {
        RequestSpecification request = owner().formParam("base", drafts.text(product).orElseThrow().sha256()).formParam("act", "save").formParam("item", item);
        for (int i = 0; i < fields.length; i += 2) {
            request.formParam("has." + fields[i], "1");
            if (fields[i + 1] instanceof List<?> list) {
                request.formParam((String) fields[i], list.toArray());
            } else {
                request.formParam((String) fields[i], fields[i + 1]);
            }
        }
        return request.post("/owner/plans/" + product + part).then();
    }

    private ValidatableResponse add(String product, String part, String key, String value) {
        return owner().formParam("act", "add").formParam("has." + key, "1").formParam(key, value).post("/owner/plans/" + product + "/part/" + part).then().statusCode(303);
    }

    private Study study(String product) {
        return drafts.text(product).orElseThrow().study().orElseThrow();
    }

    @Test
    void a_new_gluten_free_quiche_from_an_empty_page_to_a_signed_pdf() throws Exception {
        String p = "leek-and-cheese-quiche-gluten-free";
        send("", "title", "Leek and cheese quiche, gluten-free", "line", "gluten-free", "from", "").statusCode(303).header("Location", endsWith(p));
        owner().get("/owner/plans/" + p).then().statusCode(200).body(containsString("open points. The first"));
        send("/" + p + "/approval", "meaning", "yes", "sure", "yes", "base", drafts.text(p).orElseThrow().sha256()).statusCode(422).body(containsString("open points and cannot be approved"));
        fill(p, "/part/scope", "", "from", "Goods in", "to", "Sale", "covers", "All of it").statusCode(303);
        fill(p, "/part/method", "", "region", "uk", "route", "full", "matrix", "eu-notice-2022", "decide", "tree", "tree", "codex-2022").statusCode(303);
        add(p, "team", "name", "Olive Thorn");
        fill(p, "/part/team", "olive-thorn", "name", "Olive Thorn", "competence", "HACCP level 3").statusCode(303);
        ingredients(p);
        evidence(p);
        fill(p, "/part/description", "", "words", "Leek and cheese in a rice case", "packaging", "Wrapped", "storage", "Chilled", "eaten", "Cold", "use-by", "3", "eaters", List.of("general"), "claims", List.of("gluten-free"),
                "life-evidence", "life-study", "claim-evidence", "gluten-test").statusCode(303);
        assertEquals("3 days", study(p).description().useBy(), "a bare number gets its unit");
        fill(p, "/part/day", "", "usual-bake", "45 min", "bake-again-within", "20 min", "cool-check-every", "45").statusCode(303);
        flow(p);
        programmes(p);
        controls(p);
        hazards(p);
        send("/" + p + "/flow/walk", "by", "Ana Varga", "on", "2020-01-02", "differed", "nothing", "flow", trivet.study.FlowText.sha256(study(p))).statusCode(303);
        assertEquals(List.of(), Examples.open(study(p)));
        owner().get("/owner/plans/" + p).then().body(containsString("Nothing is open."));
        send("/" + p + "/approval", "meaning", "I approve it.", "sure", "yes", "from", "2020-01-01T00:00", "base", drafts.text(p).orElseThrow().sha256()).statusCode(422).body(containsString("has passed"));
        send("/" + p + "/approval", "meaning", "I approve it.", "sure", "yes", "base", drafts.text(p).orElseThrow().sha256()).statusCode(303);
        owner().get("/owner/plans/" + p + "/approval").then().body(containsString("This text is approved: version 1."));
        byte[] pdf = owner().get("/owner/plans/" + p + ".pdf").then().statusCode(200).extract().asByteArray();
        try (var document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document);
            for (String word : List.of("Leek and cheese quiche", "Version 1, approved", "CCP 1", "Salmonella", "Olive Thorn", drafts.text(p).orElseThrow().sha256(), "Cereals containing gluten")) {
                assertTrue(text.contains(word) == !word.startsWith("Cereals"), word);
            }
            assertTrue(document.getDocumentCatalog().getMarkInfo().isMarked(), "tagged");
        }
        assertTrue(plans.approved().stream().anyMatch(plan -> plan.ref().id().equals(p) && plan.plan().range(Examples.RULEBOOK.range("chilled-storage").orElseThrow()).equals(Examples.RULEBOOK.range("chilled-storage").orElseThrow())));
        owner().get("/batches/new").then().body(containsString("Leek and cheese quiche"));
    }

    private void ingredients(String p) {
        String[][] items = {{"Rice flour", "rice-flour", "2200", "case"}, {"Butter", "butter", "1200", "case"}, {"Egg", "shell-egg", "3600", "filling"}, {"Cream", "cream", "4000", "filling"}, {"Cheese", "hard-cheese", "2000", "filling"}, {"Leek", "leek", "1800", "filling"}};
        for (String[] item : items) {
            add(p, "items", "title", item[0]);
            fill(p, "/part/items", item[0].toLowerCase(java.util.Locale.ROOT).replace(' ', '-'), "title", item[0], "kind", item[1], "grams", item[2], "part", item[3], "specification", "Sheet of the supplier").statusCode(303);
        }
        fill(p, "/part/items", "leek", "grams", "much").statusCode(422).body(containsString("is no number"));
        owner().get("/owner/plans/deep-quiche/part/items?pieces=12").then().body(containsString("For 12 pieces")).body(containsString("1500.0"));
        owner().get("/owner/plans/deep-quiche/hazards/both-trees").then().statusCode(200).body(containsString("Critical control point")).body(containsString("not answered yet"));
        assertEquals("1800", study(p).recipe().item("leek").orElseThrow().grams(), "nothing is lost by a mistake");
        owner().get("/owner/plans/" + p + "/part/items").then().body(containsString("54.5 %")).body(containsString("Eggs, Milk"));
    }

    private void evidence(String p) {
        for (String title : List.of("Life study", "Gluten test", "Changeover trials")) {
            add(p, "evidence", "title", title);
            fill(p, "/part/evidence", title.toLowerCase(java.util.Locale.ROOT).replace(' ', '-'), "title", title, "sort", "study", "reference", "Report 1", "says", "It holds").statusCode(303);
        }
    }

    private void flow(String p) {
        String[][] steps = {{"begin", "", "receive", "Receive", "receive"}, {"after", "receive", "changeover", "Change over", "change-over"}, {"after", "change-over", "wash-veg", "Wash leek", "wash-leek"}, {"after", "wash-leek", "mix-filling", "Mix", "mix"},
            {"after", "mix", "bake", "Bake", "bake"}, {"after", "bake", "cool", "Cool", "cool"}, {"after", "cool", "label", "Label", "label"}, {"after", "label", "store-ready", "Store", "store"}, {"after", "store", "sell", "Sell", "sell"}};
        for (String[] step : steps) {
            send("/" + p + "/flow", "act", step[0], "step", step[1], "kind", step[2], "title", step[3]).statusCode(303).header("Location", endsWith("?step=" + step[4] + "#chosen"));
        }
        owner().get("/owner/plans/" + p + "/flow").then().body(containsString("No step takes")).body(containsString("<svg"));
        RequestSpecification save = owner().formParam("base", drafts.text(p).orElseThrow().sha256()).formParam("act", "save").formParam("step", "receive").formParam("has.inputs", "1");
        save.formParam("inputs", "rice-flour", "butter", "egg", "cream", "cheese", "leek").post("/owner/plans/" + p + "/flow").then().statusCode(303);
        send("/" + p + "/flow", "act", "part", "step", "bake", "from", "mix", "to", "bake").statusCode(303);
        owner().get("/owner/plans/" + p + "/flow?step=bake").then().body(containsString("Nothing leads to"));
        send("/" + p + "/flow", "act", "join", "step", "mix", "other", "bake").statusCode(303);
    }

    private void programmes(String p) {
        for (String topic : List.of("cleaning", "pests", "water", "maintenance", "training", "suppliers", "waste", "allergens", "gluten", "hygiene", "recall", "temperature")) {
            send("/" + p + "/part/programmes/topic", "topic", topic).statusCode(303);
            fill(p, "/part/programmes", topic, "deputy", "Ben Adeyemi").statusCode(303);
        }
    }

    private void controls(String p) {
        String[][] rows = {{"Core", "bake", "ccp", "core-cook"}, {"Cooling", "cool", "ccp", "cooling"}, {"Storage", "store", "ccp", "chilled-storage"}, {"Changeover", "change-over", "oprp", ""}};
        for (String[] row : rows) {
            add(p, "controls", "title", row[0]);
            fill(p, "/part/controls", row[0].toLowerCase(java.util.Locale.ROOT), "title", row[0], "step", row[1], "sort", row[2], "limit", row[3], "own-limit", row[3].isEmpty() ? "Clean to the eye" : "", "evidence", row[3].isEmpty() ? List.of("changeover-trials") : List.of(),
                    "what", "Core", "how", "Probe", "every", "batch", "who", "Baker", "deputy", "Second baker", "on-breach", row[3].isEmpty() ? List.of() : List.of("hold", "destroy"), "corrective", "Hold", "verification", "Owner looks", "verification-often", "weekly", "record", "Trivet").statusCode(303);
        }
    }

    /** Accepts all proposals of each step, weighs them, and answers the tree, as the example of the shipped plan does. */
    private void hazards(String p) {
        for (var step : study(p).steps()) {
            send("/" + p + "/hazards", "act", "accept-all", "step", step.id()).statusCode(303);
        }
        assertTrue(new Proposals(study(p), Examples.KNOWLEDGE).waiting().isEmpty());
        send("/" + p + "/hazards", "act", "add", "step", "sell", "title", "Wasps on the counter", "sort", "physical").statusCode(303);
        fill(p, "/hazards/sell-wasps-on-the-counter", "", "decision", "rejected", "reason", "").statusCode(303);
        assertTrue(Examples.open(study(p)).toString().contains("Wasps on the counter at \"Sell\": rejected without a reason"));
        fill(p, "/hazards/sell-wasps-on-the-counter", "", "decision", "rejected", "reason", "The counter is closed").statusCode(303);
        for (Hazard hazard : study(p).hazards()) {
            if (hazard.accepted()) {
                decide(p, hazard);
            }
        }
    }

    private void decide(String p, Hazard hazard) {
        String at = "/hazards/" + hazard.id();
        Map<String, String> controls = Map.of("bake", "core", "cool", "cooling", "store", "storage");
        boolean ccp = hazard.sort().equals("biological") && controls.containsKey(hazard.step()) && !hazard.id().equals("cool-listeria");
        boolean later = !ccp && hazard.sort().equals("biological") && !List.of("staph-toxin", "botulinum", "norovirus").contains(hazard.kind()) && study(p).steps().indexOf(study(p).steps().stream().filter(s -> s.id().equals(hazard.step())).findFirst().orElseThrow()) < 4;
        fill(p, at, "", "likelihood", ccp ? "3" : "2", "justification", "Known of this food").statusCode(303);
        if (ccp || later) {
            answer(p, at, "codex-2022-q1", "no");
            answer(p, at, "codex-2022-q2", "yes");
            answer(p, at, "codex-2022-q3", later ? "yes" : "no");
            if (ccp) {
                answer(p, at, "codex-2022-q4", "yes");
                fill(p, at, "", "controls", List.of(controls.get(hazard.step())));
            } else {
                fill(p, at, "", "later-step", List.of("cereus", "perfringens").contains(hazard.kind()) ? "cool" : "bake");
            }
        } else if (Integer.parseInt(hazard.severity()) > 1) {
            answer(p, at, "codex-2022-q1", "yes");
            fill(p, at, "", "programmes", List.of("hygiene"), "controls", hazard.id().equals("change-over-gluten-contact") ? List.of("changeover") : List.of());
        }
    }

    private void answer(String p, String at, String question, String answer) {
        owner().formParam("base", drafts.text(p).orElseThrow().sha256()).formParam("act", "answer").formParam("question", question).formParam("answer", answer).formParam("reason", "As tried").post("/owner/plans/" + p + at).then().statusCode(303);
    }

    @Test
    void a_second_person_is_told_and_nothing_is_lost() {
        send("", "title", "Two at once", "line", "wheat", "from", "cheese-slice").statusCode(303);
        String base = drafts.text("two-at-once").orElseThrow().sha256();
        fill("two-at-once", "/part/scope", "", "covers", "the first").statusCode(303);
        owner().formParam("base", base).formParam("has.covers", "1").formParam("covers", "the second").post("/owner/plans/two-at-once/part/scope").then().statusCode(409).body(containsString("Olive Thorn has changed the same thing"))
                .body(containsString("the second")).body(containsString("the first"));
        assertEquals("the first", study("two-at-once").scope().covers());
        owner().formParam("base", base).formParam("item", "cheese").formParam("has.supplier", "1").formParam("supplier", "Another dairy").post("/owner/plans/two-at-once/part/items").then().statusCode(303);
        assertEquals("Another dairy", study("two-at-once").recipe().item("cheese").orElseThrow().supplier(), "another part merges");
        assertEquals("the first", study("two-at-once").scope().covers());
        assertTrue(drafts.earlier("two-at-once", base).isPresent(), "what was written over is kept");
    }

    @Test
    void a_copy_lists_what_must_be_decided_anew() {
        send("", "title", "Copied slice", "line", "gluten-free", "from", "cheese-slice").statusCode(303);
        owner().get("/owner/plans/copied-slice").then().body(containsString("Copied from cheese-slice: decide anew"));
        Study copy = study("copied-slice");
        assertTrue(copy.walk().by().isEmpty() && copy.evidence("life").isEmpty() && copy.decideAnew().size() > 8);
        assertTrue(copy.programmes().stream().noneMatch(programme -> programme.who().isEmpty()), "an own plan keeps its own people");
        send("/copied-slice/gone-through", "part", "recipe").statusCode(303);
        assertTrue(!study("copied-slice").decideAnew().contains("recipe"));
    }

    @Test
    void a_file_with_problems_changes_nothing_and_says_each_with_its_line() {
        String text = Examples.text("meat-roll").replace("product: meat-roll", "product: from-a-file");
        send("", "file", text.replaceFirst("likelihood: 2", "likelihood: often").replaceFirst("after: \\[roll\\]", "after: [rol]")).statusCode(422).body(containsString("has 2 problems")).body(containsString("line ")).body(containsString("&quot;rol&quot;"));
        assertTrue(drafts.text("from-a-file").isEmpty());
        send("", "file", text).statusCode(303);
        assertEquals(text, drafts.text("from-a-file").orElseThrow().text());
        send("", "file", text).statusCode(422).body(containsString("already"));
    }

    @Test
    void an_approved_version_is_not_altered_by_editing_its_file() throws Exception {
        Path file = Path.of(data, "plans", "products", "meat-roll", "plan.yaml");
        String before = Files.readString(file);
        try {
            Files.writeString(file, before.replace("\"35 min\"", "\"25 min\""));
            owner().get("/owner/plans/meat-roll/approval").then().body(containsString("its hash no longer matches")).body(containsString(Digest.sha256(before)));
            assertEquals(35, plans.approved().stream().filter(plan -> plan.ref().id().equals("meat-roll")).findFirst().orElseThrow().plan().usualBakeMinutes());
            Matcher hash = Pattern.compile("SHA-256 ([0-9a-f]{64})").matcher(owner().get("/owner/plans/meat-roll/approval").asString());
            assertTrue(hash.find() && hash.group(1).equals(Digest.sha256(owner().get("/owner/plans/meat-roll/approval/1.yaml").asString())));
        } finally {
            Files.writeString(file, before);
        }
    }

    @Test
    void a_changed_answer_on_the_page_opens_what_depended_on_it() {
        send("", "title", "Reopened", "line", "wheat", "from", "deep-quiche").statusCode(303);
        answer("reopened", "/hazards/bake-salmonella", "codex-2022-q2", "no");
        assertEquals(List.of("codex-2022-q1", "codex-2022-q2"), study("reopened").hazard("bake-salmonella").orElseThrow().answers().stream().map(Study.Answer::question).toList());
        answer("reopened", "/hazards/bake-salmonella", "codex-2022-q2", "yes");
        owner().get("/owner/plans/reopened/hazards/bake-salmonella").then().body(containsString("Q3")).body(not(containsString("Q4")));
    }
}

package trivet.site;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.is;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.time.Instant;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trivet.FreshDemo;
import trivet.ledger.Ids;

/** Who may open and do what: a stranger, a tablet alone, a baker signed in on it, and the owner with the password. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class RoutesTest {

    private static final Map<String, String> SESSIONS = new ConcurrentHashMap<>();
    private static long sequence = 900_000;

    private static RequestSpecification as(String who) {
        RequestSpecification request = given().redirects().follow(false);
        if (!who.equals("stranger")) {
            request.cookie("trivet-tablet", FreshDemo.tablet());
        }
        if (who.equals("baker")) {
            request.cookie("trivet-session", session("ana", "/session/pin/ana", Map.of("pin", "1111")));
        } else if (who.equals("owner")) {
            request.cookie("trivet-session", session("olive", "/session/owner", Map.of("person", "olive", "password", "thornfold-demo")));
        } else if (who.equals("outsider")) {
            request.cookie("trivet-session", session("pat", "/session/pin/pat", Map.of("pin", "4444")));
        }
        return request;
    }

    private static String session(String person, String path, Map<String, String> form) {
        return SESSIONS.computeIfAbsent(person, key -> given().redirects().follow(false).header("Sec-Fetch-Site", "same-origin").formParams(form).post(path)
                .then().statusCode(303).extract().cookie("trivet-session"));
    }

    @ParameterizedTest
    @CsvSource({
        "/,                         200, 200, 200, 200",
        "/q/health,                 200, 200, 200, 200",
        "/q/openapi,                200, 200, 200, 200",
        "/words.js,                 200, 200, 200, 200",
        "/sw.js,                    200, 200, 200, 200",
        "/manifest.webmanifest,     200, 200, 200, 200",
        "/tablet/shell,             200, 200, 200, 200",
        "/tablet/kit.json,          303, 200, 200, 200",
        "/waiting,                  303, 200, 200, 200",
        "/photos/none,              303, 404, 404, 404",
        "/css/trivet.css,           200, 200, 200, 200",
        "/api/rulebooks,            200, 200, 200, 200",
        "/api/rulebooks/ireland,    200, 200, 200, 200",
        "/api/rulebooks/nowhere,    404, 404, 404, 404",
        "/api/schemas/record-1.json, 200, 200, 200, 200",
        "/session/pin/ana,          200, 200, 200, 200",
        "/session/owner,            200, 200, 200, 200",
        "/work,                     303, 200, 200, 200",
        "/due.json,                 303, 200, 200, 200",
        "/cooling,                  303, 200, 200, 200",
        "/batches/new,              303, 200, 200, 200",
        "/units,                    303, 303, 200, 200",
        "/units/fridge-1,           303, 303, 200, 200",
        "/units/nowhere,            303, 303, 404, 404",
        "/deviations,               303, 303, 200, 200",
        "/deviations/nothing,       303, 303, 404, 404",
        "/month,                    303, 303, 200, 200",
        "/days/2026-10-09,          303, 303, 200, 200",
        "/days/soon,                303, 303, 404, 404",
        "/probes,                   303, 303, 200, 200",
        "/probes/P1,                303, 303, 200, 200",
        "/probes/nothing,           303, 303, 404, 404",
        "/sheets,                   303, 303, 200, 200",
        "/sheets/deep-quiche,       303, 303, 200, 200",
        "/sheets/deep-quiche/enter, 303, 303, 200, 200",
        "/records/nothing/correct,  303, 303, 404, 404",
        "/steps,                    303, 303, 200, 200",
        "/programmes/allergens,     303, 303, 200, 200",
        "/programmes/nothing,       303, 303, 404, 404",
        "/owner,                    303, 303, 303, 200",
        "/owner/rulebook,           303, 303, 303, 200",
        "/owner/plans,              303, 303, 303, 200",
        "/owner/plans/deep-quiche,  303, 303, 303, 200",
        "/owner/plans/deep-quiche/flow, 303, 303, 303, 200",
        "/owner/plans/deep-quiche/flow/walk, 303, 303, 303, 200",
        "/owner/plans/deep-quiche/hazards, 303, 303, 303, 200",
        "/owner/plans/deep-quiche/hazards/nothing, 303, 303, 303, 404",
        "/owner/plans/deep-quiche/part/items, 303, 303, 303, 200",
        "/owner/plans/deep-quiche/part/nothing, 303, 303, 303, 404",
        "/owner/plans/deep-quiche/approval, 303, 303, 303, 200",
        "/owner/plans/deep-quiche/words, 303, 303, 303, 200",
        "/owner/plans/deep-quiche/worksheet.csv, 303, 303, 303, 200",
        "/owner/plans/nothing,      303, 303, 303, 404",
        "/owner/plans/nothing.pdf,  303, 303, 303, 404",
        "/owner/review,             303, 303, 303, 200",
        "/owner/week,               303, 303, 303, 200",
        "/calculators,              200, 200, 200, 200",
        "/reports/month/2026-10,    401, 401, 200, 200",
        "/reports/month/2026-10.csv, 401, 401, 200, 200",
        "/reports/range?from=2026-10-01&to=2026-10-02, 401, 401, 200, 200",
        "/reports/range?from=2026-10-05&to=2026-10-01, 401, 401, 400, 400"})
    void a_page_opens_for_those_who_may_see_it(String path, int stranger, int tablet, int baker, int owner) {
        Map.of("stranger", stranger, "tablet", tablet, "baker", baker, "owner", owner)
                .forEach((who, status) -> as(who).get(path).then().assertThat().statusCode(equalTo(status)));
    }

    @ParameterizedTest
    @CsvSource({"/owner/people, name=X", "/owner/people/end, id=ana", "/owner/units, name=X", "/owner/probes, id=X", "/owner/tablets/revoke, id=A", "/owner/plans, title=X", "/owner/plans/deep-quiche/approval, meaning=yes", "/owner/plans/deep-quiche/flow, act=remove", "/owner/plans/deep-quiche/hazards, act=add", "/owner/plans/deep-quiche/part/team, act=add",
        "/owner/demo/remove, sure=remove the demo", "/owner/rulebook, id=ireland"})
    void nobody_but_the_owner_changes_what_is_the_owners(String path, String field) {
        for (String who : new String[] {"stranger", "tablet", "baker"}) {
            as(who).header("Sec-Fetch-Site", "same-origin").formParam(field.split("=")[0], field.split("=")[1]).post(path).then().statusCode(303)
                    .header("Location", org.hamcrest.Matchers.endsWith("/session/owner"));
        }
        as("owner").header("Sec-Fetch-Site", "cross-site").formParam(field.split("=")[0], field.split("=")[1]).post(path).then().statusCode(403);
    }

    private static ValidatableResponse put(String who, String kind, String person) {
        String id = Ids.uuid7(Instant.now(), new Random());
        Instant now = Instant.now();
        String body = "{\"schema\":\"record-1\",\"id\":\"" + id + "\",\"kind\":\"" + kind + "\",\"site\":\"site\",\"device\":\"A\",\"device_seq\":" + ++sequence + ",\"person\":\"" + person
                + "\",\"source\":\"typed\",\"claimed_at\":\"" + now + "\",\"device_clock\":{\"wall\":\"" + now + "\",\"zone\":\"UTC\"},\"data\":{}}";
        return as(who).header("Sec-Fetch-Site", "same-origin").contentType(ContentType.JSON).body(body).put("/api/records/" + id).then();
    }

    @Test
    void a_tablet_sends_records_alone_and_a_decision_needs_the_session_of_the_one_who_decides() {
        put("stranger", "note", "ana").statusCode(401);
        put("tablet", "note", "ana").statusCode(201);
        for (String decision : new String[] {"released", "accepted", "day-reviewed", "deviation-verified", "strike-out-agreed"}) {
            put("tablet", decision, "pat").statusCode(403).body("errors[0].field", is("person"));
            put("baker", decision, "pat").statusCode(403);
            put("outsider", decision, "pat").statusCode(201);
        }
    }
}

package trivet.ledger.web;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jboss.logging.Logger;
import trivet.ledger.BestTime.Sending;
import trivet.ledger.Ledger.Outcome;
import trivet.ledger.Ledger.Receipt;
import trivet.ledger.Ledger;
import trivet.measure.web.ProblemException;
import trivet.measure.web.StrictJson;

/** The one way in for records: an answer of 200 or 201 means that the record is on disk. */
@Path("/api/records")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class RecordsApi {

    /** The tablet's clocks at the moment of sending: {@code session;milliseconds of the monotonic clock;wall clock}. */
    private static final String CLOCK = "Trivet-Clock";
    private static final int MOST_AT_ONCE = 100;
    private static final Logger LOG = Logger.getLogger(RecordsApi.class);

    @Inject
    Ledger ledger;
    @Inject
    Permits permits;
    @Inject
    Bell bell;

    @PUT
    @Path("/{id}")
    public Response put(@PathParam("id") String id, @HeaderParam(CLOCK) String clock, byte[] body) {
        Receipt receipt = keep(id, body, Sending.read(clock));
        if (receipt.outcome() == Outcome.CLASHING) {
            throw clash();
        }
        return Response.status(receipt.outcome() == Outcome.KEPT ? 201 : 200).entity(answer(receipt)).build();
    }

    @POST
    public List<Map<String, Object>> post(@HeaderParam(CLOCK) String clock, byte[] body) {
        if (body.length > StrictJson.MOST_BYTES) {
            throw new ProblemException(413, "", "The body is larger than 1 MiB. Send fewer records at a time.");
        }
        JsonNode list = StrictJson.any(body);
        if (!list.isArray()) {
            throw new ProblemException(400, "", "A list of records is expected.");
        }
        if (list.size() > MOST_AT_ONCE) {
            throw new ProblemException(413, "", "At most 100 records are taken at a time.");
        }
        List<Map<String, Object>> answers = new ArrayList<>();
        List<byte[]> bodies = StrictJson.items(body);
        for (int i = 0; i < list.size(); i++) {
            answers.add(one(list.get(i).path("id").asText(""), bodies.get(i), Sending.read(clock)));
        }
        return answers;
    }

    private Map<String, Object> one(String id, byte[] body, Optional<Sending> sent) {
        try {
            Receipt receipt = keep(id, body, sent);
            if (receipt.outcome() == Outcome.CLASHING) {
                throw clash();
            }
            Map<String, Object> answer = answer(receipt);
            answer.put("status", receipt.outcome() == Outcome.KEPT ? 201 : 200);
            return answer;
        } catch (ProblemException refused) {
            Map<String, Object> answer = new LinkedHashMap<>();
            answer.put("id", id);
            answer.put("status", refused.status());
            answer.put("title", refused.getMessage());
            answer.put("errors", refused.errors().stream().map(error -> Map.of("field", error.field(), "message", error.message())).toList());
            return answer;
        } catch (RuntimeException failed) {
            LOG.error("A record of a list could not be taken in; the others are", failed);
            Map<String, Object> answer = new LinkedHashMap<>();
            answer.put("id", id);
            answer.put("status", 500);
            answer.put("title", "This record could not be taken in. Keep it and send it again.");
            answer.put("errors", List.of());
            return answer;
        }
    }

    private Receipt keep(String id, byte[] body, Optional<Sending> sent) {
        permits.check(body);
        Receipt receipt = ledger.put(id, body, permits.device(), sent);
        if (receipt.outcome() == Outcome.KEPT) {
            bell.ring(receipt.receiveNumber());
        }
        return receipt;
    }

    private static ProblemException clash() {
        return new ProblemException(409, "id", "Another record is kept under this id. Both are kept for review; send yours under a new id.");
    }

    private static Map<String, Object> answer(Receipt receipt) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("id", receipt.id());
        answer.put("sha256", receipt.sha256());
        answer.put("receive_number", receipt.receiveNumber());
        answer.put("verdict", receipt.verdict().asMap());
        return answer;
    }
}

package trivet.site.web;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import java.util.Set;
import trivet.device.Devices.Tablet;
import trivet.ledger.web.Permits;
import trivet.measure.web.ProblemException;
import trivet.measure.web.StrictJson;

/** A tablet sends its records alone; what a second person decides needs that person's own session. */
@RequestScoped
class RecordPermits implements Permits {

    private static final Set<String> OWN_SESSION = Set.of("released", "accepted", "day-reviewed", "deviation-verified", "strike-out-agreed");

    @Inject
    Caller caller;

    @Override
    public String device() {
        return caller.tablet().map(Tablet::id).orElseThrow(() -> new ProblemException(401, "device", "This needs the credential of a tablet."));
    }

    @Override
    public void check(byte[] body) {
        JsonNode record = StrictJson.object(body);
        if (!OWN_SESSION.contains(record.path("kind").asText())) {
            return;
        }
        String person = record.path("person").asText();
        if (!caller.person().map(signedIn -> signedIn.id().equals(person)).orElse(false)) {
            throw new ProblemException(403, "person", "Only the person who decides this may record it: sign in as that person.");
        }
    }
}

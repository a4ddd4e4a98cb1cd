package trivet.site.web;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import trivet.device.Devices.Tablet;
import trivet.ledger.web.Permits;
import trivet.measure.web.ProblemException;
import trivet.measure.web.StrictJson;
import trivet.words.Words;

/** A tablet sends its records alone; what a second person decides needs that person's own session. */
@RequestScoped
class RecordPermits implements Permits {

    @Inject
    Caller caller;

    @Override
    public String device() {
        return caller.tablet().map(Tablet::id).orElseThrow(() -> new ProblemException(401, "device", Words.say("j_this_needs_the_credential_of_a_2")));
    }

    @Override
    public void check(byte[] body) {
        JsonNode record = StrictJson.object(body);
        if (!OwnSession.needed(record.path("kind").asText())) {
            return;
        }
        String person = record.path("person").asText();
        if (!caller.person().map(signedIn -> signedIn.id().equals(person)).orElse(false)) {
            throw new ProblemException(403, "person", Words.say("j_only_the_person_who_decides_this"));
        }
    }
}

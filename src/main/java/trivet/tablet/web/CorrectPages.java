package trivet.tablet.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import trivet.batch.Told;
import trivet.ledger.Entry;
import trivet.ledger.Journal;
import trivet.measure.Temperature;
import trivet.words.Words;

/** The page on which a record is corrected: a further record, which names the first and says why. */
@Path("/records")
@Produces(MediaType.TEXT_HTML)
public class CorrectPages {

    @Inject
    @Location("tablet/correct.html")
    Template page;
    @Inject
    Screen screen;
    @Inject
    Journal journal;

    @GET
    @Path("{id}/correct")
    public TemplateInstance correct(@PathParam("id") String id) {
        Entry entry = journal.find(id).filter(found -> !found.kind().equals("correction")).orElseThrow(NotFoundException::new);
        Set<Entry> all = new LinkedHashSet<>(List.of(entry));
        journal.naming(id).forEach(naming -> {
            all.add(naming);
            all.addAll(journal.naming(naming.id()));
        });
        Told told = Told.of(List.copyOf(all), true).stream().filter(t -> t.entry().id().equals(id)).findFirst()
                .orElseGet(() -> new Told(entry, entry.data(), entry.claimedAt(), List.of(), false));
        Optional<Temperature> value = told.data().temperature("temperature");
        String then = entry.batch().map(batch -> "/batches/" + batch).or(() -> entry.data().text("unit").map(unit -> "/units/" + unit))
                .orElse(entry.kind().equals("probe-check") ? "/probes/" + entry.data().text("probe").orElse("") : "/work");
        return screen.of(page).data("entry", entry).data("told", told).data("value", value.map(Temperature::toString).orElse(""))
                .data("plain", value.map(t -> t.value().toPlainString()).orElse("")).data("letter", value.map(t -> String.valueOf(t.scale().letter())).orElse("C"))
                .data("then", then).data("kind", Words.named("kind", entry.kind()));
    }
}

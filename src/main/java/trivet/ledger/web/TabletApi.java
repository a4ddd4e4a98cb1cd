package trivet.ledger.web;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trivet.ledger.Asides;
import trivet.ledger.Heard;
import trivet.ledger.Journal;
import trivet.ledger.Photos;
import trivet.measure.Digest;
import trivet.measure.web.ProblemException;
import trivet.measure.web.StrictJson;

/** What a tablet says beside its records: how it stands, what it would send again, what was refused, and its photos. */
@Path("/")
@Produces(MediaType.APPLICATION_JSON)
public class TabletApi {

    private static final int MOST_IDS = 5000;
    private static final int MOST_PHOTO_BYTES = 4 << 20;
    private static final Set<String> PICTURES = Set.of("image/jpeg", "image/png", "image/webp");

    @Inject
    Permits permits;
    @Inject
    Heard heard;
    @Inject
    Journal journal;
    @Inject
    Asides asides;
    @Inject
    Photos photos;
    @Inject
    Clock clock;

    /** A tablet says how it stands, and is told the moment and the last number that is known to be used. */
    @POST
    @Path("api/tablet/met")
    @Consumes(MediaType.APPLICATION_JSON)
    public Map<String, Object> met(byte[] body) {
        Instant now = clock.instant();
        JsonNode said = StrictJson.object(body);
        String device = permits.device();
        String install = said.path("install").asText("");
        if (install.isEmpty() || install.length() > 100 || !said.path("sequence").canConvertToLong()) {
            throw new ProblemException(400, "install", "A tablet says the name of its store and the last number it used.");
        }
        JsonNode clocks = said.path("clock");
        Optional<Long> offset = instant(clocks.path("wall").asText()).map(wall -> now.toEpochMilli() - wall.toEpochMilli());
        heard.heard(new Heard.Word(device, now, Math.max(0, said.path("sequence").asLong()), said.path("waiting").asInt(), said.path("photos").asInt(), instant(said.path("oldest").asText()), offset,
                Optional.ofNullable(said.path("build").textValue()).filter(build -> build.length() <= 100)), install);
        long last = Math.max(journal.lastSequence(device), heard.of(device).map(Heard.Word::sequence).orElse(0L));
        return Map.of("now", now.toEpochMilli(), "sequence", last, "number", journal.lastNumber());
    }

    private static Optional<Instant> instant(String text) {
        try {
            return Optional.of(java.time.OffsetDateTime.parse(text).toInstant());
        } catch (DateTimeParseException none) {
            return Optional.empty();
        }
    }

    /** Which of the records that a tablet was told are kept are not here: all that came after the copy that this service was restored from. */
    @POST
    @Path("api/tablet/lacking")
    @Consumes(MediaType.APPLICATION_JSON)
    public Map<String, Object> lacking(byte[] body) {
        permits.device();
        JsonNode ids = StrictJson.object(body).path("ids");
        if (!ids.isArray() || ids.size() > MOST_IDS) {
            throw new ProblemException(400, "ids", "A list of at most 5,000 ids is expected.");
        }
        List<String> missing = new ArrayList<>();
        ids.forEach(id -> {
            if (journal.find(id.asText()).isEmpty()) {
                missing.add(id.asText());
            }
        });
        return Map.of("lacking", missing);
    }

    /** A record that was refused goes to the owner's review as it is. */
    @POST
    @Path("api/tablet/review")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response review(byte[] body) {
        JsonNode said = StrictJson.object(body);
        String record = said.path("record").asText("");
        if (record.isEmpty()) {
            throw new ProblemException(400, "record", "The text of the refused record is expected.");
        }
        asides.keep(permits.device(), said.path("reason").asText(""), record.getBytes(StandardCharsets.UTF_8));
        return Response.status(201).build();
    }

    /** Keeps a photo under the hash of its bytes. */
    @PUT
    @Path("api/photos/{sha256}")
    @Consumes(MediaType.WILDCARD)
    public Response photo(@PathParam("sha256") String sha256, @HeaderParam("Content-Type") String type, byte[] bytes) {
        if (bytes.length == 0 || bytes.length > MOST_PHOTO_BYTES) {
            throw new ProblemException(413, "", "A photo has at most 4 MiB.");
        }
        String bare = type == null ? "" : type.split(";", 2)[0].strip();
        if (!PICTURES.contains(bare)) {
            throw new ProblemException(415, "", "A photo is a JPEG, PNG or WebP.");
        }
        if (!Digest.sha256(bytes).equals(sha256)) {
            throw new ProblemException(422, "sha256", "The bytes are not those of the hash in the address.");
        }
        photos.keep(sha256, permits.device(), new Photos.Photo(bare, bytes));
        return Response.status(201).build();
    }

    /** A photo as it was sent. */
    @GET
    @Path("photos/{sha256}")
    @Produces(MediaType.WILDCARD)
    public Response photo(@PathParam("sha256") String sha256) {
        Photos.Photo photo = photos.find(sha256).orElseThrow(NotFoundException::new);
        return Response.ok(photo.bytes()).type(photo.type()).build();
    }
}

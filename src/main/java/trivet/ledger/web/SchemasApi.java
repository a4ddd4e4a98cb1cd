package trivet.ledger.web;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import java.io.InputStream;

/** The published form of records. */
@Path("/api/schemas")
public class SchemasApi {

    @GET
    @Path("/record-1.json")
    @Produces("application/schema+json")
    public InputStream record() {
        return SchemasApi.class.getResourceAsStream("/schemas/record-1.json");
    }
}

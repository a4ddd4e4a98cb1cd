package empty;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Map;

/** The same stack without a job: takes a body and stores nothing. */
@Path("/api/records")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class EmptyPut {

    @PUT
    @Path("/{id}")
    public Response put(@PathParam("id") String id, byte[] body) {
        return Response.status(201).entity(Map.of("id", id, "bytes", body.length)).build();
    }

    @GET
    @Produces(MediaType.TEXT_PLAIN)
    public String here() {
        return "here";
    }
}

package trivet.tablet.web;

import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** Says with every answer which build of the screens this service has, so that a tablet's kept files are not mixed with pages of another. */
class BuildHeader {

    @Inject
    ShellFiles shell;

    @ServerResponseFilter
    void say(ContainerRequestContext request, ContainerResponseContext response) {
        if (!request.getUriInfo().getPath().startsWith("/api/")) {
            response.getHeaders().putSingle("Trivet-Build", shell.build());
        }
    }
}

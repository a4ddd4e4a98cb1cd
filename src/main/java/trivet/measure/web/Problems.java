package trivet.measure.web;

import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import trivet.measure.web.ProblemException.FieldError;
import trivet.words.Words;

/** Turns refusals and errors of the API into problem+json; nothing of the inside of the service is told. */
class Problems {

    private static final Logger LOG = Logger.getLogger(Problems.class);

    @Context
    UriInfo uri;

    @Context
    HttpHeaders headers;

    @ServerExceptionMapper
    Response refused(ProblemException refusal) {
        return problem(refusal.status(), refusal.getMessage(), refusal.errors());
    }

    @ServerExceptionMapper
    Response web(WebApplicationException error) {
        int status = error.getResponse().getStatus();
        if (status < 400) {
            return error.getResponse();
        }
        String title = switch (status) {
            case 404 -> Words.say("j_web_404");
            case 405 -> Words.say("j_web_405");
            case 406 -> Words.say("j_web_406");
            case 413 -> Words.say("j_web_413");
            case 415 -> Words.say("j_web_415");
            default -> Words.say("j_web_refused");
        };
        return problem(status, title, List.of());
    }

    @ServerExceptionMapper
    Response unexpected(Exception error) {
        LOG.error("Answering " + uri.getPath() + " failed", error);
        return problem(500, Words.say("j_web_500"), List.of());
    }

    private Response problem(int status, String title, List<FieldError> errors) {
        boolean page = !uri.getPath().startsWith("/api/")
                && headers.getAcceptableMediaTypes().stream().anyMatch(type -> type.isCompatible(MediaType.TEXT_HTML_TYPE));
        if (page) {
            return Response.status(status).type(MediaType.TEXT_HTML + ";charset=UTF-8").entity("<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>"
                    + status + "</title><link rel=\"stylesheet\" href=\"/css/trivet.css\"><main><h1>" + escaped(title)
                    + "</h1><p><a class=\"key\" href=\"/\">" + escaped(Words.say("j_web_start")) + "</a></p></main></html>").build();
        }
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("type", "about:blank");
        body.put("title", title);
        body.put("status", status);
        body.put("errors", errors.stream().map(error -> Map.of("field", error.field(), "message", error.message())).toList());
        return Response.status(status).type("application/problem+json").entity(body).build();
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}

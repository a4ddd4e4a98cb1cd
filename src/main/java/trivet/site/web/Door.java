package trivet.site.web;

import io.vertx.core.http.HttpServerRequest;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.NewCookie;
import java.util.Optional;
import trivet.device.Devices.Tablet;
import trivet.people.Person;

/** How a request came in, and the credential that a tablet is given. */
@ApplicationScoped
public class Door {

    private static final int TEN_YEARS = 10 * 365 * 86_400;

    @Inject
    Caller caller;

    /** Whether it came by https, to this service or to a proxy in front of it that says so. */
    public boolean secure(HttpServerRequest request) {
        return "https".equals(request.scheme());
    }

    /** Whether it came from this machine itself, and through no proxy. */
    public static boolean loopback(HttpServerRequest request) {
        String address = request.remoteAddress() == null ? null : request.remoteAddress().hostAddress();
        boolean forwarded = request.getHeader("X-Forwarded-For") != null || request.getHeader("Forwarded") != null;
        return address != null && !forwarded && (address.startsWith("127.") || address.equals("0:0:0:0:0:0:0:1"));
    }

    /** The cookie by which a tablet is known; over https it is never sent in the clear. */
    public NewCookie tabletCookie(HttpServerRequest request, String token) {
        return new NewCookie.Builder(Gate.TABLET).value(token).path("/").httpOnly(true).secure(secure(request)).sameSite(NewCookie.SameSite.STRICT).maxAge(TEN_YEARS).build();
    }

    /** The tablet that asks. */
    public Optional<String> tablet() {
        return caller.tablet().filter(tablet -> !tablet.revoked()).map(Tablet::id);
    }

    /** The person signed in. */
    public Optional<String> person() {
        return caller.person().map(Person::id);
    }
}

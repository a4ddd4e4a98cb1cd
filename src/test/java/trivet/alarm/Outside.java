package trivet.alarm;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import com.sun.net.httpserver.HttpServer;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;

/** A mail server and an address that takes posts, both of the test's own. */
public class Outside implements QuarkusTestResourceLifecycleManager {

    static final List<String> POSTED = new CopyOnWriteArrayList<>();
    static GreenMail mail;
    static HttpServer hook;
    static volatile int answer = 204;

    @Override
    public Map<String, String> start() {
        try {
            mail = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
            mail.start();
            hook = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
            hook.createContext("/", exchange -> {
                POSTED.add(new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
                exchange.sendResponseHeaders(answer, -1);
                exchange.close();
            });
            hook.start();
            return Map.of("quarkus.mailer.mock", "false", "quarkus.mailer.host", "127.0.0.1", "quarkus.mailer.port", String.valueOf(mail.getSmtp().getPort()), "quarkus.mailer.from", "trivet@example.org",
                    "quarkus.mailer.start-tls", "DISABLED", "quarkus.scheduler.enabled", "false");
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    @Override
    public void stop() {
        mail.stop();
        hook.stop(0);
    }
}

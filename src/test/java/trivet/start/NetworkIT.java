package trivet.start;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The service opened to a network: what it shows over plain http, its certificate, and a second tablet that joins. It listens on this machine's loopback addresses only. */
class NetworkIT {

    @TempDir
    Path data;

    private static HttpClient trusting(byte[] authority) throws Exception {
        KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
        store.load(null);
        store.setCertificateEntry("bakery", CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(authority)));
        TrustManagerFactory managers = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        managers.init(store);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, managers.getTrustManagers(), null);
        return HttpClient.newBuilder().sslContext(context).cookieHandler(new CookieManager()).build();
    }

    private static HttpResponse<String> get(HttpClient client, String address, String... headers) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address));
        if (headers.length > 0) {
            request.headers(headers);
        }
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    private static HttpResponse<String> post(HttpClient client, String address, String form, String... headers) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address)).header("Content-Type", "application/x-www-form-urlencoded").header("Sec-Fetch-Site", "same-origin").POST(HttpRequest.BodyPublishers.ofString(form));
        if (headers.length > 0) {
            request.headers(headers);
        }
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    @Test
    void a_second_tablet_joins_over_https_with_a_code_and_works() throws Exception {
        int secure = Service.freePort();
        try (Service service = Service.start(data, "-Dtrivet.demo=true", "-Dtrivet.lan=true", "-Dtrivet.host=ovens.localhost", "-Dquarkus.http.ssl-port=" + secure, "-Dquarkus.http.host=127.0.0.1")) {
            assertTrue(service.output().contains("https://ovens.localhost:" + secure), service.output());
            byte[] authority = HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(service.address() + "/join/ca.crt")).build(), HttpResponse.BodyHandlers.ofByteArray()).body();
            X509Certificate certificate = (X509Certificate) CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(authority));
            assertTrue(certificate.getBasicConstraints() >= 0, "it is an authority's");
            String base = "https://localhost:" + secure;

            HttpClient owner = trusting(authority);
            assertEquals(200, get(owner, base + "/join/test").statusCode(), "the name is in the certificate, and the authority is trusted");
            String token = Files.readString(data.resolve("first-tablet.token")).strip();
            HttpResponse<String> signedIn = post(owner, base + "/session/owner", "person=olive&password=thornfold-demo", "Cookie", "trivet-tablet=" + token);
            assertEquals(303, signedIn.statusCode());
            assertTrue(signedIn.headers().allValues("set-cookie").stream().filter(cookie -> cookie.startsWith("trivet-session")).allMatch(cookie -> cookie.contains("Secure")), signedIn.headers().toString());
            HttpResponse<String> invited = post(owner, base + "/owner/tablets/invite", "name=by+the+ovens");
            assertEquals(200, invited.statusCode());
            Matcher code = Pattern.compile("class=\"code\">([A-Z0-9]{4} [A-Z0-9]{4})<").matcher(invited.body());
            assertTrue(code.find(), invited.body());

            HttpClient tablet = trusting(authority);
            assertEquals(403, post(tablet, base + "/join", "code=WRONGONE").statusCode());
            HttpResponse<String> joined = post(tablet, base + "/join", "code=" + code.group(1).toLowerCase().replace(" ", "+"));
            assertEquals(303, joined.statusCode(), joined.body());
            String cookie = joined.headers().firstValue("set-cookie").orElseThrow();
            assertTrue(cookie.contains("Secure") && cookie.contains("HttpOnly"), cookie);
            assertEquals(403, post(trusting(authority), base + "/join", "code=" + code.group(1).replace(" ", "")).statusCode(), "a code works once");
            assertTrue(get(tablet, base + "/join/test").body().contains("tablet B"));
            HttpResponse<String> work = get(tablet, base + "/work");
            assertEquals(200, work.statusCode());
            assertTrue(work.body().contains("data-device=\"B\""));

            assertEquals(303, post(owner, base + "/owner/tablets/revoke", "id=B").statusCode());
            assertEquals(303, get(tablet, base + "/work").statusCode(), "its credential is taken away");
            HttpResponse<String> refused = tablet.send(HttpRequest.newBuilder(URI.create(base + "/api/records")).header("Content-Type", "application/json").header("Sec-Fetch-Site", "same-origin").POST(HttpRequest.BodyPublishers.ofString("[]")).build(), HttpResponse.BodyHandlers.ofString());
            assertEquals(403, refused.statusCode());

            String id = "0190aaaa-0000-7000-8000-00000000000b";
            String record = "{\"schema\":\"record-1\",\"id\":\"" + id + "\",\"kind\":\"note\",\"site\":\"site\",\"device\":\"B\",\"device_seq\":1,\"person\":\"ana\",\"source\":\"typed\",\"claimed_at\":\"2026-11-26T05:00:00Z\",\"device_clock\":{\"wall\":\"2026-11-26T05:00:00Z\",\"zone\":\"UTC\"},\"data\":{\"text\":\"unsent\"}}";
            String body = "{\"reason\":\"revoked\",\"record\":" + new com.fasterxml.jackson.databind.ObjectMapper().writeValueAsString(record) + "}";
            HttpResponse<String> review = tablet.send(HttpRequest.newBuilder(URI.create(base + "/api/tablet/review")).header("Content-Type", "application/json").header("Sec-Fetch-Site", "same-origin").POST(HttpRequest.BodyPublishers.ofString(body)).build(), HttpResponse.BodyHandlers.ofString());
            assertEquals(201, review.statusCode(), "what waits on it can still go to the owner's review");
            Matcher number = Pattern.compile("name=\"number\" value=\"(\\d+)\"").matcher(get(owner, base + "/owner/review").body());
            assertTrue(number.find());
            assertEquals(303, post(owner, base + "/owner/review/take", "number=" + number.group(1)).statusCode());
            assertFalse(get(owner, base + "/owner/review").body().contains("name=\"number\" value=\"" + number.group(1) + "\""));
        }
    }

    /** The test comes through a stranger's proxy, since the service of a test listens on loopback alone. */
    @Test
    void another_machine_is_shown_over_plain_http_only_how_to_join() throws Exception {
        try (Service service = Service.start(data, "-Dtrivet.demo=true", "-Dtrivet.lan=true", "-Dquarkus.http.ssl-port=" + Service.freePort(), "-Dquarkus.http.host=127.0.0.1")) {
            String plain = service.address();
            HttpClient stranger = HttpClient.newHttpClient();
            String[] from = {"X-Forwarded-For", "192.168.1.77"};
            assertEquals(200, get(stranger, plain + "/join", from).statusCode());
            assertTrue(get(stranger, plain + "/join", from).body().contains("https://"));
            for (String path : new String[] {"/", "/work", "/session/owner", "/owner", "/api/rulebooks", "/join/test", "/tablet/kit.json"}) {
                HttpResponse<String> answer = get(stranger, plain + path, from);
                assertEquals(303, answer.statusCode(), path);
                assertEquals("/join", URI.create(answer.headers().firstValue("location").orElseThrow()).getPath(), path);
            }
            assertEquals(403, post(stranger, plain + "/session/pin/ana", "pin=1111", from).statusCode());
        }
    }

    @Test
    void a_proxy_that_nobody_told_of_gives_no_stranger_this_machine_s_credential() throws Exception {
        try (Service service = Service.start(data, "-Dtrivet.demo=true")) {
            HttpClient client = HttpClient.newHttpClient();
            assertTrue(get(client, service.address() + "/").headers().allValues("set-cookie").stream().anyMatch(cookie -> cookie.startsWith("trivet-tablet")), "this machine's own browser is its first tablet");
            assertTrue(get(client, service.address() + "/", "X-Forwarded-For", "203.0.113.9").headers().allValues("set-cookie").isEmpty());
        }
    }

    @Test
    void half_a_certificate_of_one_s_own_is_refused_with_a_sentence() throws Exception {
        try (Service service = Service.launch(data, Service.freePort(), "-Dtrivet.lan=true", "-Dquarkus.http.host=127.0.0.1", "-Dquarkus.http.ssl-port=" + Service.freePort(), "-Dtrivet.tls.certificate=" + data.resolve("none.pem"))) {
            assertEquals(1, service.exitCode());
            assertTrue(service.output().contains("TRIVET_TLS_KEY"), new String(service.output().getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
        }
    }
}

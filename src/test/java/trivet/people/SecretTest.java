package trivet.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

/** PBKDF2-HMAC-SHA-256 against the vectors of RFC 7914, section 11 (from memory). */
class SecretTest {

    @Test
    void the_published_vector_of_one_round() {
        byte[] derived = Secret.derive("passwd", "salt".getBytes(StandardCharsets.US_ASCII), 1, 512);
        assertEquals("55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783",
                HexFormat.of().formatHex(derived));
    }

    @Test
    void a_pin_matches_itself_and_nothing_else() {
        Secret secret = Secret.of("4711");
        assertTrue(secret.matches("4711"));
        assertFalse(secret.matches("4712"));
        assertEquals(Secret.ITERATIONS, secret.iterations());
    }
}

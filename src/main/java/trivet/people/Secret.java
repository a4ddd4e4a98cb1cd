package trivet.people;

import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/**
 * A PIN or password as it is stored: PBKDF2-HMAC-SHA-256 (RFC 8018) with its salt and number of rounds beside it, which a
 * browser can compute too.
 */
public record Secret(String salt, int iterations, String hash) {

    /** The number of rounds of new secrets. */
    public static final int ITERATIONS = 210_000;
    private static final int BITS = 256;

    /** A new secret with a salt of its own. */
    public static Secret of(String plain) {
        byte[] salt = new byte[16];
        new SecureRandom().nextBytes(salt);
        return new Secret(Base64.getEncoder().encodeToString(salt), ITERATIONS,
                Base64.getEncoder().encodeToString(derive(plain, salt, ITERATIONS, BITS)));
    }

    /** Whether the text is the one behind the secret; takes the same time either way. */
    public boolean matches(String plain) {
        byte[] derived = derive(plain, Base64.getDecoder().decode(salt), iterations, BITS);
        return MessageDigest.isEqual(derived, Base64.getDecoder().decode(hash));
    }

    static byte[] derive(String plain, byte[] salt, int iterations, int bits) {
        try {
            PBEKeySpec spec = new PBEKeySpec(plain.toCharArray(), salt, iterations, bits);
            return SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256").generateSecret(spec).getEncoded();
        } catch (GeneralSecurityException impossible) {
            throw new IllegalStateException("Every Java platform has PBKDF2WithHmacSHA256.", impossible);
        }
    }
}

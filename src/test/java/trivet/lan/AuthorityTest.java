package trivet.lan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.PrivateKey;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.cert.CertPathValidator;
import java.security.cert.CertPathValidatorException;
import java.security.cert.CertificateFactory;
import java.security.cert.PKIXParameters;
import java.security.cert.TrustAnchor;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Set;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.pkcs.PrivateKeyInfo;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.openssl.PEMParser;
import org.bouncycastle.openssl.jcajce.JcaPEMKeyConverter;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trivet.lan.tls.Authority;

/** The bakery's certificates, validated by the platform's own implementation of RFC 5280. */
class AuthorityTest {

    private static final Instant NOW = Instant.parse("2026-11-26T05:00:00Z");

    @TempDir
    Path folder;

    /** Validates with the authority below a root of the test's own, since the platform passes over the constraints of a root itself; browsers do not. */
    private static void validate(X509Certificate certificate, X509Certificate authority, Instant at) throws Exception {
        KeyPair root = KeyPairGenerator.getInstance("EC").generateKeyPair();
        JcaX509v3CertificateBuilder below = new JcaX509v3CertificateBuilder(new X500Name("CN=root"), BigInteger.ONE, authority.getNotBefore(), authority.getNotAfter(), X500Name.getInstance(authority.getSubjectX500Principal().getEncoded()), authority.getPublicKey());
        JcaX509CertificateHolder holder = new JcaX509CertificateHolder(authority);
        for (Object id : holder.getExtensionOIDs()) {
            below.addExtension(holder.getExtension((ASN1ObjectIdentifier) id));
        }
        X509Certificate intermediate = new JcaX509CertificateConverter().getCertificate(below.build(new JcaContentSignerBuilder("SHA256withECDSA").build(root.getPrivate())));
        PKIXParameters parameters = new PKIXParameters(Set.of(new TrustAnchor("CN=root", root.getPublic(), null)));
        parameters.setRevocationEnabled(false);
        parameters.setDate(Date.from(at));
        CertPathValidator.getInstance("PKIX").validate(CertificateFactory.getInstance("X.509").generateCertPath(List.of(certificate, intermediate)), parameters);
    }

    @Test
    void the_service_s_certificate_is_valid_by_the_authority_and_names_host_and_addresses() throws Exception {
        Authority authority = new Authority(folder);
        Authority.Pair made = authority.prepare("ovens.local", Set.of("192.168.1.20", "127.0.0.1"), NOW);
        X509Certificate service = Authority.read(made.certificate());
        validate(service, Authority.read(authority.certificate()), NOW);
        assertTrue(service.getSubjectAlternativeNames().toString().contains("ovens.local"));
        assertTrue(service.getSubjectAlternativeNames().toString().contains("192.168.1.20"));
        assertTrue(Duration.between(service.getNotBefore().toInstant(), service.getNotAfter().toInstant()).toDays() <= 398, "browsers take no longer one");
        assertThrows(CertPathValidatorException.class, () -> validate(service, Authority.read(authority.certificate()), NOW.plus(Duration.ofDays(400))));
        if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(made.key())));
            assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("authority.key"))));
        }
    }

    @Test
    void a_second_start_changes_nothing_and_a_new_address_or_a_late_one_renews_by_the_same_authority() throws Exception {
        Authority authority = new Authority(folder);
        BigInteger first = Authority.read(authority.prepare("ovens.local", Set.of("127.0.0.1"), NOW).certificate()).getSerialNumber();
        byte[] trusted = Files.readAllBytes(authority.certificate());
        assertEquals(first, Authority.read(authority.prepare("ovens.local", Set.of("127.0.0.1"), NOW.plus(Duration.ofDays(100))).certificate()).getSerialNumber());
        BigInteger moved = Authority.read(authority.prepare("ovens.local", Set.of("127.0.0.1", "192.168.1.21"), NOW).certificate()).getSerialNumber();
        assertNotEquals(first, moved);
        BigInteger renewed = Authority.read(authority.prepare("ovens.local", Set.of("127.0.0.1", "192.168.1.21"), NOW.plus(Duration.ofDays(340))).certificate()).getSerialNumber();
        assertNotEquals(moved, renewed);
        assertEquals(new String(trusted), Files.readString(authority.certificate()), "tablets trust it as before");
    }

    @Test
    void the_authority_can_vouch_for_no_name_outside_the_bakery() throws Exception {
        Authority authority = new Authority(folder);
        authority.prepare("ovens.local", Set.of("127.0.0.1"), NOW);
        X509Certificate trusted = Authority.read(authority.certificate());
        PrivateKey key;
        try (PEMParser parser = new PEMParser(Files.newBufferedReader(folder.resolve("authority.key")))) {
            key = new JcaPEMKeyConverter().getPrivateKey((PrivateKeyInfo) parser.readObject());
        }
        for (GeneralName name : List.of(new GeneralName(GeneralName.dNSName, "bank.example"), new GeneralName(GeneralName.iPAddress, "203.0.113.7"))) {
            JcaX509v3CertificateBuilder forged = new JcaX509v3CertificateBuilder(X500Name.getInstance(trusted.getSubjectX500Principal().getEncoded()), BigInteger.TWO, Date.from(NOW.minusSeconds(60)),
                    Date.from(NOW.plus(Duration.ofDays(30))), new X500Name("CN=forged"), KeyPairGenerator.getInstance("EC").generateKeyPair().getPublic());
            forged.addExtension(Extension.subjectAlternativeName, false, new GeneralNames(name));
            X509Certificate certificate = new JcaX509CertificateConverter().getCertificate(forged.build(new JcaContentSignerBuilder("SHA256withECDSA").build(key)));
            assertThrows(CertPathValidatorException.class, () -> validate(certificate, trusted, NOW), name.toString());
        }
    }

    @Test
    void a_name_of_the_bakery_s_own_domain_is_vouched_for_too() throws Exception {
        Authority authority = new Authority(folder);
        X509Certificate service = Authority.read(authority.prepare("haccp.thornfold.example", Set.of("127.0.0.1"), NOW).certificate());
        validate(service, Authority.read(authority.certificate()), NOW);
    }

    @Test
    void host_names_follow_rfc_1123() {
        assertEquals("ovens.local", HostName.checked(" Ovens.LOCAL "));
        for (String wrong : List.of("", "192.168.1.4", "-ovens", "ovens..local", "ovens_1", "o v", "a".repeat(64))) {
            assertThrows(IllegalArgumentException.class, () -> HostName.checked(wrong), wrong);
        }
        assertEquals("ovens", HostName.write(folder, "ovens"));
        assertEquals("ovens", HostName.read(folder).orElseThrow());
    }
}

package trivet.lan.tls;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.math.BigInteger;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.SecureRandom;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Date;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x500.X500NameBuilder;
import org.bouncycastle.asn1.x500.style.BCStyle;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.GeneralSubtree;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.asn1.x509.NameConstraints;
import org.bouncycastle.asn1.pkcs.PrivateKeyInfo;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509ExtensionUtils;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.openssl.PEMKeyPair;
import org.bouncycastle.openssl.PEMParser;
import org.bouncycastle.openssl.jcajce.JcaPEMKeyConverter;
import org.bouncycastle.openssl.jcajce.JcaPEMWriter;
import org.bouncycastle.openssl.jcajce.JcaPKCS8Generator;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/**
 * A certificate authority of the bakery's own, made at the first start on its network, and the service's certificate by it. The authority may vouch
 * for the bakery's name, names that exist on a local network only, and private addresses (RFC 5280, 4.2.1.10), so that whoever stole its key could
 * pass for nothing else. Keys are elliptic, on P-256. The service's certificate holds a year and is renewed at a start in its last sixty days, or
 * when a name or address is not in it.
 */
public final class Authority {

    private static final Duration AUTHORITY_HOLDS = Duration.ofDays(3650);
    private static final Duration SERVICE_HOLDS = Duration.ofDays(397);
    private static final Duration RENEWED_BEFORE = Duration.ofDays(60);
    private static final List<String> LOCAL = List.of("local", "lan", "internal", "home.arpa", "localhost");
    private static final List<String> PRIVATE = List.of("10.0.0.0/255.0.0.0", "172.16.0.0/255.240.0.0", "192.168.0.0/255.255.0.0", "169.254.0.0/255.255.0.0", "127.0.0.0/255.0.0.0");
    private final Path folder;

    /** The files of the service's certificate and key, in PEM. */
    public record Pair(Path certificate, Path key) {
    }

    /** An authority that lies, or will lie, in a folder. */
    public Authority(Path folder) {
        this.folder = folder;
    }

    /** The certificate by which a tablet is told to trust the authority. */
    public Path certificate() {
        return folder.resolve("authority.pem");
    }

    /** Makes what is missing or runs out. */
    public Pair prepare(String host, Set<String> addresses, Instant now) {
        try {
            Files.createDirectories(folder);
            if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
                Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
            }
            if (!Files.exists(certificate()) || !Files.exists(folder.resolve("authority.key")) || !vouchesFor(host)) {
                makeAuthority(host, now);
            }
            Path certificate = folder.resolve("service.pem");
            Path key = folder.resolve("service.key");
            if (!Files.exists(certificate) || !Files.exists(key) || !holds(certificate, host, addresses, now)) {
                issue(certificate, key, host, addresses, now);
            }
            return new Pair(certificate, key);
        } catch (IOException | GeneralSecurityException | OperatorCreationException failed) {
            throw new IllegalStateException("The certificate of the bakery could not be made in " + folder.toAbsolutePath() + ": " + failed.getMessage(), failed);
        }
    }

    private static boolean local(String host) {
        return LOCAL.stream().anyMatch(end -> host.equals(end) || host.endsWith("." + end));
    }

    private boolean vouchesFor(String host) throws IOException, GeneralSecurityException {
        return local(host) || read(certificate()).getSubjectX500Principal().getName().contains(host);
    }

    private void makeAuthority(String host, Instant now) throws IOException, GeneralSecurityException, OperatorCreationException {
        KeyPair pair = pair();
        X500Name name = new X500NameBuilder(BCStyle.INSTANCE).addRDN(BCStyle.CN, "Trivet at " + host).addRDN(BCStyle.OU, Long.toString(now.getEpochSecond(), 36)).build();
        JcaX509v3CertificateBuilder builder = builder(name, name, pair.getPublic(), now, AUTHORITY_HOLDS);
        builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(0));
        builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.keyCertSign | KeyUsage.cRLSign));
        List<GeneralSubtree> permitted = new ArrayList<>();
        LOCAL.forEach(end -> permitted.add(new GeneralSubtree(new GeneralName(GeneralName.dNSName, end))));
        if (!local(host)) {
            permitted.add(new GeneralSubtree(new GeneralName(GeneralName.dNSName, host)));
        }
        PRIVATE.forEach(range -> permitted.add(new GeneralSubtree(new GeneralName(GeneralName.iPAddress, range))));
        builder.addExtension(Extension.nameConstraints, true, new NameConstraints(permitted.toArray(GeneralSubtree[]::new), null));
        builder.addExtension(Extension.subjectKeyIdentifier, false, new JcaX509ExtensionUtils().createSubjectKeyIdentifier(pair.getPublic()));
        X509Certificate made = signed(builder, pair.getPrivate());
        write(folder.resolve("authority.key"), pem(new JcaPKCS8Generator(pair.getPrivate(), null)));
        write(certificate(), pem(made));
        Files.deleteIfExists(folder.resolve("service.pem"));
    }

    private void issue(Path certificate, Path key, String host, Set<String> addresses, Instant now) throws IOException, GeneralSecurityException, OperatorCreationException {
        X509Certificate authority = read(certificate());
        KeyPair pair = pair();
        X500Name issuer = X500Name.getInstance(authority.getSubjectX500Principal().getEncoded());
        JcaX509v3CertificateBuilder builder = builder(issuer, new X500NameBuilder(BCStyle.INSTANCE).addRDN(BCStyle.CN, host).build(), pair.getPublic(), now, SERVICE_HOLDS);
        builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
        builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.digitalSignature));
        builder.addExtension(Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
        List<GeneralName> names = new ArrayList<>();
        names(host).forEach(name -> names.add(new GeneralName(GeneralName.dNSName, name)));
        addresses.forEach(address -> names.add(new GeneralName(GeneralName.iPAddress, address)));
        builder.addExtension(Extension.subjectAlternativeName, false, new GeneralNames(names.toArray(GeneralName[]::new)));
        builder.addExtension(Extension.authorityKeyIdentifier, false, new JcaX509ExtensionUtils().createAuthorityKeyIdentifier(authority));
        X509Certificate made = signed(builder, key(folder.resolve("authority.key")));
        write(key, pem(new JcaPKCS8Generator(pair.getPrivate(), null)));
        write(certificate, pem(made));
    }

    private static Set<String> names(String host) {
        return new TreeSet<>(List.of(host, "localhost"));
    }

    private static boolean holds(Path file, String host, Set<String> addresses, Instant now) throws IOException, GeneralSecurityException {
        X509Certificate certificate = read(file);
        Set<String> inIt = new TreeSet<>();
        for (List<?> name : certificate.getSubjectAlternativeNames()) {
            inIt.add(String.valueOf(name.get(1)));
        }
        return certificate.getNotAfter().toInstant().isAfter(now.plus(RENEWED_BEFORE)) && inIt.containsAll(names(host)) && inIt.containsAll(addresses);
    }

    /** The private addresses of this machine, version 4. */
    public static Set<String> addresses() {
        Set<String> all = new TreeSet<>(Set.of("127.0.0.1"));
        try {
            for (NetworkInterface card : Collections.list(NetworkInterface.getNetworkInterfaces())) {
                for (InetAddress address : Collections.list(card.getInetAddresses())) {
                    if (address instanceof Inet4Address && (address.isSiteLocalAddress() || address.isLinkLocalAddress())) {
                        all.add(address.getHostAddress());
                    }
                }
            }
        } catch (java.net.SocketException none) {
            return all;
        }
        return all;
    }

    /** Reads a certificate in PEM. */
    public static X509Certificate read(Path file) throws IOException, GeneralSecurityException {
        try (var in = Files.newInputStream(file)) {
            return (X509Certificate) CertificateFactory.getInstance("X.509").generateCertificate(in);
        }
    }

    private static KeyPair pair() throws GeneralSecurityException {
        KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
        generator.initialize(new ECGenParameterSpec("secp256r1"));
        return generator.generateKeyPair();
    }

    private static JcaX509v3CertificateBuilder builder(X500Name issuer, X500Name subject, PublicKey key, Instant now, Duration holds) {
        return new JcaX509v3CertificateBuilder(issuer, new BigInteger(120, new SecureRandom()).setBit(119), Date.from(now.minus(Duration.ofDays(1))), Date.from(now.plus(holds).minus(Duration.ofDays(1))), subject, key);
    }

    private static X509Certificate signed(JcaX509v3CertificateBuilder builder, PrivateKey by) throws GeneralSecurityException, OperatorCreationException {
        return new JcaX509CertificateConverter().getCertificate(builder.build(new JcaContentSignerBuilder("SHA256withECDSA").build(by)));
    }

    private static PrivateKey key(Path file) throws IOException {
        try (Reader in = Files.newBufferedReader(file); PEMParser parser = new PEMParser(in)) {
            Object read = parser.readObject();
            return new JcaPEMKeyConverter().getPrivateKey(read instanceof PEMKeyPair pair ? pair.getPrivateKeyInfo() : (PrivateKeyInfo) read);
        }
    }

    private static String pem(Object object) throws IOException {
        StringWriter text = new StringWriter();
        try (JcaPEMWriter writer = new JcaPEMWriter(text)) {
            writer.writeObject(object);
        }
        return text.toString();
    }

    private static void write(Path file, String text) throws IOException {
        Path beside = Files.createTempFile(file.getParent(), file.getFileName().toString(), ".new");
        Files.write(beside, text.getBytes(StandardCharsets.US_ASCII));
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }
}

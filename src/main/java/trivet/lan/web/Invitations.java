package trivet.lan.web;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import trivet.measure.Digest;

/** Codes by which one tablet each may join, for a quarter of an hour. They are kept in memory, as hashes; many wrong codes end them all. */
@ApplicationScoped
public class Invitations {

    static final Duration HOLDS = Duration.ofMinutes(15);
    private static final int MOST_WRONG = 20;
    /** Letters and digits that cannot be taken for one another. */
    private static final String SIGNS = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
    private static final int LENGTH = 8;

    @Inject
    Clock clock;

    private final Map<String, Invitation> open = new ConcurrentHashMap<>();
    private final AtomicInteger wrong = new AtomicInteger();

    private record Invitation(String name, String by, Instant until) {
    }

    /** Who joins: the name of the tablet, and the owner who invited it. */
    record Guest(String name, String by) {
    }

    /** A new code for a tablet of that name. */
    String invite(String name, String by) {
        SecureRandom random = new SecureRandom();
        String code = random.ints(LENGTH, 0, SIGNS.length()).mapToObj(i -> String.valueOf(SIGNS.charAt(i))).reduce("", String::concat);
        wrong.set(0);
        open.values().removeIf(one -> !clock.instant().isBefore(one.until()));
        open.put(Digest.sha256(code), new Invitation(name, by, clock.instant().plus(HOLDS)));
        return code;
    }

    /** Whether a code may still be used. */
    boolean valid(String code) {
        Invitation found = open.get(Digest.sha256(plain(code)));
        return found != null && clock.instant().isBefore(found.until());
    }

    /** Takes a code, which works once. */
    Optional<Guest> take(String code) {
        Invitation found = open.remove(Digest.sha256(plain(code)));
        if (found == null || !clock.instant().isBefore(found.until())) {
            if (wrong.incrementAndGet() >= MOST_WRONG) {
                open.clear();
            }
            return Optional.empty();
        }
        return Optional.of(new Guest(found.name(), found.by()));
    }

    private static String plain(String typed) {
        return typed.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
    }
}

package trivet.site.web;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import trivet.measure.Digest;
import trivet.people.People;
import trivet.words.Words;

/** Who is signed in, and how often a PIN was wrong; kept in memory, so that a restart signs everybody out. */
@ApplicationScoped
public class Sessions {

    private static final int WRONG_ALLOWED = 5;
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(30);
    private static final Duration IDLE = Duration.ofSeconds(75);
    private static final Duration OWNER_IDLE = Duration.ofMinutes(30);

    @Inject
    People people;
    @Inject
    Clock clock;

    private final Map<String, Session> byToken = new ConcurrentHashMap<>();
    private final Map<String, Wrong> wrong = new ConcurrentHashMap<>();

    /** A person signed in on a tablet; as owner when the password was given. */
    record Session(String person, boolean owner, Instant seen) {
    }

    private record Wrong(int count, Instant last) {
    }

    /** Signs a person in by PIN; refuses with a sentence. */
    String byPin(String person, String pin) {
        return signIn(person, false, () -> people.pinMatches(person, pin), Words.say("j_that_is_not_the_pin_try"));
    }

    /** Signs an owner in by password; refuses with a sentence. */
    String byPassword(String person, String password) {
        return signIn(person, true, () -> passwordMatches(person, password), Words.say("j_that_is_not_the_password_try"));
    }

    /** Whether an owner's password is right, counting wrong ones. */
    boolean passwordMatches(String person, String password) {
        return people.find(person).map(p -> p.owner() && p.active()).orElse(false) && people.passwordMatches(person, password);
    }

    private String signIn(String person, boolean owner, java.util.function.BooleanSupplier check, String refusal) {
        Wrong before = wrong.get(person);
        if (before != null && before.count() >= WRONG_ALLOWED) {
            Instant again = before.last().plus(waitAfter(before.count()));
            if (again.isAfter(clock.instant())) {
                throw new IllegalArgumentException(Words.say("j_too_many_wrong_tries_wait_min", (Duration.between(clock.instant(), again).toSeconds() / 60 + 1)));
            }
        }
        if (!people.find(person).map(p -> p.active()).orElse(false) || !check.getAsBoolean()) {
            wrong.merge(person, new Wrong(1, clock.instant()), (old, one) -> new Wrong(old.count() + 1, one.last()));
            throw new IllegalArgumentException(refusal);
        }
        wrong.remove(person);
        byte[] random = new byte[32];
        new SecureRandom().nextBytes(random);
        String token = HexFormat.of().formatHex(random);
        byToken.put(Digest.sha256(token), new Session(person, owner, clock.instant()));
        return token;
    }

    private static Duration waitAfter(int count) {
        Duration wait = Duration.ofMinutes(1L << Math.min(10, count - WRONG_ALLOWED));
        return wait.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait;
    }

    /**
     * The session of a token, if it has not been idle too long: 60 s, and 15 s for the tablet's word that somebody is there.
     *
     * @param attended whether somebody asks, which keeps it alive, and not the page by itself
     */
    Optional<Session> seen(String token, boolean attended) {
        String key = Digest.sha256(token);
        Session session = byToken.get(key);
        if (session == null) {
            return Optional.empty();
        }
        Duration idle = session.owner() ? OWNER_IDLE : IDLE;
        if (session.seen().plus(idle).isBefore(clock.instant())) {
            byToken.remove(key);
            return Optional.empty();
        }
        if (!attended) {
            return Optional.of(session);
        }
        Session now = new Session(session.person(), session.owner(), clock.instant());
        byToken.put(key, now);
        return Optional.of(now);
    }

    /** Ends a session. */
    void end(String token) {
        byToken.remove(Digest.sha256(token));
    }
}

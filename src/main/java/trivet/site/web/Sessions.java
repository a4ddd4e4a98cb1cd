package trivet.site.web;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import trivet.measure.Digest;
import trivet.ledger.Tries;
import trivet.people.People;
import trivet.people.Person;
import trivet.site.Sites;
import trivet.words.Words;

/** Who is signed in, kept in memory, so that a restart signs everybody out; wrong tries are kept on disk, so that it does not forget them. */
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
    @Inject
    Tries tries;
    @Inject
    Sites sites;

    private final Map<String, Session> byToken = new ConcurrentHashMap<>();

    /** A person signed in on a tablet; as owner when the password was given. */
    record Session(String person, boolean owner, Instant seen) {
    }

    /** Signs a person in by PIN; refuses with a sentence. */
    String byPin(String person, String pin) {
        return signIn(person, false, () -> people.pinMatches(person, pin), Words.say("j_that_is_not_the_pin_try"));
    }

    /** Signs a person in by the text on a badge; refuses with a sentence. */
    String byBadge(String text) {
        String person = People.onBadge(text).orElseThrow(() -> new IllegalArgumentException(Words.say("j_that_is_no_badge")));
        return signIn(person, false, () -> people.badgeMatches(person, text), Words.say("j_that_is_no_badge"));
    }

    /** Signs an owner in by password; refuses with a sentence. */
    String byPassword(String person, String password) {
        return signIn(person, true, () -> passwordMatches(person, password), Words.say("j_that_is_not_the_password_try"));
    }

    /** Whether an owner's password is right, counting wrong ones. */
    boolean passwordMatches(String person, String password) {
        return people.find(person).map(p -> p.owner() && here(p)).orElse(false) && people.passwordMatches(person, password);
    }

    private String signIn(String person, boolean owner, java.util.function.BooleanSupplier check, String refusal) {
        tries.wrong(person).filter(before -> before.count() >= WRONG_ALLOWED).map(before -> before.last().plus(waitAfter(before.count()))).filter(again -> again.isAfter(clock.instant())).ifPresent(again -> {
            throw new IllegalArgumentException(Words.say("j_too_many_wrong_tries_wait_min", (Duration.between(clock.instant(), again).toSeconds() / 60 + 1)));
        });
        Optional<Person> known = people.find(person);
        if (!known.map(Person::active).orElse(false) || !check.getAsBoolean()) {
            known.ifPresent(p -> tries.failed(person));
            throw new IllegalArgumentException(refusal);
        }
        if (!here(known.get())) {
            throw new IllegalArgumentException(Words.say("j_the_last_day_is_over", known.get().name(), known.get().lastDay().orElseThrow()));
        }
        tries.succeeded(person);
        byte[] random = new byte[32];
        new SecureRandom().nextBytes(random);
        String token = HexFormat.of().formatHex(random);
        byToken.put(Digest.sha256(token), new Session(person, owner, clock.instant()));
        return token;
    }

    /** Whether a person may sign in today. */
    boolean here(Person person) {
        return person.here(sites.current().map(site -> site.dayOf(clock.instant())).orElse(LocalDate.EPOCH));
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

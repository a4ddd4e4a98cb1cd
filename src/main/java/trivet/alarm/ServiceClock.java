package trivet.alarm;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.LongSupplier;
import trivet.ledger.Ids;
import trivet.ledger.Journal;
import trivet.words.Words;

/**
 * Whether the service's own clock can be trusted, by which the tablets' clocks are told how far they are off. It is compared with what the processor has
 * counted since the last look, and with the moment of the last record: a clock that was set, or a machine that slept, is told, and so is one that stands
 * before the last record it took in.
 */
@ApplicationScoped
public class ServiceClock {

    /** A difference up to this is no matter; common practice, no source. */
    static final Duration TOLERANCE = Duration.ofMinutes(1);
    private static final Duration TOLD_FOR = Duration.ofHours(12);

    @Inject
    Clock clock;
    @Inject
    Journal journal;
    LongSupplier nanos = System::nanoTime;
    private Mark last;
    private Jump jump;

    private record Mark(Instant wall, long nanos) {
    }

    private record Jump(Instant at, Duration by) {
    }

    /** What is the matter with the clock, if anything. */
    public synchronized Optional<Alarm> look() {
        Instant now = clock.instant();
        Mark mark = new Mark(now, nanos.getAsLong());
        if (last != null) {
            Duration by = Duration.between(last.wall(), now).minusNanos(mark.nanos() - last.nanos());
            jump = by.abs().compareTo(TOLERANCE) > 0 ? new Jump(now, by) : jump;
        }
        last = mark;
        Optional<Instant> received = journal.lastReceived().filter(at -> at.isAfter(now.plus(TOLERANCE)));
        if (received.isPresent()) {
            return Optional.of(alarm("behind/" + received.get(), Words.say("alarm.clock_behind", Duration.between(now, received.get()).toMinutes()), now));
        }
        return Optional.ofNullable(jump).filter(one -> Duration.between(one.at(), now).abs().compareTo(TOLD_FOR) < 0)
                .map(one -> alarm("jump/" + one.at(), Words.say("alarm.clock_jumped", one.by().toMinutes()), one.at()));
    }

    private static Alarm alarm(String id, String words, Instant since) {
        return new Alarm(Ids.derived("service-clock/" + id), Alarm.Kind.SERVICE_CLOCK, "Trivet", "service-clock", words, "/wall", since);
    }
}

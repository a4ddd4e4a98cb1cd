package trivet.ledger;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.words.Words;

/**
 * The best time of a record: when it was typed and when it claims to have been measured, worked out of the tablet's clocks. The raw ones stay in the
 * record. A tablet that knew its offset from the service's clock when it wrote has set its time right itself. For one that did not know it, the
 * monotonic clock tells how long before sending it was written; where that one stopped in between (another session, a sleep), the wall clock does.
 *
 * @param claimed when it was measured or done: as the person said, or the moment of typing
 * @param entered when it was typed
 * @param uncertainty how far off, either way, {@code entered} may be; empty where nothing tells
 * @param offset what was to be added to the tablet's wall clock; empty where it was never compared with the service's
 * @param setBack how far the tablet's wall clock had been set back since it was last seen right; zero for not at all
 * @param stated whether the person stated another time than the moment of typing
 * @param session the run of the tablet's monotonic clock; within one, elapsed time is sure whatever the wall clock says
 */
public record BestTime(Instant claimed, Instant entered, Optional<Duration> uncertainty, Optional<Duration> offset, Duration setBack, boolean stated, Optional<String> session) {

    /** From which offset on a clock is called wrong; common practice, no source. */
    public static final Duration WRONG = Duration.ofSeconds(60);
    /** How far two clocks run apart, as a share: 100 parts in a million; common practice, no source. */
    private static final long DRIFT_PARTS = 10_000;
    private static final Duration SAME_MOMENT = Duration.ofSeconds(2);
    private static final Duration MOST = Duration.ofDays(30_000);

    /** What is to be said of the clocks of a record. */
    public enum Mark {
        OFF, NEVER_COMPARED, SET_BACK, UNSURE
    }

    /** The clocks of a tablet at the moment of sending. */
    public record Sending(String session, BigDecimal monotonicMs, Instant wall) {

        /** Reads {@code session;milliseconds;wall}; empty for anything else. */
        public static Optional<Sending> read(String text) {
            String[] parts = text == null ? new String[0] : text.split(";", -1);
            try {
                return parts.length == 3 && parts[1].matches("\\d{1,15}(\\.\\d{1,6})?") ? Optional.of(new Sending(parts[0], new BigDecimal(parts[1]), instant(parts[2]))) : Optional.empty();
            } catch (NumberFormatException | java.time.DateTimeException unreadable) {
                return Optional.empty();
            }
        }
    }

    /**
     * Works it out.
     *
     * @param clock the field {@code device_clock} of the record
     * @param claimed the claimed time as sent
     * @param received when the service had it
     * @param sent the tablet's clocks when it sent it
     */
    public static BestTime of(Fields clock, Instant claimed, Instant received, Optional<Sending> sent) {
        Instant wall = instant(clock.text("wall").orElseThrow());
        Duration setBack = millis(clock, "set_back_ms").filter(back -> !back.isNegative()).orElse(Duration.ZERO);
        Optional<Duration> offset = millis(clock, "offset_ms");
        Instant shown = wall.plus(offset.orElse(Duration.ZERO)).plus(setBack);
        boolean stated = Duration.between(shown, claimed).abs().compareTo(SAME_MOMENT) > 0;
        if (offset.isPresent()) {
            Duration trip = millis(clock, "offset_trip_ms").orElse(SAME_MOMENT);
            Duration age = clock.decimal("offset_age_s").filter(s -> s.abs().compareTo(BigDecimal.valueOf(1L << 32)) < 0).map(s -> Duration.ofSeconds(s.longValue()).abs()).orElse(Duration.ofDays(1));
            return new BestTime(claimed, shown, Optional.of(trip.dividedBy(2).plus(age.dividedBy(DRIFT_PARTS)).plus(setBack).truncatedTo(ChronoUnit.MILLIS)), offset, setBack, stated, clock.text("session"));
        }
        return sent.map(at -> unmet(clock, claimed, received, at, wall, setBack, stated)).orElseGet(() -> new BestTime(claimed, shown, Optional.empty(), Optional.empty(), setBack, stated, clock.text("session")));
    }

    private static BestTime unmet(Fields clock, Instant claimed, Instant received, Sending sent, Instant wall, Duration setBack, boolean stated) {
        Duration byWall = Duration.between(wall, sent.wall());
        Optional<BigDecimal> mono = clock.decimal("monotonic_ms").filter(ms -> Math.abs(ms.scale()) <= 20 && ms.precision() <= 40 && clock.text("session").map(sent.session()::equals).orElse(false) && ms.compareTo(sent.monotonicMs()) <= 0);
        Optional<Duration> byMono = mono.map(ms -> Duration.ofMillis(sent.monotonicMs().subtract(ms).longValue()));
        Duration ago = byMono.map(low -> byWall.compareTo(low) > 0 ? byWall : low).orElse(byWall.isNegative() ? Duration.ZERO : byWall);
        Optional<Duration> uncertainty = byMono.map(low -> ago.minus(low).plus(SAME_MOMENT).plus(ago.dividedBy(DRIFT_PARTS)).truncatedTo(ChronoUnit.MILLIS));
        Instant entered = received.minus(ago).truncatedTo(ChronoUnit.MILLIS);
        Instant shown = wall.plus(setBack);
        return new BestTime(stated ? claimed : claimed.plus(Duration.between(shown, entered)), entered, uncertainty, Optional.of(Duration.between(shown, entered)), setBack, stated, clock.text("session"));
    }

    /** A time that is sure, such as one of the service's own clock. */
    public static BestTime sure(Instant claimed, Instant entered) {
        return new BestTime(claimed, entered, Optional.of(Duration.ZERO), Optional.of(Duration.ZERO), Duration.ZERO, !claimed.equals(entered), Optional.empty());
    }

    /** What is to be said of the clocks. */
    public Set<Mark> marks() {
        Set<Mark> marks = EnumSet.noneOf(Mark.class);
        if (offset.isEmpty()) {
            marks.add(Mark.NEVER_COMPARED);
        }
        if (offset.filter(by -> by.abs().compareTo(WRONG) > 0).isPresent()) {
            marks.add(Mark.OFF);
        }
        if (setBack.compareTo(SAME_MOMENT) > 0) {
            marks.add(Mark.SET_BACK);
        }
        if (offset.isPresent() && (uncertainty.isEmpty() || uncertainty.get().compareTo(WRONG) > 0)) {
            marks.add(Mark.UNSURE);
        }
        return marks;
    }

    /** What is to be said of the clocks, in words; empty where there is nothing to say. */
    public String words() {
        return marks().stream().map(mark -> switch (mark) {
            case OFF -> offset.orElseThrow().isNegative() ? Words.say("clock.ahead", length(offset.orElseThrow())) : Words.say("clock.behind", length(offset.orElseThrow()));
            case NEVER_COMPARED -> Words.say("clock.never");
            case SET_BACK -> Words.say("clock.back", length(setBack));
            case UNSURE -> uncertainty.map(by -> Words.say("clock.sure", length(by))).orElse(Words.say("clock.unsure"));
        }).collect(Collectors.joining(" "));
    }

    private static String length(Duration time) {
        long minutes = time.abs().plusSeconds(30).toMinutes();
        return minutes < 60 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
    }

    /** As it is kept beside the verdict, so that it is never worked out anew. */
    public Map<String, Object> kept() {
        Map<String, Object> kept = new LinkedHashMap<>();
        kept.put("claimed", claimed.toString());
        kept.put("entered", entered.toString());
        kept.put("uncertainty_ms", uncertainty.map(Duration::toMillis).map(BigDecimal::valueOf).orElse(null));
        kept.put("offset_ms", offset.map(Duration::toMillis).map(BigDecimal::valueOf).orElse(null));
        kept.put("set_back_ms", BigDecimal.valueOf(setBack.toMillis()));
        kept.put("stated", stated);
        kept.put("session", session.orElse(null));
        return kept;
    }

    /** What was kept beside a verdict. */
    public static BestTime read(Fields kept) {
        return new BestTime(instant(kept.text("claimed").orElseThrow()), instant(kept.text("entered").orElseThrow()), millis(kept, "uncertainty_ms"), millis(kept, "offset_ms"),
                millis(kept, "set_back_ms").orElse(Duration.ZERO), kept.flag("stated"), kept.text("session"));
    }

    private static Optional<Duration> millis(Fields from, String name) {
        return from.decimal(name).filter(ms -> ms.abs().compareTo(BigDecimal.valueOf(MOST.toMillis())) < 0).map(ms -> Duration.ofMillis(ms.longValue()));
    }

    private static Instant instant(String text) {
        return OffsetDateTime.parse(text).toInstant().truncatedTo(ChronoUnit.MILLIS);
    }
}

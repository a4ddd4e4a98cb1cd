package trivet.demo;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import trivet.ledger.Ids;

/**
 * October 2026 at the demo bakery, from a fixed seed: trays cool by Newton's law with a time constant of their own,
 * fridges wander slowly, and the month has its honest untidiness.
 */
final class Month {

    private static final List<String> PRODUCTS = List.of("deep-quiche", "gluten-free-quiche", "meat-roll", "cheese-slice");
    private static final List<String> BAKERS = List.of("ana", "ben", "chidi");
    private final ZoneId zone;
    private final Random random = new Random(20261001);
    final Tape tape;
    private int counter;
    private final Map<String, Double> fridges = new LinkedHashMap<>(Map.of("fridge-1", 4.2, "fridge-2", 4.8, "freezer-1", -20.5));

    Month(ZoneId zone) {
        this.zone = zone;
        this.tape = new Tape(zone, random);
    }

    private Instant at(LocalDate day, LocalTime time) {
        return day.atTime(time).atZone(zone).toInstant();
    }

    void october() {
        for (LocalDate day = LocalDate.of(2026, 10, 1); day.getMonthValue() == 10; day = day.plusDays(1)) {
            boolean closed = day.getDayOfWeek() == DayOfWeek.SUNDAY || day.getDayOfMonth() == 26;
            units(day, closed);
            if (closed) {
                tape.add("closed-day", "olive", null, at(day, LocalTime.of(7, 0)), Map.of("day", day.toString(),
                        "reason", day.getDayOfMonth() == 26 ? "Oven serviced, no baking" : "Sunday, closed"));
            } else {
                int batches = 13 + random.nextInt(6);
                for (int i = 0; i < batches; i++) {
                    bake(day, i);
                }
                for (String programme : List.of("allergens", "gluten")) {
                    tape.add("programme-check", BAKERS.get(day.getDayOfMonth() % 3), null, at(day, LocalTime.of(9, 2)), Map.of("item", programme, "good", true));
                }
            }
            if (day.getDayOfWeek() == DayOfWeek.MONDAY) {
                probes(day);
            }
            if (day.getDayOfMonth() <= 24 && !closed) {
                tape.add("day-reviewed", "olive", null, at(day.plusDays(1), LocalTime.of(9, 30)), Map.of("day", day.toString()));
            }
        }
    }

    private void units(LocalDate day, boolean closed) {
        for (String unit : List.of("fridge-1", "fridge-2", "freezer-1")) {
            double base = unit.equals("freezer-1") ? -20.5 : unit.equals("fridge-1") ? 4.2 : 4.8;
            for (int hour : new int[] {6, 14}) {
                double now = fridges.get(unit) + 0.6 * (base - fridges.get(unit)) + 0.35 * random.nextGaussian();
                fridges.put(unit, now);
                if (closed) {
                    continue;
                }
                Instant when = at(day, LocalTime.of(hour, random.nextInt(10)));
                boolean warm = day.getDayOfMonth() == 13 && hour == 14 && unit.equals("fridge-2");
                String id = tape.add("unit-reading", BAKERS.get(random.nextInt(3)), null, when, Map.of("unit", unit, "temperature", Tape.celsius(warm ? 9.4 : now)));
                if (warm) {
                    tape.add("unit-reading", "ben", null, when.plus(Duration.ofMinutes(31)), Map.of("unit", unit, "temperature", Tape.celsius(6.8), "recheck_of", id));
                    answer(Ids.derived("fridge-2/deviation/" + id), null, "ben", when.plus(Duration.ofMinutes(50)), "Door found ajar after a delivery", "none-affected", "olive");
                    verify(Ids.derived("fridge-2/deviation/" + id), null, when.plus(Duration.ofHours(3)));
                }
            }
        }
    }

    private void probes(LocalDate day) {
        for (String probe : List.of("P1", "P2")) {
            boolean off = probe.equals("P2") && day.getDayOfMonth() == 19;
            Instant when = at(day, LocalTime.of(5, 10));
            tape.add("probe-check", "ana", null, probe, when, when.plusSeconds(30), Map.of("probe", probe, "method", "ice", "temperature", Tape.celsius(off ? 1.6 : 0.1 + 0.2 * random.nextGaussian())));
            if (off) {
                Instant again = when.plus(Duration.ofHours(6));
                tape.add("probe-check", "ana", null, probe, again, again.plusSeconds(30), Map.of("probe", probe, "method", "ice", "temperature", Tape.celsius(0.2)));
            }
        }
    }

    private void answer(String deviation, String batch, String person, Instant at, String cause, String disposition, String decidedBy) {
        tape.add("deviation-answer", person, batch, at, Map.of("deviation", deviation, "what_happened", "Seen at the check and set apart at once", "cause", cause,
                "control_restored", "Within again at the next reading", "disposition", disposition, "decided_by", decidedBy, "prevention", "Talked through at the morning meeting"));
    }

    private void verify(String deviation, String batch, Instant at) {
        tape.add("deviation-verified", "olive", batch, at, Map.of("deviation", deviation));
    }

    /** Begins a batch of the day and takes it as far as until. */
    private void bake(LocalDate day, int i) {
        Instant start = at(day, LocalTime.of(4, 15)).plus(Duration.ofMinutes(28L * i + random.nextInt(9)));
        batch(day, i, start, Instant.MAX, false);
    }

    /** One batch from the start until a moment after which nothing is recorded. */
    String batch(LocalDate day, int i, Instant start, Instant until, boolean slow) {
        String product = PRODUCTS.get(i % PRODUCTS.size());
        String person = BAKERS.get(random.nextInt(3));
        String id = Ids.uuid7(start, random);
        Tape here = until.equals(Instant.MAX) ? tape : new Tape(zone, random);
        boolean ownProbe = product.startsWith("gluten-free") && !(until.equals(Instant.MAX) && day.getDayOfMonth() == 19);
        here.take(ownProbe ? "P2" : "P1");
        int pieces = 24 + 12 * random.nextInt(3);
        int date = day.getDayOfMonth();
        boolean october = until.equals(Instant.MAX);
        Map<String, Object> begun = new LinkedHashMap<>();
        begun.put("product", product);
        begun.put("code", String.format("A-%04d", ++counter));
        begun.put("line", product.startsWith("gluten-free") ? "gluten-free" : "wheat");
        begun.put("trays", pieces / 12);
        begun.put("pieces", pieces);
        begun.put("oven", "oven-" + (1 + i % 2));
        here.add("batch-started", person, id, start, begun);
        if (product.startsWith("gluten-free")) {
            here.add("plan-check", person, id, start.plusSeconds(40), Map.of("item", "changeover", "good", true));
        }
        Instant probed = start.plus(Duration.ofMinutes(product.equals("deep-quiche") ? 50 : product.equals("meat-roll") ? 35 : 45));
        double core = 78 + 5 * random.nextDouble();
        boolean failed = october && date == 6 && i == 3;
        if (failed) {
            here.add("cook-reading", person, id, probed, core(71.2, 1));
            here.add("back-in-oven", person, id, probed.plusSeconds(90), Map.of());
            probed = probed.plus(Duration.ofMinutes(9));
        }
        String first = here.add("cook-reading", person, id, probed, core(october && date == 20 && i == 2 ? core + 9 : core, 1));
        if (october && date == 20 && i == 2) {
            here.add("correction", person, id, probed.plusSeconds(200), Map.of("of", first, "reason", "Typed 8 for 7", "data", Map.of("temperature", Tape.celsius(core))));
        }
        here.add("cook-reading", person, id, probed.plusSeconds(50), core(core - 1.1 * random.nextDouble(), 2));
        Instant out = probed.plus(Duration.ofMinutes(2));
        here.add("out-of-oven", person, id, out, Map.of());
        here.add("moved", person, id, out.plus(Duration.ofMinutes(6)), Map.of("place", "chiller-1"));
        boolean slowTray = slow || (october && date == 9 && i == 1);
        cool(here, day, i, id, person, out, core, slowTray, october);
        here.ordered().stream().filter(line -> !until.equals(Instant.MAX) && !line.entered().isAfter(until)).forEach(line -> tape.add(line.kind(), line.person(),
                line.batch(), line.instrument(), line.claimed(), line.entered(), line.data()));
        return id;
    }

    private static Map<String, Object> core(double value, int piece) {
        return Map.of("piece", piece, "temperature", Tape.celsius(value), "held_seconds", 30);
    }

    private void cool(Tape here, LocalDate day, int i, String id, String person, Instant out, double core, boolean slow, boolean october) {
        double perMinute = slow ? 0.0205 : 0.033 + 0.004 * random.nextDouble();
        double air = -1.5 + random.nextDouble();
        int date = day.getDayOfMonth();
        for (int minute : new int[] {44, 79}) {
            if (october && date == 15 && i == 4 && minute == 44) {
                continue;
            }
            Instant when = out.plus(Duration.ofMinutes(minute + random.nextInt(3)));
            Instant entered = october && date == 17 && i < 3 ? when.plus(Duration.ofMinutes(38)) : when.plusSeconds(25);
            here.add("cooling-reading", person, id, here.probe(), when, entered, Map.of("temperature", Tape.celsius(at(air, core, perMinute, out, when))));
        }
        if (slow) {
            Instant when = out.plus(Duration.ofMinutes(97));
            String late = here.add("cooling-reading", person, id, when, Map.of("temperature", Tape.celsius(at(air, core, perMinute, out, when))));
            if (october) {
                answer(Ids.derived(id + "/deviation/" + late), id, person, when.plus(Duration.ofMinutes(20)), "Tray stood on the rack before the chiller was free", "destroy", "olive");
                here.add("destroyed", person, id, when.plus(Duration.ofMinutes(35)), Map.of("reason", "Cooled too slowly"));
            }
            return;
        }
        Instant away = out.plus(Duration.ofMinutes(84));
        here.add("plan-check", person, id, away.minusSeconds(90), Map.of("item", "label", "good", true));
        here.add("put-away", person, id, away, Map.of("unit", "fridge-" + (1 + i % 2), "use_by", day.plusDays(3).toString()));
        here.add("gone", person, id, away.plus(Duration.ofHours(20)), Map.of("how", i % 3 == 0 ? "dispatched" : "sold"));
    }

    private static double at(double air, double core, double perMinute, Instant out, Instant when) {
        double minutes = Duration.between(out, when).toSeconds() / 60.0;
        return air + (core - air) * 1.05 * Math.exp(-perMinute * minutes);
    }
}

package trivet.deviation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import trivet.check.Check;

/** What is due now or later today, of batches, units and programmes. */
@ApplicationScoped
public class DueChecks {

    @Inject
    Daybook daybook;
    @Inject
    Programmes programmes;

    /** The checks that are due, past due or not yet due, by their time. */
    public List<Check> list(List<BatchRecord> underway) {
        return all(underway).filter(check -> check.state().open() || check.state() == Check.State.NOT_YET_DUE).sorted(Comparator.comparing(Check::due)).toList();
    }

    /** Today's checks whatever became of them. */
    public Stream<Check> all(List<BatchRecord> underway) {
        LocalDate today = daybook.today();
        Stream<Check> ofBatches = underway.stream().filter(batch -> !batch.life().over()).flatMap(batch -> batch.checks().stream());
        Stream<Check> ofUnits = daybook.units(today, today).stream().flatMap(unit -> unit.checks().stream());
        Stream<Check> ofProgrammes = programmes.of(today).stream().flatMap(programme -> programme.check().stream());
        return Stream.concat(Stream.concat(ofBatches, ofUnits), ofProgrammes);
    }
}

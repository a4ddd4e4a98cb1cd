package trivet.shell;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;

/** The one clock of the service; tests put their own in its place. */
class Clocks {

    @Produces
    @Singleton
    Clock clock() {
        return Clock.systemUTC();
    }
}

package trivet.people;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;

/**
 * A person whose initials stand on records; one who has left stays known, so that old records keep their name.
 *
 * @param active whether the person may sign in, apart from the last day
 * @param lastDay the last business day on which the person may sign in, inclusive; empty while none is set
 * @param language the language of the person's screens, as a tag of BCP 47
 */
public record Person(String id, String name, String initials, Set<Role> roles, boolean active, Optional<LocalDate> lastDay, String language) {

    /** Copies the roles. */
    public Person {
        roles = Set.copyOf(roles);
    }

    /** A person without a last day, in English. */
    public Person(String id, String name, String initials, Set<Role> roles, boolean active) {
        this(id, name, initials, roles, active, Optional.empty(), "en");
    }

    /** Whether the person has the owner's role. */
    public boolean owner() {
        return roles.contains(Role.OWNER);
    }

    /** Whether the person may sign in on a business day. */
    public boolean here(LocalDate day) {
        return active && lastDay.map(last -> !day.isAfter(last)).orElse(true);
    }

    /** The same person, here or gone. */
    public Person as(boolean nowActive) {
        return new Person(id, name, initials, roles, nowActive, lastDay, language);
    }

    /** The same person until a last day, inclusive, or without one. */
    public Person until(Optional<LocalDate> last) {
        return new Person(id, name, initials, roles, active, last, language);
    }

    /** The same person in another language. */
    public Person speaking(String tag) {
        return new Person(id, name, initials, roles, active, lastDay, tag);
    }
}

package trivet.people;

import java.util.Set;

/** A person whose initials stand on records; one who has left stays known, so that old records keep their name. */
public record Person(String id, String name, String initials, Set<Role> roles, boolean active) {

    /** Copies the roles. */
    public Person {
        roles = Set.copyOf(roles);
    }

    /** Whether the person has the owner's role. */
    public boolean owner() {
        return roles.contains(Role.OWNER);
    }
}

package trivet.site.web;

import jakarta.enterprise.context.RequestScoped;
import java.util.Optional;
import trivet.device.Devices.Tablet;
import trivet.people.Person;

/** Who is asking: the tablet, and the person signed in on it. */
@RequestScoped
public class Caller {

    private Optional<Tablet> tablet = Optional.empty();
    private Optional<Person> person = Optional.empty();
    private boolean ownerSignedIn;

    void is(Optional<Tablet> askingTablet, Optional<Person> askingPerson, boolean owner) {
        tablet = askingTablet;
        person = askingPerson;
        ownerSignedIn = owner;
    }

    /** The tablet whose credential came with the request. */
    public Optional<Tablet> tablet() {
        return tablet;
    }

    /** The person signed in. */
    public Optional<Person> person() {
        return person;
    }

    /** Whether an owner is signed in with the password. */
    public boolean ownerSignedIn() {
        return ownerSignedIn;
    }
}

package trivet.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.math.BigInteger;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.ledger.Fields;
import trivet.ledger.Register;
import trivet.words.Words;

/** The people of the site, kept as versions in the register. */
@ApplicationScoped
public class People {

    /** What every badge begins with, so that a scanner's typing can be told from a person's. */
    private static final String BADGE = "TB.";

    @Inject
    Register register;

    /** Everybody, those who have left included. */
    public List<Person> list() {
        return register.latest("person").stream().map(People::person).toList();
    }

    /** The person of that id. */
    public Optional<Person> find(String id) {
        return register.latest("person", id).map(People::person);
    }

    /** The name of a person, or the bare id of one who is not known here. */
    public String name(String id) {
        return find(id).map(Person::name).orElse(id);
    }

    /** The initials of a person, or the bare id of one who is not known here. */
    public String initials(String id) {
        return find(id).map(Person::initials).orElse(id);
    }

    /** Whether an owner has been named, which ends the first start. */
    public boolean hasOwner() {
        return list().stream().anyMatch(Person::owner);
    }

    /** The language of the first owner, in which is said what nobody in particular asks for. */
    public String ownersLanguage() {
        return list().stream().filter(person -> person.owner() && person.active()).findFirst().map(Person::language).orElse(Words.FIRST);
    }

    private static Person person(Register.Version version) {
        Set<Role> roles = version.body().texts("roles").stream().map(Role::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Role.class)));
        return new Person(version.id(), version.body().text("name").orElse(version.id()),
                version.body().text("initials").orElse(version.id()), roles, version.body().flag("active"),
                version.body().text("last_day").map(LocalDate::parse), version.body().text("language").orElse("en"));
    }

    /** Adds a person, or writes a further version of one. */
    public void write(Person person, String by) {
        Map<String, Object> body = new LinkedHashMap<>(Map.of("name", person.name(), "initials", person.initials(),
                "roles", person.roles().stream().map(Role::name).sorted().toList(), "active", person.active(), "language", person.language()));
        person.lastDay().ifPresent(day -> body.put("last_day", day.toString()));
        register.write("person", person.id(), by, Fields.of(body));
    }

    /** Gives a person a PIN of four to eight digits. */
    public void setPin(String person, String pin, String by) {
        if (!pin.matches("\\d{4,8}")) {
            throw new IllegalArgumentException(Words.say("j_a_pin_has_four_to_eight_2"));
        }
        Secret secret = Secret.of(pin);
        register.write("secret", "pin/" + person, by, Fields.of(Map.of("salt", secret.salt(), "iterations", secret.iterations(), "hash", secret.hash(), "digits", pin.length())));
    }

    /** Gives an owner a password of at least ten characters. */
    public void setPassword(String person, String password, String by) {
        if (password.length() < 10) {
            throw new IllegalArgumentException(Words.say("j_a_password_has_at_least_ten"));
        }
        write("password/" + person, Secret.of(password), by);
    }

    /**
     * Gives a person a new badge, which ends an older one.
     *
     * @return what the badge says, to be printed; it is given once and only its hash is kept
     */
    public String newBadge(String person, String by) {
        byte[] random = new byte[10];
        new SecureRandom().nextBytes(random);
        String text = BADGE + person + "." + new BigInteger(1, random).toString(36);
        write("badge/" + person, Secret.of(text), by);
        return text;
    }

    /** Whose badge a text claims to be; empty for a text that is none. */
    public static Optional<String> onBadge(String text) {
        int end = text.lastIndexOf('.');
        return text.startsWith(BADGE) && end > BADGE.length() ? Optional.of(text.substring(BADGE.length(), end)) : Optional.empty();
    }

    /** Whether the text is the one on the person's present badge. */
    public boolean badgeMatches(String person, String text) {
        return matches("badge/" + person, text);
    }

    /** A person's badge as it is stored, so that a tablet can check one without a network; empty for a person without. */
    public Optional<Secret> badge(String person) {
        return secret("badge/" + person);
    }

    private void write(String id, Secret secret, String by) {
        register.write("secret", id, by, Fields.of(Map.of("salt", secret.salt(), "iterations", secret.iterations(), "hash", secret.hash())));
    }

    /** Whether the PIN is the person's. */
    public boolean pinMatches(String person, String pin) {
        return matches("pin/" + person, pin);
    }

    /** A person's PIN as it is stored, so that a tablet can check one without a network; empty for a person without. */
    public Optional<Secret> pin(String person) {
        return secret("pin/" + person);
    }

    /** How many digits a person's PIN has, so that the last of them signs in without a further touch; empty where that was not noted. */
    public Optional<Integer> pinDigits(String person) {
        return register.latest("secret", "pin/" + person).flatMap(version -> version.body().integer("digits"));
    }

    /** Whether the password is the person's. */
    public boolean passwordMatches(String person, String password) {
        return matches("password/" + person, password);
    }

    private boolean matches(String id, String plain) {
        return secret(id).map(secret -> secret.matches(plain)).orElse(false);
    }

    private Optional<Secret> secret(String id) {
        return register.latest("secret", id).map(version -> new Secret(version.body().text("salt").orElseThrow(),
                version.body().integer("iterations").orElseThrow(), version.body().text("hash").orElseThrow()));
    }

    /** A short readable id for a new person's name that nobody has yet. */
    public String newId(String name) {
        String base = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("(^-|-$)", "");
        String id = base.isEmpty() ? "person" : base;
        for (int i = 2; find(id).isPresent(); i++) {
            id = base + "-" + i;
        }
        return id;
    }
}

package trivet.alarm;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.net.URI;
import java.time.LocalTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.ledger.Fields;
import trivet.ledger.Register;
import trivet.words.Words;

/** To whom matters are told outside the kitchen, and when not. Kept as versions in the register. */
@ApplicationScoped
public class Notices {

    private static final String ID = "notices";

    @Inject
    Register register;

    /**
     * The settings.
     *
     * @param mail addresses
     * @param hook an address to which each matter is posted
     * @param quietFrom the beginning of the quiet hours, inclusive; none where it equals their end
     * @param quietTo their end, exclusive
     */
    public record Settings(List<String> mail, Optional<URI> hook, LocalTime quietFrom, LocalTime quietTo) {

        /** Whether nobody is to be told at this time of the day; the hours may span midnight. */
        public boolean quiet(LocalTime at) {
            if (quietFrom.equals(quietTo)) {
                return false;
            }
            boolean after = !at.isBefore(quietFrom);
            boolean before = at.isBefore(quietTo);
            return quietFrom.isBefore(quietTo) ? after && before : after || before;
        }
    }

    /** The present settings: nobody, until the owner has named somebody. */
    public Settings current() {
        return register.latest("site", ID).map(version -> new Settings(version.body().texts("mail"), version.body().text("hook").map(URI::create),
                LocalTime.parse(version.body().text("quiet_from").orElse("00:00")), LocalTime.parse(version.body().text("quiet_to").orElse("00:00")))).orElse(new Settings(List.of(), Optional.empty(), LocalTime.MIDNIGHT, LocalTime.MIDNIGHT));
    }

    /**
     * Writes other settings; refuses with a sentence what cannot be used.
     *
     * @param mail addresses, apart by spaces or commas
     */
    public void write(String mail, String hook, String quietFrom, String quietTo, String by) {
        List<String> addresses = List.of(mail.strip().split("[\\s,;]+")).stream().filter(one -> !one.isEmpty()).toList();
        for (String address : addresses) {
            if (!address.matches("[^@\\s<>\"]{1,64}@[A-Za-z0-9.-]{1,190}")) {
                throw new IllegalArgumentException(Words.say("j_not_a_mail_address", address));
            }
        }
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("mail", addresses);
        if (!hook.isBlank()) {
            body.put("hook", hook(hook.strip()));
        }
        try {
            body.put("quiet_from", LocalTime.parse(quietFrom.isBlank() ? "00:00" : quietFrom.strip()).toString());
            body.put("quiet_to", LocalTime.parse(quietTo.isBlank() ? "00:00" : quietTo.strip()).toString());
        } catch (java.time.DateTimeException unreadable) {
            throw new IllegalArgumentException(Words.say("j_an_hour_is_written_like"));
        }
        register.write("site", ID, by, Fields.of(body));
    }

    private static String hook(String text) {
        try {
            URI address = new URI(text);
            if (List.of("http", "https").contains(String.valueOf(address.getScheme())) && address.getHost() != null) {
                return text;
            }
        } catch (java.net.URISyntaxException unreadable) {
            // Falls through to the refusal.
        }
        throw new IllegalArgumentException(Words.say("j_not_a_web_address", text));
    }
}

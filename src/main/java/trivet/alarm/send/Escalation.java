package trivet.alarm.send;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.quarkus.mailer.Mail;
import io.quarkus.mailer.Mailer;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import trivet.alarm.Alarms;
import trivet.alarm.Notices;
import trivet.alarm.Watch;
import trivet.people.People;
import trivet.site.Site;
import trivet.site.Sites;
import trivet.words.Words;

/**
 * Looks once a minute for what should have been seen to, and tells the owner outside the kitchen: one message of all that is new, each matter once.
 * In the quiet hours nothing is sent; what is still open when they end is. What cannot be sent is tried again the next minute.
 */
@ApplicationScoped
public class Escalation {

    private static final Logger LOG = Logger.getLogger(Escalation.class);
    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Inject
    Watch watch;
    @Inject
    Alarms alarms;
    @Inject
    Notices notices;
    @Inject
    Mailer mailer;
    @Inject
    Sites sites;
    @Inject
    People people;
    @Inject
    Clock clock;

    private final HttpClient client = HttpClient.newBuilder().connectTimeout(PATIENCE).build();

    @Scheduled(every = "60s", delayed = "30s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP, identity = "escalation")
    void eachMinute() {
        try {
            look();
        } catch (RuntimeException failed) {
            LOG.error("Looking for what is past due failed; it is done again in a minute", failed);
        }
    }

    /** Raises what is new, ends what is over, and tells what nobody has seen. Returns how many matters were told. */
    public int look() {
        return sites.current().isEmpty() ? 0 : Words.in(people.ownersLanguage(), this::lookAndTell);
    }

    private int lookAndTell() {
        alarms.present(watch.now());
        Site site = sites.current().orElseThrow();
        Notices.Settings settings = notices.current();
        List<Alarms.Raised> open = alarms.open().stream().filter(one -> one.toldAt().isEmpty()).toList();
        if (open.isEmpty() || settings.quiet(LocalTime.ofInstant(clock.instant(), site.zone()))) {
            return 0;
        }
        List<String> ways = new ArrayList<>();
        if (!settings.mail().isEmpty() && mailed(settings.mail(), subject(site, open.size()), text(site, open))) {
            ways.add("mail");
        }
        if (settings.hook().isPresent() && posted(settings.hook().get(), body(site, open))) {
            ways.add("hook");
        }
        if (ways.isEmpty()) {
            return 0;
        }
        alarms.told(open.stream().map(one -> one.alarm().id()).collect(Collectors.toSet()), String.join(", ", ways));
        return open.size();
    }

    /** Sends a message to try the settings out. Returns by which ways it went, in words. */
    public String tryOut() {
        Site site = sites.current().orElseThrow();
        Notices.Settings settings = notices.current();
        List<String> said = new ArrayList<>();
        if (!settings.mail().isEmpty()) {
            said.add(mailed(settings.mail(), Words.say("alarm.try_subject", site.name()), Words.say("alarm.try_text")) ? Words.say("alarm.mail_went") : Words.say("alarm.mail_failed"));
        }
        settings.hook().ifPresent(hook -> said.add(posted(hook, json(Map.of("format", "trivet-notice-1", "site", site.name(), "try", true, "matters", List.of()))) ? Words.say("alarm.hook_went") : Words.say("alarm.hook_failed")));
        return said.isEmpty() ? Words.say("alarm.nobody_named") : String.join(" ", said);
    }

    private static String subject(Site site, int count) {
        return Words.say("alarm.subject", site.name(), count);
    }

    private static String text(Site site, List<Alarms.Raised> open) {
        DateTimeFormatter moment = DateTimeFormatter.ofPattern("HH:mm").withZone(site.zone());
        return open.stream().map(one -> moment.format(one.alarm().since()) + "  " + one.alarm().words()).collect(Collectors.joining("\n", "", "\n\n" + Words.say("alarm.foot") + "\n"));
    }

    private static String body(Site site, List<Alarms.Raised> open) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("format", "trivet-notice-1");
        body.put("site", site.name());
        body.put("try", false);
        body.put("matters", open.stream().map(one -> Map.of("id", one.alarm().id(), "kind", one.alarm().kind().word(), "label", one.alarm().label(), "cause", one.alarm().cause(), "words", one.alarm().words(), "since", one.alarm().since().toString())).toList());
        return json(body);
    }

    private static String json(Map<String, Object> body) {
        try {
            return MAPPER.writeValueAsString(body);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private boolean mailed(List<String> to, String subject, String text) {
        try {
            mailer.send(Mail.withText(to.get(0), subject, text).setTo(to));
            return true;
        } catch (RuntimeException failed) {
            LOG.warn("A message could not be mailed; it is tried again in a minute: " + failed.getMessage());
            return false;
        }
    }

    private boolean posted(URI hook, String body) {
        try {
            HttpResponse<Void> answer = client.send(HttpRequest.newBuilder(hook).timeout(PATIENCE).header("Content-Type", "application/json").POST(HttpRequest.BodyPublishers.ofString(body)).build(), HttpResponse.BodyHandlers.discarding());
            return answer.statusCode() / 100 == 2;
        } catch (IOException failed) {
            LOG.warn("A message could not be posted; it is tried again in a minute: " + failed.getMessage());
            return false;
        } catch (InterruptedException stopping) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}

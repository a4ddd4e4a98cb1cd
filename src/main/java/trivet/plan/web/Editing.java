package trivet.plan.web;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.NotFoundException;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import trivet.knowledge.Knowledge;
import trivet.knowledge.file.KnowledgeReader;
import trivet.limit.Rulebook;
import trivet.people.People;
import trivet.people.Person;
import trivet.plan.Drafts;
import trivet.site.Confirmed;
import trivet.site.Sites;
import trivet.site.web.Caller;
import trivet.study.OpenPoints;
import trivet.study.Study;
import trivet.words.Words;

/** One change of a draft by one person: it is applied to what stands now, unless somebody else changed the very same part meanwhile. */
@RequestScoped
public class Editing {

    @Inject
    Drafts drafts;
    @Inject
    KnowledgeReader.Holder holder;
    @Inject
    OpenPoints.Trials trials;
    @Inject
    Sites sites;
    @Inject
    People people;
    @Inject
    Caller caller;
    @Inject
    Clock clock;

    /** Somebody else changed the same part since this page was opened. */
    static final class Meanwhile extends RuntimeException {
        private static final long serialVersionUID = 1;

        Meanwhile(String sentence) {
            super(sentence);
        }
    }

    Drafts drafts() {
        return drafts;
    }

    Sites sites() {
        return sites;
    }

    People people() {
        return people;
    }

    Clock clock() {
        return clock;
    }

    public Knowledge knowledge() {
        return holder.get();
    }

    /** The text of a product's draft; nothing there is a 404. */
    public Drafts.Text text(String product) {
        return drafts.text(product).orElseThrow(NotFoundException::new);
    }

    /** The hazard plan in a text; a file of the first format has none and is a 404. */
    public Study study(Drafts.Text text) {
        return text.study().orElseThrow(NotFoundException::new);
    }

    /** The rulebook in force now; empty before one is confirmed. */
    public Optional<Rulebook> rulebook() {
        return sites.inForceAt(clock.instant()).map(Confirmed::rulebook);
    }

    /** What a plan lacks before it can be approved. */
    public List<OpenPoints.OpenPoint> open(Study study) {
        return OpenPoints.of(study, knowledge(), rulebook(), trials);
    }

    /** A limit of the rulebook in force with its numbers, as it holds for a plan's kind of food; empty where there is none. */
    Optional<String> limitWords(Study study, String limit) {
        return rulebook().map(book -> book.words(limit, study.food(book.id()))).filter(words -> !words.isEmpty());
    }

    /** The date at the site, or in UTC before there is one. */
    String today() {
        return clock.instant().atZone(sites.current().map(site -> site.zone()).orElse(java.time.ZoneOffset.UTC)).toLocalDate().toString();
    }

    String me() {
        return caller.person().map(Person::id).orElseThrow();
    }

    String myName() {
        return caller.person().map(Person::name).orElseThrow();
    }

    /**
     * Changes a draft.
     *
     * @param base the hash of the text that the person saw
     * @param part what of a plan the person changes, to tell whether somebody else changed it meanwhile
     */
    Drafts.Text change(String product, String base, Function<Study, Object> part, UnaryOperator<Study> change) {
        synchronized (LOCK) {
            Drafts.Text now = text(product);
            Study current = study(now);
            if (base != null && !base.equals(now.sha256())) {
                Optional<Study> seen = drafts.earlier(product, base).flatMap(Drafts.Text::study);
                if (seen.isEmpty() || !Objects.equals(part.apply(seen.get()), part.apply(current))) {
                    throw new Meanwhile(Words.say("j_meanwhile", drafts.lastBy(product).flatMap(people::find).map(Person::name).orElse("?")));
                }
            }
            return drafts.save(change.apply(current), me());
        }
    }

    private static final Object LOCK = new Object();
}

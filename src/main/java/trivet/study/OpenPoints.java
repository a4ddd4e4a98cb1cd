package trivet.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.flow.Flow;
import trivet.flow.Step;
import trivet.knowledge.Ingredient;
import trivet.knowledge.Knowledge;
import trivet.limit.Rulebook;
import trivet.study.Study.Control;
import trivet.study.Study.Evidence;
import trivet.words.Words;

/** What a plan lacks before it can be approved, each as a sentence that says where; a plan with open points judges nothing. */
public final class OpenPoints {

    /** What a limit of the day's work is called for, and what one plan needs of them. */
    private static final List<String> NEEDED = List.of("core-cook", "cooling", "chilled-storage");

    private final Study study;
    private final Knowledge knowledge;
    private final Optional<Rulebook> rulebook;
    private final Trials trials;
    private final Flow flow;
    private final List<OpenPoint> points = new ArrayList<>();

    /**
     * An open point.
     *
     * @param part the part of the plan, or rulebook: team, scope, description, recipe, flow, rooms, walk, hazards, controls, evidence, programmes, day or copy
     * @param at the hazard, control, step or other item; empty for the part as a whole
     */
    public record OpenPoint(String part, String at, String words) {
    }

    /** How many of some batches have readings in Trivet that were judged. */
    public interface Trials {
        /** Those of the batch codes that have. */
        int found(List<String> codes);
    }

    private OpenPoints(Study study, Knowledge knowledge, Optional<Rulebook> rulebook, Trials trials) {
        this.study = study;
        this.knowledge = knowledge;
        this.rulebook = rulebook;
        this.trials = trials;
        this.flow = study.flow(knowledge);
    }

    /** Every open point, in the order of the twelve steps. */
    public static List<OpenPoint> of(Study study, Knowledge knowledge, Optional<Rulebook> rulebook, Trials trials) {
        OpenPoints open = new OpenPoints(study, knowledge, rulebook, trials);
        open.start();
        open.product();
        open.flow();
        open.points.addAll(OpenHazards.of(study, knowledge));
        open.worksheet();
        open.rest();
        return List.copyOf(open.points);
    }

    /** The open points of the flow alone, without rooms and walk. */
    public static List<OpenPoint> ofFlow(Study study, Knowledge knowledge) {
        OpenPoints open = new OpenPoints(study, knowledge, Optional.empty(), codes -> 0);
        open.flow();
        return open.points.stream().filter(point -> point.part().equals("flow")).toList();
    }

    private void add(String part, String at, String words) {
        points.add(new OpenPoint(part, at, words));
    }

    private void need(String part, String at, String value, String words) {
        if (value.isBlank()) {
            add(part, at, words);
        }
    }

    private void start() {
        study.decideAnew().forEach(part -> add("copy", part, Words.say("j_open_copied", Words.named("part", part), study.copiedFrom())));
        need("scope", "", study.title(), Words.say("j_open_title"));
        need("scope", "", study.line(), Words.say("j_open_line"));
        need("scope", "", study.method().region(), Words.say("j_open_region"));
        need("scope", "", study.scope().from() + study.scope().to() + study.scope().covers(), Words.say("j_open_scope"));
        if (rulebook.isEmpty()) {
            add("rulebook", "", Words.say("j_open_rulebook"));
        }
        if (study.team().isEmpty()) {
            add("team", "", Words.say("j_open_team"));
        }
        study.team().forEach(member -> {
            need("team", member.id(), member.name(), Words.say("j_open_member_name", member.id()));
            need("team", member.id(), member.competence(), Words.say("j_open_competence", member.name()));
        });
        if (study.method().route().equals("small")) {
            SmallRoute.unanswered(study).forEach(question -> add("scope", "", Words.say("j_open_small_question", Words.named("smallquestion", question))));
            SmallRoute.against(study, knowledge).forEach(reason -> add("scope", "", Words.say("j_open_small_route", reason)));
        }
    }

    private void product() {
        Study.Description d = study.description();
        need("description", "", d.words(), Words.say("j_open_description"));
        need("description", "", d.packaging(), Words.say("j_open_packaging"));
        need("description", "", d.storage(), Words.say("j_open_storage"));
        need("description", "", d.eaten(), Words.say("j_open_eaten"));
        need("description", "", d.useBy(), Words.say("j_open_life"));
        if (d.eaters().isEmpty()) {
            add("description", "", Words.say("j_open_eaters"));
        }
        if (!d.ph().isEmpty()) {
            need("description", "", d.phSource(), Words.say("j_open_ph_source"));
        }
        if (!d.waterActivity().isEmpty()) {
            need("description", "", d.waterActivitySource(), Words.say("j_open_activity_source"));
        }
        if (!d.useBy().isEmpty()) {
            evidence("description", d.lifeEvidence(), Words.say("j_open_life_evidence", d.useBy()));
        }
        if (d.glutenFree()) {
            evidence("description", d.claimEvidence(), Words.say("j_open_claim_evidence"));
            Set<String> gluten = knowledge.gluten(study.recipe().contains(knowledge));
            gluten.stream().filter(substance -> !substance.equals("oats")).forEach(substance -> add("recipe", "", Words.say("j_open_gluten_inside", knowledge.substance(substance))));
            knowledge.gluten(study.recipe().mayContain(knowledge)).forEach(substance -> add("recipe", "", Words.say("j_open_gluten_maybe", knowledge.substance(substance))));
        }
        if (study.recipe().items().isEmpty()) {
            add("recipe", "", Words.say("j_open_recipe"));
        }
        twice("recipe", study.recipe().items().stream().map(Recipe.Item::id).toList());
        study.recipe().items().forEach(item -> {
            if (knowledge.ingredient(item.kind()).isEmpty()) {
                add("recipe", item.id(), Words.say("j_open_ingredient_kind", name(item)));
            }
            need("recipe", item.id(), item.grams(), Words.say("j_open_grams", name(item)));
            need("recipe", item.id(), item.specification(), Words.say("j_open_specification", name(item)));
        });
    }

    private static String name(Recipe.Item item) {
        return item.title().isEmpty() ? item.id() : item.title();
    }

    private void evidence(String part, String id, String words) {
        if (id.isEmpty() || study.evidence(id).isEmpty()) {
            add(part, "", words);
        }
    }

    private void twice(String part, List<String> ids) {
        Set<String> seen = new HashSet<>();
        ids.stream().filter(id -> !seen.add(id)).distinct().forEach(id -> add(part, id, Words.say("j_open_twice", id)));
    }

    private void flow() {
        flow.problems(study.recipe().items().stream().map(Recipe.Item::id).toList(), input -> study.recipe().item(input).flatMap(item -> knowledge.ingredient(item.kind())).map(Ingredient::isRaw).orElse(false))
                .forEach(problem -> add("flow", problem.at(), problem.words()));
        study.steps().forEach(step -> {
            need("flow", step.id(), step.title(), Words.say("j_open_step_title", step.id()));
            if (knowledge.step(step.kind()).isEmpty()) {
                add("flow", step.id(), Words.say("j_open_step_kind", title(step)));
            }
            if (!step.room().isEmpty() && study.rooms().stream().noneMatch(room -> room.id().equals(step.room()))) {
                add("flow", step.id(), Words.say("j_open_step_room", title(step), step.room()));
            }
        });
        RoomPlan.problems(study, flow).forEach(words -> add("rooms", "", words));
        Study.Walk walk = study.walk();
        if (walk.by().isEmpty() || walk.on().isEmpty()) {
            add("walk", "", Words.say("j_open_walk"));
        } else if (!walk.flow().equals(FlowText.sha256(study))) {
            add("walk", "", Words.say("j_open_walk_changed", walk.by(), walk.on()));
        }
    }

    private static String title(Step step) {
        return step.title().isEmpty() ? step.id() : step.title();
    }

    private void worksheet() {
        twice("controls", study.controls().stream().map(Control::id).toList());
        for (Control control : study.controls()) {
            String title = study.number(control) + " " + control.title();
            if (flow.step(control.step()).isEmpty()) {
                add("controls", control.id(), Words.say("j_open_control_step", title));
            }
            if (study.hazards().stream().noneMatch(hazard -> hazard.accepted() && hazard.controls().contains(control.id()))) {
                add("controls", control.id(), Words.say("j_open_control_without_hazard", title));
            }
            limit(control, title);
            need("controls", control.id(), control.what(), Words.say("j_open_what", title));
            need("controls", control.id(), control.how(), Words.say("j_open_how", title));
            need("controls", control.id(), control.every(), Words.say("j_open_when", title));
            need("controls", control.id(), control.who(), Words.say("j_open_who", title));
            need("controls", control.id(), control.deputy(), Words.say("j_open_deputy", title));
            need("controls", control.id(), control.corrective(), Words.say("j_open_corrective", title));
            if (!control.limit().isEmpty() && control.onBreach().isEmpty()) {
                add("controls", control.id(), Words.say("j_open_on_breach", title));
            }
            need("controls", control.id(), control.verification(), Words.say("j_open_verification", title));
            need("controls", control.id(), control.verificationOften(), Words.say("j_open_verification_often", title));
            need("controls", control.id(), control.record(), Words.say("j_open_record", title));
        }
        for (String needed : NEEDED) {
            if (study.controls().stream().noneMatch(control -> control.limit().equals(needed))) {
                add("controls", "", Words.say("j_open_needed", Words.named("limit", needed)));
            }
        }
    }

    private void limit(Control control, String title) {
        if (control.limit().isEmpty() && control.ownLimit().isBlank()) {
            add("controls", control.id(), Words.say("j_open_limit", title));
            return;
        }
        boolean inRulebook = !control.limit().isEmpty() && rulebook.map(book -> holds(book, control.limit())).orElse(false);
        if (!control.limit().isEmpty() && rulebook.isPresent() && !inRulebook) {
            add("controls", control.id(), Words.say("j_open_limit_not_in_rulebook", title, Words.named("limit", control.limit())));
        }
        if (control.limit().isEmpty() && control.evidence().stream().noneMatch(id -> study.evidence(id).isPresent())) {
            add("controls", control.id(), Words.say("j_open_limit_evidence", title));
        }
        control.evidence().stream().filter(id -> study.evidence(id).isEmpty()).forEach(id -> add("controls", control.id(), Words.say("j_open_unknown_evidence", title, id)));
    }

    private static boolean holds(Rulebook book, String limit) {
        return limit.equals("cooling") ? book.cooling().isPresent() : book.range(limit).isPresent() || book.alternatives(limit).isPresent();
    }

    private void rest() {
        for (Evidence evidence : study.evidence()) {
            need("evidence", evidence.id(), evidence.title(), Words.say("j_open_evidence_title", evidence.id()));
            need("evidence", evidence.id(), evidence.says(), Words.say("j_open_evidence_says", evidence.title()));
            if (evidence.sort().equals("own-trials")) {
                int least = evidence.least().isEmpty() ? 3 : Integer.parseInt(evidence.least());
                int found = trials.found(evidence.batches());
                if (found < least) {
                    add("evidence", evidence.id(), Words.say("j_open_trials", evidence.title(), least, found));
                }
            } else {
                need("evidence", evidence.id(), evidence.reference(), Words.say("j_open_evidence_reference", evidence.title()));
            }
        }
        Set<String> topics = study.programmes().stream().map(Study.Programme::topic).collect(Collectors.toSet());
        for (String topic : Arrays.asList("cleaning", "pests", "water", "maintenance", "training", "suppliers", "waste", "allergens", "hygiene", "recall")) {
            if (!topics.contains(topic)) {
                add("programmes", "", Words.say("j_open_topic", knowledge.programmes().stream().filter(row -> row.id().equals(topic)).map(row -> row.title()).findFirst().orElse(topic)));
            }
        }
        if ((study.description().glutenFree() || study.line().equals("gluten-free")) && !topics.contains("gluten")) {
            add("programmes", "", Words.say("j_open_gluten_programme"));
        }
        study.programmes().forEach(programme -> {
            need("programmes", programme.id(), programme.what(), Words.say("j_open_programme_what", programme.title()));
            need("programmes", programme.id(), programme.who(), Words.say("j_open_programme_who", programme.title()));
            need("programmes", programme.id(), programme.deputy(), Words.say("j_open_programme_deputy", programme.title()));
            need("programmes", programme.id(), programme.often(), Words.say("j_open_programme_often", programme.title()));
            need("programmes", programme.id(), programme.evidence(), Words.say("j_open_programme_evidence", programme.title()));
        });
        need("day", "", study.day().usualBake(), Words.say("j_open_usual_bake"));
        need("day", "", study.day().bakeAgainWithin(), Words.say("j_open_bake_again"));
        need("day", "", study.day().coolCheckEvery(), Words.say("j_open_cool_every"));
    }
}

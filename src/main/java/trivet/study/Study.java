package trivet.study;

import java.util.List;
import java.util.Optional;
import trivet.flow.Flow;
import trivet.flow.Step;
import trivet.form.As;
import trivet.form.Kind;
import trivet.form.Parts;
import trivet.knowledge.Knowledge;

/**
 * The hazard plan of one product, format {@code plan/2}: whole while it is being written, frozen when it is approved. Every value is text,
 * and empty text means that it has not been said yet, which {@link OpenPoints} lists.
 *
 * @param version the version that this text will be approved as
 * @param copiedFrom the product it was copied from
 * @param decideAnew parts that were copied and that nobody has gone through yet
 * @param small the answers of the questionnaire of the simplified route
 */
public record Study(String format, @As(Kind.ID) String product, @As(Kind.WHOLE) String version, String title, @As(value = Kind.CHOICE, of = {"wheat", "gluten-free"}) String line,
        @As(Kind.NAME) String copiedFrom, @As(Kind.NAME) List<String> decideAnew, Method method, Scope scope, List<Member> team, Description description, Recipe recipe, Day day, List<Answer> small,
        List<Room> rooms, List<Way> ways, List<Step> steps, Walk walk, List<Hazard> hazards, List<Control> controls, List<Evidence> evidence, List<Programme> programmes, List<Review> reviews) {

    /** The format. */
    public static final String FORMAT = "plan/2";

    /** Copies the lists. */
    public Study {
        decideAnew = List.copyOf(decideAnew);
        team = List.copyOf(team);
        small = List.copyOf(small);
        rooms = List.copyOf(rooms);
        ways = List.copyOf(ways);
        steps = List.copyOf(steps);
        hazards = List.copyOf(hazards);
        controls = List.copyOf(controls);
        evidence = List.copyOf(evidence);
        programmes = List.copyOf(programmes);
        reviews = List.copyOf(reviews);
    }

    /**
     * How hazards are weighed and routed.
     *
     * @param route full, or small for the simplified one
     * @param decide tree: every significant hazard goes to the tree; risk-level: the level of the Notice routes first
     * @param region whose list of allergens holds
     */
    public record Method(@As(value = Kind.CHOICE, of = {"full", "small"}) String route, @As(value = Kind.CHOICE, of = {"eu-notice-2022", "simple"}) String matrix,
            @As(value = Kind.CHOICE, of = {"tree", "risk-level"}) String decide, @As(value = Kind.CHOICE, of = {"codex-2022", "codex-2003"}) String tree, @As(value = Kind.CHOICE, of = {"eu", "uk", "us", "australia", "canada"}) String region) {
    }

    /** What the plan covers: its first and last step, and what it leaves out. */
    public record Scope(String from, String to, @As(Kind.TEXT) String covers, @As(Kind.TEXT) String leavesOut) {
    }

    /** A person of the team; {@code outside} for an expert from elsewhere. */
    public record Member(@As(Kind.ID) String id, String name, String role, @As(Kind.TEXT) String competence, @As(Kind.YES_NO) String outside) {
    }

    /** The product and who eats it. */
    public record Description(@As(Kind.TEXT) String words, @As(Kind.NUMBER) String ph, String phSource, @As(Kind.NUMBER) String waterActivity, String waterActivitySource, String packaging, String storage,
            @As(Kind.DEGREES) String storageAtMost, @As(Kind.DAYS) String useBy, @As(Kind.NAME) String lifeEvidence, String eaten,
            @As(value = Kind.CHOICE, of = {"general", "children", "pregnant", "elderly", "allergic"}) List<String> eaters, String notFor, @As(value = Kind.CHOICE, of = {"gluten-free"}) List<String> claims, @As(Kind.NAME) String claimEvidence) {

        /** Copies the lists. */
        public Description {
            eaters = List.copyOf(eaters);
            claims = List.copyOf(claims);
        }

        /** Whether it is sold as gluten-free. */
        public boolean glutenFree() {
            return claims.contains("gluten-free");
        }

        /** The pH. */
        public Optional<Double> acidity() {
            return ph.isEmpty() ? Optional.empty() : Optional.of(Double.valueOf(ph));
        }

        /** The water activity. */
        public Optional<Double> activity() {
            return waterActivity.isEmpty() ? Optional.empty() : Optional.of(Double.valueOf(waterActivity));
        }
    }

    /** What the day's work needs beside limits, and the kind of food where a rulebook tells kinds apart. */
    public record Day(@As(Kind.MINUTES) String usualBake, @As(Kind.MINUTES) String bakeAgainWithin, @As(Kind.MINUTES) String reheatWithin, @As(Kind.MINUTES) String coolCheckEvery, List<Food> foods) {
    }

    /** A kind of food by a rulebook. */
    public record Food(@As(Kind.NAME) String rulebook, @As(Kind.NAME) String food) {
    }

    /** An answer with its reason. */
    public record Answer(@As(Kind.NAME) String question, @As(value = Kind.CHOICE, of = {"yes", "no"}) String answer, @As(Kind.TEXT) String reason) {
    }

    /** A room of the plan of rooms, at a place of its grid. */
    public record Room(@As(Kind.ID) String id, String title, @As(value = Kind.CHOICE, of = {"raw", "baking", "ready-to-eat", "gluten-free", "store", "waste", "people"}) String zone, @As(Kind.WHOLE) String row, @As(Kind.WHOLE) String column) {
    }

    /** A way between rooms. */
    public record Way(@As(value = Kind.CHOICE, of = {"food", "people", "waste"}) String sort, @As(Kind.NAME) String from, @As(Kind.NAME) String to, String note) {
    }

    /** The confirmation on site; {@code flow} is the SHA-256 of the drawing that was walked. */
    public record Walk(String by, @As(Kind.DATE) String on, @As(Kind.TEXT) String differed, String flow) {
    }

    /**
     * A hazard at a step.
     *
     * @param kind the hazard in the knowledge base; empty for one that a person added
     * @param enough whether the general measures are enough, at a risk level of 3 or 4
     * @param laterStep the step that controls it, where an answer says that a later one does
     */
    public record Hazard(@As(Kind.ID) String id, @As(Kind.NAME) String step, @As(value = Kind.CHOICE, of = {"biological", "chemical", "physical", "allergen"}) String sort, String title, @As(Kind.NAME) String kind, @As(Kind.TEXT) String why,
            String source, @As(value = Kind.CHOICE, of = {"accepted", "rejected"}) String decision, @As(Kind.TEXT) String reason, @As(Kind.WHOLE) String likelihood, @As(Kind.WHOLE) String severity, @As(Kind.TEXT) String justification,
            String acceptable, String acceptableSource, @As(Kind.TEXT) String measures, @As(Kind.YES_NO) String enough, List<Answer> answers, @As(Kind.NAME) String laterStep, @As(Kind.NAME) List<String> controls, @As(Kind.NAME) List<String> programmes) {

        /** Copies the lists. */
        public Hazard {
            answers = List.copyOf(answers);
            controls = List.copyOf(controls);
            programmes = List.copyOf(programmes);
        }

        /** Whether the team took it into the plan. */
        public boolean accepted() {
            return decision.equals("accepted");
        }

        /** The answer to a question. */
        public Optional<Answer> answer(String question) {
            return answers.stream().filter(answer -> answer.question().equals(question)).findFirst();
        }
    }

    /**
     * A row of the worksheet: a critical control point or an operational prerequisite programme.
     *
     * @param limit the limit of the rulebook; empty for an own criterion
     * @param ownLimit the criterion in words, where no limit of the rulebook holds it
     * @param every how often it is checked in the day's work: batch, daily, weekly or monthly
     */
    public record Control(@As(Kind.ID) String id, @As(value = Kind.CHOICE, of = {"ccp", "oprp"}) String sort, @As(Kind.NAME) String step, String title,
            @As(value = Kind.CHOICE, of = {"core-cook", "cooling", "chilled-storage", "frozen-storage", "hot-holding", "reheat"}) String limit, String ownLimit, @As(Kind.DEGREES) String operating, @As(Kind.NAME) List<String> evidence, String what,
            String how, @As(value = Kind.CHOICE, of = {"batch", "daily", "weekly", "monthly"}) String every, String often, String who, String deputy, String instrument,
            @As(value = Kind.CHOICE, of = {"back-in-oven", "reheat", "hold", "probe-food", "move", "use-otherwise", "destroy", "adjust"}) List<String> onBreach, @As(Kind.TEXT) String corrective, @As(Kind.TEXT) String verification,
            String verificationOften, String verifiedBy, String record) {

        /** Copies the lists. */
        public Control {
            evidence = List.copyOf(evidence);
            onBreach = List.copyOf(onBreach);
        }

        /** Whether it is a critical control point. */
        public boolean ccp() {
            return sort.equals("ccp");
        }
    }

    /**
     * What shows that a limit, a life or a claim is right.
     *
     * @param batches the codes of the batches of own trials, with readings taken in Trivet
     * @param least how many of them are asked for
     */
    public record Evidence(@As(Kind.ID) String id, @As(value = Kind.CHOICE, of = {"law", "guidance", "study", "challenge-test", "own-trials", "expert"}) String sort, String title, String reference, @As(Kind.DATE) String date,
            @As(Kind.TEXT) String says, List<String> batches, @As(Kind.WHOLE) String least) {

        /** Copies the list. */
        public Evidence {
            batches = List.copyOf(batches);
        }
    }

    /** A prerequisite programme; with greater attention it is checked like a control. */
    public record Programme(@As(Kind.ID) String id, @As(Kind.NAME) String topic, String title, @As(Kind.TEXT) String what, String who, String deputy, @As(value = Kind.CHOICE, of = {"batch", "daily", "weekly", "monthly", "yearly"}) String often,
            String evidence, @As(Kind.YES_NO) String greaterAttention) {
    }

    /** A review: what asked for it, and what was looked at. */
    public record Review(@As(Kind.ID) String id, @As(value = Kind.CHOICE, of = {"year", "recipe", "supplier", "equipment", "law", "deviations", "recall", "complaint", "other"}) String asked, @As(Kind.TEXT) String because, @As(Kind.DATE) String on, String by,
            @As(Kind.TEXT) String lookedAt, @As(Kind.TEXT) String outcome) {
    }

    /** A plan of which only its name has been said. */
    public static Study named(String product, String title, String line) {
        Study empty = Parts.empty(Study.class);
        return Parts.with(Parts.with(Parts.with(Parts.with(Parts.with(Parts.with(empty, "format", FORMAT), "product", product), "version", "1"), "title", title), "line", line),
                "method", new Method("full", "eu-notice-2022", "tree", "codex-2022", ""));
    }

    /** The kind of food by a rulebook, where it tells kinds apart. */
    public Optional<String> food(String rulebook) {
        return day.foods().stream().filter(food -> food.rulebook().equals(rulebook)).map(Food::food).findFirst();
    }

    /** The flow of its steps. */
    public Flow flow(Knowledge knowledge) {
        return new Flow(steps, knowledge::traits);
    }

    /** A hazard by its id. */
    public Optional<Hazard> hazard(String id) {
        return hazards.stream().filter(hazard -> hazard.id().equals(id)).findFirst();
    }

    /** A control by its id. */
    public Optional<Control> control(String id) {
        return controls.stream().filter(control -> control.id().equals(id)).findFirst();
    }

    /** A piece of evidence by its id. */
    public Optional<Evidence> evidence(String id) {
        return evidence.stream().filter(one -> one.id().equals(id)).findFirst();
    }

    /** The numbers of the controls, such as CCP 1 and oPRP 2, by the order of the worksheet. */
    public String number(Control control) {
        List<Control> same = controls.stream().filter(other -> other.sort().equals(control.sort())).toList();
        int place = same.indexOf(control) + 1;
        return (control.ccp() ? "CCP " : "oPRP ") + place;
    }

    /** The same plan with another part. */
    public Study with(String part, Object value) {
        return Parts.with(this, part, value);
    }
}

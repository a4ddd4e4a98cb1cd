package trivet.plan.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import trivet.form.Parts;
import trivet.knowledge.Knowledge;
import trivet.knowledge.ProgrammeTopic;
import trivet.plan.Drafts;
import trivet.study.Recipe;
import trivet.study.Study;
import trivet.words.Words;

/** The parts of a plan on forms: scope, team, product, recipe, rooms, worksheet, evidence, programmes, reviews and what the day needs. */
@Path("/owner/plans/{product}/part/{part}")
@Produces(MediaType.TEXT_HTML)
public class PartPages {

    @Inject
    @Location("plan/part.html")
    Template page;
    @Inject
    Editing editing;

    /** An item of a list as the page shows it. */
    public record Shown(String id, String title, List<Fields.Field> fields, List<String> open, boolean asked) {
    }

    @GET
    public TemplateInstance show(@PathParam("product") String product, @PathParam("part") String part, @QueryParam("item") @DefaultValue("") String item, @QueryParam("pieces") @DefaultValue("") String pieces) {
        Drafts.Text text = editing.text(product);
        int wanted = pieces.matches("[1-9]\\d{0,5}") ? Integer.parseInt(pieces) : 0;
        return page(text, editing.study(text), PartList.find(part), item, List.of(), null, null, wanted);
    }

    private TemplateInstance page(Drafts.Text text, Study study, PartList part, String item, List<String> problems, Record mine, String stale, int wanted) {
        Knowledge knowledge = editing.knowledge();
        var open = editing.open(study);
        List<Shown> shown = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        if (part.list()) {
            for (Record record : part.records(study)) {
                String id = part.id(study, record);
                List<String> lacks = open.stream().filter(point -> point.at().equals(id) && (point.part().equals(part.word()) || (part == PartList.ITEMS && point.part().equals("recipe")))).map(point -> point.words()).toList();
                Record seen = mine != null && id.equals(item) ? mine : record;
                if (record instanceof Study.Control control && !control.limit().isEmpty() && id.equals(item)) {
                    editing.limitWords(study, control.limit()).ifPresent(numbers -> notes.add(Words.say("j_limit_now", numbers)));
                }
                shown.add(new Shown(id, title(part, study, record), id.equals(item) ? Fields.of(seen, study, knowledge) : List.of(), lacks, id.equals(item)));
            }
        } else {
            shown.add(new Shown("", Words.named("part", part.word()), Fields.of(mine == null ? part.single(study) : mine, study, knowledge), List.of(), true));
        }
        List<String> lacks = open.stream().filter(point -> point.part().equals(part.word()) && point.at().isEmpty()).map(point -> point.words()).toList();
        return page.data("text", text).data("study", study).data("part", part.word()).data("list", part.list()).data("shown", shown).data("lacks", Stream.concat(notes.stream(), lacks.stream()).toList()).data("problems", problems).data("stale", stale)
                .data("extra", new RawString(part == PartList.ROOMS || part == PartList.WAYS ? RoomDrawing.svg(study) : "")).data("recipe", part == PartList.ITEMS || part == PartList.RECIPE ? RecipeView.of(study, knowledge, wanted) : null)
                .data("topics", part == PartList.PROGRAMMES ? missing(study, knowledge) : List.of());
    }

    private static List<ProgrammeTopic> missing(Study study, Knowledge knowledge) {
        return knowledge.programmes().stream().filter(topic -> study.programmes().stream().noneMatch(programme -> programme.topic().equals(topic.id()))).toList();
    }

    private static String title(PartList part, Study study, Record record) {
        if (record instanceof Study.Control control) {
            return study.number(control) + " " + control.title();
        }
        if (record instanceof Study.Way way) {
            return Words.named("choice", way.sort()) + ": " + way.from() + " → " + way.to();
        }
        if (record instanceof Study.Member member) {
            return member.name();
        }
        if (record instanceof Study.Review review) {
            return Words.named("choice", review.asked()) + " " + review.on();
        }
        Object title = Parts.tree(record).get("title");
        return title == null ? part.id(study, record) : String.valueOf(title);
    }

    @POST
    public Response save(@PathParam("product") String product, @PathParam("part") String word, MultivaluedMap<String, String> form) {
        PartList part = PartList.find(word);
        String act = form.getFirst("act") == null ? "save" : form.getFirst("act");
        String item = form.getFirst("item") == null ? "" : form.getFirst("item");
        String base = form.getFirst("base");
        URI back = URI.create("/owner/plans/" + product + "/part/" + word);
        List<String> problems = new ArrayList<>();
        Study[] result = new Study[1];
        Record[] mine = new Record[1];
        String[] made = new String[1];
        try {
            if (!part.list()) {
                editing.change(product, base, part::single, study -> {
                    mine[0] = Fields.read(part.single(study), form, problems);
                    return problems.isEmpty() ? part.with(study, mine[0]) : study;
                });
            } else if (act.equals("add")) {
                editing.change(product, null, Study::format, study -> {
                    Record fresh = Fields.read(added(part, study, form), form, problems);
                    made[0] = part == PartList.WAYS ? String.valueOf(part.records(study).size()) : part.id(study, fresh);
                    return part.with(study, PartList.replaced(part.records(study), -1, fresh));
                });
            } else {
                editing.change(product, base, study -> find(part, study, item), study -> {
                    List<Record> records = part.records(study);
                    int at = place(part, study, item);
                    if (at < 0) {
                        throw new NotFoundException();
                    }
                    result[0] = study;
                    switch (act) {
                        case "remove":
                            return part.with(study, PartList.replaced(records, at, null));
                        case "up", "down":
                            List<Record> moved = new ArrayList<>(records);
                            int to = act.equals("up") ? at - 1 : at + 1;
                            if (to >= 0 && to < moved.size()) {
                                java.util.Collections.swap(moved, at, to);
                            }
                            return part.with(study, moved);
                        default:
                            mine[0] = Fields.read(records.get(at), form, problems);
                            return problems.isEmpty() ? part.with(study, PartList.replaced(records, at, mine[0])) : study;
                    }
                });
            }
        } catch (Editing.Meanwhile meanwhile) {
            Drafts.Text now = editing.text(product);
            Study study = editing.study(now);
            Record theirs = part.list() ? find(part, study, item) : part.single(study);
            Record wanted = theirs == null ? null : Fields.read(theirs, form, problems);
            return Response.status(409).entity(page(now, study, part, item, List.of(), wanted, meanwhile.getMessage() + " " + differences(theirs, wanted), 0).render()).build();
        }
        if (!problems.isEmpty()) {
            Drafts.Text now = editing.text(product);
            return Response.status(422).entity(page(now, editing.study(now), part, item, problems, mine[0], null, 0).render()).build();
        }
        return Response.seeOther(made[0] != null ? URI.create(back + "?item=" + made[0] + "#item-" + made[0]) : back).build();
    }

    private static String differences(Record theirs, Record mine) {
        if (theirs == null || mine == null) {
            return Words.say("j_meanwhile_gone");
        }
        String type = theirs.getClass().getSimpleName().toLowerCase(java.util.Locale.ROOT);
        return Parts.fields(theirs.getClass()).stream().filter(field -> !Parts.value(theirs, field).equals(Parts.value(mine, field)))
                .map(field -> Words.say("j_meanwhile_field", Words.named("field", type + "." + field.key()), Parts.value(theirs, field), Parts.value(mine, field))).collect(java.util.stream.Collectors.joining(" "));
    }

    private Record added(PartList part, Study study, MultivaluedMap<String, String> form) {
        String wish = Stream.of("title", "name", "topic", "asked").map(form::getFirst).filter(value -> value != null && !value.isBlank()).findFirst().orElse(part.word());
        Record fresh = part.fresh(study, wish);
        return fresh instanceof Study.Review ? Parts.with(fresh, "on", editing.today()) : fresh;
    }

    private static int place(PartList part, Study study, String item) {
        List<Record> records = part.records(study);
        for (int i = 0; i < records.size(); i++) {
            if (part.id(study, records.get(i)).equals(item)) {
                return i;
            }
        }
        return -1;
    }

    private static Record find(PartList part, Study study, String item) {
        int at = place(part, study, item);
        return at < 0 ? null : part.records(study).get(at);
    }

    /** A topic of the knowledge base taken over as a programme of this plan. */
    @POST
    @Path("topic")
    public Response topic(@PathParam("product") String product, @PathParam("part") String part, MultivaluedMap<String, String> form) {
        ProgrammeTopic topic = editing.knowledge().programmes().stream().filter(one -> one.id().equals(form.getFirst("topic"))).findFirst().orElseThrow(NotFoundException::new);
        editing.change(product, null, Study::format, study -> study.programmes().stream().anyMatch(one -> one.id().equals(topic.id())) ? study : study.with("programmes",
                Stream.concat(study.programmes().stream(), Stream.of(new Study.Programme(topic.id(), topic.id(), topic.title(), topic.what(), editing.myName(), "", topic.often(), topic.evidence(), topic.greaterAttention()))).toList()));
        return Response.seeOther(URI.create("/owner/plans/" + product + "/part/programmes?item=" + topic.id() + "#item-" + topic.id())).build();
    }

    /** What the recipe says beside its numbers. */
    public record RecipeView(String total, String sold, String pieces, List<Line> lines, String contains, String may, int wanted) {

        /** A line of the recipe. */
        public record Line(String title, String part, String grams, String bakers, String share, String contains, String may, String scaled, String source) {
        }

        static RecipeView of(Study study, Knowledge knowledge, int wanted) {
            Recipe recipe = study.recipe();
            var scaled = wanted > 0 ? recipe.forPieces(wanted) : java.util.Map.<String, java.math.BigDecimal>of();
            List<Line> lines = recipe.items().stream().map(item -> new Line(item.title().isEmpty() ? item.id() : item.title(), item.part(), item.grams(), recipe.bakersPercent(item, knowledge).map(p -> p.toPlainString() + " %").orElse("–"),
                    recipe.share(item).map(p -> p.toPlainString() + " %").orElse("–"), names(Recipe.contains(item, knowledge).stream().toList(), knowledge), names(item.mayContain(), knowledge), scaled.containsKey(item.id()) ? scaled.get(item.id()).toPlainString() : "–", item.specification())).toList();
            var region = knowledge.region(study.method().region());
            String contains = region.map(r -> String.join(", ", r.groups(recipe.contains(knowledge)).stream().map(g -> g.title()).toList())).orElse(names(recipe.contains(knowledge).stream().toList(), knowledge));
            String may = region.map(r -> String.join(", ", r.groups(recipe.mayContain(knowledge)).stream().map(g -> g.title()).toList())).orElse(names(recipe.mayContain(knowledge).stream().toList(), knowledge));
            return new RecipeView(recipe.total().stripTrailingZeros().toPlainString(), recipe.sold().stripTrailingZeros().toPlainString(), recipe.piecesByWeight().map(String::valueOf).orElse("–"), lines, contains.isEmpty() ? "–" : contains, may.isEmpty() ? "–" : may, wanted);
        }

        private static String names(List<String> ids, Knowledge knowledge) {
            return String.join(", ", ids.stream().map(knowledge::substance).toList());
        }
    }
}

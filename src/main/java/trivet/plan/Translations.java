package trivet.plan;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import trivet.ledger.Fields;
import trivet.ledger.Register;
import trivet.words.Words;

/**
 * The texts of the plans that people read at work, in other languages. They lie beside the plans, each version with who wrote it, and are no part of what
 * is signed: the signed text counts. A translation of a text that has been changed since is out of date; the signed text then stands before it.
 */
@ApplicationScoped
public class Translations {

    private static final String KIND = "site";
    private static final String ID = "translation/";
    private static final String BETWEEN = " · ";

    @Inject
    Register register;
    @Inject
    Plans plans;
    private volatile Known known = new Known(-1, Map.of());

    /**
     * A text of a plan and its translation.
     *
     * @param at where in the plan it stands, for example {@code own.label.what}
     * @param text as it is signed
     * @param says the translation; empty for none
     * @param outOfDate whether the text has been changed since it was translated
     */
    public record Translated(String at, String text, String says, boolean outOfDate) {
    }

    private record Known(long number, Map<String, Map<String, String>> byLanguage) {
    }

    /** The texts of a plan in a language, in the order of the plan; with no translation where there is none. */
    public List<Translated> of(Plan plan, String language) {
        Optional<Fields> body = register.latest(KIND, id(plan, language)).map(Register.Version::body);
        return texts(plan).entrySet().stream().map(text -> {
            Optional<Fields> one = body.flatMap(fields -> fields.object(text.getKey()));
            String says = one.flatMap(fields -> fields.text("says")).orElse("");
            return new Translated(text.getKey(), text.getValue(), says, !says.isEmpty() && !one.flatMap(fields -> fields.text("of")).orElse("").equals(text.getValue()));
        }).toList();
    }

    /**
     * Keeps translations of a plan by where the texts stand; what is not named stays as it is, an empty one is taken away, and one that is the same as
     * before stays out of date unless somebody says that it is still right.
     */
    public void write(Plan plan, String language, Map<String, String> says, Set<String> stillRight, String by) {
        if (!Words.languages().containsKey(language)) {
            throw new IllegalArgumentException(Words.say("j_no_such_language", language));
        }
        Map<String, String> texts = texts(plan);
        Map<String, String> before = of(plan, language).stream().collect(Collectors.toMap(Translated::at, Translated::says));
        Map<String, Object> body = new LinkedHashMap<>(register.latest(KIND, id(plan, language)).map(version -> version.body().asMap()).orElse(Map.of()));
        says.forEach((at, text) -> {
            if (text.isBlank()) {
                body.remove(at);
            } else if (texts.containsKey(at) && (!text.strip().equals(before.get(at)) || stillRight.contains(at))) {
                body.put(at, Map.of("of", texts.get(at), "says", text.strip()));
            }
        });
        register.write(KIND, id(plan, language), by, Fields.of(body));
    }

    private static String id(Plan plan, String language) {
        return ID + plan.product() + "/" + language;
    }

    /** What people read of a plan at work, by where it stands. */
    private static Map<String, String> texts(Plan plan) {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("title", plan.title());
        for (Plan.OwnCheck own : plan.ownChecks()) {
            all.put("own." + own.id() + ".title", own.title());
            all.put("own." + own.id() + ".what", own.what());
            all.put("own." + own.id() + ".how", own.how());
            all.put("own." + own.id() + ".limit", own.limit());
            all.put("own." + own.id() + ".corrective", own.corrective());
        }
        for (Plan.Attention attention : plan.attention()) {
            all.put("programme." + attention.id() + ".title", attention.title());
            all.put("programme." + attention.id() + ".what", attention.what());
        }
        all.values().removeIf(String::isBlank);
        return all;
    }

    /** A text of a plan as whoever reads it is told: translated, or as it is signed where there is no translation. */
    public String in(String text) {
        Map<String, String> language = all().getOrDefault(Words.language(), Map.of());
        return language.isEmpty() ? text : Stream.of(text.split(BETWEEN)).map(part -> language.getOrDefault(part, part)).collect(Collectors.joining(BETWEEN));
    }

    /** By language, what each text of a plan in force is told as; an older translation stands behind the text that has been changed since. */
    public Map<String, Map<String, String>> all() {
        long number = register.lastNumber();
        if (known.number() != number) {
            known = new Known(number, read());
        }
        return known.byLanguage();
    }

    private Map<String, Map<String, String>> read() {
        Map<String, Map<String, String>> byLanguage = new LinkedHashMap<>();
        for (String language : Words.languages().keySet()) {
            Map<String, String> texts = new LinkedHashMap<>();
            for (ApprovedPlan plan : plans.approved()) {
                for (Translated one : of(plan.plan(), language)) {
                    if (one.outOfDate()) {
                        texts.putIfAbsent(one.text(), Words.in(language, () -> Words.say("j_older_translation", one.text(), one.says())));
                    } else if (!one.says().isEmpty()) {
                        texts.put(one.text(), one.says());
                    }
                }
            }
            byLanguage.put(language, Map.copyOf(texts));
        }
        return Map.copyOf(byLanguage);
    }
}

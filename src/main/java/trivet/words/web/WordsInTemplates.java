package trivet.words.web;

import io.quarkus.qute.TemplateExtension;
import trivet.words.Words;

/** Makes sentences reachable in templates: <code>{w:key(value)}</code>, and <code>{w:named('kind', x.kind)}</code>. */
final class WordsInTemplates {

    private WordsInTemplates() {
    }

    @TemplateExtension(namespace = "w", priority = 10)
    static String named(String family, String name) {
        return Words.named(family, name);
    }

    /** A key put together of two names, such as a matrix and a number. */
    @TemplateExtension(namespace = "w", priority = 10)
    static String key(String first, Object second) {
        return first + "." + second;
    }

    @TemplateExtension(namespace = "w", matchName = TemplateExtension.ANY)
    static String sentence(String key) {
        return Words.say(key);
    }

    @TemplateExtension(namespace = "w", matchName = TemplateExtension.ANY)
    static String sentence(String key, Object first) {
        return Words.say(key, first);
    }

    @TemplateExtension(namespace = "w", matchName = TemplateExtension.ANY)
    static String sentence(String key, Object first, Object second) {
        return Words.say(key, first, second);
    }

    @TemplateExtension(namespace = "w", matchName = TemplateExtension.ANY)
    static String sentence(String key, Object first, Object second, Object third) {
        return Words.say(key, first, second, third);
    }

    @TemplateExtension(namespace = "w", matchName = TemplateExtension.ANY)
    static String sentence(String key, Object first, Object second, Object third, Object fourth) {
        return Words.say(key, first, second, third, fourth);
    }

    @TemplateExtension(namespace = "w", matchName = TemplateExtension.ANY)
    static String sentence(String key, Object first, Object second, Object third, Object fourth, Object fifth) {
        return Words.say(key, first, second, third, fourth, fifth);
    }
}

package trivet.words.web;

import io.quarkus.qute.TemplateGlobal;
import io.quarkus.runtime.Startup;
import io.smallrye.common.vertx.ContextLocals;
import io.smallrye.common.vertx.VertxContext;
import jakarta.inject.Singleton;
import trivet.words.Words;

/** The language of a request, which goes with it wherever it is worked on. */
@Startup
@Singleton
public class Spoken {

    private static final String KEY = "trivet.language";

    Spoken() {
        Words.askedBy(() -> VertxContext.isOnDuplicatedContext() ? ContextLocals.<String>get(KEY).orElse(Words.FIRST) : Words.FIRST);
    }

    /** The present request asks in this language. */
    public static void in(String tag) {
        if (VertxContext.isOnDuplicatedContext()) {
            ContextLocals.put(KEY, tag);
        }
    }

    /** Makes the language and its direction known in every template. */
    @TemplateGlobal
    static class Language {

        /** The tag of the language. */
        static String language() {
            return Words.language();
        }

        /** The direction of its writing. */
        static String direction() {
            return Words.rightToLeft() ? "rtl" : "ltr";
        }
    }
}

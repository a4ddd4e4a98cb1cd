package trivet.form;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** What a text component of a record holds; a component without it is one line of text. Empty text is always allowed and means "not said yet". */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface As {

    /** The kind of value. */
    Kind value();

    /** The words to choose from, of a {@link Kind#CHOICE}. */
    String[] of() default {};
}

package trivet.measure.web;

import io.quarkus.qute.EngineBuilder;
import io.quarkus.qute.Expression;
import io.quarkus.qute.ResultMapper;
import io.quarkus.qute.TemplateNode.Origin;
import jakarta.enterprise.event.Observes;
import trivet.measure.Temperature;

/** Writes temperatures in templates with the decimal sign of the language. */
class Temperatures {

    void configure(@Observes EngineBuilder builder) {
        builder.addResultMapper(new ResultMapper() {
            @Override
            public int getPriority() {
                return 10;
            }

            @Override
            public boolean appliesTo(Origin origin, Object result) {
                return result instanceof Temperature;
            }

            @Override
            public String map(Object result, Expression expression) {
                return ((Temperature) result).words();
            }
        });
    }
}

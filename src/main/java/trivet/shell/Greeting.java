package trivet.shell;

import io.quarkus.vertx.http.HttpServerStart;
import jakarta.enterprise.event.ObservesAsync;
import jakarta.inject.Inject;
import trivet.demo.DemoBakery;

/** Says on the console where to go, once the service answers. */
class Greeting {

    @Inject
    DemoBakery demo;

    void ready(@ObservesAsync HttpServerStart started) {
        System.out.println("Trivet is ready: open http://localhost:" + started.options().getPort());
        demo.greeting().forEach(System.out::println);
    }
}

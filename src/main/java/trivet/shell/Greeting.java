package trivet.shell;

import io.quarkus.vertx.http.HttpServerStart;
import jakarta.enterprise.event.ObservesAsync;
import jakarta.inject.Inject;
import trivet.demo.DemoBakery;
import trivet.lan.web.Address;

/** Says on the console where to go, once the service answers. */
class Greeting {

    @Inject
    DemoBakery demo;
    @Inject
    Address address;

    void ready(@ObservesAsync HttpServerStart started) {
        if (started.options().isSsl()) {
            return;
        }
        System.out.println("Trivet is ready: open http://localhost:" + started.options().getPort());
        if (address.open()) {
            System.out.println("In the bakery's network: " + address.secure() + ", and how a tablet joins: " + address.plain());
        }
        demo.greeting().forEach(System.out::println);
    }
}

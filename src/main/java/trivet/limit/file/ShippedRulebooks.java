package trivet.limit.file;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import trivet.limit.Problem;
import trivet.limit.Rulebook;
import trivet.limit.Rulebooks;

/** The rulebooks under plans/rulebooks, packaged with the service. */
@ApplicationScoped
public class ShippedRulebooks implements Rulebooks {

    /** The ids, which are part of the API; a class path cannot be listed, so they stand here. */
    static final List<String> IDS = List.of("england-wales-ni", "scotland", "ireland", "eu", "us-food-code-2022",
            "australia", "canada", "strictest");

    private final List<Rulebook> all = IDS.stream().map(ShippedRulebooks::load).toList();

    private static Rulebook load(String id) {
        String file = "plans/rulebooks/" + id + ".yaml";
        return read(file, resource(file));
    }

    private static Rulebook read(String file, String text) {
        RulebookReader.Outcome outcome = RulebookReader.read(file, text);
        return outcome.rulebook().orElseThrow(() -> new IllegalStateException(outcome.problems().stream()
                .map(Problem::toString).collect(Collectors.joining("\n"))));
    }

    private static String resource(String file) {
        try (InputStream in = ShippedRulebooks.class.getClassLoader().getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("The file " + file + " is not packaged with the service.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    @Override
    public List<Rulebook> list() {
        return all;
    }

    @Override
    public Optional<Rulebook> find(String id) {
        return all.stream().filter(rulebook -> rulebook.id().equals(id)).findFirst();
    }

    @Override
    public String text(String id) {
        return resource("plans/rulebooks/" + id + ".yaml");
    }

    @Override
    public Rulebook read(String text) {
        return read("the confirmed rulebook", text);
    }
}

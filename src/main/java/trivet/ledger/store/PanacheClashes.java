package trivet.ledger.store;

import io.quarkus.panache.common.Sort;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import trivet.ledger.Clashes;

/** Reads the clashing records. */
@ApplicationScoped
class PanacheClashes implements Clashes {

    @Override
    @ActivateRequestContext
    public List<Clash> latest(int most) {
        return ClashEntity.<ClashEntity>findAll(Sort.descending("number")).page(0, most).list().stream()
                .map(row -> new Clash(row.id, Instant.parse(row.receivedAt), new String(row.body, StandardCharsets.UTF_8))).toList();
    }
}

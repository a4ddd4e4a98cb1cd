package trivet.ledger.store;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.hibernate.annotations.Immutable;

/** A row of the table of clashing records, for reading; the writer appends it. */
@Entity
@Immutable
@Table(name = "clash")
class ClashEntity extends PanacheEntityBase {

    @Id
    Long number;
    String id;
    @Column(name = "received_at")
    String receivedAt;
    byte[] body;
}

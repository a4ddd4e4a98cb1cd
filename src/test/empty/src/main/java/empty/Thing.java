package empty;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;

/** An entity, so that Hibernate ORM is started here too. */
@Entity
class Thing {
    @Id
    Long id;
}

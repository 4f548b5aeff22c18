package rootcast.app.people.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** The row that whoever changes people or keys locks. */
@Entity
@Table(name = "people_turn")
class PeopleTurnRow {

    static final int ONLY = 1;

    @Id
    int id;
}

package rootcast.app.once;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** The row that every writer locks; its number is the position given out last. */
@Entity
@Table(name = "fact_head")
class FactHeadRow {

    static final int ONLY = 1;

    @Id
    int id;

    long positionNo;
    long setupPosition;
    long carePosition;
}

package rootcast.app.rounds.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

@Entity
@Table(name = "walking_order")
public class WalkingOrderRow {
    @Id
    public String house;

    public int placeNo;
}

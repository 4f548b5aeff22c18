package rootcast.app.site.store;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import rootcast.crop.Stage;

@Entity
@Table(name = "house_usual_move")
public class HouseUsualMoveRow {
    @Id
    public long positionNo;

    public String house;

    @Enumerated(EnumType.STRING)
    public Stage reached;

    public String nextHouse;
    public Instant recordedAt;
}

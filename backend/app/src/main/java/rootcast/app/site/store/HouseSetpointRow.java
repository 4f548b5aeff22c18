package rootcast.app.site.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "house_setpoint")
public class HouseSetpointRow {
    @Id
    public long positionNo;

    public String house;
    public Instant fromAt;

    @Column(name = "medium_c")
    public Double mediumC;

    public Instant recordedAt;
}

package rootcast.app.availability.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.UUID;

@Entity
@Table(name = "order_line")
public class OrderLineRow {

    @Embeddable
    public record Id(UUID orderId, int lineNo) implements Serializable {}

    @EmbeddedId
    public Id id;

    public String variety;
    public String trayFormat;
    public String site;
    public LocalDate shipOn;
    public int trays;
}

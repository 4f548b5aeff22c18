package rootcast.app.crop.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

@Entity
@Table(name = "tray_format")
public class TrayFormatRow {
    @Id
    public String code;

    public int cells;
    public int saleCount;
    public int lengthMm;
    public int widthMm;
    public long positionNo;
}

package rootcast.app.rounds.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

@Entity
@Table(name = "round_care")
public class RoundCareRow {
    @Id
    public UUID id;

    public String item;
    public String task;
    public String site;
    public String house;
    public String batch;
    public LocalDate dueOn;
    public boolean done;
    public Instant happenedAt;
    public Instant recordedAt;
    public String recordedBy;
    public String reason;
    public String note;
    public Integer moistureLevel;
    public Integer fungusGnats;
    public Integer shoreFlies;
    public Integer traps;
    public Integer thrips;
    public Integer aphids;
    public Integer whiteflies;
    public Integer mites;
    public Integer otherPests;
    public Double nitrogenPpm;
    public Double ecMsPerCm;
    public String boxCondition;

    @Column(name = "box_c")
    public Double boxC;

    public Double standbyHours;
    public String entries;
    public Instant takenBackAt;
    public String takenBackBy;
    public String takenBackReason;
}

package rootcast.availability;

import java.util.List;

/** Whether the wanted lines of an order can all be promised. */
public sealed interface Placing {

    /** All lines can be kept together, at this confidence. */
    record Accepted(List<WantedLine> lines, double confidence) implements Placing {
        public Accepted {
            lines = List.copyOf(lines);
        }
    }

    /** Nothing is promised; one reason for each line that cannot be kept. */
    record Refused(List<NotEnoughOpen> lines) implements Placing {
        public Refused {
            lines = List.copyOf(lines);
        }
    }
}

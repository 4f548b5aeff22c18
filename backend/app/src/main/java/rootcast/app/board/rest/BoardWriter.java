package rootcast.app.board.rest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Predicate;
import rootcast.app.board.BoardSnapshot;
import rootcast.board.BoardRow;

/** Writes {@link BoardWire} out of rows that are each written once: the same bytes, without making them anew. */
@ApplicationScoped
class BoardWriter {

    @Inject
    ObjectMapper json;

    byte[] written(BoardSnapshot board, Predicate<BoardRow> shown) {
        List<byte[]> rows = board.rows().parallelStream()
                .filter(row -> shown.test(row.row()))
                .map(row -> row.written(each -> bytes(BoardWire.RowWire.of(each))))
                .toList();
        int length = rows.stream().mapToInt(written -> written.length + 1).sum();
        byte[] frame = bytes(BoardWire.of(board, none -> false));
        int inside = frame.length - "]}".length(); // rows come last and are empty in the frame
        ByteArrayOutputStream all = new ByteArrayOutputStream(frame.length + length);
        all.write(frame, 0, inside);
        String between = "";
        for (byte[] row : rows) {
            all.writeBytes(between.getBytes(StandardCharsets.UTF_8));
            all.writeBytes(row);
            between = ",";
        }
        all.write(frame, inside, frame.length - inside);
        return all.toByteArray();
    }

    private byte[] bytes(Object wire) {
        try {
            return json.writeValueAsBytes(wire);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}

package rootcast.app.climate.rest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import jakarta.annotation.PostConstruct;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.SetupMaps;
import rootcast.app.problem.Problem;
import rootcast.climate.ReadingRemark;
import rootcast.saying.Fault;
import rootcast.saying.Saying;

/**
 * Reads the body of a request with readings.
 *
 * <p>A list in which every item is a reading is read in one go; only if one of them is not is the body read as a tree and
 * each item on its own, so that the others are taken and the answer names the one.
 */
@ApplicationScoped
class SentReadings {

    private static final String UNREADABLE = "cannot be read as {house, quantity, value, unit, at} with these types";

    @Inject
    ObjectMapper json;

    private ObjectReader list;

    @PostConstruct
    void prepare() {
        list = json.readerFor(ReadingWire[].class);
    }

    /**
     * One item of the body.
     *
     * @param wire    null if it is not a reading
     * @param because why not
     */
    record One(@Nullable ReadingWire wire, String because) {

        static One of(@Nullable ReadingWire wire) {
            return new One(wire, wire == null ? "is null" : "");
        }

        HouseReading reading(SetupMaps.Maps setup) throws ReadingWire.Unusable {
            if (wire == null) {
                throw new ReadingWire.Unusable(because, Saying.of(ReadingRemark.UNREADABLE));
            }
            return wire.reading(setup);
        }
    }

    List<One> read(byte[] body) throws JsonProcessingException {
        try {
            if (startsWith('[', body)) {
                ReadingWire[] wires = list.readValue(body);
                return Arrays.stream(wires).map(One::of).toList();
            }
        } catch (JsonMappingException oneIsNoReading) {
            return eachOnItsOwn(body);
        } catch (JsonProcessingException broken) {
            throw broken;
        } catch (IOException noText) {
            throw notText();
        }
        return eachOnItsOwn(body);
    }

    private List<One> eachOnItsOwn(byte[] body) throws JsonProcessingException {
        JsonNode tree;
        try {
            tree = json.readTree(body);
        } catch (JsonProcessingException broken) {
            throw broken;
        } catch (IOException noText) {
            throw notText();
        }
        if (!tree.isArray() && !tree.isObject()) {
            throw Problem.malformed("body", Fault.UNREADABLE);
        }
        List<One> all = new ArrayList<>();
        for (JsonNode item : tree.isArray() ? tree : json.createArrayNode().add(tree)) {
            try {
                all.add(One.of(json.treeToValue(item, ReadingWire.class)));
            } catch (JsonProcessingException unreadable) {
                all.add(new One(null, UNREADABLE));
            }
        }
        return all;
    }

    private static Problem notText() {
        return Problem.malformed("body", Fault.UNREADABLE);
    }

    private static boolean startsWith(char wanted, byte[] body) {
        for (byte each : body) {
            if (each != ' ' && each != '\n' && each != '\r' && each != '\t') {
                return each == wanted;
            }
        }
        return false;
    }

    /** Stands for the body where a repeat is told from another request: a body of megabytes need not be written again for that. */
    static String fingerprint(byte[] body) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(body));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}

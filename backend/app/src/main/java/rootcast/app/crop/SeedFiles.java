package rootcast.app.crop;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedReader;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** The seed folder, wherever it is: packed on the class path or a folder of the project. */
public interface SeedFiles {

    ObjectMapper JSON = JsonMapper.builder()
            .findAndAddModules()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .build();

    /** @param name below {@code seed/}, with forward slashes */
    InputStream open(String name) throws IOException;

    static SeedFiles onClassPath() {
        return name -> {
            InputStream found = SeedFiles.class.getResourceAsStream("/seed/" + name);
            if (found == null) {
                throw new FileNotFoundException("seed/" + name + " is not packed with the application");
            }
            return found;
        };
    }

    static SeedFiles in(Path folder) {
        return name -> Files.newInputStream(folder.resolve(name));
    }

    default <T> T json(String name, Class<T> type) throws IOException {
        try (InputStream in = open(name)) {
            return JSON.readValue(in, type);
        }
    }

    default SeedTable table(String name) throws IOException {
        try (BufferedReader lines = new BufferedReader(text(name))) {
            return SeedTable.parse(name, lines.lines().toList());
        }
    }

    default Reader text(String name) throws IOException {
        return new InputStreamReader(open(name), StandardCharsets.UTF_8);
    }
}

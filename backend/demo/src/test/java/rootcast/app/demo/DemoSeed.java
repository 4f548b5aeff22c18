package rootcast.app.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import rootcast.app.crop.SeedFiles;

/** The project's seed folder, seen from the module that tests run in. */
final class DemoSeed {

    static final Instant WEDNESDAY_IN_NOVEMBER = Instant.parse("2026-11-25T15:00:00Z");

    private DemoSeed() {}

    static SeedFiles files() {
        return SeedFiles.in(Path.of("..", "..", "seed"));
    }

    static DemoScenario scenario() {
        try {
            return DemoScenario.read(files());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Told once for all tests that only look at it; its simulator stays untouched. */
    static DemoScenario.Told toldInNovember() {
        return November.TOLD;
    }

    private static final class November {
        static final DemoScenario.Told TOLD = scenario().tell(WEDNESDAY_IN_NOVEMBER);
    }
}

package rootcast.app.demo;

import java.util.SplittableRandom;

/**
 * Random numbers that depend on a seed and on what they are for, not on how many were drawn before: the same house at
 * the same second always gets the same error, however often the demo is restarted.
 */
final class SeededDraw {

    private SeededDraw() {}

    static SplittableRandom of(long seed, String purpose, long index) {
        long mixed = seed;
        for (int i = 0; i < purpose.length(); i++) {
            mixed = mixed * 1_000_003 + purpose.charAt(i);
        }
        return new SplittableRandom(mixed * 0x9E3779B97F4A7C15L + index).split();
    }
}

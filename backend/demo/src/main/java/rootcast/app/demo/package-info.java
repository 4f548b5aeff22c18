/**
 * The demo: an invented business told as dated facts, and a simulator in place of its sensors. It is a build of its own
 * (docs/decisions/0013); the application knows nothing of it.
 *
 * <p>Where to start: {@link rootcast.app.demo.DemoLoad} plays {@link rootcast.app.demo.DemoScenario} into a
 * {@link rootcast.app.demo.DemoSink}, which the application implements with the same use cases that people's entries go
 * through. {@link rootcast.app.demo.Simulator} then gives live readings. Time and seeds are arguments throughout.
 */
@NullMarked
package rootcast.app.demo;

import org.jspecify.annotations.NullMarked;

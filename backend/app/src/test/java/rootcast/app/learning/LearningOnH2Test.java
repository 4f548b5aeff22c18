package rootcast.app.learning;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class LearningOnH2Test extends LearningContract {}

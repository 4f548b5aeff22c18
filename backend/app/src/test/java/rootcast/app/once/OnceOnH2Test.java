package rootcast.app.once;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class OnceOnH2Test extends OnceContract {}

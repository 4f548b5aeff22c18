package rootcast.app.crop;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class RecipesOnH2Test extends RecipesContract {}

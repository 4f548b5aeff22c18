package rootcast.app.warnings;

import io.quarkus.mailer.Mailer;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.List;

/** Sends each warning by e-mail. */
@ApplicationScoped
public class Mail implements Channel {

    @Inject
    WarningsConfig config;

    @Inject
    Mailer mailer;

    @Override
    public String name() {
        return "mail";
    }

    @Override
    public boolean isOn() {
        return config.mailTo().filter(addresses -> !addresses.isEmpty()).isPresent();
    }

    @Override
    public void send(WrittenWarning written) throws IOException {
        String text = WarningText.of(written.warning());
        List<String> addresses = config.mailTo().orElseThrow();
        try {
            mailer.send(io.quarkus.mailer.Mail.withText(
                            addresses.get(0),
                            "Rootcast: " + written.warning().kind().wireName() + " in "
                                    + written.warning().house(),
                            text + "\n\nSince " + written.warning().since() + ".\nWarning " + written.id() + "\n")
                    .setTo(addresses));
        } catch (RuntimeException refused) {
            throw new IOException(refused);
        }
    }
}

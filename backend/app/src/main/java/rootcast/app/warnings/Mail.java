package rootcast.app.warnings;

import io.quarkus.mailer.Mailer;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import rootcast.app.site.store.Places;
import rootcast.site.House;
import rootcast.site.Site;
import rootcast.warnings.Warning;

/** Sends each warning by e-mail. */
@ApplicationScoped
public class Mail implements Channel {

    @Inject
    WarningsConfig config;

    @Inject
    Mailer mailer;

    @Inject
    Places places;

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
        Warning warning = written.warning();
        ZoneId zone = places.site(written.site()).map(Site::zone).orElse(ZoneOffset.UTC);
        String house = places.house(warning.house()).map(House::name).orElse(warning.house());
        Letter letter = new Letter(config.mailLanguage(), config.mailFahrenheit(), zone);
        List<String> addresses = config.mailTo().orElseThrow();
        try {
            mailer.send(io.quarkus.mailer.Mail.withText(
                            addresses.get(0), letter.subject(warning, house), letter.text(written, house))
                    .setTo(addresses));
        } catch (RuntimeException refused) {
            throw new IOException(refused);
        }
    }
}

package rootcast.app.ledger.csv;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.once.FactHead;
import rootcast.app.once.SetupLog;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.site.store.Places;
import rootcast.crop.Crop;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.site.House;
import rootcast.site.Site;

/**
 * What the lines of one table name, found by code or by name, in any case of letters. A house or variety that nobody
 * knows can be made: a house by its name at its site, a variety of the crop that its line names or its name begins with.
 */
final class NamedThings {

    private static final int LONGEST_CODE = 32;

    private final Places places;
    private final Catalogue catalogue;
    private final FactHead head;
    private final SetupLog log;
    private final Rights rights;
    private final BatchCsvPlan plan;

    private final List<Site> sites;
    private final List<House> houses;
    private final List<Crop> crops;
    private final List<Variety> varieties;
    private final List<TrayFormat> formats;
    private final List<BatchCsvReport.Made> made = new ArrayList<>();

    NamedThings(Places places, Catalogue catalogue, FactHead head, SetupLog log, Rights rights, BatchCsvPlan plan) {
        this.places = places;
        this.catalogue = catalogue;
        this.head = head;
        this.log = log;
        this.rights = rights;
        this.plan = plan;
        sites = places.sites();
        houses = new ArrayList<>(places.houses());
        crops = catalogue.crops().stream().map(SourcedCrop::crop).toList();
        varieties = new ArrayList<>(catalogue.varieties());
        formats = catalogue.trayFormats();
    }

    List<BatchCsvReport.Made> made() {
        return List.copyOf(made);
    }

    Site site(BatchLine line) {
        if (line.site().isEmpty()) {
            throw LineRefused.missing(column(plan.columns().site(), "site"));
        }
        return named(sites, line.site(), Site::code, Site::name)
                .orElseThrow(() -> unknown(plan.columns().site(), "site", line.site()));
    }

    TrayFormat format(BatchLine line) {
        return named(formats, line.trayFormat(), TrayFormat::code, TrayFormat::code)
                .orElseThrow(() -> unknown(plan.columns().trayFormat(), "tray-format", line.trayFormat()));
    }

    /** A house of another site that has the name is not meant. */
    House house(BatchLine line, Site site) {
        if (line.house().isEmpty()) {
            throw LineRefused.missing(column(plan.columns().house(), "house"));
        }
        List<House> here =
                houses.stream().filter(each -> each.site().equals(site.code())).toList();
        return named(here, line.house(), House::code, House::name).orElseGet(() -> {
            if (!plan.makeMissing()) {
                throw unknown(plan.columns().house(), "house", line.house());
            }
            return madeHouse(line.house(), site);
        });
    }

    private House madeHouse(String name, Site site) {
        rights.at(site.code(), Right.SET_UP);
        String code = freeCode(
                site.code() + "-" + name,
                taken -> houses.stream().anyMatch(each -> each.code().equalsIgnoreCase(taken)));
        House house = new House(code, site.code(), name, null);
        log.add("POST /api/houses/" + code);
        places.save(house, head.nextForSetup());
        houses.add(house);
        made.add(new BatchCsvReport.Made("house", code, name));
        return house;
    }

    Variety variety(BatchLine line) {
        Optional<Crop> crop = cropOf(line);
        String whole = crop.map(each -> wholeName(each, line.variety())).orElse(line.variety());
        List<Variety> ofCrop = varieties.stream()
                .filter(each -> crop.isEmpty() || each.crop().equals(crop.get().code()))
                .toList();
        Optional<Variety> known = named(ofCrop, line.variety(), Variety::code, Variety::name)
                .or(() -> named(ofCrop, whole, Variety::code, Variety::name));
        return known.orElseGet(() -> {
            if (!plan.makeMissing()) {
                throw unknown(plan.columns().variety(), "variety", line.variety());
            }
            return madeVariety(
                    whole,
                    crop.orElseThrow(() -> new LineRefused(
                            plan.columns().variety(),
                            "no-crop",
                            line.variety(),
                            "'%s' is no variety here, and the line does not say of which crop it is"
                                    .formatted(line.variety()))));
        });
    }

    private Variety madeVariety(String name, Crop crop) {
        rights.everywhere(Right.SET_UP);
        String code = freeCode(
                name, taken -> varieties.stream().anyMatch(each -> each.code().equalsIgnoreCase(taken)));
        Variety variety = new Variety(code, crop.code(), name);
        log.add("POST /api/varieties/" + code);
        catalogue.save(variety, head.nextForSetup());
        varieties.add(variety);
        made.add(new BatchCsvReport.Made("variety", code, name));
        return variety;
    }

    private Optional<Crop> cropOf(BatchLine line) {
        if (!line.crop().isEmpty()) {
            return Optional.of(named(crops, line.crop(), Crop::code, Crop::name)
                    .orElseThrow(() -> unknown(plan.columns().crop(), "crop", line.crop())));
        }
        List<Crop> begun = crops.stream()
                .filter(crop -> beginsWith(line.variety(), crop.name()))
                .sorted(Comparator.comparingInt((Crop crop) -> crop.name().length())
                        .reversed())
                .toList();
        boolean one = begun.size() == 1
                || begun.size() > 1
                        && begun.get(0).name().length() > begun.get(1).name().length();
        return one ? Optional.of(begun.get(0)) : Optional.empty();
    }

    /** As the code for cultivated plants writes it, unless the table already does. */
    private static String wholeName(Crop crop, String variety) {
        return beginsWith(variety, crop.name()) ? variety : "%s '%s'".formatted(crop.name(), variety);
    }

    private static boolean beginsWith(String text, String word) {
        return text.toLowerCase(Locale.ROOT).startsWith(word.toLowerCase(Locale.ROOT));
    }

    /** By code, else by a name that only one of them has. */
    private static <T> Optional<T> named(
            Collection<T> all, String said, Function<T, String> code, Function<T, String> name) {
        Optional<T> byCode = all.stream()
                .filter(each -> code.apply(each).equalsIgnoreCase(said))
                .findFirst();
        if (byCode.isPresent()) {
            return byCode;
        }
        List<T> byName = all.stream()
                .filter(each -> name.apply(each).equalsIgnoreCase(said))
                .toList();
        if (byName.size() > 1) {
            throw new LineRefused(
                    null,
                    "ambiguous",
                    said,
                    "'%s' is the name of several: %s. Write the code"
                            .formatted(
                                    said,
                                    String.join(", ", byName.stream().map(code).toList())));
        }
        return byName.stream().findFirst();
    }

    private static String freeCode(String name, Predicate<String> taken) {
        String plain = Normalizer.normalize(name, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .replaceAll("[^A-Za-z0-9]+", "-")
                .replaceAll("^-|-$", "")
                .toLowerCase(Locale.ROOT);
        String base = plain.isEmpty() ? "new" : plain;
        String code = cut(base, "");
        for (int number = 2; taken.test(code); number++) {
            code = cut(base, "-" + number);
        }
        return code;
    }

    private static String cut(String base, String end) {
        return base.substring(0, Math.min(base.length(), LONGEST_CODE - end.length())) + end;
    }

    private static LineRefused unknown(@Nullable String column, String kind, String said) {
        return new LineRefused(
                column, "unknown-" + kind, said, "there is no %s '%s'".formatted(kind.replace('-', ' '), said));
    }

    private static String column(@Nullable String column, String otherwise) {
        return column == null ? otherwise : column;
    }
}

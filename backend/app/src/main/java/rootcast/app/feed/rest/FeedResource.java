package rootcast.app.feed.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.feed.FeedSalts;
import rootcast.feed.LabelRate;
import rootcast.feed.Measure;
import rootcast.feed.Stock;
import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

/** Arithmetic of the feed tank. Each answer follows from its question alone. */
@Path("/api/feed")
@Needs(Right.READ)
public class FeedResource {

    private static final List<String> CAUTIONS = List.of(
            "This is arithmetic on the rate that you typed. The label and the law of your place decide whether, how and how much.",
            "Wear what the label asks for and keep people out until the re-entry interval has passed.",
            "You may need a licence to apply it. Try a few plants first: a growth regulator should tone, not stunt.");

    @POST
    @Path("stock")
    public FeedWires.StockAnswer stock(@NotNull @Valid FeedWires.StockWire wire) {
        return computed(() -> {
            Stock stock = new Stock(wire.nitrogenPercent(), wire.injector());
            double stockLitres = wire.stockVolume().base("stockVolume", Measure.Kind.VOLUME);
            double gramsPerLitre = stock.gramsPerLitre(wire.ppm());
            return new FeedWires.StockAnswer(
                    gramsPerLitre,
                    stock.ouncesPerGallon(wire.ppm()),
                    inAll(gramsPerLitre * stockLitres, Measure.Kind.WEIGHT),
                    inAll(stock.feedVolume(stockLitres), Measure.Kind.VOLUME),
                    expected(wire));
        });
    }

    private static @Nullable Double expected(FeedWires.StockWire wire) {
        if (wire.clearWaterMsPerCm() == null && wire.msPerCmPer100Ppm() == null) {
            return null;
        }
        if (wire.clearWaterMsPerCm() == null || wire.msPerCmPer100Ppm() == null) {
            throw Problem.malformed(
                    wire.clearWaterMsPerCm() == null ? "clearWaterMsPerCm" : "msPerCmPer100Ppm", Fault.EC_NEEDS_BOTH);
        }
        return new FeedSalts(wire.clearWaterMsPerCm(), wire.msPerCmPer100Ppm()).expectedMsPerCm(wire.ppm());
    }

    @POST
    @Path("strength")
    public FeedWires.StrengthAnswer strength(@NotNull @Valid FeedWires.StrengthWire wire) {
        return computed(() -> {
            double gramsPerLitre = gramsPerLitre(wire.fertilizer(), wire.stockVolume());
            return new FeedWires.StrengthAnswer(
                    new Stock(wire.nitrogenPercent(), wire.injector()).ppm(gramsPerLitre), gramsPerLitre);
        });
    }

    @POST
    @Path("injector")
    public FeedWires.InjectorAnswer injector(@NotNull @Valid FeedWires.InjectorWire wire) {
        return computed(() -> {
            double injector = Stock.injectorFor(
                    wire.nitrogenPercent(), gramsPerLitre(wire.fertilizer(), wire.stockVolume()), wire.ppm());
            return new FeedWires.InjectorAnswer(injector, String.format(Locale.ROOT, "1:%.1f", injector));
        });
    }

    @POST
    @Path("ec")
    public FeedWires.ConductivityAnswer conductivity(@NotNull @Valid FeedWires.ConductivityWire wire) {
        return computed(() -> new FeedWires.ConductivityAnswer(
                wire.measuredMsPerCm() - wire.clearWaterMsPerCm(),
                new FeedSalts(wire.clearWaterMsPerCm(), wire.msPerCmPer100Ppm()).ppm(wire.measuredMsPerCm())));
    }

    @POST
    @Path("dilution")
    public FeedWires.DilutionAnswer dilution(@NotNull @Valid FeedWires.DilutionWire wire) {
        return computed(() -> {
            double sprayLitres = sprayLitres(wire);
            return new FeedWires.DilutionAnswer(
                    wire.label(), product(wire, sprayLitres), inAll(sprayLitres, Measure.Kind.VOLUME), CAUTIONS);
        });
    }

    private static double sprayLitres(FeedWires.DilutionWire wire) {
        boolean byArea = wire.areaM2() != null && wire.litresPerM2() != null;
        if (byArea == (wire.sprayVolume() != null)) {
            throw Problem.malformed("sprayVolume", Fault.VOLUME_OR_AREA);
        }
        return byArea
                ? LabelRate.sprayLitres(wire.areaM2(), wire.litresPerM2())
                : wire.sprayVolume().base("sprayVolume", Measure.Kind.VOLUME);
    }

    private static List<AmountWire> product(FeedWires.DilutionWire wire, double sprayLitres) {
        boolean byVolume = wire.product() != null && wire.perVolume() != null;
        boolean liquid = wire.activePpm() != null && wire.activeMgPerMl() != null;
        boolean solid = wire.activePpm() != null && wire.activePercent() != null;
        if ((byVolume ? 1 : 0) + (liquid ? 1 : 0) + (solid ? 1 : 0) != 1) {
            throw Problem.malformed("product", Fault.ONE_RATE_NEEDED);
        }
        if (liquid) {
            double millilitres = new LabelRate.Ppm(wire.activePpm(), wire.activeMgPerMl()).productFor(sprayLitres);
            return inAll(Measure.MILLILITRE.toBase(millilitres), Measure.Kind.VOLUME);
        }
        if (solid) {
            double grams = LabelRate.Ppm.ofPercent(wire.activePpm(), wire.activePercent())
                    .productFor(sprayLitres);
            return inAll(grams, Measure.Kind.WEIGHT);
        }
        Measure.Kind kind = wire.product().measure("product").kind();
        double perLitre =
                wire.product().base("product", kind) / wire.perVolume().base("perVolume", Measure.Kind.VOLUME);
        return inAll(new LabelRate.PerVolume(perLitre).productFor(sprayLitres), kind);
    }

    private static double gramsPerLitre(AmountWire fertilizer, AmountWire stockVolume) {
        return fertilizer.base("fertilizer", Measure.Kind.WEIGHT)
                / stockVolume.base("stockVolume", Measure.Kind.VOLUME);
    }

    private static List<AmountWire> inAll(double baseAmount, Measure.Kind kind) {
        return Arrays.stream(Measure.values())
                .filter(measure -> measure.kind() == kind)
                .map(measure -> AmountWire.of(baseAmount, measure))
                .toList();
    }

    private static <T> T computed(Supplier<T> answer) {
        try {
            return answer.get();
        } catch (FaultyValue wrong) {
            throw Problem.notAllowed(wrong);
        }
    }
}

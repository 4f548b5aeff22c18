package rootcast.app.contract;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import rootcast.climate.FlagKind;
import rootcast.climate.Quantity;
import rootcast.crop.MistRegime;
import rootcast.crop.Phase;
import rootcast.ledger.Account;
import rootcast.ledger.Cause;
import rootcast.outlook.DateExplanation;
import rootcast.rounds.Arrival;
import rootcast.rounds.RoundItem;
import rootcast.rounds.Task;
import rootcast.rounds.Treatment;
import rootcast.trackrecord.Trust;
import rootcast.warnings.WarningKind;

/**
 * Names in the interface document the few words that a text may be. The lists come from the enumerations of the core,
 * so that a screen which does not know a new kind of warning does not compile.
 */
@OpenApiFilter(value = OpenApiFilter.RunStage.BUILD, priority = ContractWords.BEFORE_NULLS)
public class ContractWords implements OASFilter {

    /** Filters run from high to low, and a member that may be null is wrapped after it has got its words. */
    static final int BEFORE_NULLS = 10;

    private static final String REFERENCE = "#/components/schemas/";

    private final Map<String, Schema> words = new LinkedHashMap<>();
    private final Map<String, String> wordsOfMember = new LinkedHashMap<>();

    public ContractWords() {
        List<String> measured = words(Quantity.values(), Quantity::wireName);
        define("MeasuredQuantity", measured, "SensorWire.quantity", "Health.quantity", "Value.quantity");
        define(
                "ClimateQuantity",
                Stream.concat(
                                measured.stream(),
                                Stream.of("vapour-pressure-deficit", "dew-point", "daily-light-integral"))
                        .toList(),
                "ClimateWire.quantity",
                "Line.quantity");
        define("HourSource", List.of("measured", "filled", "forecast"), "Hour.source", "HourWire.source");
        define("FlagKind", words(FlagKind.values(), FlagKind::wireName), "Line.kind");
        List<String> filled = List.of("house pattern", "set-point", "reference temperature");
        define("FilledFrom", filled, "OutlookView.filledFrom");
        define(
                "ForecastFrom",
                Stream.concat(Stream.of("readings"), filled.stream()).toList(),
                "OutlookView.forecastFrom");
        List<String> entries = List.of("loss", "count", "stage", "look", "move", "ship", "reversal");
        define("NewEntryKind", entries, "EntryWire.kind");
        define("EntryKind", Stream.concat(Stream.of("stick"), entries.stream()).toList(), "EntryView.kind");
        List<String> causes = words(Cause.values(), Cause::wire);
        define("PostedCause", causes, "EntryView.cause", "PostingView.cause");
        define(
                "LossCause",
                causes.stream()
                        .filter(each -> !each.equals(Cause.COUNT_DIFFERENCE.wire()))
                        .toList(),
                "EntryWire.cause");
        define("AccountKind", words(Account.Kind.values(), ContractWords::lower), "PostingView.account");
        define("ReasonCause", words(DateExplanation.Cause.values(), ContractWords::hyphened), "PartWire.cause");
        define("ProfileOrigin", List.of("entered", "learned"), "ProfileVersionWire.origin");
        define(
                "RoundTask",
                words(Task.values(), Task::wireName),
                "RoundItemView.task",
                "Closed.task",
                "WarningView.settledBy");
        define(
                "RoundState",
                words(RoundItem.State.values(), RoundItem.State::wireName),
                "RoundItemView.state",
                "Closed.state");
        define(
                "RoundField",
                Arrays.stream(Task.values())
                        .flatMap(task -> task.asks().stream())
                        .distinct()
                        .toList(),
                "RoundItemView.asks");
        define("BoxCondition", words(Arrival.Condition.values(), Arrival.Condition::wireName), "DoneWire.condition");
        define("Phase", words(Phase.values(), Phase::name), "RoundItemView.phase");
        define("MistRegime", words(MistRegime.values(), MistRegime::name), "ClashView.mist", "SpanView.mist");
        define("WarningKind", words(WarningKind.values(), WarningKind::wireName), "WarningView.kind");
        define("WarningState", List.of("lasting", "acknowledged", "ended"), "WarningView.state");
        define(
                "TreatmentPurpose",
                words(Treatment.Purpose.values(), ContractWords::hyphened),
                "TreatmentView.purpose",
                "TreatmentWire.purpose");
        define("TrustVerdict", words(Trust.Verdict.values(), ContractWords::hyphened), "ByCrop.verdict");
        define("TrustMend", words(Trust.Mend.values(), ContractWords::hyphened), "ByCrop.mends");
        define("CsvOutcome", List.of("refused", "set-aside", "flagged", "noted"), "CsvLine.outcome");
        define("BatchCsvOutcome", List.of("refused", "here", "doubtful", "noted"), "BatchCsvLine.outcome");
        define("BatchCsvMadeKind", List.of("house", "variety"), "BatchCsvMade.kind");
        define("BrokerState", List.of("off", "standby", "connecting", "connected"), "State.state");
    }

    @Override
    public void filterOpenAPI(OpenAPI document) {
        Map<String, Schema> schemas = document.getComponents().getSchemas();
        wordsOfMember.forEach((member, name) -> {
            int dot = member.indexOf('.');
            Schema of = schemas.get(member.substring(0, dot));
            String property = member.substring(dot + 1);
            if (of == null || !of.getProperties().containsKey(property)) {
                throw new IllegalStateException("the interface has no %s that could have the words of %s; it has %s"
                        .formatted(member, name, schemas.keySet()));
            }
            Schema reference = OASFactory.createSchema().ref(REFERENCE + name);
            Schema stated = of.getProperties().get(property);
            if (stated.getItems() == null) {
                of.addProperty(property, reference);
            } else {
                stated.setItems(reference);
            }
        });
        words.forEach(document.getComponents()::addSchema);
    }

    private void define(String name, List<String> list, String... members) {
        Schema schema = OASFactory.createSchema().addType(SchemaType.STRING);
        list.forEach(schema::addEnumeration);
        words.put(name, schema);
        for (String member : members) {
            wordsOfMember.put(member, name);
        }
    }

    private static <E> List<String> words(E[] values, Function<E, String> word) {
        return Arrays.stream(values).map(word).toList();
    }

    private static String lower(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static String hyphened(Enum<?> value) {
        return lower(value).replace('_', '-');
    }
}

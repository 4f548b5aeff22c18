package rootcast.app.contract;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.jboss.jandex.ClassInfo;
import org.jboss.jandex.DotName;
import org.jboss.jandex.IndexView;
import org.jboss.jandex.RecordComponentInfo;
import org.jboss.jandex.Type;
import org.jspecify.annotations.Nullable;

/**
 * Says in the interface document what the records say in Java: what is not {@code @Nullable} is always there, and what
 * is may be null. The screens are typed from that document; without this every field of an answer would be optional.
 *
 * <p>An answer writes its nulls, so in a record that is only answered every member is required. One that is also sent
 * to us may leave out what may be null.
 */
@OpenApiFilter(OpenApiFilter.RunStage.BUILD)
public class HonestSchemas implements OASFilter {

    private static final String OURS = "rootcast.";
    private static final DotName NULLABLE = DotName.createSimple(Nullable.class);
    private static final DotName NAMED =
            DotName.createSimple(org.eclipse.microprofile.openapi.annotations.media.Schema.class);

    private final Collection<ClassInfo> records;

    public HonestSchemas(IndexView index) {
        records = index.getKnownClasses().stream()
                .filter(ClassInfo::isRecord)
                .filter(each -> each.name().toString().startsWith(OURS))
                .toList();
    }

    @Override
    public void filterOpenAPI(OpenAPI document) {
        Map<String, Schema> schemas = document.getComponents().getSchemas();
        Set<String> sent = sent(document, schemas);
        schemas.forEach((name, schema) -> {
            ClassInfo of = recordOf(name, schema);
            if (of != null) {
                for (RecordComponentInfo member : of.recordComponents()) {
                    state(schema, member, sent.contains(name));
                }
            }
        });
    }

    private static void state(Schema record, RecordComponentInfo member, boolean isSent) {
        Schema stated = record.getProperties().get(member.name());
        Schema honest = withNulls(stated, member.type());
        if (honest != stated) {
            record.addProperty(member.name(), honest);
        }
        List<String> required = record.getRequired();
        boolean mayBeLeftOut = isSent && member.type().hasAnnotation(NULLABLE);
        if (!mayBeLeftOut && (required == null || !required.contains(member.name()))) {
            record.addRequired(member.name());
        }
    }

    private static Schema withNulls(Schema schema, Type type) {
        if (type.kind() == Type.Kind.PARAMETERIZED_TYPE) {
            List<Type> arguments = type.asParameterizedType().arguments();
            Type inner = arguments.get(arguments.size() - 1);
            if (schema.getItems() != null) {
                schema.setItems(withNulls(schema.getItems(), inner));
            } else if (schema.getAdditionalPropertiesSchema() != null) {
                schema.setAdditionalPropertiesSchema(withNulls(schema.getAdditionalPropertiesSchema(), inner));
            }
        }
        if (!type.hasAnnotation(NULLABLE)) {
            return schema;
        }
        if (schema.getRef() != null) {
            return OASFactory.createSchema()
                    .addAnyOf(schema)
                    .addAnyOf(OASFactory.createSchema().addType(SchemaType.NULL));
        }
        if (schema.getType() != null && !schema.getType().contains(SchemaType.NULL)) {
            schema.addType(SchemaType.NULL);
        }
        return schema;
    }

    /** The record that a schema was made from; two of one simple name are told apart by their members. */
    private @Nullable ClassInfo recordOf(String name, Schema schema) {
        if (schema.getProperties() == null) {
            return null;
        }
        Set<String> members = schema.getProperties().keySet();
        return records.stream()
                .filter(each -> schemaName(each).equals(name))
                .filter(each -> members.equals(new HashSet<>(each.recordComponents().stream()
                        .map(RecordComponentInfo::name)
                        .toList())))
                .findFirst()
                .orElse(null);
    }

    private static String schemaName(ClassInfo of) {
        var given = of.declaredAnnotation(NAMED);
        return given == null || given.value("name") == null
                ? of.simpleName()
                : given.value("name").asString();
    }

    /** The schemas that a request is made of. */
    private static Set<String> sent(OpenAPI document, Map<String, Schema> schemas) {
        Set<String> names = new HashSet<>();
        Deque<Schema> open = new ArrayDeque<>();
        document.getPaths().getPathItems().values().stream()
                .flatMap(path -> path.getOperations().values().stream())
                .map(Operation::getRequestBody)
                .filter(Objects::nonNull)
                .flatMap(body -> body.getContent().getMediaTypes().values().stream())
                .map(MediaType::getSchema)
                .filter(Objects::nonNull)
                .forEach(open::add);
        while (!open.isEmpty()) {
            Schema next = open.remove();
            parts(next).filter(Objects::nonNull).forEach(open::add);
            if (next.getRef() != null) {
                String name = next.getRef().substring(next.getRef().lastIndexOf('/') + 1);
                if (names.add(name) && schemas.containsKey(name)) {
                    open.add(schemas.get(name));
                }
            }
        }
        return names;
    }

    private static Stream<Schema> parts(Schema schema) {
        Stream<Schema> members =
                schema.getProperties() == null ? Stream.empty() : schema.getProperties().values().stream();
        return Stream.concat(members, Stream.of(schema.getItems(), schema.getAdditionalPropertiesSchema()));
    }
}

package rootcast.app.problem;

import jakarta.validation.ConstraintViolation;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.lang.annotation.Annotation;
import java.math.BigDecimal;
import rootcast.saying.Fault;

/** From what the annotations of a wire shape demand to what is wrong with the field. */
final class ConstraintFaults {

    private ConstraintFaults() {}

    static FieldError errorOf(String field, ConstraintViolation<?> violation) {
        return errorOf(field, violation.getConstraintDescriptor().getAnnotation(), violation.getInvalidValue());
    }

    /** @throws IllegalStateException of an annotation without a line here */
    static FieldError errorOf(String field, Annotation demanded, Object sent) {
        if (demanded instanceof NotNull || demanded instanceof NotBlank || demanded instanceof NotEmpty) {
            return FieldError.of(field, Fault.MISSING);
        }
        if (demanded instanceof Size size) {
            return size(field, size, sent);
        }
        if (demanded instanceof DecimalMin least) {
            return FieldError.of(field, Fault.AT_LEAST, new BigDecimal(least.value()));
        }
        if (demanded instanceof DecimalMax most) {
            return FieldError.of(field, Fault.AT_MOST, new BigDecimal(most.value()));
        }
        if (demanded instanceof Min least) {
            return FieldError.of(field, Fault.AT_LEAST, least.value());
        }
        // The one pattern of this interface, alone or inside of @Code.
        if (demanded instanceof Pattern || demanded.annotationType().isAnnotationPresent(Pattern.class)) {
            return FieldError.of(field, sent == null ? Fault.MISSING : Fault.NOT_A_CODE);
        }
        throw new IllegalStateException("no line for " + demanded);
    }

    private static FieldError size(String field, Size size, Object sent) {
        if (sent instanceof CharSequence text) {
            return text.length() > size.max()
                    ? FieldError.of(field, Fault.TOO_LONG, size.max())
                    : FieldError.of(field, Fault.TOO_SHORT, size.min());
        }
        boolean many = sent instanceof java.util.Collection<?> all && all.size() > size.max();
        return many
                ? FieldError.of(field, Fault.TOO_MANY, size.max())
                : FieldError.of(field, Fault.TOO_FEW, size.min());
    }
}

package rootcast.app.site;

import jakarta.validation.Constraint;
import jakarta.validation.Payload;
import jakarta.validation.ReportAsSingleViolation;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** A short name that stands in addresses and on labels. */
@NotNull
@Pattern(regexp = "[A-Za-z0-9][A-Za-z0-9._-]{0,31}")
@ReportAsSingleViolation
@Constraint(validatedBy = {})
@Target({ElementType.FIELD, ElementType.PARAMETER, ElementType.RECORD_COMPONENT})
@Retention(RetentionPolicy.RUNTIME)
public @interface Code {
    String message() default "must be 1 to 32 letters, digits, '.', '_' or '-', and begin with a letter or digit";

    Class<?>[] groups() default {};

    Class<? extends Payload>[] payload() default {};
}

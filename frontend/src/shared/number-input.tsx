import { TextField } from '@vaadin/react-components/TextField.js';
import { useMessages } from './messages';
import { sharedMessages } from './shared-messages';
import { numberTyped } from './units';

/**
 * A field for one number. It keeps the text as typed (`value` is that text) and marks what is not a number; nothing is
 * bent to a limit. `numberTyped(value)` is the number.
 */
export interface NumberInputProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (text: string) => void;
  readonly fault?: string | undefined;
  readonly unit?: string;
  readonly hint?: string;
  readonly required?: boolean;
  readonly whole?: boolean;
  readonly className?: string;
  readonly disabled?: boolean;
}

export function NumberInput({
  label,
  value,
  onValue,
  fault,
  unit,
  hint,
  required,
  whole,
  className,
  disabled,
}: NumberInputProps) {
  const t = useMessages(sharedMessages);
  const wrong = fault ?? (value !== '' && numberTyped(value) === undefined ? t.notANumber : undefined);
  return (
    <TextField
      label={unit ? `${label} (${unit})` : label}
      value={value}
      invalid={wrong !== undefined}
      errorMessage={wrong ?? ''}
      {...(hint === undefined ? {} : { helperText: hint })}
      {...(className === undefined ? {} : { className })}
      required={required ?? false}
      disabled={disabled ?? false}
      manualValidation
      autocomplete="off"
      {...{ inputmode: whole ? 'numeric' : 'decimal' }}
      onValueChanged={(event) => {
        if (event.detail.value !== value) onValue(event.detail.value);
      }}
    />
  );
}

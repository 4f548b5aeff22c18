import { useMessages } from './messages';
import { sharedMessages } from './shared-messages';
import { TextInput } from './text-input';
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

export function NumberInput({ label, value, fault, unit, whole, ...rest }: NumberInputProps) {
  const t = useMessages(sharedMessages);
  return (
    <TextInput
      {...rest}
      label={unit ? `${label} (${unit})` : label}
      value={value}
      fault={fault ?? (value !== '' && numberTyped(value) === undefined ? t.notANumber : undefined)}
      keys={whole ? 'numeric' : 'decimal'}
    />
  );
}

import { TextField } from '@vaadin/react-components/TextField.js';
import type { KeyboardEventHandler } from 'react';
import { flushSync } from 'react-dom';

/** A field for one line of text, with its fault below it. */
export interface TextInputProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (text: string) => void;
  readonly fault?: string | undefined;
  readonly hint?: string | undefined;
  readonly required?: boolean;
  readonly disabled?: boolean;
  readonly readonly?: boolean;
  readonly maxlength?: number;
  readonly placeholder?: string;
  readonly className?: string;
  /** Which keys a phone offers. */
  readonly keys?: 'numeric' | 'decimal';
  readonly onKeyDown?: KeyboardEventHandler;
}

export function TextInput({ label, value, onValue, fault, hint, required, keys, ...rest }: TextInputProps) {
  return (
    <TextField
      {...rest}
      label={label}
      value={value}
      helperText={hint ?? ''}
      required={required ?? false}
      manualValidation
      invalid={fault !== undefined}
      errorMessage={fault ?? ''}
      autocomplete="off"
      {...(keys === undefined ? {} : { inputmode: keys })}
      onValueChanged={(event) => {
        // An element's own event is no key press to React, which may draw later than the Enter that follows on a slow
        // device; the form must hold the last letter by then.
        if (event.detail.value !== value) flushSync(() => onValue(event.detail.value));
      }}
    />
  );
}

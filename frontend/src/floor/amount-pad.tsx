import { useRef } from 'react';
import { useMessages } from '../shared/messages';
import { floorMessages } from './floor-messages';
import { afterKey, afterStep, wholeTyped, type PadKey } from './floor-state';

/**
 * Whole amounts for wet hands: one big field per amount with minus and plus, and one keypad that types into the field
 * chosen last. A keyboard types into the fields directly; the telephone's own keyboard stays away.
 */
export interface AmountField {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  /** Where plus and minus begin while nothing is typed. */
  readonly start?: number;
  readonly placeholder?: string;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
}

export interface AmountPadProps {
  readonly fields: readonly AmountField[];
  readonly chosen: string;
  readonly choose: (name: string) => void;
  readonly onValue: (name: string, value: string) => void;
}

const KEYS: readonly PadKey[] = ['1', '2', '3', '4', '5', '6', '7', '8', '9', 'clear', '0', 'back'];

export function AmountPad({ fields, chosen, choose, onValue }: AmountPadProps) {
  const t = useMessages(floorMessages);
  const inputs = useRef(new Map<string, HTMLInputElement>());
  const active = fields.find((field) => field.name === chosen) ?? fields[0];
  if (!active) return null;
  const face = { clear: t.clearAmount, back: '⌫' } as const;
  return (
    <div className="amount-pad">
      {fields.map((field) => (
        <div key={field.name} className={`amount ${field.name === active.name && fields.length > 1 ? 'chosen' : ''}`}>
          <Step by={-1} field={field} onValue={onValue} />
          <label>
            <span className="amount-label">{field.label}</span>
            <input
              ref={(element) => {
                if (element) inputs.current.set(field.name, element);
                else inputs.current.delete(field.name);
              }}
              className={field.value.length > 4 ? 'long' : undefined}
              value={field.value}
              inputMode="none"
              autoComplete="off"
              placeholder={field.placeholder}
              aria-invalid={field.fault !== undefined}
              aria-describedby={`${field.name}-says`}
              onFocus={() => choose(field.name)}
              onChange={(event) => onValue(field.name, event.target.value.replace(/\D/g, '').slice(0, 7))}
            />
            <span className={field.fault ? 'amount-hint rc-broken' : 'amount-hint'} id={`${field.name}-says`}>
              {field.fault ? `✕ ${field.fault}` : field.hint}
            </span>
          </label>
          <Step by={1} field={field} onValue={onValue} />
        </div>
      ))}
      <div className="keypad" role="group" aria-label={`${t.keypad}: ${active.label}`}>
        {KEYS.map((key) => (
          <button
            key={key}
            type="button"
            aria-label={key === 'back' ? t.deleteDigit : undefined}
            className={key === 'clear' || key === 'back' ? 'keypad-quiet' : undefined}
            // Keeps the field's focus, so that a keyboard and the keypad can take turns.
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => onValue(active.name, afterKey(active.value, key))}
          >
            {key === 'clear' || key === 'back' ? face[key] : key}
          </button>
        ))}
      </div>
    </div>
  );
}

function Step({ by, field, onValue }: { by: 1 | -1; field: AmountField; onValue: AmountPadProps['onValue'] }) {
  const t = useMessages(floorMessages);
  const atZero = by === -1 && (wholeTyped(field.value) ?? field.start ?? 0) === 0;
  return (
    <button
      type="button"
      className="step"
      aria-label={by < 0 ? t.oneLess(field.label) : t.oneMore(field.label)}
      disabled={atZero}
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => onValue(field.name, afterStep(field.value, by, field.start ?? 0))}
    >
      {by < 0 ? '−' : '+'}
    </button>
  );
}

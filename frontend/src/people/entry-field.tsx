import { useId, useState, type Ref } from 'react';
import { useMessages } from '../shared/messages';
import { signInMessages } from './sign-in-messages';

export interface EntryFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (text: string) => void;
  /** For password managers: `username`, `current-password`, `new-password`. */
  readonly autoComplete: string;
  readonly name?: string;
  readonly secret?: boolean;
  readonly hint?: string;
  readonly fault?: string | undefined;
  readonly input?: Ref<HTMLInputElement>;
  readonly autoFocus?: boolean;
  readonly readOnly?: boolean;
}

/**
 * A field of the sign-in and password forms: the browser's own input in the page itself, where password managers find
 * it. What is wrong stands beside it.
 */
export function EntryField(props: EntryFieldProps) {
  const { label, value, onValue, autoComplete, name, secret = false, hint, fault, input, autoFocus, readOnly } = props;
  const t = useMessages(signInMessages);
  const id = useId();
  const [shown, setShown] = useState(false);
  const described = [hint ? `${id}-hint` : '', fault ? `${id}-fault` : ''].filter(Boolean).join(' ');
  return (
    <div className={`entry-field ${fault ? 'wrong' : ''}`}>
      <label htmlFor={id}>{label}</label>
      <div className="entry-box">
        <input
          ref={input}
          id={id}
          name={name ?? autoComplete}
          type={secret && !shown ? 'password' : 'text'}
          autoComplete={autoComplete}
          autoCapitalize="none"
          autoCorrect="off"
          spellCheck={false}
          autoFocus={autoFocus}
          readOnly={readOnly}
          value={value}
          aria-invalid={fault !== undefined}
          aria-describedby={described || undefined}
          onChange={(event) => onValue(event.target.value)}
        />
        {secret && (
          <button
            type="button"
            className="entry-show"
            aria-label={t.showPassword(label)}
            aria-pressed={shown}
            onClick={() => setShown(!shown)}
          >
            {shown ? t.hide : t.show}
          </button>
        )}
      </div>
      {hint && (
        <p id={`${id}-hint`} className="entry-hint">
          {hint}
        </p>
      )}
      {fault && (
        <p id={`${id}-fault`} className="entry-fault">
          <span aria-hidden="true">✕ </span>
          {fault}
        </p>
      )}
    </div>
  );
}

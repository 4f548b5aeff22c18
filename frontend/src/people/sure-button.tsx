import { useState } from 'react';
import { useMessages } from '../shared/messages';
import { sharedMessages } from '../shared/shared-messages';

interface SureButtonProps {
  readonly label: string;
  readonly help: string;
  readonly sure: string;
  readonly name?: string;
  readonly act: () => unknown;
}

/** What cannot be undone from here asks once more, and says what it does. */
export function SureButton({ label, help, sure, name, act }: SureButtonProps) {
  const shared = useMessages(sharedMessages);
  const [asking, setAsking] = useState(false);
  if (!asking) {
    return (
      <button type="button" className="entry-button" aria-label={name} onClick={() => setAsking(true)}>
        {label}
      </button>
    );
  }
  return (
    <div className="sure" role="group" aria-label={name ?? label}>
      <p>{help}</p>
      <div className="people-actions">
        <button
          type="button"
          className="entry-button danger"
          autoFocus
          onClick={() => {
            setAsking(false);
            act();
          }}
        >
          {sure}
        </button>
        <button type="button" className="entry-button" onClick={() => setAsking(false)}>
          {shared.cancel}
        </button>
      </div>
    </div>
  );
}

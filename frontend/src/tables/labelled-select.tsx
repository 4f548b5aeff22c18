import { useId, type ReactNode } from 'react';

interface LabelledSelectProps {
  readonly label: string;
  /** Only for those who hear it: the column's name stands beside the select already. */
  readonly hideLabel?: boolean;
  readonly value: string;
  readonly fault?: string | undefined;
  readonly onValue: (value: string) => void;
  readonly children: ReactNode;
}

/** A choice that the reader's own device draws, with what is wrong about it below. */
export function LabelledSelect({ label, hideLabel, value, fault, onValue, children }: LabelledSelectProps) {
  const id = useId();
  return (
    <span className="table-choice">
      <label htmlFor={id} className={hideLabel ? 'rc-hidden' : 'rc-quiet'}>
        {label}
      </label>
      <select
        id={id}
        className="rc-select"
        value={value}
        aria-invalid={fault !== undefined}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        onChange={(event) => onValue(event.target.value)}
      >
        {children}
      </select>
      {fault !== undefined && (
        <span id={`${id}-fault`} className="rc-broken rc-small">
          ✕ {fault}
        </span>
      )}
    </span>
  );
}

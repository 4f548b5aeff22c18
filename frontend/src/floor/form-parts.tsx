import type { ReactNode } from 'react';
import type { BatchView, NewEntry, TrayFormat } from '../shared/api-types';
import { useMessages } from '../shared/messages';
import { useTrayFormats } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { floorMessages } from './floor-messages';
import type { Draft } from './floor-state';

/** What the forms of the floor are made of. */
export interface EntryFormProps {
  readonly batch: BatchView;
  /** A refused entry that is being mended. */
  readonly before: NewEntry | undefined;
  readonly record: (draft: Draft) => void;
  readonly busy: boolean;
  /** That it happened at another time than now. */
  readonly earlier: boolean;
}

export function Form(props: {
  submit: () => void;
  busy: boolean;
  unready?: boolean;
  warning?: string | undefined;
  children: ReactNode;
}) {
  const t = useMessages(floorMessages);
  const shared = useMessages(sharedMessages);
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!props.busy && !props.unready) props.submit();
      }}
    >
      {props.children}
      <p className="floor-warning" role="status">
        {props.warning && <span className="rc-at-risk">▲ {props.warning}</span>}
      </p>
      <div className="record-bar">
        <button type="submit" className="floor-button primary" disabled={props.busy || props.unready}>
          {props.busy ? shared.loading : t.record}
        </button>
      </div>
    </form>
  );
}

interface ChoiceProps {
  readonly chosen: boolean;
  readonly choose: () => void;
  readonly disabled?: boolean;
  readonly children: ReactNode;
}

export function Choice({ chosen, choose, disabled = false, children }: ChoiceProps) {
  return (
    <button type="button" className="floor-button choice" aria-pressed={chosen} disabled={disabled} onClick={choose}>
      <span className="choice-mark" aria-hidden="true">
        {chosen ? '✓' : ''}
      </span>
      <span className="choice-text">{children}</span>
    </button>
  );
}

export function useFormatOf(batch: BatchView): TrayFormat | undefined {
  return useTrayFormats().data?.find((format) => format.code === batch.trayFormat);
}

export function signed(n: number, integer: (n: number) => string): string {
  return n > 0 ? `+${integer(n)}` : `−${integer(Math.abs(n))}`;
}

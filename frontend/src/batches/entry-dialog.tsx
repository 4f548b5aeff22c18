import { Dialog } from '@vaadin/react-components/Dialog.js';
import { useState } from 'react';
import type { BatchView } from '../shared/api-types';
import { clockTyped } from '../shared/as-of-state';
import { DateInput } from '../shared/date-input';
import { useMessages } from '../shared/messages';
import { TextInput } from '../shared/text-input';
import { instantOf } from '../shared/zoned-time';
import { EntryPanel } from '../floor/entry-panel';
import { entryMessages } from '../floor/entry-messages';
import type { Action } from '../floor/floor-state';
import { UndoPanel, type Undoing } from '../floor/undo-panel';
import { storyMessages } from './story-messages';

interface EntryDialogProps {
  readonly batch: BatchView;
  readonly action: Action;
  readonly title: string;
  readonly timeZone: string | undefined;
  readonly close: () => void;
}

/** Floor's forms at a desk, where what happened is often written down later. */
export function EntryDialog({ batch, action, title, timeZone, close }: EntryDialogProps) {
  const t = useMessages(storyMessages);
  const [earlier, setEarlier] = useState(false);
  const [date, setDate] = useState('');
  const [time, setTime] = useState('');
  const happenedAt = earlier ? instantOf(timeZone, date, clockTyped(time)) : undefined;
  return (
    <Dialog opened headerTitle={`${title}: ${batch.id}`} onOpenedChanged={(event) => !event.detail.value && close()}>
      <div className="entry-dialog">
        <details open={earlier} onToggle={(event) => setEarlier(event.currentTarget.open)}>
          <summary>{t.happened}</summary>
          <div className="rc-row happened">
            <DateInput label={t.happenedDate} value={date} onValue={setDate} />
            <TextInput label={t.happenedTime} value={time} hint={timeZone} onValue={setTime} />
          </div>
          {earlier && happenedAt === undefined && <p className="rc-broken">✕ {t.badTime}</p>}
        </details>
        <EntryPanel
          batch={batch}
          action={action}
          done={close}
          happened={earlier ? (happenedAt ?? 'unclear') : undefined}
        />
      </div>
    </Dialog>
  );
}

export function UndoDialog({ undoing, close }: { undoing: Undoing; close: () => void }) {
  const words = useMessages(entryMessages);
  return (
    <Dialog opened headerTitle={words.undoTitle} onOpenedChanged={(event) => !event.detail.value && close()}>
      <div className="entry-dialog">
        <UndoPanel undoing={undoing} done={close} />
      </div>
    </Dialog>
  );
}

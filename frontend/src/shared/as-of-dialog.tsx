import { Dialog } from '@vaadin/react-components/Dialog.js';
import { useState } from 'react';
import { useAsOf } from './as-of';
import { asOfMessages } from './as-of-messages';
import { momentTyped, type AsOfFault } from './as-of-state';
import { Button } from './button';
import { DateInput } from './date-input';
import { useMessages } from './messages';
import { TextInput } from './text-input';
import { wallClock } from './zoned-time';

interface AsOfDialogProps {
  /** That of the site; without one the device's. */
  readonly timeZone: string | undefined;
  readonly close: () => void;
}

/** Asks for the moment to look back to. */
export function AsOfDialog({ timeZone, close }: AsOfDialogProps) {
  const t = useMessages(asOfMessages);
  const [asOf, look] = useAsOf();
  const [typed, setTyped] = useState(() => {
    const [date = '', time = ''] = wallClock(timeZone, asOf ? Date.parse(asOf) : Date.now()).split('T');
    return { date, time };
  });
  const [fault, setFault] = useState<AsOfFault>();
  const show = () => {
    const made = momentTyped(timeZone, typed.date, typed.time, Date.now());
    if ('fault' in made) {
      setFault(made.fault);
      return;
    }
    close();
    look(made.asOf);
  };
  const change = (part: Partial<typeof typed>) => {
    setTyped((before) => ({ ...before, ...part }));
    setFault(undefined);
  };
  return (
    <Dialog opened headerTitle={t.title} onClosed={close}>
      <div className="as-of-form">
        <DateInput
          label={t.day}
          value={typed.date}
          onValue={(date) => change({ date })}
          fault={fault === 'noDay' || fault === 'toCome' ? t[fault] : undefined}
        />
        <TextInput
          label={t.time}
          value={typed.time}
          hint={timeZone === undefined ? undefined : t.zone(timeZone)}
          fault={fault === 'noTime' ? t.noTime : undefined}
          // Enter in the day chooses the day; only here it means that all is said.
          onKeyDown={(event) => event.key === 'Enter' && show()}
          onValue={(time) => change({ time })}
        />
        <Button theme="primary" onClick={show}>
          {t.show}
        </Button>
      </div>
    </Dialog>
  );
}

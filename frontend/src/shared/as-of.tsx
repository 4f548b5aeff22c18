import { Button } from '@vaadin/react-components/Button.js';
import { Dialog } from '@vaadin/react-components/Dialog.js';
import { useCallback, useEffect, useState, type ReactNode } from 'react';
import { useSearchParams } from 'react-router';
import type { Instant } from './api-types';
import { asOfIn, momentTyped, withAsOf, type AsOfFault } from './as-of-state';
import { DateInput } from './date-input';
import { useFormats } from './formats';
import { messagesIn, useMessages } from './messages';
import { TextInput } from './text-input';
import { wallClock } from './zoned-time';
import './as-of.css';

/** Seeing a screen as it was: the control that asks for a moment, and the banner that says so. */

const asOfMessages = messagesIn({
  en: {
    see: 'See it as of …',
    title: 'See it as it was',
    day: 'Day',
    time: 'At',
    show: 'Show',
    noDay: 'Choose the day.',
    noTime: 'Type a time such as 09:30 that exists on that day.',
    toCome: 'That is still to come.',
    itWas: (when: string) => `As it was on ${when}`,
    itWasHelp: 'From what had happened by then. Nothing can be recorded while looking back.',
    back: 'Back to now',
    zone: (zone: string) => `clock of ${zone}`,
  },
  es: {
    see: 'Ver cómo estaba …',
    title: 'Ver cómo estaba',
    day: 'Día',
    time: 'A las',
    show: 'Ver',
    noDay: 'Elija el día.',
    noTime: 'Escriba una hora como 09:30 que exista ese día.',
    toCome: 'Eso aún no llega.',
    itWas: (when: string) => `Como estaba el ${when}`,
    itWasHelp: 'Con lo que había pasado hasta entonces. Mientras se mira atrás no se anota nada.',
    back: 'Volver a ahora',
    zone: (zone: string) => `hora de ${zone}`,
  },
});

/** The moment the address names, and how to name another; undefined is now. */
export function useAsOf(): [asOf: Instant | undefined, look: (asOf: Instant | undefined) => void] {
  const [params, setParams] = useSearchParams();
  const look = useCallback((asOf: Instant | undefined) => setParams((before) => withAsOf(before, asOf)), [setParams]);
  return [asOfIn(params, Date.now()), look];
}

/** `timeZone` is that of the site; without one the device's. */
export function AsOfControl({ timeZone }: { timeZone: string | undefined }) {
  const t = useMessages(asOfMessages);
  const [asOf, look] = useAsOf();
  const [opened, setOpened] = useState(false);
  const [typed, setTyped] = useState({ date: '', time: '' });
  const [fault, setFault] = useState<AsOfFault>();
  const open = () => {
    const [date = '', time = ''] = wallClock(timeZone, asOf ? Date.parse(asOf) : Date.now()).split('T');
    setTyped({ date, time });
    setFault(undefined);
    setOpened(true);
  };
  const show = () => {
    const made = momentTyped(timeZone, typed.date, typed.time, Date.now());
    if ('fault' in made) {
      setFault(made.fault);
      return;
    }
    setOpened(false);
    look(made.asOf);
  };
  const change = (part: Partial<typeof typed>) => {
    setTyped((before) => ({ ...before, ...part }));
    setFault(undefined);
  };
  return (
    <>
      <Button theme="tertiary" className="rc-no-print" onClick={open}>
        {t.see}
      </Button>
      <Dialog opened={opened} headerTitle={t.title} onOpenedChanged={(event) => setOpened(event.detail.value)}>
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
    </>
  );
}

/** Says that the screen is not of now; nothing when it is. */
export function AsOfBanner({ timeZone, children }: { timeZone: string | undefined; children?: ReactNode }) {
  const t = useMessages(asOfMessages);
  const format = useFormats();
  const [asOf, look] = useAsOf();
  const back = asOf !== undefined;
  // What is of now, such as the live mark and the bell, would be taken for part of what is looked back to.
  useEffect(() => {
    document.documentElement.classList.toggle('looking-back', back);
    return () => document.documentElement.classList.remove('looking-back');
  }, [back]);
  if (!back) return null;
  return (
    <div className="as-of-banner" role="status">
      <p>
        <strong>↶ {t.itWas(format.dateTime(asOf, timeZone))}</strong> <span>{t.itWasHelp}</span>
      </p>
      {children}
      <Button theme="primary" className="rc-no-print" onClick={() => look(undefined)}>
        {t.back}
      </Button>
    </div>
  );
}

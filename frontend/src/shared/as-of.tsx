import { useCallback, useEffect, useState, type ReactNode } from 'react';
import { useSearchParams } from 'react-router';
import type { Instant } from './api-types';
import { asOfMessages } from './as-of-messages';
import { asOfIn, withAsOf } from './as-of-state';
import { Button } from './button';
import { useFormats } from './formats';
import { later } from './later';
import { useMessages } from './messages';
import './as-of.css';

/** Seeing a screen as it was: the control that asks for a moment, and the banner that says so. */

const AsOfDialog = later(async () => (await import('./as-of-dialog')).AsOfDialog);

/** The moment the address names, and how to name another; undefined is now. */
export function useAsOf(): [asOf: Instant | undefined, look: (asOf: Instant | undefined) => void] {
  const [params, setParams] = useSearchParams();
  const look = useCallback((asOf: Instant | undefined) => setParams((before) => withAsOf(before, asOf)), [setParams]);
  return [asOfIn(params, Date.now()), look];
}

/** `timeZone` is that of the site; without one the device's. */
export function AsOfControl({ timeZone }: { timeZone: string | undefined }) {
  const t = useMessages(asOfMessages);
  const [opened, setOpened] = useState(false);
  return (
    <>
      <Button theme="tertiary" className="rc-no-print" onClick={() => setOpened(true)}>
        {t.see}
      </Button>
      {opened && <AsOfDialog timeZone={timeZone} close={() => setOpened(false)} />}
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

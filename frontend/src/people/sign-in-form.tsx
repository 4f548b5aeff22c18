import { useEffect, useRef, useState } from 'react';
import { useMessages } from '../shared/messages';
import { Problem } from '../shared/problem';
import { ProblemNote } from '../shared/screen-states';
import { EntryField } from './entry-field';
import { useSessionActions } from './session-actions';
import { signInMessages } from './sign-in-messages';
import { checkedSignIn, clockOf, secondsLeft, signInRefusal, type SignInDraft } from './sign-in-state';

const NO_FAULTS: Readonly<Partial<Record<keyof SignInDraft, string>>> = {};

/** Name and password. `name` is who was here before, when the session of somebody ended. */
export function SignInForm({ name = '', done }: { name?: string; done: () => void }) {
  const t = useMessages(signInMessages);
  const { signIn } = useSessionActions();
  const [draft, setDraft] = useState<SignInDraft>({ name, password: '' });
  const [faults, setFaults] = useState(NO_FAULTS);
  const [failure, setFailure] = useState<unknown>();
  const [lockedUntilMs, setLockedUntilMs] = useState(0);
  const [busy, setBusy] = useState(false);
  const nameInput = useRef<HTMLInputElement>(null);
  const passwordInput = useRef<HTMLInputElement>(null);
  const left = useCountdown(lockedUntilMs);

  const put = (change: Partial<SignInDraft>) => {
    setDraft((before) => ({ ...before, ...change }));
    setFaults(NO_FAULTS);
  };
  const send = async () => {
    if (busy || left > 0) return;
    const made = checkedSignIn(draft);
    if ('faults' in made) {
      setFaults({
        ...(made.faults.name ? { name: t.nameNeeded } : {}),
        ...(made.faults.password ? { password: t.passwordNeeded } : {}),
      });
      (made.faults.name ? nameInput : passwordInput).current?.focus();
      return;
    }
    setBusy(true);
    setFailure(undefined);
    setFaults(NO_FAULTS);
    setLockedUntilMs(0);
    try {
      await signIn(made.body);
      done();
    } catch (refused) {
      setBusy(false);
      const meaning = refused instanceof Problem ? signInRefusal(refused.status, refused.members) : { kind: 'other' };
      if (meaning.kind === 'wrong') {
        setFaults({ password: t.wrong });
        passwordInput.current?.focus();
        passwordInput.current?.select();
      } else if (meaning.kind === 'locked' && 'seconds' in meaning) {
        setLockedUntilMs(Date.now() + meaning.seconds * 1000);
      } else {
        setFailure(refused);
      }
    }
  };
  return (
    <form
      noValidate
      className="entry-form"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <EntryField
        label={t.name}
        value={draft.name}
        autoComplete="username"
        input={nameInput}
        autoFocus={name === ''}
        fault={faults.name}
        onValue={(text) => put({ name: text })}
      />
      <EntryField
        label={t.password}
        value={draft.password}
        autoComplete="current-password"
        secret
        input={passwordInput}
        autoFocus={name !== ''}
        fault={faults.password}
        onValue={(text) => put({ password: text })}
      />
      {lockedUntilMs > 0 && (
        <div className="entry-locked">
          <p role="alert">
            {left > 0 ? (
              <>
                <span aria-hidden="true">▲ </span>
                {t.locked}
              </>
            ) : (
              <>
                <span aria-hidden="true">✓ </span>
                {t.lockedOver}
              </>
            )}
          </p>
          {/* Read when asked for, not every second. */}
          {left > 0 && <p role="timer">{t.lockedFor(clockOf(left))}</p>}
        </div>
      )}
      <ProblemNote failure={failure} />
      <button type="submit" className="entry-button primary" aria-disabled={busy || left > 0}>
        {busy ? t.signingIn : t.signIn}
      </button>
    </form>
  );
}

/** Whole seconds until `untilMs`, renewed while there are any. */
function useCountdown(untilMs: number): number {
  const [nowMs, setNowMs] = useState(Date.now);
  const left = secondsLeft(untilMs, nowMs);
  useEffect(() => {
    if (untilMs === 0) return;
    setNowMs(Date.now());
    const timer = setInterval(() => {
      setNowMs(Date.now());
      if (Date.now() >= untilMs) clearInterval(timer);
    }, 250);
    return () => clearInterval(timer);
  }, [untilMs]);
  return untilMs === 0 ? 0 : left;
}

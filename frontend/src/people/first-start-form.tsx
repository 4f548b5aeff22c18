import { useState } from 'react';
import { useMessages } from '../shared/messages';
import { Problem } from '../shared/problem';
import { ProblemNote } from '../shared/screen-states';
import { useProblemWords } from '../shared/use-problem-words';
import { EntryField } from './entry-field';
import { usePasswordWords } from './password-words';
import { useSessionActions } from './session-actions';
import { signInMessages } from './sign-in-messages';
import { checkedOwner, LEAST_PASSWORD, type OwnerDraft, type OwnerFaults } from './sign-in-state';

const EMPTY: OwnerDraft = { secret: '', name: '', displayName: '', password: '', again: '' };

/** The first start: whoever can read the server's log makes the owner's account. */
export function FirstStartForm({ done }: { done: () => void }) {
  const refusals = useProblemWords();
  const t = useMessages(signInMessages);
  const { becomeOwner } = useSessionActions();
  const [draft, setDraft] = useState(EMPTY);
  const [faults, setFaults] = useState<OwnerFaults>({});
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);

  const said = { ...usePasswordWords(), name: t.nameWrong };
  const secretWrong = failure instanceof Problem && (failure.status === 401 || failure.status === 403);
  const faultOf = (field: keyof OwnerDraft) => {
    const mine = faults[field];
    if (mine) return said[mine];
    if (field === 'secret' && secretWrong) return t.secretWrong;
    return refusals.faultOf(failure, field);
  };
  const besideFields = secretWrong || (failure instanceof Problem && failure.fieldFaults.length > 0);
  const field = (name: keyof OwnerDraft) => ({
    name,
    value: draft[name],
    fault: faultOf(name),
    onValue: (text: string) => {
      setDraft((before) => ({ ...before, [name]: text }));
      setFaults(({ [name]: _mended, ...others }) => others);
    },
  });
  const send = async () => {
    if (busy) return;
    setFailure(undefined);
    const made = checkedOwner(draft);
    if ('faults' in made) {
      setFaults(made.faults);
      return;
    }
    setBusy(true);
    try {
      await becomeOwner(made.body);
      done();
    } catch (refused) {
      setFailure(refused);
      setBusy(false);
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
      <p className="entry-help">{t.ownerHelp}</p>
      <EntryField {...field('secret')} label={t.secret} hint={t.secretHint} autoComplete="one-time-code" autoFocus />
      <EntryField {...field('name')} label={t.ownerName} hint={t.nameHint} autoComplete="username" />
      <EntryField {...field('displayName')} label={t.displayName} autoComplete="name" />
      <EntryField
        {...field('password')}
        label={t.password}
        hint={t.passwordHint(LEAST_PASSWORD)}
        autoComplete="new-password"
        secret
      />
      <EntryField {...field('again')} label={t.again} autoComplete="new-password" secret />
      <ProblemNote failure={besideFields ? undefined : failure} />
      <button type="submit" className="entry-button primary" aria-disabled={busy}>
        {busy ? t.making : t.makeOwner}
      </button>
    </form>
  );
}

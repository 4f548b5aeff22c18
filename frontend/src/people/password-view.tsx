import { useState } from 'react';
import { useNavigate } from 'react-router';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { Problem } from '../shared/problem';
import { ProblemNote } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useProblemWords } from '../shared/use-problem-words';
import { accountMessages } from './account-messages';
import { EntryField } from './entry-field';
import { usePasswordWords } from './password-words';
import { putPassword } from './session-api';
import { signInMessages } from './sign-in-messages';
import { LEAST_PASSWORD, passwordFaults } from './sign-in-state';
import { useSignedIn } from './signed-in';
import './account.css';
import './sign-in.css';

type Field = 'current' | 'password' | 'again';

/** A new password for the reader, who proves to be the one by the old. */
export function PasswordView() {
  const t = useMessages(accountMessages);
  const refusals = useProblemWords();
  const words = useMessages(signInMessages);
  useScreenTitle(t.passwordTitle);
  const navigate = useNavigate();
  const said = usePasswordWords();
  const session = useSignedIn();
  const [draft, setDraft] = useState({ current: '', password: '', again: '' });
  const [faults, setFaults] = useState<Readonly<Partial<Record<Field, string>>>>({});
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const field = (name: Field) => ({
    name,
    value: draft[name],
    secret: true,
    fault: faults[name] ?? refusals.faultOf(failure, name),
    onValue: (text: string) => {
      setDraft((before) => ({ ...before, [name]: text }));
      setFaults(({ [name]: _mended, ...others }) => others);
    },
  });
  const save = async () => {
    if (busy) return;
    setFailure(undefined);
    const found = passwordFaults(draft, session?.name ?? '');
    if (draft.current === '' || found.password || found.again) {
      setFaults({
        ...(draft.current === '' ? { current: words.needed } : {}),
        ...(found.password ? { password: said[found.password] } : {}),
        ...(found.again ? { again: said[found.again] } : {}),
      });
      return;
    }
    setBusy(true);
    try {
      await putPassword(draft.current, draft.password);
      notice({ text: t.saved });
      void navigate(-1);
    } catch (refused) {
      setBusy(false);
      if (refused instanceof Problem && refused.faultAt('current')) setFaults({ current: t.currentWrong });
      else setFailure(refused);
    }
  };
  return (
    <div className="rc-screen account-screen">
      <form
        noValidate
        className="entry-form"
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        {/* Password managers want to know whose password it is. */}
        <input type="text" name="username" autoComplete="username" value={session?.name ?? ''} readOnly hidden />
        <EntryField {...field('current')} label={t.current} autoComplete="current-password" autoFocus />
        <EntryField
          {...field('password')}
          label={t.fresh}
          hint={words.passwordHint(LEAST_PASSWORD)}
          autoComplete="new-password"
        />
        <EntryField {...field('again')} label={t.again} autoComplete="new-password" />
        <p className="entry-hint">{t.othersEnd}</p>
        <ProblemNote failure={failure instanceof Problem && failure.fieldFaults.length > 0 ? undefined : failure} />
        <button type="submit" className="entry-button primary" aria-disabled={busy}>
          {t.save}
        </button>
      </form>
    </div>
  );
}

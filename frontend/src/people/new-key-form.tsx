import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useNavigate } from 'react-router';
import { useMessages } from '../shared/messages';
import { ProblemNote } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { copyText } from '../shared/take-away';
import { EntryField } from './entry-field';
import { KEY_ROLES } from './grants-state';
import { GrantsTable } from './grants-table';
import { makeKey } from './people-api';
import { keys } from '../shared/query-keys';
import { useProblemWords } from '../shared/use-problem-words';
import { peopleMessages } from './people-messages';
import type { Grant } from './people-types';
import { signInMessages } from './sign-in-messages';

/** Makes a key and shows it, this once. */
export function NewKeyForm() {
  const t = useMessages(peopleMessages);
  const words = useMessages(signInMessages);
  const refusals = useProblemWords();
  const shared = useMessages(sharedMessages);
  const navigate = useNavigate();
  const queries = useQueryClient();
  const [name, setName] = useState('');
  const [grants, setGrants] = useState<readonly Grant[]>([]);
  const [checked, setChecked] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const [made, setMade] = useState<string>();
  const make = async () => {
    if (busy) return;
    setChecked(true);
    if (name.trim() === '' || grants.length === 0) return;
    setBusy(true);
    setFailure(undefined);
    try {
      setMade((await makeKey(name.trim(), grants)).key);
      await queries.invalidateQueries({ queryKey: keys.accessKeys() });
    } catch (refused) {
      setFailure(refused);
    } finally {
      setBusy(false);
    }
  };
  if (made !== undefined) {
    return <MadeKey name={name.trim()} secret={made} done={() => void navigate('/setup/keys')} />;
  }
  const said = refusals.faultOf(failure, 'name');
  return (
    <form
      noValidate
      className="entry-form people-form"
      onSubmit={(event) => {
        event.preventDefault();
        void make();
      }}
    >
      <h2>{t.newKey}</h2>
      <div className="people-fields">
        <EntryField
          label={t.keyName}
          hint={t.keyNameHint}
          value={name}
          autoComplete="off"
          autoFocus
          fault={checked && name.trim() === '' ? words.needed : said}
          onValue={setName}
        />
      </div>
      <GrantsTable
        roles={KEY_ROLES}
        grants={grants}
        change={setGrants}
        fault={checked && grants.length === 0 ? t.keyNeedsRole : undefined}
      />
      <ProblemNote failure={said ? undefined : failure} />
      <div className="people-actions">
        <button type="submit" className="entry-button primary" aria-disabled={busy}>
          {t.makeKey}
        </button>
        <button type="button" className="entry-button" onClick={() => void navigate('/setup/keys')}>
          {shared.cancel}
        </button>
      </div>
    </form>
  );
}

function MadeKey({ name, secret, done }: { name: string; secret: string; done: () => void }) {
  const t = useMessages(peopleMessages);
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await copyText(secret);
      setSaid(`✓ ${t.copied}`);
    } catch {
      setSaid(`✕ ${t.copyFailed}`);
    }
  };
  return (
    <section className="people-form made-key" aria-labelledby="made-key">
      <h2 id="made-key">{t.shownOnce(name)}</h2>
      <p>{t.shownOnceHelp}</p>
      <div className="entry-box">
        <input readOnly aria-label={t.theKey} value={secret} autoFocus onFocus={(event) => event.target.select()} />
        <button type="button" className="entry-show" onClick={() => void copy()}>
          {t.copy}
        </button>
      </div>
      <p role="status">{said}</p>
      <button type="button" className="entry-button" onClick={done}>
        {t.kept}
      </button>
    </section>
  );
}

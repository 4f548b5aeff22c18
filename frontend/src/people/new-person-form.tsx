import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useNavigate } from 'react-router';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { Problem } from '../shared/problem';
import { ProblemNote } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { EntryField } from './entry-field';
import { PERSON_ROLES } from './grants-state';
import { GrantsTable } from './grants-table';
import { usePasswordWords } from './password-words';
import { addPerson } from './people-api';
import { keys } from '../shared/query-keys';
import { useProblemWords } from '../shared/use-problem-words';
import { peopleMessages } from './people-messages';
import { checkedNew, NEW_PERSON, type PersonFaults } from './people-state';
import type { PersonView } from './people-types';
import { signInMessages } from './sign-in-messages';
import { LEAST_PASSWORD } from './sign-in-state';

/** Somebody new: a name to sign in with, a first password, roles. */
export function NewPersonForm({ people }: { people: readonly PersonView[] }) {
  const t = useMessages(peopleMessages);
  const words = useMessages(signInMessages);
  const refusals = useProblemWords();
  const shared = useMessages(sharedMessages);
  const passwordWords = usePasswordWords();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const [draft, setDraft] = useState(NEW_PERSON);
  const [faults, setFaults] = useState<PersonFaults>({});
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);

  const nameWords = { needed: words.needed, name: words.nameWrong, taken: t.nameTaken };
  const said = {
    name: faults.name && nameWords[faults.name],
    displayName: faults.displayName && words.needed,
    password: faults.password && passwordWords[faults.password],
  };
  const field = (name: keyof typeof said) => ({
    name: `person-${name}`,
    value: draft[name],
    fault: said[name] ?? refusals.faultOf(failure, name),
    onValue: (text: string) => {
      setDraft((before) => ({ ...before, [name]: text }));
      setFaults(({ [name]: _mended, ...others }) => others);
    },
  });
  const save = async () => {
    if (busy) return;
    setFailure(undefined);
    const made = checkedNew(draft, people);
    if ('faults' in made) {
      setFaults(made.faults);
      return;
    }
    setBusy(true);
    try {
      await addPerson(made.person);
      await queries.invalidateQueries({ queryKey: keys.people() });
      notice({ text: t.saved(made.person.displayName) });
      void navigate('/setup/people');
    } catch (refused) {
      setFailure(refused);
      setBusy(false);
    }
  };
  const beside = failure instanceof Problem && failure.fieldFaults.some(({ field: at }) => !at.startsWith('grants'));
  return (
    <form
      noValidate
      className="entry-form people-form"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <h2>{t.newPerson}</h2>
      <div className="people-fields">
        <EntryField {...field('displayName')} label={t.displayName} autoComplete="off" autoFocus />
        <EntryField {...field('name')} label={t.name} hint={words.nameHint} autoComplete="off" />
        <EntryField
          {...field('password')}
          label={t.firstPassword}
          hint={t.firstPasswordHint(LEAST_PASSWORD)}
          autoComplete="new-password"
          secret
        />
      </div>
      <GrantsTable
        roles={PERSON_ROLES}
        grants={draft.grants}
        change={(grants) => setDraft((before) => ({ ...before, grants }))}
      />
      {draft.grants.length === 0 && <p className="rc-at-risk">▲ {t.noRole}</p>}
      <ProblemNote failure={beside ? undefined : failure} />
      <div className="people-actions">
        <button type="submit" className="entry-button primary" aria-disabled={busy}>
          {t.add}
        </button>
        <button type="button" className="entry-button" onClick={() => void navigate('/setup/people')}>
          {shared.cancel}
        </button>
      </div>
    </form>
  );
}

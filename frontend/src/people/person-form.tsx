import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { ProblemNote } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { EntryField } from './entry-field';
import { PERSON_ROLES } from './grants-state';
import { GrantsTable } from './grants-table';
import { usePasswordWords } from './password-words';
import { changePerson, endSessionsOf, setPassword } from './people-api';
import { keys } from '../shared/query-keys';
import { useProblemWords } from '../shared/use-problem-words';
import { peopleMessages } from './people-messages';
import { changeOf } from './people-state';
import type { PersonView } from './people-types';
import { signInMessages } from './sign-in-messages';
import { LEAST_PASSWORD, passwordFault } from './sign-in-state';
import { useSignedIn } from './signed-in';
import { SureButton } from './sure-button';

/** One person: name and roles, then what concerns signing in. Each part is saved by itself. */
export function PersonForm({ person, people }: { person: PersonView; people: readonly PersonView[] }) {
  const t = useMessages(peopleMessages);
  const words = useMessages(signInMessages);
  const shared = useMessages(sharedMessages);
  const [displayName, setDisplayName] = useState(person.displayName);
  const [grants, setGrants] = useState(person.grants);
  const [nameless, setNameless] = useState(false);
  const { busy, failure, run } = useSaving();
  const me = useSignedIn()?.name === person.name;
  const owners = people.filter((each) => each.active && each.grants.some(({ role }) => role === 'OWNER'));
  const lastOwner = owners.length === 1 && owners[0]?.name === person.name;

  const save = () => {
    setNameless(displayName.trim() === '');
    const change = changeOf(person, displayName, grants, person.active);
    if (displayName.trim() === '' || !change) return;
    void run(() => changePerson(person.name, change), t.saved(change.displayName));
  };
  const switchTo = (active: boolean) =>
    run(
      () => changePerson(person.name, { displayName: person.displayName, grants: person.grants, active }),
      active ? t.switchedOn(person.displayName) : t.switchedOff(person.displayName),
    );
  const changed = changeOf(person, displayName, grants, person.active) !== undefined;
  return (
    <div className="people-form">
      <p>
        <Link className="rc-link" to="/setup/people">
          ← {t.people}
        </Link>
      </p>
      <form
        noValidate
        className="entry-form"
        onSubmit={(event) => {
          event.preventDefault();
          save();
        }}
      >
        <h2>
          {person.displayName} <span className="rc-quiet">{person.name}</span>{' '}
          {!person.active && <span className="people-tag">✕ {t.inactive}</span>}
        </h2>
        <div className="people-fields">
          <EntryField
            label={t.displayName}
            value={displayName}
            autoComplete="off"
            fault={nameless ? words.needed : undefined}
            onValue={(text) => {
              setDisplayName(text);
              setNameless(false);
            }}
          />
        </div>
        <GrantsTable roles={PERSON_ROLES} grants={grants} change={setGrants} />
        {grants.length === 0 && <p className="rc-at-risk">▲ {t.noRole}</p>}
        <ProblemNote failure={failure} />
        <div className="people-actions">
          <button type="submit" className="entry-button primary" aria-disabled={busy || !changed}>
            {shared.save}
          </button>
        </div>
      </form>
      <section className="people-sign-in" aria-labelledby="person-sign-in">
        <h3 id="person-sign-in">{t.signInPart}</h3>
        {person.signsInWith === 'directory' ? <p>{t.elsewhere}</p> : <NewPassword person={person} />}
        <SureButton
          label={t.endSessions}
          help={t.endSessionsHelp}
          sure={t.endSessionsSure}
          act={() => run(() => endSessionsOf(person.name), t.sessionsEnded(person.displayName))}
        />
        {!person.active ? (
          <button type="button" className="entry-button" onClick={() => void switchTo(true)}>
            {t.activate}
          </button>
        ) : me || lastOwner ? (
          <p className="rc-quiet">{me ? t.notYourself : t.lastOwner}</p>
        ) : (
          <SureButton
            label={t.deactivate}
            help={t.deactivateHelp}
            sure={t.deactivateSure}
            act={() => switchTo(false)}
          />
        )}
      </section>
    </div>
  );
}

function NewPassword({ person }: { person: PersonView }) {
  const t = useMessages(peopleMessages);
  const refusals = useProblemWords();
  const words = useMessages(signInMessages);
  const passwordWords = usePasswordWords();
  const [password, setTyped] = useState('');
  const [fault, setFault] = useState<string>();
  const { busy, failure, run } = useSaving();
  const set = async () => {
    const found = passwordFault(password, person.name);
    setFault(found && passwordWords[found]);
    if (found) return;
    if (await run(() => setPassword(person.name, password), t.passwordSet(person.displayName))) setTyped('');
  };
  const said = refusals.faultOf(failure, 'password');
  return (
    <form
      noValidate
      className="entry-form"
      onSubmit={(event) => {
        event.preventDefault();
        void set();
      }}
    >
      <EntryField
        label={t.newPassword}
        name="person-new-password"
        value={password}
        autoComplete="new-password"
        secret
        hint={`${words.passwordHint(LEAST_PASSWORD)}. ${t.setPasswordHelp}`}
        fault={fault ?? said}
        onValue={(text) => {
          setTyped(text);
          setFault(undefined);
        }}
      />
      <ProblemNote failure={said ? undefined : failure} />
      <button type="submit" className="entry-button" aria-disabled={busy}>
        {t.setPassword}
      </button>
    </form>
  );
}

/** Saves one thing at a time, says so, and renews the list. */
function useSaving() {
  const queries = useQueryClient();
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const run = async (work: () => Promise<unknown>, said: string): Promise<boolean> => {
    if (busy) return false;
    setBusy(true);
    setFailure(undefined);
    try {
      await work();
      notice({ text: said });
      await queries.invalidateQueries({ queryKey: keys.people() });
      // Whoever changes their own roles sees other rooms from now on.
      await queries.invalidateQueries({ queryKey: keys.session() });
      return true;
    } catch (refused) {
      setFailure(refused);
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { busy, failure, run };
}

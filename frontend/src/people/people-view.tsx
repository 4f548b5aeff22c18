import { useState } from 'react';
import { Link, useNavigate, useParams } from 'react-router';
import { Button } from '../shared/button';
import { HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { AccessLayout } from './access-layout';
import { useGrantWords } from './grant-words';
import { NewPersonForm } from './new-person-form';
import { usePeople } from './people-api';
import { peopleMessages } from './people-messages';
import { shownPeople } from './people-state';
import type { PersonView } from './people-types';
import { PersonForm } from './person-form';
import { useSignedIn } from './signed-in';

/** Who may sign in and with which roles; one person by name in the address. */
export function PeopleView() {
  const t = useMessages(peopleMessages);
  useScreenTitle(t.people);
  const { name } = useParams();
  const people = usePeople();
  const body = () => {
    if (people.isPending) return <Loading />;
    if (!people.data) return <Failed failure={people.error} retry={() => void people.refetch()} />;
    if (name === undefined) return <PeopleList people={people.data} />;
    if (name === '~new') return <NewPersonForm people={people.data} />;
    const found = people.data.find((each) => each.name === name);
    if (found) return <PersonForm key={name} person={found} people={people.data} />;
    return (
      <Empty title={t.gone(name)}>
        <Link className="rc-link" to="/setup/people">
          {t.people}
        </Link>
      </Empty>
    );
  };
  return <AccessLayout list="people">{body()}</AccessLayout>;
}

function PeopleList({ people }: { people: readonly PersonView[] }) {
  const t = useMessages(peopleMessages);
  const navigate = useNavigate();
  const grantWords = useGrantWords();
  const me = useSignedIn()?.name;
  const [text, setText] = useState('');
  const shown = shownPeople(people, text);
  return (
    <>
      <div className="rc-row rc-spread setup-head">
        <h2 id="people-list">{t.people}</h2>
        <span className="rc-row">
          <input
            type="search"
            className="plain-select"
            aria-label={t.find}
            placeholder={t.find}
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
          <Button theme="primary" onClick={() => void navigate('/setup/people/~new')}>
            {t.newPerson}
          </Button>
        </span>
      </div>
      <div className="rc-sheet people-sheet">
        <table className="rc-table people-table" aria-labelledby="people-list">
          <HeadRow heads={[t.displayName, t.name, t.roles]} />
          <tbody>
            {shown.map((each) => (
              <tr key={each.name} className={each.active ? undefined : 'people-off'}>
                <th scope="row">
                  <Link className="rc-link" to={`/setup/people/${encodeURIComponent(each.name)}`}>
                    {each.displayName}
                  </Link>{' '}
                  {each.name === me && <span className="people-tag">{t.you}</span>}
                  {!each.active && <span className="people-tag">✕ {t.inactive}</span>}
                </th>
                <td data-label={t.name}>{each.name}</td>
                <td data-label={t.roles} className="people-wide">
                  {grantWords(each.grants)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        {shown.length === 0 && <p className="rc-quiet">{t.noneFits}</p>}
      </div>
    </>
  );
}

import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useNavigate, useParams } from 'react-router';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { HeadRow, spoken } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { Empty, Failed, Loading, ProblemNote } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { AccessLayout } from './access-layout';
import { useGrantWords } from './grant-words';
import { NewKeyForm } from './new-key-form';
import { endKey, useAccessKeys } from './people-api';
import { keys } from '../shared/query-keys';
import { peopleMessages } from './people-messages';
import { shownKeys } from './people-state';
import type { KeyView } from './people-types';
import { SureButton } from './sure-button';

/** Keys of devices and partners. */
export function KeysView() {
  const t = useMessages(peopleMessages);
  useScreenTitle(t.keys);
  const { key } = useParams();
  const made = useAccessKeys();
  const body = () => {
    if (key === '~new') return <NewKeyForm />;
    if (made.isPending) return <Loading />;
    if (!made.data) return <Failed failure={made.error} retry={() => void made.refetch()} />;
    return <KeyList list={made.data} />;
  };
  return <AccessLayout list="keys">{body()}</AccessLayout>;
}

function KeyList({ list }: { list: readonly KeyView[] }) {
  const t = useMessages(peopleMessages);
  const format = useFormats();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const grantWords = useGrantWords();
  const [failure, setFailure] = useState<unknown>();
  const end = async ({ id, name }: KeyView) => {
    setFailure(undefined);
    try {
      await endKey(id);
      notice({ text: t.keyEnded(name) });
      await queries.invalidateQueries({ queryKey: keys.accessKeys() });
    } catch (refused) {
      setFailure(refused);
    }
  };
  const create = (
    <Button theme="primary" onClick={() => void navigate('/setup/keys/~new')}>
      {t.newKey}
    </Button>
  );
  if (list.length === 0) {
    return (
      <Empty title={t.noKeys}>
        <p>{t.keysHelp}</p>
        {create}
      </Empty>
    );
  }
  return (
    <>
      <div className="rc-row rc-spread setup-head">
        <h2 id="key-list">{t.keys}</h2>
        {create}
      </div>
      <p className="rc-quiet">{t.keysHelp}</p>
      <ProblemNote failure={failure} />
      <div className="rc-sheet people-sheet">
        <table className="rc-table people-table" aria-labelledby="key-list">
          <HeadRow heads={[t.keyName, t.roles, t.made, t.lastUsed, spoken(t.endKey)]} />
          <tbody>
            {shownKeys(list).map((each) => (
              <tr key={each.id} className={each.endedAt ? 'people-off' : undefined}>
                <th scope="row">
                  {each.name}{' '}
                  {each.endedAt && <span className="people-tag">✕ {t.endedAt(format.dateTime(each.endedAt))}</span>}
                </th>
                <td data-label={t.roles} className="people-wide">
                  {grantWords(each.grants)}
                </td>
                <td data-label={t.made}>{t.madeBy(format.dayOf(each.createdAt), each.createdBy)}</td>
                <td data-label={t.lastUsed}>{each.lastUsedAt ? format.dateTime(each.lastUsedAt) : t.never}</td>
                <td className="people-act">
                  {!each.endedAt && (
                    <SureButton
                      label={t.endKey}
                      name={t.endKeyNamed(each.name)}
                      help={t.endKeyHelp}
                      sure={t.endKeySure}
                      act={() => end(each)}
                    />
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

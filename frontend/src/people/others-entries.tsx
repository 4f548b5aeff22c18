import { useState } from 'react';
import { entryMessages } from '../floor/entry-messages';
import { entryWords } from '../floor/entry-words';
import { outbox, useOutbox } from '../floor/outbox';
import { waitingOfOthers, type Waiting } from '../floor/outbox-state';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useHouses } from '../shared/setup-lists';
import { accountMessages } from './account-messages';
import { useSignedIn } from './signed-in';
import './account.css';

/** Entries that other people left on this device: whose they are, and the way to answer for one oneself. */
export function OthersEntries() {
  const t = useMessages(accountMessages);
  const session = useSignedIn();
  const others = waitingOfOthers(useOutbox(), session?.name);
  if (!session) return null;
  return others.map(({ by, items }) => (
    <details key={by?.name ?? ''} className="others">
      <summary>
        <span aria-hidden="true">▲ </span>
        {by ? t.othersTitle(by.displayName) : t.othersNobody}: {items.length}
      </summary>
      <p>{by ? t.othersHelp(by.displayName) : t.othersNobodyHelp}</p>
      <ul>
        {items.map((item) => (
          <OthersEntry key={item.key} item={item} me={session.displayName} />
        ))}
      </ul>
    </details>
  ));
}

function OthersEntry({ item, me }: { item: Waiting; me: string }) {
  const t = useMessages(accountMessages);
  const words = useMessages(entryMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const [sure, setSure] = useState(false);
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  return (
    <li>
      <p>
        <strong>
          {words[`kind${item.entry.kind}`]}: {entryWords(item.entry, { t: words, format, houseName })}
        </strong>
        <br />
        {item.batch}, {item.batchName}, {format.dateTime(item.entry.happenedAt)}
      </p>
      {sure ? (
        <>
          <p>{t.takeOverSure(me)}</p>
          {item.attempts > 0 && <p>{t.takeOverTwice}</p>}
          <div className="two">
            <button type="button" className="floor-button" onClick={() => setSure(false)}>
              {t.keep}
            </button>
            <button type="button" className="floor-button primary" onClick={() => void outbox.takeOver(item.key)}>
              {t.takeOverYes}
            </button>
          </div>
        </>
      ) : (
        <button type="button" className="floor-button" onClick={() => setSure(true)}>
          {t.takeOver}
        </button>
      )}
    </li>
  );
}

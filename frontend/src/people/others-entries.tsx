import { useState } from 'react';
import { outbox, useOutbox } from '../outbox/outbox';
import { waitingOfOthers, type Waiting } from '../outbox/outbox-state';
import { useMessages } from '../shared/messages';
import { useMessageWords } from './message-words';
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
  const words = useMessageWords();
  const [sure, setSure] = useState(false);
  const { what, about } = words(item.message);
  return (
    <li>
      <p>
        <strong>{what}</strong>
        <br />
        {about}
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

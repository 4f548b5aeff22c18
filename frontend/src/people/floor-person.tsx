import { useEffect, useRef, useState } from 'react';
import { useSearchParams } from 'react-router';
import { useMessages } from '../shared/messages';
import { sharedMessages } from '../shared/shared-messages';
import { accountMessages } from './account-messages';
import { floorAfterHandOver } from './account-state';
import { LeaveActions } from './leave-actions';
import { useSignedIn } from './signed-in';
import './account.css';

/** Whose hands the phone is in. Two taps pass it on: the name, then "Hand over". */
export function FloorPerson() {
  const t = useMessages(accountMessages);
  const shared = useMessages(sharedMessages);
  const session = useSignedIn();
  const [params] = useSearchParams();
  const [opened, setOpened] = useState(false);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (opened) dialog.current?.showModal();
  }, [opened]);
  if (!session) return null;
  return (
    <>
      <button
        type="button"
        className="floor-button floor-person"
        aria-haspopup="dialog"
        aria-label={t.signedInAs(session.displayName)}
        onClick={() => setOpened(true)}
      >
        <span className="floor-person-name">{session.displayName}</span> <span aria-hidden="true">▾</span>
      </button>
      {opened && (
        <dialog
          ref={dialog}
          className="floor-person-sheet"
          aria-labelledby="floor-person"
          onClose={() => setOpened(false)}
        >
          <h2 id="floor-person">{session.displayName}</h2>
          <LeaveActions shared className="floor-button" next={floorAfterHandOver(params)} />
          <button type="button" className="floor-button" onClick={() => dialog.current?.close()}>
            {shared.cancel}
          </button>
        </dialog>
      )}
    </>
  );
}

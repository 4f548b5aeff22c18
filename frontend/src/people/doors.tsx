import { useState } from 'react';
import { useMessages } from '../shared/messages';
import { ProblemNote } from '../shared/screen-states';
import type { Door } from './people-types';
import { useSessionActions } from './session-actions';
import { signInMessages } from './sign-in-messages';

const DOORS: readonly Door[] = ['sales', 'production', 'manager'];

/** The demo's three ways in, each one click. Nothing but the demo has them. */
export function Doors({ done }: { done: () => void }) {
  const t = useMessages(signInMessages);
  const { enterDoor } = useSessionActions();
  const [opening, setOpening] = useState<Door>();
  const [failure, setFailure] = useState<unknown>();
  const enter = async (door: Door) => {
    if (opening) return;
    setOpening(door);
    setFailure(undefined);
    try {
      await enterDoor(door);
      done();
    } catch (refused) {
      setFailure(refused);
      setOpening(undefined);
    }
  };
  return (
    <>
      <ul className="doors" aria-label={t.doors}>
        {DOORS.map((door) => (
          <li key={door}>
            <button type="button" aria-busy={opening === door} onClick={() => void enter(door)}>
              <span className="door-name">{t[door]}</span>
              <span className="door-help">{t[`${door}Help`]}</span>
              <span className="door-opens">
                {opening === door ? t.opening : t[`${door}Opens`]} <span aria-hidden="true">→</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
      <ProblemNote failure={failure} />
    </>
  );
}

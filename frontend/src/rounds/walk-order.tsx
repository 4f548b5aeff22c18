import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { HouseOnTheWalk } from '../shared/climate-types';
import { useMessages } from '../shared/messages';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { saveWalk } from './rounds-api';
import { roundsMessages } from './rounds-messages';
import { walkedEarlier } from './rounds-state';

/** The order in which the houses are walked, changed one place at a time. */
export function WalkOrder({ site, walk }: { site: string; walk: readonly HouseOnTheWalk[] }) {
  const t = useMessages(roundsMessages);
  const queries = useQueryClient();
  const [failure, setFailure] = useState<unknown>();
  const order = walk.map(({ house }) => house);
  const carry = async (house: string, by: 1 | -1) => {
    setFailure(undefined);
    try {
      await saveWalk(site, walkedEarlier(order, house, by));
      await queries.invalidateQueries({ queryKey: groups.roundsOf(site) });
    } catch (refused) {
      setFailure(refused);
    }
  };
  return (
    <details className="round-walk rc-no-print">
      <summary>{t.walk}</summary>
      <p className="rc-quiet">{t.walkHelp}</p>
      <ol>
        {walk.map(({ house, name }, i) => (
          <li key={house}>
            <span>{name}</span>
            <button
              type="button"
              className="floor-button"
              aria-label={t.earlier(name)}
              disabled={i === 0}
              onClick={() => void carry(house, -1)}
            >
              ↑
            </button>
            <button
              type="button"
              className="floor-button"
              aria-label={t.later(name)}
              disabled={i === walk.length - 1}
              onClick={() => void carry(house, 1)}
            >
              ↓
            </button>
          </li>
        ))}
      </ol>
      <ProblemNote failure={failure} />
    </details>
  );
}

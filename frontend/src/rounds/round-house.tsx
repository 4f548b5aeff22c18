import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { Site } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { ProblemNote } from '../shared/screen-states';
import { useHouses } from '../shared/setup-lists';
import { RoundCheck } from './round-check';
import { reopen } from './rounds-api';
import { roundsMessages } from './rounds-messages';
import type { HouseRound } from './rounds-state';

/** One stop of the walk: what keeps people out, what clashes, what is to do, and what is closed with its undo. */
export function RoundHouse({ house, site, on }: { house: HouseRound; site: Site; on: string }) {
  const t = useMessages(roundsMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const name = (code: string) => houses.find((each) => each.code === code)?.name ?? code;
  return (
    <section aria-label={house.name} className="round-house">
      <h2>
        {house.name}
        <small>{t.left(format.integer(house.open.length))}</small>
      </h2>
      {house.blockedUntil !== null && (
        <p className="rc-problem">✕ {t.houseBlocked(format.dateTime(house.blockedUntil, site.timeZone))}</p>
      )}
      {house.clashes.map((clash) => (
        <p key={clash.quantity} className="rc-warning">
          ▲{' '}
          {t.clash(
            clash.quantity === 'mist' ? t.quantitymist : clash.quantity.replaceAll('-', ' '),
            clash.move
              .map(({ batch, fits }) =>
                fits.length > 0 ? t.moveWhere(batch, fits.map(name).join(', ')) : t.moveNowhere(batch),
              )
              .join('; '),
          )}
        </p>
      ))}
      <ul className="round-items">
        {house.open.map((item) => (
          <RoundCheck key={item.id} item={item} site={site} on={on} />
        ))}
      </ul>
      {house.closed.length > 0 && (
        <details className="round-closed">
          <summary>{t.closedHere(format.integer(house.closed.length))}</summary>
          <ul>
            {house.closed.map((item) => (
              <li key={item.id}>
                <span>
                  {item.state === 'done' ? '✓' : '–'} {t[item.task]}
                  {item.batch !== null && `, ${item.batch}`}{' '}
                  <small>{item.state === 'done' ? t.statedone : t.stateskipped}</small>
                </span>
                <Reopen id={item.id} task={t[item.task]} site={site.code} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function Reopen({ id, task, site }: { id: string; task: string; site: string }) {
  const t = useMessages(roundsMessages);
  const queries = useQueryClient();
  const [failure, setFailure] = useState<unknown>();
  const undo = async () => {
    try {
      await reopen(id, t.undoReason, newKey());
      notice({ text: t.undone(task) });
      await queries.invalidateQueries({ queryKey: ['rounds', site] });
    } catch (refused) {
      setFailure(refused);
    }
  };
  return (
    <>
      <button type="button" className="floor-button rc-no-print" onClick={() => void undo()}>
        {t.undo}
        <span className="rc-hidden"> {task}</span>
      </button>
      <ProblemNote failure={failure} />
    </>
  );
}

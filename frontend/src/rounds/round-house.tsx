import { useState } from 'react';
import { Link } from 'react-router';
import { byHandAt } from '../floor/hand-readings-state';
import { handMessages } from '../floor/hand-messages';
import { Offered } from '../people/offered';
import { useMay, useSignedIn } from '../people/signed-in';
import type { Site } from '../shared/api-types';
import type { RoundItem } from '../shared/climate-types';
import { Part } from '../shared/part';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { ProblemNote } from '../shared/screen-states';
import { useHouseNames } from '../shared/setup-lists';
import { useAnswerCheck } from './answer-check';
import { ClashAdvice } from './clash-advice';
import { AlikeChecks } from './alike-checks';
import { answeredWords } from './answer-words';
import { RoundCheck } from './round-check';
import { roundsMessages } from './rounds-messages';
import { byBatch, clashesTogether, type HouseRound, type ShownItem } from './rounds-state';

/** One stop of the walk: what keeps people out, what clashes, what is to do, and what is closed with its undo. */
export function RoundHouse({ house, site, on, next }: { house: HouseRound; site: Site; on: string; next: boolean }) {
  const t = useMessages(roundsMessages);
  const format = useFormats();
  const hand = useMessages(handMessages);
  const mayRecord = useMay('record', site.code);
  const houseNames = useHouseNames();
  const name = (code: string) => houseNames.get(code) ?? code;
  return (
    <Part
      className="round-house"
      title={house.name}
      aside={<small>{t.left(format.integer(house.open.length))}</small>}
      first={next}
    >
      {house.blockedUntil !== null && (
        <p className="rc-problem">
          ✕ {t.houseBlocked(format.dateTime(house.blockedUntil, site.timeZone), house.blockedBy ?? '')}
        </p>
      )}
      {mayRecord && (
        <Link className="rc-link rc-no-print" to={byHandAt(site.code, house.house)}>
          {hand.title}
        </Link>
      )}
      {clashesTogether(house.clashes).map(({ quantities, move }) => (
        <ClashAdvice key={quantities.join()} quantities={quantities} move={move} house={house.house} site={site} />
      ))}
      <AlikeChecks open={house.open} site={site} on={on} />
      <div className="round-stops">
        {byBatch(house.open).map(({ batch, items }) => (
          <div key={batch ?? ''} className="round-stop">
            {batch !== undefined && <BatchHead batch={batch} item={items[0]} />}
            <ul className="round-items">
              {items.map((item) => (
                <RoundCheck key={item.id} item={item} site={site} on={on} houseNames={houseNames} />
              ))}
            </ul>
          </div>
        ))}
      </div>
      {house.closed.length > 0 && (
        <details className="round-closed">
          <summary>{t.closedHere(format.integer(house.closed.length))}</summary>
          <ul>
            {house.closed.map((item) => (
              <li key={item.id}>
                <span>
                  {item.state === 'done' ? '✓' : '–'} {t[item.task]}
                  {item.batch !== null && `, ${item.batch}`}{' '}
                  <small>{item.state === 'done' ? t.statedone : t.stateskipped}</small>{' '}
                  {item.answer && item.unsent === undefined && (
                    <small className="round-answer">
                      {answeredWords(item.answer, t, {
                        integer: format.integer,
                        houseName: name,
                        at: format.dateTime(item.answer.at, site.timeZone),
                      })}
                    </small>
                  )}
                  {item.unsent !== undefined && <small className="rc-at-risk">▲ {t.unsent}</small>}
                </span>
                <Reopen item={item} site={site.code} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </Part>
  );
}

function BatchHead({ batch, item }: { batch: string; item: RoundItem }) {
  const t = useMessages(roundsMessages);
  const format = useFormats();
  const about = [
    item.varietyName,
    item.trays === null ? null : t.trays(format.integer(item.trays)),
    item.phase === null ? null : t[item.phase],
  ];
  return (
    <h3 className="round-where">
      <Link className="rc-link" to={`/batches/${encodeURIComponent(batch)}`}>
        {batch}
      </Link>{' '}
      <small>{about.filter(Boolean).join(', ')}</small>
    </h3>
  );
}

function Reopen({ item, site }: { item: ShownItem; site: string }) {
  const t = useMessages(roundsMessages);
  const { name, reopen } = useAnswerCheck(site, item);
  const [failure, setFailure] = useState<unknown>();
  const who = useSignedIn()?.name;
  // What another person left on this device is theirs to take back.
  if (item.unsent !== undefined && item.unsentBy !== who) return null;
  return (
    <>
      <Offered right="record" site={site}>
        <button type="button" className="floor-button rc-no-print" onClick={() => void reopen().catch(setFailure)}>
          {t.undo}
          <span className="rc-hidden"> {name}</span>
        </button>
      </Offered>
      <ProblemNote failure={failure} />
    </>
  );
}

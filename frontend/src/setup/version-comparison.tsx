import type { CropProfile } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import type { ProfileVersion } from '../shared/learning-types';
import { useMessages } from '../shared/messages';
import { sharedMessages } from '../shared/shared-messages';
import { profilesMessages } from './profiles-messages';
import { differs, stageChanges, wholeDays, type StageFigure } from './profiles-state';

/** Before and after, stage by stage; what stays the same is quiet. */
export function VersionComparison({ before, looked }: { before: CropProfile | undefined; looked: ProfileVersion }) {
  const t = useMessages(profilesMessages);
  const stages = useMessages(sharedMessages);
  const format = useFormats();
  const { profile, evidence } = looked;
  const days = (value: number) => format.decimal(value, 1);
  const share = (value: number) => format.percent(value, 1, 1);
  const figures: readonly { name: string; of: StageFigure; digits: number; say: (value: number) => string }[] = [
    { name: t.days, of: 'daysAtReference', digits: 1, say: days },
    { name: t.survive, of: 'survivalMean', digits: 3, say: share },
    { name: t.lowest, of: 'minC', digits: 1, say: format.limit },
    { name: t.best, of: 'optimumC', digits: 1, say: format.limit },
    { name: t.highest, of: 'maxC', digits: 1, say: format.limit },
  ];
  const spreads = [
    { name: t.spread, before: before?.rateSpread, after: profile.rateSpread, digits: 3, say: share },
    { name: t.stageShare, before: before?.stageShare, after: profile.stageShare, digits: 2, say: format.percent },
    { name: t.cellSpread, before: before?.cellSpread, after: profile.cellSpread, digits: 3, say: share },
    { name: t.cellsDiffer, before: before?.cellsDiffer, after: profile.cellsDiffer, digits: 2, say: format.percent },
    { name: t.daysDoubt, before: before?.daysDoubt, after: profile.daysDoubt, digits: 3, say: share },
    { name: t.roundsDays, before: before?.roundsDays, after: profile.roundsDays, digits: 2, say: days },
    { name: t.enteredShare, before: before?.enteredShare, after: profile.enteredShare, digits: 2, say: format.percent },
    { name: t.calledShare, before: before?.calledShare, after: profile.calledShare, digits: 2, say: format.percent },
  ];
  return (
    <>
      <div className="profiles-scroll rc-sheet rc-cards-room" tabIndex={0} role="group" aria-label={t.comparison}>
        <table className="rc-table rc-cards">
          <thead>
            <tr>
              <th scope="col">{t.stage}</th>
              {figures.map(({ name }) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
              {evidence && <th scope="col">{t.seenIn}</th>}
            </tr>
          </thead>
          <tbody>
            {stageChanges(before, profile).map((change) => {
              const learned = evidence?.stages.find(({ stage }) => stage === change.stage);
              return (
                <tr key={change.stage}>
                  <th scope="row">{stages[`stage${change.stage}`]}</th>
                  {figures.map(({ of, name, digits, say }) => (
                    <td key={of} data-label={name}>
                      <Pair {...change.figures[of]} digits={digits} say={say} />
                      {of === 'daysAtReference' && learned && (
                        <small className="profiles-range">
                          {t.daysRange} {days(learned.daysLow)} … {days(learned.daysHigh)}
                        </small>
                      )}
                    </td>
                  ))}
                  {evidence && (
                    <td data-label={t.seenIn}>
                      {learned && (
                        <>
                          {t.observations(format.integer(learned.observations))}
                          <small className="profiles-range">
                            {t.survive}: {t.batchesN(format.integer(learned.survivalBatches))}
                          </small>
                        </>
                      )}
                    </td>
                  )}
                </tr>
              );
            })}
            <tr>
              <th scope="row">{t.sum}</th>
              <td>
                <Pair
                  before={before && wholeDays(before.stages)}
                  after={wholeDays(profile.stages)}
                  digits={1}
                  say={days}
                />
              </td>
              <td colSpan={figures.length - 1 + (evidence ? 1 : 0)} />
            </tr>
          </tbody>
        </table>
      </div>
      <dl className="profiles-spreads">
        {spreads.map(
          ({ name, before: old, after, digits, say }) =>
            typeof after === 'number' && (
              <div key={name}>
                <dt>{name}</dt>
                <dd>
                  <Pair before={old ?? undefined} after={after} digits={digits} say={say} />
                </dd>
              </div>
            ),
        )}
      </dl>
    </>
  );
}

interface PairProps {
  readonly before: number | undefined;
  readonly after: number;
  readonly digits: number;
  readonly say: (value: number) => string;
}

function Pair({ before, after, digits, say }: PairProps) {
  if (before === undefined || !differs(before, after, digits)) return <span className="rc-quiet">{say(after)}</span>;
  return (
    <>
      {say(before)} → <strong>{say(after)}</strong>
    </>
  );
}

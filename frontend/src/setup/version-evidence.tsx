import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import type { LearningEvidence, ProfileVersion } from '../shared/learning-types';
import { useMessages } from '../shared/messages';
import { useSites, useVarieties } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { TakeTable } from '../shared/take-table';
import { useSpeaker } from '../shared/use-problem-words';
import { cardinalsSaid } from './cardinals-words';
import { profilesMessages } from './profiles-messages';

/** What a learned version rests on: how many batches, what the batches could not tell, and who is faster or slower. */
export function VersionEvidence({ looked: { evidence, version } }: { looked: ProfileVersion }) {
  const t = useMessages(profilesMessages);
  return (
    <section aria-label={t.evidence}>
      <h2>{t.evidence}</h2>
      {evidence ? <Evidence evidence={evidence} version={version} /> : <p className="rc-quiet">{t.noEvidence}</p>}
    </section>
  );
}

function Evidence({ evidence, version }: { evidence: LearningEvidence; version: number }) {
  const t = useMessages(profilesMessages);
  const stages = useMessages(sharedMessages);
  const format = useFormats();
  const speaker = useSpeaker();
  const temperature = (c: number | null | undefined) => (typeof c === 'number' ? format.temperature(c) : '–');
  return (
    <>
      <p>
        {t.restsOn(
          format.integer(evidence.finishedBatches),
          format.integer(evidence.runningBatches),
          format.dateTime(evidence.asOf),
        )}
      </p>
      <p className="rc-quiet">{t.rounds(format.decimal(evidence.roundsDays, 1))}</p>
      <h3>{t.cardinals}</h3>
      <div className="profiles-scroll rc-sheet" tabIndex={0} role="group" aria-label={t.cardinals}>
        <table className="rc-table">
          <HeadRow heads={[t.stage, ...[t.lowest, t.best, t.highest].map(figure), t.state, t.why]} />
          <tbody>
            {evidence.cardinals.map(({ stage, identified, why, minC, optimumC, maxC }) => (
              <tr key={stage}>
                <th scope="row">{stages[`stage${stage}`]}</th>
                {[minC, optimumC, maxC].map((celsius, i) => (
                  <td key={i} className="rc-number">
                    {temperature(celsius)}
                  </td>
                ))}
                <td>{identified ? t.identified : t.notIdentified}</td>
                <td className="rc-quiet">{why ? cardinalsSaid(why, speaker) : t.whyNotKept}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Paces evidence={evidence} version={version} />
    </>
  );
}

function Paces({ evidence, version }: { evidence: LearningEvidence; version: number }) {
  const t = useMessages(profilesMessages);
  const format = useFormats();
  const varieties = useVarieties().data ?? [];
  const sites = useSites().data ?? [];
  const rows = [
    ...evidence.varieties.map(({ variety, batches, rate }) => ({
      kind: t.variety,
      name: varieties.find(({ code }) => code === variety)?.name ?? variety,
      batches,
      rate,
    })),
    ...evidence.sites.map(({ site, batches, rate }) => ({
      kind: t.site,
      name: sites.find(({ code }) => code === site)?.name ?? site,
      batches,
      rate,
    })),
  ];
  return (
    <>
      <div className="rc-row rc-spread">
        <h3>{t.paces}</h3>
        {rows.length > 0 && (
          <TakeTable
            table={() => ({
              head: [t.kind, t.variety, t.batches, t.pace],
              rows: rows.map(({ kind, name, batches, rate }) => [kind, name, batches, rate]),
            })}
            fileName={`rootcast-pace-version-${version}`}
            label={t.paces}
            nameColumns={2}
          />
        )}
      </div>
      <p className="rc-quiet">{rows.length > 0 ? t.pacesHelp : t.noPaces}</p>
      {rows.length > 0 && (
        <div className="profiles-scroll rc-sheet profiles-paces">
          <table className="rc-table">
            <HeadRow heads={[`${t.variety}, ${t.site.toLowerCase()}`, t.kind, figure(t.batches), figure(t.pace)]} />
            <tbody>
              {rows.map(({ kind, name, batches, rate }) => (
                <tr key={`${kind} ${name}`}>
                  <th scope="row">{name}</th>
                  <td className="rc-quiet">{kind}</td>
                  <td className="rc-number">{format.integer(batches)}</td>
                  <td className="rc-number">{format.percent(rate, 1)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}

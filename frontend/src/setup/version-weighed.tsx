import { signedDays } from '../batches/reason-state';
import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { Failed, Loading } from '../shared/screen-states';
import { TakeTable } from '../shared/take-table';
import { WhatIfOutcome } from '../what-if/what-if-outcome';
import '../what-if/what-if.css';
import { useWeighedVersion, type Weighed } from './profiles-api';
import { profilesMessages } from './profiles-messages';
import { forecastVerdict } from './profiles-state';

interface VersionWeighedProps {
  readonly crop: string;
  readonly version: number;
  /** Whether the version in force was learned, perhaps from the batches that it is tried on. */
  readonly againstLearned: boolean;
}

/** What adopting a version would change: how past batches would have been foretold, and today's batches and promises. */
export function VersionWeighed({ crop, version, againstLearned }: VersionWeighedProps) {
  const t = useMessages(profilesMessages);
  const weighed = useWeighedVersion(crop, version);
  return (
    <section aria-label={t.weighed} className="profiles-weighed">
      <h2>{t.weighed}</h2>
      {weighed.isPending && (
        <>
          <p className="rc-quiet">{t.weighing}</p>
          <Loading />
        </>
      )}
      {weighed.isError && <Failed failure={weighed.error} retry={() => void weighed.refetch()} />}
      {weighed.data && (
        <>
          <PastBatches weighed={weighed.data} againstLearned={againstLearned} />
          <h3>{t.today}</h3>
          <WhatIfOutcome answer={weighed.data.today} />
        </>
      )}
    </section>
  );
}

interface PastBatchesProps {
  readonly weighed: Weighed;
  readonly againstLearned: boolean;
}

function PastBatches({ weighed: { past, inForce, version }, againstLearned }: PastBatchesProps) {
  const t = useMessages(profilesMessages);
  const format = useFormats();
  const days = (value: number) => format.decimal(value, 1);
  if (past.leads.length === 0) return <p className="rc-quiet">{t.noPast}</p>;
  const verdict = forecastVerdict(past.leads);
  const head = [t.lead, t.foretold, t.offBy(inForce), t.offBy(version), t.change];
  const bias = (value: number) => (
    <span className="rc-quiet rc-small">{t.mostly(value > 0 ? 'late' : 'early', days(Math.abs(value)))}</span>
  );
  return (
    <>
      <div className="rc-row rc-spread">
        <h3>{t.past}</h3>
        <TakeTable
          table={() => ({
            head,
            rows: past.leads.map((lead) => [
              lead.leadDays,
              lead.n,
              lead.inForceMaeDays,
              lead.versionMaeDays,
              lead.versionMaeDays - lead.inForceMaeDays,
            ]),
          })}
          fileName={`rootcast-version-${version}-past-batches`}
          label={t.past}
          nameColumns={1}
        />
      </div>
      <p>
        <strong>{t[verdict]}</strong>{' '}
        {past.heldOut ? t.heldOut(format.integer(past.batches)) : t.notHeldOut(format.integer(past.batches))}{' '}
        {againstLearned && t.knewSome}
      </p>
      <div className="profiles-scroll rc-sheet" tabIndex={0} role="group" aria-label={t.past}>
        <table className="rc-table">
          <HeadRow heads={head.map((name, i) => (i > 0 ? figure(name) : name))} />
          <tbody>
            {past.leads.map((lead) => (
              <tr key={lead.leadDays}>
                <th scope="row">{t.daysBefore(lead.leadDays)}</th>
                <td className="rc-number">{format.integer(lead.n)}</td>
                <td className="rc-number">
                  {t.offDays(days(lead.inForceMaeDays))} {bias(lead.inForceBiasDays)}
                </td>
                <td className="rc-number">
                  {t.offDays(days(lead.versionMaeDays))} {bias(lead.versionBiasDays)}
                </td>
                <td className="rc-number">{signedDays(lead.versionMaeDays - lead.inForceMaeDays, format.decimal)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

import { Fragment } from 'react';
import { OfferedLink } from '../people/offered-link';
import type { BatchView } from '../shared/api-types';
import { useExplanation } from '../shared/batch-queries';
import { useFormats } from '../shared/formats';
import type { Explanation, ExplanationPart } from '../shared/learning-types';
import { useMessages } from '../shared/messages';
import { Failed, Loading } from '../shared/screen-states';
import { Part } from '../shared/part';
import { reasonMessages } from './reason-messages';
import { rangeByRecord, signedDays, spanOf, stepsOf, verdictOf, type Step } from './reason-state';

interface ReasonPanelProps {
  readonly batch: BatchView;
  readonly timeZone: string | undefined;
  readonly asOf: string | undefined;
}

/** Where the days between plan and date went, in words and as steps that add up. */
export function ReasonPanel({ batch, timeZone, asOf }: ReasonPanelProps) {
  const t = useMessages(reasonMessages);
  const explanation = useExplanation(batch.id, asOf);
  return (
    <Part id="why" className="story-part" title={t.title}>
      {explanation.data ? (
        <Reasons explanation={explanation.data} crop={batch.crop} timeZone={timeZone} />
      ) : explanation.isPending ? (
        <Loading />
      ) : (
        <Failed failure={explanation.error} retry={() => void explanation.refetch()} />
      )}
    </Part>
  );
}

function Reasons({
  explanation,
  crop,
  timeZone,
}: {
  explanation: Explanation;
  crop: string;
  timeZone: string | undefined;
}) {
  const t = useMessages(reasonMessages);
  const format = useFormats();
  const { plannedReadyAt, readyAt, differenceDays, rate, profileVersion, plannedProfileVersion } = explanation;
  const say = useSay(explanation);
  if (plannedReadyAt === null) return <p className="rc-quiet">{t.noPlan}</p>;
  const plan = format.dateTime(plannedReadyAt, timeZone);
  const verdict = verdictOf(explanation);
  const said = () => {
    if (readyAt === null || verdict === 'unknown') return t.noDate(plan);
    if (verdict === 'asPlanned') return t.asPlanned(plan);
    return t[verdict](format.decimal(Math.abs(differenceDays ?? 0), 1), plan, format.dateTime(readyAt, timeZone));
  };
  const share = (value: number) => format.percent(value);
  const range = rangeByRecord(explanation.ownRecord);
  return (
    <>
      <p>{said()}</p>
      <Steps
        steps={stepsOf(explanation.parts)}
        say={say}
        planned={format.dayOf(plannedReadyAt, timeZone)}
        expected={readyAt === null ? '–' : format.dayOf(readyAt, timeZone)}
        total={differenceDays}
      />
      {explanation.daysDoubt >= WORTH_SAYING && <p>{t.daysDoubt(share(explanation.daysDoubt))}</p>}
      {range !== 'same' && explanation.ownRecord && (
        <p>{t[range](format.decimal(explanation.ownRecord.width, 1), format.integer(explanation.ownRecord.batches))}</p>
      )}
      <p className="rc-quiet">{calledWords(explanation.calledShare, t, share)}</p>
      <p className="rc-quiet">
        {t.rate(share(rate.p50), share(rate.p10), share(rate.p90))}{' '}
        <OfferedLink to={`/setup/crops/${encodeURIComponent(crop)}/profiles`}>
          {t.profile(profileVersion, plannedProfileVersion)}
        </OfferedLink>
      </p>
    </>
  );
}

/** Nine in ten is what a stage's end means, and what is believed until counts show how the people call it. */
const COMPLETE_SHARE = 0.9;

function calledWords(calledShare: number, t: typeof reasonMessages.en, share: (value: number) => string) {
  return calledShare === COMPLETE_SHARE ? t.calledUnseen : t.called(share(calledShare), share(COMPLETE_SHARE));
}

/** Days that may be less far out hardly widen what batches differ by anyway. */
const WORTH_SAYING = 0.1;

interface StepsProps {
  readonly steps: readonly Step[];
  readonly say: Say;
  readonly planned: string;
  readonly expected: string;
  readonly total: number | null;
}

/** The steps as a table with a picture of them in its middle column. */
function Steps({ steps, say, planned, expected, total }: StepsProps) {
  const t = useMessages(reasonMessages);
  const format = useFormats();
  const span = spanOf(steps);
  const share = (days: number) => (100 * (days - span.least)) / (span.most - span.least);
  return (
    <table className="rc-table reasons">
      <thead>
        <tr>
          <th scope="col">{t.cause}</th>
          <th scope="col" className="reasons-picture">
            <span className="rc-hidden">{t.picture}</span>
          </th>
          <th scope="col" className="rc-number">
            {t.days}
          </th>
        </tr>
      </thead>
      <tbody>
        <tr className="reasons-end">
          <th scope="row">{t.planned}</th>
          <td className="reasons-track" aria-hidden="true">
            <i style={{ left: `${share(0)}%` }} />
          </td>
          <td className="rc-number">{planned}</td>
        </tr>
        {steps.map((step, i) => (
          <Fragment key={i}>
            <tr>
              <th scope="row">
                {t[step.cause]}
                {step.on !== null && <small> {format.dayMonth(step.on)}</small>}
                {step.cause === 'temperature' && step.on === null && step.together === 1 && (
                  <small> {t.allOther}</small>
                )}
                <StepText step={step} say={say} />
              </th>
              <td className="reasons-track" aria-hidden="true">
                <span
                  className={step.days > 0 ? 'lost' : 'won'}
                  style={{
                    left: `${share(Math.min(step.from, step.to))}%`,
                    width: `max(2px, ${share(Math.max(step.from, step.to)) - share(Math.min(step.from, step.to))}%)`,
                  }}
                />
              </td>
              <td className="rc-number">{signedDays(step.days, format.decimal)}</td>
            </tr>
          </Fragment>
        ))}
        <tr className="reasons-end">
          <th scope="row">{t.expected}</th>
          <td className="reasons-track" aria-hidden="true">
            <i style={{ left: `${share(steps.at(-1)?.to ?? 0)}%` }} />
          </td>
          <td className="rc-number">
            {expected}
            {total !== null && <small className="rc-quiet"> {signedDays(total, format.decimal)}</small>}
          </td>
        </tr>
      </tbody>
    </table>
  );
}

type Say = (part: ExplanationPart) => string;

/** What a part stands for in the reader's language and units; the server's own sentence where there is no other. */
function useSay({ profileVersion, plannedProfileVersion }: Explanation): Say {
  const t = useMessages(reasonMessages);
  const format = useFormats();
  return ({ cause, actualC, plannedC, text }) => {
    switch (cause) {
      case 'profile-version':
        return t['why-profile-version'](profileVersion, plannedProfileVersion);
      case 'temperature':
        if (typeof actualC !== 'number') return text;
        return typeof plannedC === 'number'
          ? t.wasInstead(format.temperature(actualC), format.temperature(plannedC))
          : t.wasReference(format.temperature(actualC));
      default:
        return t[`why-${cause}`];
    }
  };
}

/** One sentence; of many days put together the list is folded away. */
function StepText({ step, say }: { step: Step; say: Say }) {
  const t = useMessages(reasonMessages);
  const format = useFormats();
  if (step.parts.length === 1) return <span className="reasons-text">{step.parts.map(say)}</span>;
  return (
    <details className="reasons-text">
      <summary>{t.otherDays(step.parts.length)}</summary>
      <ul>
        {step.parts.map((part) => (
          <li key={part.on}>
            {part.on !== null && `${format.dayMonth(part.on)}: `}
            {say(part)} ({signedDays(part.days, format.decimal)})
          </li>
        ))}
      </ul>
    </details>
  );
}

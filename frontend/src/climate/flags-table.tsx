import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Offered } from '../people/offered';
import { Button } from '../shared/button';
import type { ClimateFlag } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { Part } from '../shared/part';
import { TextInput } from '../shared/text-input';
import { readingSaid, useSpeaker } from '../shared/use-problem-words';
import { overrideFlag } from './climate-api';
import { climateMessages } from './climate-messages';
import { useQuantityWords } from './climate-words';

/** Whose words say already whether the reading counts. */
const FLAGS_SAY_ALL: ReadonlySet<string> = new Set(['late', 'duplicate']);

interface FlagsTableProps {
  readonly flags: readonly ClimateFlag[];
  readonly timeZone: string | undefined;
}

/** Every doubtful reading with its reason, and a way to count it all the same. Nothing is dropped silently. */
export function FlagsTable({ flags, timeZone }: FlagsTableProps) {
  const t = useMessages(climateMessages);
  const format = useFormats();
  const words = useQuantityWords();
  const speaker = useSpeaker(timeZone);
  const newest = [...flags].sort((a, b) => b.at.localeCompare(a.at));
  const when = ({ at, until }: ClimateFlag) =>
    at === until
      ? format.dateTime(at, timeZone)
      : `${format.dateTime(at, timeZone)} – ${format.dateTime(until, timeZone)}`;
  const why = (flag: ClimateFlag) => {
    const used = FLAGS_SAY_ALL.has(flag.kind) ? '' : flag.leftOut ? t.flagLeftOut : t.flagUsed;
    return `${readingSaid(flag.why, speaker)} ${used}`.trim();
  };
  return (
    <Part title={t.flags}>
      {newest.length === 0 ? (
        <p className="rc-quiet">{t.flagsNone}</p>
      ) : (
        <ul className="climate-flags">
          {newest.map((flag, i) => (
            <li key={flag.id ?? i}>
              <span className="climate-flag-when">{when(flag)}</span>
              <span>
                <strong>{t[flag.kind]}</strong>, {t[flag.quantity]}
                {flag.value !== null && `, ${words.value(flag.quantity, flag.value)}`}
                {flag.count > 1 && `, ${t.readings(format.integer(flag.count))}`}
                {flag.sensor !== null && <span className="rc-quiet">, {flag.sensor}</span>}
                <span className="climate-flag-why">{why(flag)}</span>
              </span>
              <Judge flag={flag} />
            </li>
          ))}
        </ul>
      )}
    </Part>
  );
}

function Judge({ flag }: { flag: ClimateFlag }) {
  const t = useMessages(climateMessages);
  const shared = useMessages(sharedMessages);
  const queries = useQueryClient();
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const said = flag.overridden ? t.overridden(flag.overrideReason ?? '') : flag.leftOut ? t.leftOut : t.counted;
  const judge = async () => {
    setTried(true);
    if (reason.trim() === '') return;
    try {
      await overrideFlag(flag, !flag.overridden, reason.trim());
      await queries.invalidateQueries({ queryKey: groups.climate() });
      notice({ text: t.judged });
      setAsking(false);
      setReason('');
      setTried(false);
    } catch (cause) {
      setFailure(cause);
    }
  };
  return (
    <span className="climate-flag-judge">
      <span className="rc-quiet">{said}</span>
      {flag.id !== null && !asking && (flag.leftOut || flag.overridden) && (
        <Offered right="set-up">
          <button type="button" className="rc-link rc-no-print" onClick={() => setAsking(true)}>
            {flag.overridden ? t.restore : t.override}
            <span className="rc-hidden"> ({t[flag.kind]})</span>
          </button>
        </Offered>
      )}
      {asking && (
        <span className="rc-row">
          <TextInput
            label={t.reason}
            value={reason}
            fault={tried && reason.trim() === '' ? t.needReason : undefined}
            onValue={setReason}
          />
          <Button theme="primary" onClick={() => void judge()}>
            {flag.overridden ? t.restore : t.override}
          </Button>
          <Button onClick={() => setAsking(false)}>{shared.cancel}</Button>
        </span>
      )}
      <ProblemNote failure={failure} />
    </span>
  );
}

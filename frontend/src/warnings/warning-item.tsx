import { useQueryClient } from '@tanstack/react-query';
import { Button } from '@vaadin/react-components/Button.js';
import { TextField } from '@vaadin/react-components/TextField.js';
import { useState } from 'react';
import { Link } from 'react-router';
import { useMay } from '../people/signed-in';
import type { WarningView } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { useSites } from '../shared/setup-lists';
import { useQuantityWords } from '../climate/climate-words';
import { acknowledge } from './warnings-api';
import { warningsMessages } from './warnings-messages';
import { spokenAs, undelivered } from './warnings-state';

const MOST_BATCHES = 3;

/** One warning: what, where, how bad, since when, and who has seen it. */
export function WarningItem({ warning, houseName }: { warning: WarningView; houseName: string }) {
  const t = useMessages(warningsMessages);
  const format = useFormats();
  const words = useQuantityWords();
  const timeZone = useSites().data?.find(({ code }) => code === warning.site)?.timeZone;
  const when = (instant: string) => format.dateTime(instant, timeZone);
  const quantity = spokenAs(warning.unit);
  const said = (value: number) =>
    quantity ? words.value(quantity, value) : `${format.decimal(value, 1)} ${warning.unit ?? ''}`;
  const mayRecord = useMay('record', warning.site);
  const failed = undelivered(warning);
  const named = warning.batches.slice(0, MOST_BATCHES).join(', ');
  const more = warning.batches.length - MOST_BATCHES;
  return (
    <li className={`warning ${warning.state}`}>
      <div>
        <p className="warning-what">
          <span aria-hidden="true">{warning.state === 'ended' ? '✓ ' : '▲ '}</span>
          {t[warning.kind]}
          <span className="warning-state">{t[warning.state]}</span>
        </p>
        <p>
          <Link className="rc-link" to={`/climate/${encodeURIComponent(warning.house)}`}>
            {houseName}
          </Link>
          {warning.batch !== null && (
            <>
              {', '}
              <Link className="rc-link" to={`/batches/${encodeURIComponent(warning.batch)}`}>
                {t.batch(warning.batch)}
              </Link>
            </>
          )}
          {', '}
          {warning.until === null ? t.since(when(warning.since)) : t.from(when(warning.since), when(warning.until))}
          {warning.worst !== null && warning.limit !== null && (
            <>; {t.worst(said(warning.worst), said(warning.limit))}</>
          )}
        </p>
        {warning.batch === null && warning.batches.length > 0 && (
          <p className="rc-quiet">
            {t.concerns(named)} {more > 0 && t.andMore(format.integer(more))}
          </p>
        )}
        {warning.acknowledgedAt !== null && (
          <p className="rc-quiet">
            {t.seenBy(when(warning.acknowledgedAt), warning.acknowledgedBy ?? '–')}
            {warning.acknowledgement && <>: {warning.acknowledgement}</>}
          </p>
        )}
        {failed.length > 0 && <p className="rc-broken">✕ {t.notTold(failed.join(', '))}</p>}
      </div>
      {warning.state === 'lasting' && mayRecord && (
        <Acknowledge warning={warning} what={`${t[warning.kind]}, ${houseName}`} />
      )}
    </li>
  );
}

function Acknowledge({ warning, what }: { warning: WarningView; what: string }) {
  const t = useMessages(warningsMessages);
  const queries = useQueryClient();
  const [text, setText] = useState('');
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const see = async () => {
    setBusy(true);
    setFailure(undefined);
    try {
      await acknowledge(warning.id, text.trim());
      notice({ text: `${t.done}. ${t.goesOn}` });
      await queries.invalidateQueries({ queryKey: groups.warnings() });
    } catch (refused) {
      setFailure(refused);
      setBusy(false);
    }
  };
  return (
    <div className="warning-see rc-no-print">
      <TextField
        label={t.whatDone}
        value={text}
        autocomplete="off"
        maxlength={2000}
        onValueChanged={(event) => setText(event.detail.value)}
      />
      <Button disabled={busy} aria-label={`${t.acknowledge}: ${what}`} onClick={() => void see()}>
        {t.acknowledge}
      </Button>
      <ProblemNote failure={failure} />
    </div>
  );
}

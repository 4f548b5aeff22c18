import { useId, useState } from 'react';
import { Link } from 'react-router';
import { useQuantityWords } from '../climate/climate-words';
import type { Site } from '../shared/api-types';
import type { WarningView } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { later } from '../shared/later';
import { useMessages } from '../shared/messages';
import { WarningEvidence } from './warning-evidence';
import { warningsMessages } from './warnings-messages';
import { spokenAs, undelivered, urgencyOf } from './warnings-state';
import { SettleWarning } from './settle-warning';

const AcknowledgeWarning = later(async () => (await import('./acknowledge-warning')).AcknowledgeWarning);

const MOST_BATCHES = 3;

interface WarningItemProps {
  readonly warning: WarningView;
  readonly houseName: string;
  readonly site: Site | undefined;
}

/** One warning in a line: what, how bad, since when. Opened it shows what it rests on, what to do, and does it. */
export function WarningItem({ warning, houseName, site }: WarningItemProps) {
  const t = useMessages(warningsMessages);
  const format = useFormats();
  const words = useQuantityWords();
  const [opened, setOpened] = useState(false);
  const body = useId();
  const when = (instant: string) => format.dateTime(instant, site?.timeZone);
  const quantity = spokenAs(warning.unit);
  const said = (value: number, as: 'value' | 'limit' = 'value') =>
    quantity ? words[as](quantity, value) : format.withUnit(format.decimal(value, 1), warning.unit ?? '');
  const failed = undelivered(warning);
  const named = warning.batches.slice(0, MOST_BATCHES).join(', ');
  const more = warning.batches.length - MOST_BATCHES;
  const lasts = warning.until === null;
  return (
    <li className={`warning ${warning.state} ${lasts ? urgencyOf(warning) : ''}`}>
      <button
        type="button"
        className="warning-line"
        aria-expanded={opened}
        aria-controls={body}
        onClick={() => setOpened(!opened)}
      >
        <span className="warning-what">
          <span aria-hidden="true">{lasts ? '▲ ' : '✓ '}</span>
          {t[warning.kind]}
          {warning.batch !== null && `, ${t.batch(warning.batch)}`}
        </span>
        <span className="warning-when">
          {lasts ? t.since(when(warning.since)) : t.from(when(warning.since), when(warning.until ?? ''))}
          {warning.worst !== null && warning.limit !== null && (
            <>; {t.worst(said(warning.worst), said(warning.limit, 'limit'))}</>
          )}
        </span>
        <span className="warning-state">
          {warning.state === 'lasting' ? t[urgencyOf(warning)] : t[warning.state]} <span aria-hidden="true">▾</span>
        </span>
      </button>
      <div id={body} className="warning-body" hidden={!opened}>
        {opened && (
          <>
            <p>
              {warning.batch !== null && (
                <Link className="rc-link" to={`/batches/${encodeURIComponent(warning.batch)}`}>
                  {t.batch(warning.batch)}
                </Link>
              )}
              {warning.batch === null &&
                warning.batches.length > 0 &&
                `${t.concerns(named)} ${more > 0 ? t.andMore(format.integer(more)) : ''}`}
            </p>
            <WarningEvidence warning={warning} houseName={houseName} timeZone={site?.timeZone} />
            {lasts && (
              <>
                <h3>{t.todo}</h3>
                <p>{t[`todo-${warning.kind}`]}</p>
                {site && <SettleWarning warning={warning} site={site} />}
              </>
            )}
            <p className="rc-no-print">
              <Link className="rc-link" to={`/climate/${encodeURIComponent(warning.house)}`}>
                {t.toClimate}
              </Link>
            </p>
          </>
        )}
      </div>
      {warning.acknowledgedAt !== null && (
        <p className="rc-quiet">
          {t.seenBy(when(warning.acknowledgedAt), warning.acknowledgedBy ?? '–')}
          {warning.acknowledgement && <>: {warning.acknowledgement}</>}
        </p>
      )}
      {failed.length > 0 && <p className="rc-broken">✕ {t.notTold(failed.join(', '))}</p>}
      {opened && warning.state === 'lasting' && (
        <AcknowledgeWarning warning={warning} what={`${t[warning.kind]}, ${houseName}`} />
      )}
    </li>
  );
}

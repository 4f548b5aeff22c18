import { useState } from 'react';
import { useOutbox } from '../outbox/outbox';
import { useMay } from '../people/signed-in';
import { RoundCheck } from '../rounds/round-check';
import { useRound } from '../rounds/rounds-api';
import { asPressed, NO_ROUND } from '../rounds/rounds-state';
import type { Site } from '../shared/api-types';
import { Button } from '../shared/button';
import type { WarningView } from '../shared/climate-types';
import { later } from '../shared/later';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { useHouseNames } from '../shared/setup-lists';
import { dateIn } from '../shared/weeks';
import { warningsMessages } from './warnings-messages';
import { settlingItems } from './warnings-state';
import '../floor/floor.css';
import '../rounds/rounds.css';

const TreatmentDialog = later(async () => (await import('../treatments/treatment-dialog')).TreatmentDialog);

/** The checks that settle a warning, to be closed where one reads of it. They are those of today's round. */
export function SettleWarning({ warning, site }: { warning: WarningView; site: Site }) {
  const t = useMessages(warningsMessages);
  const on = dateIn(site.timeZone, useNow());
  const round = useRound(site.code, on);
  const outbox = useOutbox();
  const houseNames = useHouseNames();
  const mayRecord = useMay('record', site.code);
  const [treating, setTreating] = useState(false);
  const items = settlingItems(warning, asPressed(round.data ?? NO_ROUND, outbox, on));
  const treatable = warning.kind === 'prevention-missed' && mayRecord;
  if (!treatable && items.length === 0) return null;
  return (
    <div className="floor warning-settle">
      {treatable && (
        <Button theme="primary" className="rc-no-print" onClick={() => setTreating(true)}>
          {t.recordTreatment}
        </Button>
      )}
      {items.length > 0 && (
        <ul className="round-items">
          {items.map((item) => (
            <RoundCheck key={item.id} item={item} site={site} on={on} houseNames={houseNames} />
          ))}
        </ul>
      )}
      {treating && (
        <TreatmentDialog
          site={site.code}
          start={{ house: warning.house, batch: warning.batch ?? '', purpose: 'prevention' }}
          close={() => setTreating(false)}
        />
      )}
    </div>
  );
}

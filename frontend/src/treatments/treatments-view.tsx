import { useQueryClient } from '@tanstack/react-query';
import { Button } from '@vaadin/react-components/Button.js';
import { Dialog } from '@vaadin/react-components/Dialog.js';
import { TextField } from '@vaadin/react-components/TextField.js';
import { useState } from 'react';
import { Offered } from '../people/offered';
import type { TreatmentView } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { groups } from '../shared/query-keys';
import { Empty, Failed, Loading, ProblemNote } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites } from '../shared/setup-lists';
import { useSiteFilter } from '../shared/site-filter';
import { TakeTable } from '../shared/take-table';
import { TreatmentDialog } from './treatment-dialog';
import { reverseTreatment, useTreatments } from './treatments-api';
import { treatmentsMessages } from './treatments-messages';
import { closedHouses } from './treatments-state';
import './treatments.css';

/** What was applied, where and by whom, and which houses must not be entered because of it. */
export function TreatmentsView() {
  const t = useMessages(treatmentsMessages);
  useScreenTitle(t.title);
  const format = useFormats();
  const [site] = useSiteFilter();
  const treatments = useTreatments(site);
  const houses = useHouses().data ?? [];
  const sites = useSites().data ?? [];
  const [opened, setOpened] = useState(false);
  const [reversing, setReversing] = useState<TreatmentView>();
  const name = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  const zoneOf = (code: string) => sites.find((each) => each.code === code)?.timeZone;
  const zoneOfHouse = (code: string) => zoneOf(houses.find((house) => house.code === code)?.site ?? '');
  const all = treatments.data ?? [];
  const closed = closedHouses(all);
  const table = () => ({
    head: [t.when, t.house, t.batch, t.purpose, t.product, t.rate, t.by, t.reentryHours, t.reentry, t.note, t.reverse],
    rows: all.map((each) => [
      each.appliedAt,
      name(each.house),
      each.batch ?? '',
      t[each.purpose],
      each.product,
      each.rate,
      each.appliedBy,
      each.reentryHours,
      each.reentryAt,
      each.note ?? '',
      each.reversedAt === null ? '' : `${each.reversedAt} ${each.reversalReason ?? ''}`,
    ]),
  });
  const body = () => {
    if (treatments.isPending) return <Loading />;
    if (!treatments.data) return <Failed failure={treatments.error} retry={() => void treatments.refetch()} />;
    if (all.length === 0) {
      return (
        <Empty title={t.none}>
          <p>{t.noneHelp}</p>
        </Empty>
      );
    }
    return (
      <ul className="treatments">
        {all.map((each) => (
          <Applied
            key={each.id}
            treatment={each}
            houseName={name(each.house)}
            timeZone={zoneOf(each.site)}
            reverse={() => setReversing(each)}
          />
        ))}
      </ul>
    );
  };
  return (
    <div className="rc-screen">
      <p className="rc-warning">▲ {t.caution}</p>
      <div className="rc-row rc-spread">
        <Offered right="record" site={site}>
          <Button theme="primary" className="rc-no-print" onClick={() => setOpened(true)}>
            {t.record}
          </Button>
        </Offered>
        {all.length > 0 && <TakeTable table={table} fileName="rootcast-treatments" label={t.title} print />}
      </div>
      <section aria-label={t.closedNow}>
        <h2>{t.closedNow}</h2>
        {closed.length === 0 && treatments.data && <p className="rc-quiet">✓ {t.noneClosed}</p>}
        {closed.map(({ house, until }) => (
          <p key={house} className="rc-problem">
            ✕ {t.closed(name(house), format.dateTime(until, zoneOfHouse(house)))}
          </p>
        ))}
      </section>
      {body()}
      {opened && <TreatmentDialog site={site} close={() => setOpened(false)} />}
      {reversing && <ReverseDialog treatment={reversing} close={() => setReversing(undefined)} />}
    </div>
  );
}

interface AppliedProps {
  readonly treatment: TreatmentView;
  readonly houseName: string;
  readonly timeZone: string | undefined;
  readonly reverse: () => void;
}

function Applied({ treatment, houseName, timeZone, reverse }: AppliedProps) {
  const t = useMessages(treatmentsMessages);
  const format = useFormats();
  const { reversedAt, closed } = treatment;
  const when = (instant: string) => format.dateTime(instant, timeZone);
  return (
    <li className={reversedAt === null ? undefined : 'reversed'}>
      <span className="rc-quiet">{when(treatment.appliedAt)}</span>
      <div>
        <p className="treatment-what">
          {houseName}, {treatment.batch ?? t.wholeHouse}: {treatment.product}, {treatment.rate}
        </p>
        <p className="rc-quiet">
          {t[treatment.purpose]}, {t.by.toLowerCase()} {treatment.appliedBy};{' '}
          {t.recordedOn(when(treatment.recordedAt), treatment.recordedBy)}
          {treatment.note !== null && <>. {treatment.note}</>}
        </p>
        {reversedAt !== null && <p>{t.reversed(treatment.reversalReason ?? '')}</p>}
      </div>
      <span className={closed && reversedAt === null ? 'rc-broken' : undefined}>
        {closed && reversedAt === null && `✕ ${t.isClosed}: `}
        {t.reentry.toLowerCase()} {when(treatment.reentryAt)}
        <small> ({t.hours(format.decimal(treatment.reentryHours, treatment.reentryHours % 1 === 0 ? 0 : 1))})</small>
      </span>
      {reversedAt === null ? (
        <Offered right="record" site={treatment.site}>
          <button type="button" className="rc-link rc-no-print" onClick={reverse}>
            {t.reverse}
            <span className="rc-hidden"> {treatment.product}</span>
          </button>
        </Offered>
      ) : (
        <span />
      )}
    </li>
  );
}

function ReverseDialog({ treatment, close }: { treatment: TreatmentView; close: () => void }) {
  const t = useMessages(treatmentsMessages);
  const queries = useQueryClient();
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const reverse = async () => {
    setTried(true);
    if (reason.trim() === '') return;
    try {
      await reverseTreatment(treatment.id, reason.trim());
      notice({ text: t.reversedDone });
      await queries.invalidateQueries({ queryKey: groups.treatments() });
      close();
    } catch (refused) {
      setFailure(refused);
    }
  };
  return (
    <Dialog opened headerTitle={t.reverse} onOpenedChanged={(event) => !event.detail.value && close()}>
      <div className="treatment-form">
        <p className="wide">
          {treatment.product}, {treatment.rate}
        </p>
        <p className="rc-warning wide">▲ {t.reversedCaution}</p>
        <TextField
          className="wide"
          label={t.why}
          value={reason}
          maxlength={500}
          autocomplete="off"
          manualValidation
          invalid={tried && reason.trim() === ''}
          errorMessage={tried && reason.trim() === '' ? t.needed : ''}
          onValueChanged={(event) => setReason(event.detail.value)}
        />
        <ProblemNote failure={failure} />
        <Button className="wide" theme="primary" onClick={() => void reverse()}>
          {t.reverseNow}
        </Button>
      </div>
    </Dialog>
  );
}

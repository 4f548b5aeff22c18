import { CountForm } from '../floor/count-forms';
import type { Draft } from '../floor/floor-state';
import { useBatch } from '../shared/batch-queries';
import type { RoundDone } from '../shared/climate-types';
import { useMessages } from '../shared/messages';
import { Failed, Loading } from '../shared/screen-states';
import { roundsMessages } from './rounds-messages';

interface CountCheckProps {
  readonly batch: string;
  readonly busy: boolean;
  readonly record: (found: Omit<RoundDone, 'happenedAt'>) => void;
  readonly back: () => void;
}

/** A count on the round is Floor's: all plants or a sample, with what the books say. */
export function CountCheck({ batch, busy, record, back }: CountCheckProps) {
  const t = useMessages(roundsMessages);
  const found = useBatch(batch);
  return (
    <div className="round-form round-count rc-no-print">
      {found.data ? (
        <CountForm
          batch={found.data}
          before={undefined}
          busy={busy}
          record={(draft) => {
            const counted = countedIn(draft);
            if (counted) record(counted);
          }}
        />
      ) : found.isPending ? (
        <Loading />
      ) : (
        <Failed failure={found.error} retry={() => void found.refetch()} />
      )}
      <button type="button" className="floor-button" onClick={back}>
        {t.back}
      </button>
    </div>
  );
}

/** What a check of the round takes of a count; undefined for anything else that a form of Floor may say. */
export function countedIn(draft: Draft): Omit<RoundDone, 'happenedAt'> | undefined {
  if (draft.kind !== 'count') return undefined;
  return 'plants' in draft
    ? { plants: draft.plants, confirmed: false }
    : {
        sampledTrays: draft.sampledTrays,
        sampledCells: draft.sampledCells,
        blanks: draft.blanks,
        confirmed: false,
      };
}

import { useQueryClient } from '@tanstack/react-query';
import { Button } from '@vaadin/react-components/Button.js';
import { useRef, useState } from 'react';
import { Link } from 'react-router';
import type { BatchCsvQuestion, BatchCsvReport, House, Site } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { Problem } from '../shared/problem';
import { groups } from '../shared/query-keys';
import { Failed, Loading, ProblemNote } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites, useVarieties } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { useProblemWords } from '../shared/use-problem-words';
import { ArrivedHeading } from '../tables/arrived-heading';
import { TableGlance, TableSource, type ChosenTable } from '../tables/table-source';
import { tablesMessages } from '../tables/tables-messages';
import { batchesCsvMessages } from './batches-csv-messages';
import { batchPlanFor, batchQuestionOf, type BatchPlan, type BatchPlanWrong, type Known } from './batches-csv-state';
import { BatchesPlanForm } from './batches-plan-form';
import { BatchesReport } from './batches-report';
import { importBatches, previewBatches } from './first-day-api';

/** Batches that already stand on the benches, from a table: looked at in a preview, written when somebody says so. */
export function BatchesImportView() {
  const t = useMessages(batchesCsvMessages);
  useScreenTitle(t.title);
  const queries = [useSites(), useHouses(), useVarieties()] as const;
  const [sites, houses, varieties] = queries;
  const [table, setTable] = useState<ChosenTable>();
  const failed = queries.find((query) => query.isError && !query.data);
  if (failed) return <Failed failure={failed.error} retry={() => queries.forEach((query) => void query.refetch())} />;
  if (!sites.data || !houses.data || !varieties.data) return <Loading />;
  return (
    <div className="rc-screen">
      <p className="rc-quiet">{t.help}</p>
      {table ? (
        <TableTaking
          table={table}
          another={() => setTable(undefined)}
          sites={sites.data}
          houses={houses.data}
          known={{ sites: sites.data, houses: houses.data, varieties: varieties.data }}
        />
      ) : (
        <TableSource help={t.fileHelp} choose={setTable} />
      )}
    </div>
  );
}

interface TableTakingProps {
  readonly table: ChosenTable;
  readonly another: () => void;
  readonly sites: readonly Site[];
  readonly houses: readonly House[];
  readonly known: Known;
}

interface Looked {
  readonly question: BatchCsvQuestion;
  readonly report: BatchCsvReport;
}

const NOTHING_WRONG: ReadonlyMap<string, BatchPlanWrong> = new Map();

function TableTaking({ table, another, sites, houses, known }: TableTakingProps) {
  const t = useMessages(batchesCsvMessages);
  const tables = useMessages(tablesMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const queries = useQueryClient();
  const [plan, setPlan] = useState(() => batchPlanFor(table.text, known));
  const [wrong, setWrong] = useState(NOTHING_WRONG);
  const [looked, setLooked] = useState<Looked>();
  const [taken, setTaken] = useState<BatchCsvReport>();
  const [outdated, setOutdated] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState<'looking' | 'taking'>();
  const key = useRef('');

  const put = (next: BatchPlan) => {
    setPlan(next);
    setWrong(NOTHING_WRONG);
    setFailure(undefined);
    setOutdated(looked !== undefined);
    setLooked(undefined);
  };
  const refusals = useProblemWords();
  const faultOf = (path: string): string | undefined => {
    const words: Record<BatchPlanWrong, string> = {
      needed: shared.needed,
      noTable: tables.noTable,
      large: tables.large,
      long: t.long,
      twice: t.twice,
    };
    const mine = wrong.get(path);
    return mine ? words[mine] : refusals.faultOf(failure, path);
  };
  const doing = async (what: 'looking' | 'taking', work: () => Promise<void>) => {
    setBusy(what);
    setFailure(undefined);
    try {
      await work();
    } catch (refused) {
      if (refused instanceof Problem) key.current = newKey();
      setFailure(refused);
    } finally {
      setBusy(undefined);
    }
  };
  const preview = () => {
    const made = batchQuestionOf(table.text, plan);
    setOutdated(false);
    if ('wrong' in made) {
      setWrong(made.wrong);
      return;
    }
    void doing('looking', async () => {
      setLooked({ question: made.question, report: await previewBatches(made.question) });
      // One key for what was looked at: sent again after silence it is still written once.
      key.current = newKey();
    });
  };
  const take = ({ question }: Looked) =>
    void doing('taking', async () => {
      setTaken(await importBatches(question, key.current));
      void queries.invalidateQueries({ queryKey: groups.batchLists() });
      await queries.invalidateQueries({ queryKey: groups.setup() });
    });

  if (taken) {
    return (
      <section className="rc-sheet table-part" aria-labelledby="table-taken">
        <ArrivedHeading id="table-taken">✓ {t.takenTitle(format.integer(taken.batches))}</ArrivedHeading>
        <BatchesReport report={taken} />
        <div className="rc-row table-actions">
          <Link className="rc-link" to="/board">
            {t.toBoard}
          </Link>
          <Button theme="tertiary" onClick={another}>
            {tables.another}
          </Button>
        </div>
      </section>
    );
  }
  return (
    <>
      <TableGlance table={table} separator={plan.separator} fault={faultOf('csv')} another={another} />
      <BatchesPlanForm text={table.text} plan={plan} put={put} faultOf={faultOf} sites={sites} houses={houses} />
      {wrong.size > 0 && (
        <div className="rc-problem" role="alert">
          <p>✕ {tables.checkFields}</p>
        </div>
      )}
      {outdated && (
        <p className="rc-warning" role="status">
          ▲ {tables.changed}
        </p>
      )}
      {looked && (
        <section className="rc-sheet table-part" aria-labelledby="table-looked">
          <ArrivedHeading id="table-looked">
            {looked.report.batches > 0 ? t.previewTitle : t.previewNone}
          </ArrivedHeading>
          <p className="rc-quiet">{tables.nothingYet}</p>
          <BatchesReport report={looked.report} />
        </section>
      )}
      <ProblemNote failure={failure} />
      <div className="rc-row table-actions">
        {looked && looked.report.batches > 0 && (
          <Button theme="primary" disabled={busy !== undefined} onClick={() => take(looked)}>
            {busy === 'taking' ? t.taking : t.take(format.integer(looked.report.batches))}
          </Button>
        )}
        {!looked && (
          <Button theme="primary" disabled={busy !== undefined} onClick={preview}>
            {busy === 'looking' ? tables.looking : tables.preview}
          </Button>
        )}
        <Button theme="tertiary" disabled={busy !== undefined} onClick={another}>
          {shared.cancel}
        </Button>
      </div>
    </>
  );
}

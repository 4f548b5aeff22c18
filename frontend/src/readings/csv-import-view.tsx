import { useQueryClient } from '@tanstack/react-query';
import { Button } from '@vaadin/react-components/Button.js';
import { useRef, useState } from 'react';
import { useSensors } from '../climate/climate-api';
import { ReadingsLinks } from '../climate/readings-links';
import type { House, Site } from '../shared/api-types';
import type { Sensor } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { Problem } from '../shared/problem';
import { groups } from '../shared/query-keys';
import type { CsvQuestion, CsvReport } from '../shared/reading-types';
import { Failed, Loading, ProblemNote } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { useSiteFilter } from '../shared/site-filter';
import { useProblemWords } from '../shared/use-problem-words';
import { ArrivedHeading } from '../tables/arrived-heading';
import { previewCsv, importCsv } from './readings-api';
import { TablePlanForm } from './csv-plan';
import { TableReportParts } from './csv-report';
import { csvMessages } from './csv-messages';
import { TableGlance, TableSource, type ChosenTable } from '../tables/table-source';
import { planFor, questionOf, usualZone, type PlanWrong, type TablePlan } from './csv-state';
import { tablesMessages } from '../tables/tables-messages';
import './readings.css';

/** Readings of the past from a file: looked at in a preview, and taken in only when somebody says so. */
export function CsvImportView() {
  const t = useMessages(csvMessages);
  useScreenTitle(t.title);
  const queries = [useSensors(), useHouses(), useSites()] as const;
  const [sensors, houses, sites] = queries;
  const [site] = useSiteFilter();
  const [table, setTable] = useState<ChosenTable>();
  const failed = queries.find((query) => query.isError && !query.data);
  if (failed) return <Failed failure={failed.error} retry={() => queries.forEach((query) => void query.refetch())} />;
  if (!sensors.data || !houses.data || !sites.data) return <Loading />;
  return (
    <div className="rc-screen readings">
      <ReadingsLinks />
      <p className="rc-quiet">{t.help}</p>
      {table ? (
        <TableTaking
          table={table}
          another={() => setTable(undefined)}
          sensors={sensors.data}
          houses={houses.data}
          sites={sites.data}
          zone={usualZone(sites.data, site)}
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
  readonly sensors: readonly Sensor[];
  readonly houses: readonly House[];
  readonly sites: readonly Site[];
  readonly zone: string;
}

interface Looked {
  readonly question: CsvQuestion;
  readonly report: CsvReport;
}

const NOTHING_WRONG: ReadonlyMap<string, PlanWrong> = new Map();

function TableTaking({ table, another, sensors, houses, sites, zone }: TableTakingProps) {
  const t = useMessages(csvMessages);
  const refusals = useProblemWords();
  const tables = useMessages(tablesMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const queries = useQueryClient();
  const [plan, setPlan] = useState(() => planFor(table.text, sensors, zone));
  const [wrong, setWrong] = useState(NOTHING_WRONG);
  const [looked, setLooked] = useState<Looked>();
  const [taken, setTaken] = useState<CsvReport>();
  const [outdated, setOutdated] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState<'looking' | 'taking'>();
  const key = useRef('');

  const put = (next: TablePlan) => {
    setPlan(next);
    setWrong(NOTHING_WRONG);
    setFailure(undefined);
    setOutdated(looked !== undefined);
    setLooked(undefined);
  };
  const faultOf = (path: string): string | undefined => {
    const words: Record<PlanWrong, string> = {
      needed: shared.needed,
      noTable: tables.noTable,
      noColumn: t.noColumn,
      large: tables.large,
      unit: t.wrongUnit,
      sameSign: t.sameSign,
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
    const made = questionOf(table.text, plan);
    setOutdated(false);
    if ('wrong' in made) {
      setWrong(made.wrong);
      return;
    }
    void doing('looking', async () => {
      setLooked({ question: made.question, report: await previewCsv(made.question) });
      // One key for what was looked at: sent again after silence it is still taken in once.
      key.current = newKey();
    });
  };
  const take = ({ question }: Looked) =>
    void doing('taking', async () => {
      setTaken(await importCsv(question, key.current));
      await queries.invalidateQueries({ queryKey: groups.climate() });
    });

  if (taken) {
    return (
      <section className="rc-sheet table-part" aria-labelledby="table-taken">
        <ArrivedHeading id="table-taken">✓ {t.takenTitle(format.integer(taken.accepted))}</ArrivedHeading>
        <p className="rc-quiet">{t.takenHelp}</p>
        <TableReportParts report={taken} />
        <div className="rc-row table-actions">
          <Button theme="primary" onClick={another}>
            {tables.another}
          </Button>
        </div>
      </section>
    );
  }
  return (
    <>
      <TableGlance table={table} separator={plan.separator} fault={faultOf('csv')} another={another} />
      <TablePlanForm
        text={table.text}
        plan={plan}
        put={put}
        faultOf={faultOf}
        sensors={sensors}
        houses={houses}
        sites={sites}
      />
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
            {looked.report.accepted > 0 ? t.previewTitle : t.previewNone}
          </ArrivedHeading>
          <p className="rc-quiet">{tables.nothingYet}</p>
          <TableReportParts report={looked.report} />
        </section>
      )}
      <ProblemNote failure={failure} />
      <div className="rc-row table-actions">
        {looked && looked.report.accepted > 0 && (
          <Button theme="primary" disabled={busy !== undefined} onClick={() => take(looked)}>
            {busy === 'taking' ? t.taking : t.take(format.integer(looked.report.accepted))}
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

import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useSensors } from '../climate/climate-api';
import { ReadingsLinks } from '../climate/readings-links';
import type { House, Site } from '../shared/api-types';
import { Button } from '../shared/button';
import type { Sensor } from '../shared/climate-types';
import { useMessages } from '../shared/messages';
import { groups } from '../shared/query-keys';
import { Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { TableImport } from '../tables/table-import';
import { previewCsv, importCsv } from './readings-api';
import { TablePlanForm } from './csv-plan';
import { TableReportParts } from './csv-report';
import { csvMessages } from './csv-messages';
import { TableSource, type ChosenTable } from '../tables/table-source';
import { planFor, questionOf } from './csv-state';
import { tablesMessages } from '../tables/tables-messages';
import './readings.css';

/** Readings of the past from a file: looked at in a preview, and taken in only when somebody says so. */
export function CsvImportView() {
  const t = useMessages(csvMessages);
  useScreenTitle(t.title);
  const queries = [useSensors(), useHouses(), useSites()] as const;
  const [sensors, houses, sites] = queries;
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
}

function TableTaking({ table, another, sensors, houses, sites }: TableTakingProps) {
  const t = useMessages(csvMessages);
  const tables = useMessages(tablesMessages);
  const shared = useMessages(sharedMessages);
  const queries = useQueryClient();
  return (
    <TableImport
      table={table}
      another={another}
      begin={() => planFor(table.text, sensors, houses)}
      ask={(plan) => questionOf(table.text, plan)}
      preview={previewCsv}
      take={async (question, key) => {
        const taken = await importCsv(question, key);
        await queries.invalidateQueries({ queryKey: groups.climate() });
        return taken;
      }}
      amountIn={({ accepted }) => accepted}
      faults={{
        needed: shared.needed,
        noTable: tables.noTable,
        noColumn: t.noColumn,
        large: tables.large,
        unit: t.wrongUnit,
        sameSign: t.sameSign,
      }}
      says={t}
      form={(plan, put, faultOf) => (
        <TablePlanForm
          text={table.text}
          plan={plan}
          put={put}
          faultOf={faultOf}
          sensors={sensors}
          houses={houses}
          sites={sites}
        />
      )}
      report={(report) => (
        <>
          {!report.dryRun && <p className="rc-quiet">{t.takenHelp}</p>}
          <TableReportParts report={report} sites={sites} />
        </>
      )}
      next={
        <Button theme="primary" onClick={another}>
          {tables.another}
        </Button>
      }
    />
  );
}

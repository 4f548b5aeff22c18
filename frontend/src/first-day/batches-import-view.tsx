import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import type { House, Site } from '../shared/api-types';
import { Button } from '../shared/button';
import { useMessages } from '../shared/messages';
import { groups } from '../shared/query-keys';
import { Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites, useVarieties } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { TableImport } from '../tables/table-import';
import { TableSource, type ChosenTable } from '../tables/table-source';
import { tablesMessages } from '../tables/tables-messages';
import { batchesCsvMessages } from './batches-csv-messages';
import { batchPlanFor, batchQuestionOf, type Known } from './batches-csv-state';
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

function TableTaking({ table, another, sites, houses, known }: TableTakingProps) {
  const t = useMessages(batchesCsvMessages);
  const tables = useMessages(tablesMessages);
  const shared = useMessages(sharedMessages);
  const queries = useQueryClient();
  return (
    <TableImport
      table={table}
      another={another}
      begin={() => batchPlanFor(table.text, known)}
      ask={(plan) => batchQuestionOf(table.text, plan)}
      preview={previewBatches}
      take={async (question, key) => {
        const taken = await importBatches(question, key);
        void queries.invalidateQueries({ queryKey: groups.batchLists() });
        await queries.invalidateQueries({ queryKey: groups.setup() });
        return taken;
      }}
      amountIn={({ batches }) => batches}
      faults={{
        needed: shared.needed,
        noTable: tables.noTable,
        large: tables.large,
        long: t.long,
        twice: t.twice,
      }}
      says={t}
      form={(plan, put, faultOf) => (
        <BatchesPlanForm text={table.text} plan={plan} put={put} faultOf={faultOf} sites={sites} houses={houses} />
      )}
      report={(report) => <BatchesReport report={report} />}
      next={
        <>
          <Link className="rc-link" to="/board">
            {t.toBoard}
          </Link>
          <Button theme="tertiary" onClick={another}>
            {tables.another}
          </Button>
        </>
      }
    />
  );
}

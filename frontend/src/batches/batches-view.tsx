import { useDeferredValue, useMemo, useState } from 'react';
import { Link, useSearchParams } from 'react-router';
import { useMay } from '../people/signed-in';
import type { BatchView } from '../shared/api-types';
import { useBatchList } from '../shared/batch-queries';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { later } from '../shared/later';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { commaSeparated, tabSeparated } from '../shared/plain-table';
import { usePhone, useTablet } from '../shared/phone';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useHouses, useSites, useTrayFormats } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { copyText, saveText } from '../shared/take-away';
import { BatchCards } from './batch-cards';
import type { CellWords } from './batch-cells';
import { BatchTable } from './batch-table';
import { BatchFilters } from './batches-filters';
import { batchesMessages } from './batches-messages';
import { filterIn, queryOf, shownBatches, takenRow, withFilter, type BatchFilter } from './batches-state';
import { FaultyBatches } from './faulty-batches';
import './batches.css';

const StickDialog = later(async () => (await import('./stick-dialog')).StickDialog);

/** Every batch of the business, live: found, sorted, opened, taken away; and where a new one is stuck. */
export function BatchesView() {
  const t = useMessages(batchesMessages);
  const shared = useMessages(sharedMessages);
  useScreenTitle(t.title);
  const format = useFormats();
  const phone = usePhone();
  const cards = useTablet();
  const [params, setParams] = useSearchParams();
  const filter = useMemo(() => filterIn(params), [params]);
  const change = (part: Partial<BatchFilter>) =>
    setParams((before) => withFilter(before, { ...filterIn(before), ...part }), { replace: part.text !== undefined });
  const list = useBatchList(queryOf(filter));
  const words = useCellWords();
  const deferredText = useDeferredValue(filter.text);
  const shown = useMemo(
    () => shownBatches(list.data?.batches ?? [], { text: deferredText, sort: filter.sort }, words.names),
    [list.data, deferredText, filter.sort, words.names],
  );
  const [sticking, setSticking] = useState(false);
  const mayStick = useMay('record', filter.site);
  const maySetUp = useMay('set-up');

  const formats = useTrayFormats().data ?? [];
  const plantsIn = (code: string) => formats.find((each) => each.code === code)?.saleCount;
  const head = [
    t.colVariety,
    t.tsvCrop,
    t.colId,
    t.tsvSite,
    t.colHouse,
    t.tsvFormat,
    shared.plantsPerTray,
    t.colStage,
    t.colStuck,
    t.colTrays,
    t.tsvPlantsStuck,
    t.colAlive,
    t.tsvPlantsLost,
    t.tsvShipped,
    t.tsvReadyP10,
    t.tsvReadyP50,
    t.tsvReadyP90,
    t.tsvSaleP10,
    t.tsvSaleP50,
    t.tsvSaleP90,
  ];
  const table = () => ({
    head,
    rows: shown.map((batch) => takenRow(batch, words.names, words.zoneOf, plantsIn, words.stage)),
  });
  const copy = async () => {
    try {
      await copyText(tabSeparated(table()));
      notice({ text: t.copied(format.integer(shown.length)) });
    } catch {
      notice({ text: t.copyFailed });
    }
  };
  const nothingAtAll =
    list.data?.batches.length === 0 &&
    !filter.site &&
    !filter.house &&
    !filter.crop &&
    !filter.stage &&
    filter.state !== 'finished';

  const body = () => {
    if (list.isPending) return <Loading />;
    if (!list.data) return <Failed failure={list.error} retry={() => void list.refetch()} />;
    if (shown.length === 0) {
      return (
        <Empty title={t.none}>
          <p>{nothingAtAll ? t.noneYet : t.noneMatch}</p>
        </Empty>
      );
    }
    return cards ? (
      <BatchCards batches={shown} words={words} label={t.title} columns={phone ? 1 : 2} />
    ) : (
      <BatchTable
        batches={shown}
        words={words}
        sort={filter.sort}
        onSort={(sort) => change({ sort })}
        label={t.title}
      />
    );
  };
  return (
    <div className="rc-screen batches">
      <div className="batches-bar rc-no-print">
        <BatchFilters filter={filter} change={change} sortable={cards} />
        {mayStick && (
          <span className="rc-row">
            {maySetUp && (
              <Link className="rc-link" to="/setup/batches">
                {t.importBatches}
              </Link>
            )}
            <Button theme="primary" onClick={() => setSticking(true)}>
              {t.stickBatch}
            </Button>
          </span>
        )}
      </div>
      <div className="rc-row rc-spread batches-line">
        <span role="status">
          {list.data && t.shown(format.integer(shown.length), format.integer(list.data.batches.length))}
          {list.isError && list.data && (
            <span className="rc-at-risk">
              {' '}
              ▲ {t.staleList(format.time(new Date(list.dataUpdatedAt).toISOString()))}
            </span>
          )}
        </span>
        <span className="rc-quiet rc-small batches-range">{t.rangeHelp}</span>
        <span className="rc-row rc-no-print">
          <Button theme="tertiary" onClick={() => void copy()}>
            {t.copy}
          </Button>
          <Button
            theme="tertiary"
            onClick={() => saveText(commaSeparated(table()), 'rootcast-batches.csv', 'text/csv')}
          >
            {t.csv}
          </Button>
        </span>
      </div>
      <FaultyBatches batches={list.data?.faulty ?? []} siteName={words.names.site} />
      {body()}
      {sticking && <StickDialog site={filter.site} close={() => setSticking(false)} />}
    </div>
  );
}

function useCellWords(): CellWords {
  const t = useMessages(batchesMessages);
  const stages = useMessages(sharedMessages);
  const format = useFormats();
  const sites = useSites().data;
  const houses = useHouses().data;
  return useMemo(() => {
    const site = new Map(sites?.map((each) => [each.code, each]));
    const house = new Map(houses?.map((each) => [each.code, each.name]));
    return {
      t,
      format,
      stage: (batch: BatchView) => stages[`stage${batch.stage}`],
      names: { site: (code) => site.get(code)?.name ?? code, house: (code) => house.get(code) ?? code },
      zoneOf: (code) => site.get(code)?.timeZone,
    };
  }, [t, stages, format, sites, houses]);
}

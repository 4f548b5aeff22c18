import type { BatchView } from '../shared/api-types';
import type { Formats } from '../shared/formats';
import { nameParts } from '../shared/variety-name';
import { lostFraction, type Column, type Names } from './batches-state';
import type { BatchesMessages } from './batches-messages';

/** What a column shows of a batch: the figure, and the range beside it where there is one. */
export interface CellWords {
  readonly t: BatchesMessages;
  readonly format: Formats;
  readonly names: Names;
  readonly stage: (batch: BatchView) => string;
  readonly zoneOf: (site: string) => string | undefined;
}

export interface CellText {
  readonly main: string;
  readonly range?: string;
}

export const NUMERIC: ReadonlySet<Column> = new Set(['stuck', 'trays', 'alive', 'lost', 'ready', 'saleable']);

export function cellText(batch: BatchView, column: Column, { t, format, names, stage, zoneOf }: CellWords): CellText {
  const zone = zoneOf(batch.site);
  const { outlook } = batch;
  switch (column) {
    case 'variety':
      return namedApart(batch.varietyName);
    case 'id':
      return { main: batch.id };
    case 'site':
      return { main: names.site(batch.site) };
    case 'house':
      return { main: names.house(batch.house) };
    case 'stage':
      return { main: stage(batch) };
    case 'stuck':
      return { main: format.dayOf(batch.stuckAt, zone) };
    case 'trays':
      return { main: format.integer(batch.trays), range: `× ${batch.trayFormat}` };
    case 'alive':
      return { main: format.integer(batch.plants.alive) };
    case 'lost':
      return { main: format.percent(lostFraction(batch), 1, 1) };
    case 'ready': {
      if (!outlook) return { main: t.noOutlook };
      const { p10, p50, p90 } = outlook.readyAt;
      const day = (at: string | null) => (at === null ? t.notInSight : format.dayOf(at, zone));
      return p10 === p90 ? { main: day(p50) } : { main: day(p50), range: t.range(day(p10), day(p90)) };
    }
    case 'saleable': {
      if (!outlook) return { main: t.noOutlook };
      const { p10, p50, p90 } = outlook.saleableTrays;
      return p10 === p90
        ? { main: format.integer(p50) }
        : { main: format.integer(p50), range: t.range(format.integer(p10), format.integer(p90)) };
    }
  }
}

/** The cultivar first, which is what tells two rows apart, and what it is one of beside it. */
function namedApart(name: string): CellText {
  const { cultivar, kind } = nameParts(name);
  return kind === '' ? { main: cultivar } : { main: cultivar, range: kind };
}

export function columnName(column: Column, t: BatchesMessages): string {
  return {
    variety: t.colVariety,
    id: t.colId,
    site: t.colSite,
    house: t.colHouse,
    stage: t.colStage,
    stuck: t.colStuck,
    trays: t.colTrays,
    alive: t.colAlive,
    lost: t.colLost,
    ready: t.colReady,
    saleable: t.colSaleable,
  }[column];
}

import { useQuery } from '@tanstack/react-query';
import type { CellExplanation, LineShortfall, LocalDate } from '../shared/api-types';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { keys } from '../shared/query-keys';
import { useSites } from '../shared/setup-lists';
import { weekOf } from '../shared/weeks';
import { loadBoard } from './board-api';
import { confidenceTyped } from './board-filter-state';
import { boardMessages } from './board-messages';
import { lineOf, withLine, type DraftLine, type PromiseDraft } from './promise-state';
import { standIns } from './stand-in-state';

interface ShortfallsProps {
  readonly draft: PromiseDraft;
  readonly short: readonly LineShortfall[];
  readonly data: CellExplanation;
  readonly change: (draft: PromiseDraft) => void;
}

/** For each line that is short: which it is, what is open then, and what would do; one press puts it into the form. */
export function Shortfalls({ draft, short, data, change }: ShortfallsProps) {
  const confidence = confidenceTyped(draft.confidence) ?? data.confidence;
  return (
    <div className="rc-warning" role="alert">
      {short.map((each) => {
        const line = lineOf(draft, each);
        return (
          <Shortfall
            key={each.line}
            short={each}
            many={draft.lines.length > 1}
            confidence={confidence}
            take={line && ((part) => change(withLine(draft, line.id, part)))}
          />
        );
      })}
    </div>
  );
}

interface ShortfallProps {
  readonly short: LineShortfall;
  /** Of several lines, it is said which. */
  readonly many: boolean;
  readonly confidence: number;
  readonly take: ((part: Partial<DraftLine>) => void) | undefined;
}

function Shortfall({ short, many, confidence, take }: ShortfallProps) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const sites = useSites().data;
  const { asked, open, shipOn, earlierDate, laterDate } = short;
  const { rows, others } = useOthers(short, confidence);
  const siteName = (code: string) => sites?.find((each) => each.code === code)?.name ?? code;
  const variety = rows.find((row) => row.variety === short.variety)?.varietyName ?? short.variety;
  const item = `${variety} · ${short.trayFormat} · ${siteName(short.site)}`;
  const otherDate = (date: LocalDate | null, says: (date: string) => string) =>
    take && date !== null && <Button onClick={() => take({ shipOn: date })}>{says(format.date(date))}</Button>;
  return (
    <div>
      <p>
        ▲ {many && <b>{t.lineOf(short.line, item)} </b>}
        {t.short(format.integer(asked), format.date(shipOn), format.integer(open))}
        {earlierDate === null && laterDate === null && ` ${t.nearestNone}`}
      </p>
      <p className="rc-row">
        {otherDate(earlierDate, t.takeEarlier)}
        {otherDate(laterDate, t.takeLater)}
        {take && open > 0 && (
          <Button onClick={() => take({ trays: String(open) })}>{t.takeOpen(open, format.integer(open))}</Button>
        )}
        {others.map(({ item: key, kind, row, shipOn: day, open: there }) => {
          const name = `${row.varietyName} · ${row.trayFormat} · ${siteName(row.site)}`;
          const said = { site: siteName(row.site), format: row.trayFormat, variety: row.varietyName }[kind];
          return (
            take && (
              <Button key={key} onClick={() => take({ item: key, itemName: name, shipOn: day })}>
                {t.takeOther(said, format.dayMonth(day), format.integer(there))}
              </Button>
            )
          );
        })}
      </p>
    </div>
  );
}

/** The board of the week that was asked for, of every site and crop, whatever the reader's own filter hides. */
function useOthers(short: LineShortfall, confidence: number) {
  const week = weekOf(short.shipOn);
  const asked = { from: week, weeks: 1, confidence, site: undefined, crop: undefined, asOf: undefined };
  const rows = useQuery({
    queryKey: keys.standIns(week, confidence),
    queryFn: ({ signal }) => loadBoard(asked, signal),
    staleTime: 0,
  }).data?.rows;
  return { rows: rows ?? [], others: standIns(rows ?? [], short) };
}

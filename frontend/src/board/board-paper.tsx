import { useEffect, useState } from 'react';
import { createPortal, flushSync } from 'react-dom';
import type { BoardRow, BoardWeek } from '../shared/api-types';
import { useAbout } from '../shared/about';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useTrayFormats } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { weekNumber } from '../shared/weeks';
import { boardMessages } from './board-messages';
import { shipDays } from './ship-days';
import './board-paper.css';

interface BoardPaperProps {
  readonly rows: () => readonly BoardRow[];
  readonly weeks: readonly BoardWeek[];
  readonly confidence: number;
  readonly asOf: string;
  readonly siteName: (code: string) => string;
}

/** The availability as a sheet for the wall or a customer: built when the browser is about to print, gone after. */
export function BoardPaper(props: BoardPaperProps) {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The browser takes its picture as soon as the event returns.
    const begin = () => flushSync(() => setPrinting(true));
    const end = () => setPrinting(false);
    addEventListener('beforeprint', begin);
    addEventListener('afterprint', end);
    return () => {
      removeEventListener('beforeprint', begin);
      removeEventListener('afterprint', end);
    };
  }, []);
  return printing && createPortal(<Sheet {...props} />, document.body);
}

function Sheet({ rows, weeks, confidence, asOf, siteName }: BoardPaperProps) {
  const t = useMessages(boardMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const business = useAbout().data?.business;
  const formats = useTrayFormats().data ?? [];
  const plantsIn = (code: string) => formats.find((each) => each.code === code)?.saleCount;
  const offered = rows().filter((row) => row.cells.some((cell) => cell.open > 0));
  const crops = [...new Set(offered.map((row) => row.cropName))].sort((a, b) => a.localeCompare(b));
  const days = shipDays(offered);
  const first = weeks[0]?.week ?? '';
  const last = weeks.at(-1)?.week ?? '';
  return (
    <section className="paper">
      <h1>{business ? t.paperOf(business) : t.paperTitle}</h1>
      <p className="paper-weeks">{t.paperWeeks(first, last)}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">{t.variety}</th>
            <th scope="col">{t.format}</th>
            <th scope="col">{shared.plantsPerTray}</th>
            <th scope="col">{t.site}</th>
            {weeks.map(({ week, monday }, column) => (
              <th key={week} scope="col" className="paper-figure">
                <b>{t.weekShort(weekNumber(week))}</b>
                <span>{format.days(days[column] ?? [monday])}</span>
              </th>
            ))}
          </tr>
        </thead>
        {crops.map((crop) => (
          <tbody key={crop}>
            <tr className="paper-crop">
              <th scope="rowgroup" colSpan={4 + weeks.length}>
                {crop}
              </th>
            </tr>
            {offered
              .filter((row) => row.cropName === crop)
              .map((row) => (
                <tr key={`${row.variety} ${row.trayFormat} ${row.site}`}>
                  <th scope="row">{row.varietyName}</th>
                  <td>{row.trayFormat}</td>
                  <td>{plantsIn(row.trayFormat)}</td>
                  <td>{siteName(row.site)}</td>
                  {row.cells.map((cell) => (
                    <td key={cell.week} className="paper-figure">
                      {cell.open > 0 ? format.integer(cell.open) : '·'}
                    </td>
                  ))}
                </tr>
              ))}
          </tbody>
        ))}
      </table>
      <p className="paper-note">{shared.weeksDoNotAdd}</p>
      <p className="paper-note">{t.paperNote(format.percent(confidence, 2), format.dateTime(asOf))}</p>
    </section>
  );
}

import type { BoardRow, BoardWeek } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { weekNumber } from '../shared/weeks';
import { boardMessages } from './board-messages';
import { cropTotals, weekSums, type CropTotal } from './board-today-state';
import { shipDays } from './ship-days';

interface BoardTotalsProps {
  readonly rows: readonly BoardRow[];
  readonly weeks: readonly BoardWeek[];
  readonly openCrop: (crop: string) => void;
}

/** Open trays by crop in place of the rows; a crop opens its own. */
export function BoardTotals({ rows, weeks, openCrop }: BoardTotalsProps) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const days = shipDays(rows);
  const figures = (sums: CropTotal['weeks']) =>
    sums.map(({ open, atRisk }, i) => (
      <td key={weeks[i]?.week} className="rc-number">
        {open > 0 && format.integer(open)}
        {atRisk > 0 && <span className="rc-at-risk"> ▲{format.integer(atRisk)}</span>}
      </td>
    ));
  return (
    <div className="board-totals rc-no-print" tabIndex={0} role="region" aria-label={t.totals}>
      <table className="rc-table">
        <caption>{t.totalsHelp}</caption>
        <thead>
          <tr>
            <th scope="col">{t.crop}</th>
            {weeks.map(({ week, monday }, column) => (
              <th key={week} scope="col" className="rc-number">
                {t.weekShort(weekNumber(week))}{' '}
                <span className="rc-quiet rc-small">{format.days(days[column] ?? [monday])}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {cropTotals(rows).map(({ crop, name, weeks: sums }) => (
            <tr key={crop}>
              <th scope="row">
                <button type="button" className="rc-link" onClick={() => openCrop(crop)}>
                  {name}
                </button>
              </th>
              {figures(sums)}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{t.allCrops}</th>
            {figures(weekSums(rows))}
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

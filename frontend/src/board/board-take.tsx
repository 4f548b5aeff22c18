import type { BoardRow, BoardWeek } from '../shared/api-types';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { commaSeparated, tabSeparated } from '../shared/plain-table';
import { useTrayFormats } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { copyText, saveFile, saveText } from '../shared/take-away';
import { boardMessages } from './board-messages';
import { FIGURES } from './board-state';
import { customerTable, tableOf, type TableWords } from './board-table';

interface BoardTakeProps {
  readonly rows: () => readonly BoardRow[];
  readonly weeks: readonly BoardWeek[];
  readonly siteName: (code: string) => string;
}

/** Variety, code, crop, format, plants per tray and site. */
const NAME_COLUMNS = 6;

/** The shown rows as text, as a file, or on paper. Text carries what is open; files carry every figure. */
export function BoardTake({ rows, weeks, siteName }: BoardTakeProps) {
  const t = useMessages(boardMessages);
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const formats = useTrayFormats();
  const words: TableWords = {
    ...t,
    plantsPerTray: shared.plantsPerTray,
    weeksDoNotAdd: shared.weeksDoNotAdd,
    figure: (figure) => t[figure],
  };
  const plantsIn = (code: string) => formats.data?.find((each) => each.code === code)?.saleCount;
  const named = () => rows().map((row) => ({ ...row, site: siteName(row.site) }));
  const fileName = (ending: string) => `rootcast-board-${weeks[0]?.week ?? ''}.${ending}`;

  const copy = async () => {
    const table = tableOf(named(), weeks, ['open'], words, plantsIn);
    try {
      await copyText(tabSeparated(table));
      notice({ text: t.copied(format.integer(table.rows.length)) });
    } catch {
      notice({ text: t.copyFailed });
    }
  };
  const csv = () => {
    saveText(commaSeparated(tableOf(named(), weeks, FIGURES, words, plantsIn)), fileName('csv'), 'text/csv');
  };
  const forCustomers = () => {
    const table = customerTable(named(), weeks, words, plantsIn);
    saveText(commaSeparated(table), `rootcast-availability-${weeks[0]?.week ?? ''}.csv`, 'text/csv');
  };
  const xlsx = async () => {
    const { workbook } = await import('../shared/table-xlsx');
    saveFile(
      await workbook(tableOf(named(), weeks, FIGURES, words, plantsIn), t.title, NAME_COLUMNS),
      fileName('xlsx'),
    );
  };
  return (
    <div className="board-take rc-no-print" role="group" aria-label={t.take}>
      <Button theme="tertiary" onClick={() => void copy()}>
        {t.copy}
      </Button>
      <Button theme="tertiary" onClick={csv}>
        {shared.csv}
      </Button>
      <Button theme="tertiary" onClick={forCustomers}>
        {t.csvForCustomers}
      </Button>
      <Button theme="tertiary" onClick={() => void xlsx()}>
        {shared.xlsx}
      </Button>
      <Button theme="tertiary" onClick={() => print()}>
        {t.print}
      </Button>
    </div>
  );
}

import { Button } from '@vaadin/react-components/Button.js';
import type { BoardRow, BoardWeek } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { boardMessages } from './board-messages';
import { FIGURES } from './board-state';
import { commaSeparated, tableOf, tabSeparated, type TableWords } from './board-table';

interface BoardTakeProps {
  readonly rows: () => readonly BoardRow[];
  readonly weeks: readonly BoardWeek[];
  readonly siteName: (code: string) => string;
}

/** The shown rows as text, as a file, or on paper. Text carries what is open; files carry every figure. */
export function BoardTake({ rows, weeks, siteName }: BoardTakeProps) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const words: TableWords = { ...t, figure: (figure) => t[figure] };
  const named = () => rows().map((row) => ({ ...row, site: siteName(row.site) }));
  const fileName = (ending: string) => `rootcast-board-${weeks[0]?.week ?? ''}.${ending}`;

  const copy = async () => {
    const table = tableOf(named(), weeks, ['open'], words);
    try {
      await copyText(tabSeparated(table));
      notice({ text: t.copied(format.integer(table.rows.length)) });
    } catch {
      notice({ text: t.copyFailed });
    }
  };
  const csv = () => {
    const text = commaSeparated(tableOf(named(), weeks, FIGURES, words));
    // The byte order mark lets spreadsheets take it as UTF-8.
    save(new Blob(['\ufeff', text], { type: 'text/csv;charset=utf-8' }), fileName('csv'));
  };
  const xlsx = async () => {
    const { workbook } = await import('./board-xlsx');
    save(await workbook(tableOf(named(), weeks, FIGURES, words), t.title), fileName('xlsx'));
  };
  return (
    <div className="board-take rc-no-print" role="group" aria-label={t.take}>
      <Button theme="tertiary" onClick={() => void copy()}>
        {t.copy}
      </Button>
      <Button theme="tertiary" onClick={csv}>
        {t.csv}
      </Button>
      <Button theme="tertiary" onClick={() => void xlsx()}>
        {t.xlsx}
      </Button>
      <Button theme="tertiary" onClick={() => print()}>
        {t.print}
      </Button>
    </div>
  );
}

async function copyText(text: string): Promise<void> {
  // The clipboard interface is missing on plain http, which is usual on a nursery's own network.
  if ('clipboard' in navigator) return navigator.clipboard.writeText(text);
  const area = document.createElement('textarea');
  area.value = text;
  document.body.append(area);
  area.select();
  const done = document.execCommand('copy');
  area.remove();
  if (!done) throw new Error('not allowed');
}

function save(file: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

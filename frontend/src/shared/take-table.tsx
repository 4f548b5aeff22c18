import { Button } from './button';
import { useFormats } from './formats';
import { useMessages } from './messages';
import { notice } from './notices';
import { commaSeparated, tabSeparated, type PlainTable } from './plain-table';
import { sharedMessages } from './shared-messages';
import { copyText, saveFile, saveText } from './take-away';

interface TakeTableProps {
  readonly table: () => PlainTable;
  /** Of the files, without its ending. */
  readonly fileName: string;
  /** What the buttons take away, for those who hear them; also the name of the sheet. */
  readonly label: string;
  readonly nameColumns?: number;
  readonly print?: boolean;
}

/** A table as text, as a file, or on paper. */
export function TakeTable({ table, fileName, label, nameColumns = 1, print: printed = false }: TakeTableProps) {
  const t = useMessages(sharedMessages);
  const format = useFormats();
  const copy = async () => {
    const taken = table();
    try {
      await copyText(tabSeparated(taken));
      notice({ text: t.copied(format.integer(taken.rows.length)) });
    } catch {
      notice({ text: t.copyFailed });
    }
  };
  const xlsx = async () => {
    const { workbook } = await import('./table-xlsx');
    // A workbook refuses longer names of sheets, and some signs in them.
    const sheet = label.replace(/[\\/*?:[\]]/g, ' ').slice(0, 31);
    saveFile(await workbook(table(), sheet, nameColumns), `${fileName}.xlsx`);
  };
  return (
    <div className="rc-row rc-no-print" role="group" aria-label={t.takeAway(label)}>
      <Button theme="tertiary" onClick={() => void copy()}>
        {t.copyTable}
      </Button>
      <Button theme="tertiary" onClick={() => saveText(commaSeparated(table()), `${fileName}.csv`, 'text/csv')}>
        {t.csv}
      </Button>
      <Button theme="tertiary" onClick={() => void xlsx()}>
        {t.xlsx}
      </Button>
      {printed && (
        <Button theme="tertiary" onClick={() => print()}>
          {t.print}
        </Button>
      )}
    </div>
  );
}

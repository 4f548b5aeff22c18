import type { BatchCsvLine, BatchCsvReport } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { batchesCsvMessages } from './batches-csv-messages';
import { inOrder } from './batches-csv-state';
import { batchReasonMessages } from './batches-reason-messages';
import { reasonSaid } from './batches-reason-words';
import { TableFigures } from '../tables/table-figures';

const MARKS: Readonly<Record<BatchCsvLine['outcome'], string>> = { refused: '✕', here: '·', doubtful: '▲', noted: '·' };

/** What becomes of the table, in numbers, what is made for it, and a line for each that has something to be said. */
export function BatchesReport({ report }: { report: BatchCsvReport }) {
  const t = useMessages(batchesCsvMessages);
  const figures = [
    [t.rows, report.rows, ''],
    [t.batches, report.batches, ''],
    [t.plants, report.plants, ''],
    [t.here, report.here, ''],
    [t.refused, report.refused, '▲ '],
    [t.doubtful, report.doubtful, '▲ '],
  ] as const;
  return (
    <>
      <TableFigures figures={figures} />
      {report.made.length > 0 && (
        <>
          <h3>{t.made}</h3>
          {(['house', 'variety'] as const).map((kind) => {
            const names = report.made.filter((each) => each.kind === kind).map(({ name }) => name);
            return (
              names.length > 0 && (
                <p key={kind}>
                  {t[`made-${kind}`]}: {names.join(' · ')}
                </p>
              )
            );
          })}
        </>
      )}
      <h3 id="table-remarks">{t.remarks}</h3>
      {report.lines.length === 0 ? (
        <p className="rc-quiet">{t.noRemarks}</p>
      ) : (
        <div className="table-scroll" tabIndex={0} role="region" aria-labelledby="table-remarks">
          <table className="rc-table table-remarks">
            <HeadRow heads={[t.line, t.outcome, t.column, t.why]} />
            <tbody>
              {inOrder(report.lines).map((line, i) => (
                <Remark key={i} line={line} />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}

function Remark({ line }: { line: BatchCsvLine }) {
  const t = useMessages(batchesCsvMessages);
  const reasons = useMessages(batchReasonMessages);
  const format = useFormats();
  const tone = line.outcome === 'refused' ? 'rc-broken' : line.outcome === 'doubtful' ? 'rc-at-risk' : undefined;
  return (
    <tr>
      <th scope="row" data-label={t.line}>
        {format.integer(line.line)}
      </th>
      <td className={tone}>
        {MARKS[line.outcome]} {t[`out-${line.outcome}`]}
      </td>
      <td data-label={t.column}>{line.column ?? t.wholeLine}</td>
      <td className="table-reason">{reasonSaid(line, reasons, format)}</td>
    </tr>
  );
}

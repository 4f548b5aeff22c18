import type { Site } from '../shared/api-types';
import { climateMessages } from '../climate/climate-messages';
import { useFormats } from '../shared/formats';
import { figure, HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { readingSaid, useSpeaker } from '../shared/use-problem-words';
import type { CsvOutcome, CsvReport } from '../shared/reading-types';
import { csvMessages } from './csv-messages';
import { grouped, type LineGroup } from './csv-state';
import { TableFigures } from '../tables/table-figures';

const MARKS: Readonly<Record<CsvOutcome, string>> = { refused: '✕', 'set-aside': '▲', flagged: '▲', noted: '·' };
const NAMED_LINES = 6;

/** What becomes of the table, in numbers, and everything there is to say about single lines. */
export function TableReportParts({ report, sites }: { report: CsvReport; sites: readonly Site[] }) {
  const t = useMessages(csvMessages);
  const format = useFormats();
  const figures = [
    [t.rows, report.rows, ''],
    [t.readings, report.readings, ''],
    [report.dryRun ? t.wouldAccept : t.accepted, report.accepted, ''],
    [t.duplicates, report.duplicates, ''],
    [t.refused, report.refused, '▲ '],
    [t.flagged, report.flagged, '▲ '],
  ] as const;
  return (
    <>
      <TableFigures figures={figures} />
      <ul className="readings-spans">
        {report.spans.map(({ site, timeZone, first, last }) => (
          <li key={site}>
            {t.span(
              sites.find(({ code }) => code === site)?.name ?? site,
              format.dateTime(first, timeZone),
              format.dateTime(last, timeZone),
              timeZone,
            )}
          </li>
        ))}
      </ul>
      <h3 id="table-remarks">{t.remarks}</h3>
      {report.lines.length === 0 ? (
        <p className="rc-quiet">{t.noRemarks}</p>
      ) : (
        <div className="table-scroll" tabIndex={0} role="region" aria-labelledby="table-remarks">
          <table className="rc-table table-remarks">
            <HeadRow heads={[t.column, t.outcome, t.why, figure(t.count), t.where, t.firstReason]} />
            <tbody>
              {grouped(report.lines).map((group) => (
                <GroupLine key={`${group.outcome} ${group.kind} ${group.column}`} group={group} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {report.moreLines && <p className="rc-quiet">{t.moreLines}</p>}
    </>
  );
}

function GroupLine({ group: { outcome, kind, column, lines } }: { group: LineGroup }) {
  const t = useMessages(csvMessages);
  const climate: Readonly<Record<string, unknown>> = useMessages(climateMessages);
  const format = useFormats();
  const speaker = useSpeaker();
  const own: Readonly<Record<string, unknown>> = t;
  const word = kind === null ? '–' : String(own[`kind-${kind}`] ?? climate[kind] ?? kind);
  // Line 0 is a reading that was here before the table.
  const places = [...new Set(lines.map(({ line }) => line))].filter((line) => line > 0);
  const named = places.slice(0, NAMED_LINES).map((line) => format.integer(line));
  const where = named.length === 0 ? '–' : named.join(', ');
  const tone = outcome === 'refused' ? 'rc-broken' : outcome === 'noted' ? undefined : 'rc-at-risk';
  return (
    <tr>
      <th scope="row">{column ?? t.wholeLine}</th>
      <td className={tone}>
        {MARKS[outcome]} {t[`out-${outcome}`]}
      </td>
      <td>{word}</td>
      <td className="rc-number" data-label={t.count}>
        {format.integer(lines.length)}
      </td>
      <td data-label={t.where}>{places.length > NAMED_LINES ? t.andMore(where) : where}</td>
      <td className="rc-quiet table-reason">{lines[0] ? readingSaid(lines[0].why, speaker) : ''}</td>
    </tr>
  );
}

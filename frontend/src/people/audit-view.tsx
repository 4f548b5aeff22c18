import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import type { PlainTable } from '../shared/plain-table';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { TakeTable } from '../shared/take-table';
import { AccessLayout } from './access-layout';
import { accountMessages } from './account-messages';
import { useAudit } from './people-api';
import { peopleMessages } from './people-messages';
import { detailOf, linesOf } from './people-state';
import type { AuditLine } from './people-types';

/** What was refused and what was changed of people, keys and passwords. */
export function AuditView() {
  const t = useMessages(peopleMessages);
  useScreenTitle(t.audit);
  const roles = useMessages(accountMessages);
  const format = useFormats();
  const audit = useAudit();
  const lines = linesOf(audit.data?.pages ?? []);
  // A kind that this page does not know yet is shown as the server writes it.
  const said = (what: string) => (Object.hasOwn(t, what) ? (t[what as keyof typeof t] as string) : what);
  const about = (line: AuditLine) => detailOf(line, (role) => roles[`role${role}`], t.isOff);
  const table = (): PlainTable => ({
    head: [t.at, t.who, t.what, t.detail, t.from],
    rows: lines.map((line) => [line.at, line.who, said(line.what), about(line), line.from]),
  });
  const body = () => {
    if (audit.isPending) return <Loading />;
    if (!audit.data) return <Failed failure={audit.error} retry={() => void audit.refetch()} />;
    if (lines.length === 0) {
      return (
        <Empty title={t.noAudit}>
          <p>{t.auditHelp}</p>
        </Empty>
      );
    }
    return (
      <>
        <div className="rc-row rc-spread setup-head">
          <h2 id="audit-list">{t.audit}</h2>
          <TakeTable table={table} fileName="rootcast-audit" label={t.audit} />
        </div>
        <p className="rc-quiet">{t.auditHelp}</p>
        <div className="rc-sheet people-sheet">
          <table className="rc-table people-table audit-table" aria-labelledby="audit-list">
            <HeadRow heads={[t.at, t.who, t.what, t.detail, t.from]} />
            <tbody>
              {lines.map((line) => (
                <tr key={JSON.stringify(line)}>
                  <td data-label={t.at} className="audit-tight">
                    {format.dateTime(line.at)}
                  </td>
                  <th scope="row">{line.who}</th>
                  <td data-label={t.what}>{said(line.what)}</td>
                  <td data-label={t.detail} className="people-wide audit-detail">
                    {about(line) || '–'}
                  </td>
                  <td data-label={t.from} className="audit-tight">
                    {line.from || '–'}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        {audit.hasNextPage && (
          <Button disabled={audit.isFetchingNextPage} onClick={() => void audit.fetchNextPage()}>
            {t.older}
          </Button>
        )}
      </>
    );
  };
  return <AccessLayout list="audit">{body()}</AccessLayout>;
}

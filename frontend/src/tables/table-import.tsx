import { useRef, useState, type ReactNode } from 'react';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { Problem } from '../shared/problem';
import { ProblemNote } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { useProblemWords } from '../shared/use-problem-words';
import { ArrivedHeading } from './arrived-heading';
import { TableGlance, type ChosenTable } from './table-source';
import { tablesMessages } from './tables-messages';

type Faults<Wrong> = ReadonlyMap<string, Wrong>;

interface TableImportProps<Plan extends { readonly separator: string }, Question, Report, Wrong extends string> {
  readonly table: ChosenTable;
  readonly another: () => void;
  /** How the table is read as long as nobody says otherwise. */
  readonly begin: () => Plan;
  readonly ask: (plan: Plan) => { readonly question: Question } | { readonly wrong: Faults<Wrong> };
  readonly preview: (question: Question) => Promise<Report>;
  /** With one key for what was previewed: sent again after silence it is still taken once. */
  readonly take: (question: Question, key: string) => Promise<Report>;
  /** What is in it for the ledger or the series; with nothing there is nothing to press. */
  readonly amountIn: (report: Report) => number;
  readonly faults: Readonly<Record<Wrong, string>>;
  readonly says: {
    readonly previewTitle: string;
    readonly previewNone: string;
    readonly take: (n: string) => string;
    readonly taking: string;
    readonly takenTitle: (n: string) => string;
  };
  readonly form: (plan: Plan, put: (plan: Plan) => void, faultOf: (path: string) => string | undefined) => ReactNode;
  readonly report: (report: Report) => ReactNode;
  /** Under a table that was taken. */
  readonly next: ReactNode;
}

/** A chosen table on its way in: how it is read, what would come of it, and the press that takes it. */
export function TableImport<Plan extends { readonly separator: string }, Question, Report, Wrong extends string>({
  table,
  another,
  begin,
  ask,
  preview,
  take,
  amountIn,
  faults,
  says,
  form,
  report,
  next,
}: TableImportProps<Plan, Question, Report, Wrong>) {
  const t = useMessages(tablesMessages);
  const shared = useMessages(sharedMessages);
  const refusals = useProblemWords();
  const format = useFormats();
  const [plan, setPlan] = useState(begin);
  const [wrong, setWrong] = useState<Faults<Wrong>>(new Map());
  const [looked, setLooked] = useState<{ readonly question: Question; readonly report: Report }>();
  const [taken, setTaken] = useState<Report>();
  const [outdated, setOutdated] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState<'looking' | 'taking'>();
  const key = useRef('');

  const put = (changed: Plan) => {
    setPlan(changed);
    setWrong(new Map());
    setFailure(undefined);
    setOutdated(looked !== undefined);
    setLooked(undefined);
  };
  const faultOf = (path: string): string | undefined => {
    const mine = wrong.get(path);
    return mine ? faults[mine] : refusals.faultOf(failure, path);
  };
  const doing = async (what: 'looking' | 'taking', work: () => Promise<void>) => {
    setBusy(what);
    setFailure(undefined);
    try {
      await work();
    } catch (refused) {
      if (refused instanceof Problem) key.current = newKey();
      setFailure(refused);
    } finally {
      setBusy(undefined);
    }
  };
  const look = () => {
    const made = ask(plan);
    setOutdated(false);
    if ('wrong' in made) {
      setWrong(made.wrong);
      return;
    }
    void doing('looking', async () => {
      setLooked({ question: made.question, report: await preview(made.question) });
      key.current = newKey();
    });
  };

  if (taken !== undefined) {
    return (
      <section className="rc-sheet table-part" aria-labelledby="table-taken">
        <ArrivedHeading id="table-taken">✓ {says.takenTitle(format.integer(amountIn(taken)))}</ArrivedHeading>
        {report(taken)}
        <div className="rc-row table-actions">{next}</div>
      </section>
    );
  }
  const amount = looked ? amountIn(looked.report) : 0;
  return (
    <>
      <TableGlance table={table} separator={plan.separator} fault={faultOf('csv')} another={another} />
      {form(plan, put, faultOf)}
      {wrong.size > 0 && (
        <div className="rc-problem" role="alert">
          <p>✕ {t.checkFields}</p>
        </div>
      )}
      {outdated && (
        <p className="rc-warning" role="status">
          ▲ {t.changed}
        </p>
      )}
      {looked && (
        <section className="rc-sheet table-part" aria-labelledby="table-looked">
          <ArrivedHeading id="table-looked">{amount > 0 ? says.previewTitle : says.previewNone}</ArrivedHeading>
          <p className="rc-quiet">{t.nothingYet}</p>
          {report(looked.report)}
        </section>
      )}
      <ProblemNote failure={failure} />
      <div className="rc-row table-actions">
        {looked && amount > 0 && (
          <Button
            theme="primary"
            disabled={busy !== undefined}
            onClick={() => void doing('taking', async () => setTaken(await take(looked.question, key.current)))}
          >
            {busy === 'taking' ? says.taking : says.take(format.integer(amount))}
          </Button>
        )}
        {!looked && (
          <Button theme="primary" disabled={busy !== undefined} onClick={look}>
            {busy === 'looking' ? t.looking : t.preview}
          </Button>
        )}
        <Button theme="tertiary" disabled={busy !== undefined} onClick={another}>
          {shared.cancel}
        </Button>
      </div>
    </>
  );
}

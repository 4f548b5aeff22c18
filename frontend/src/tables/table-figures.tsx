import { useFormats } from '../shared/formats';

/** What becomes of a table, in numbers: word, figure, and the mark of one that should be none. */
export function TableFigures({
  figures,
}: {
  figures: readonly (readonly [word: string, figure: number, mark: string])[];
}) {
  const format = useFormats();
  return (
    <dl className="table-figures">
      {figures.map(([word, figure, mark]) => (
        <div key={word}>
          <dt>{word}</dt>
          <dd className={mark && figure > 0 ? 'rc-at-risk' : undefined}>
            {figure > 0 && mark}
            {format.integer(figure)}
          </dd>
        </div>
      ))}
    </dl>
  );
}

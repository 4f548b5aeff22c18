import type { CellExplanation } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { boardMessages } from './board-messages';
import { limitSum } from './limit-state';

interface Bar {
  readonly name: string;
  readonly value: number;
  /** Where the bar begins, in the same unit. */
  readonly from: number;
  readonly look: 'whole' | 'gone' | 'hoped' | 'open';
}

/** From stuck to open in bars: plants first, then trays, each to its own scale. Every bar has its number beside it. */
export function CellPicture({ data }: { data: CellExplanation }) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  const { stuck, lost, shipped, alive, expectedAlive, saleable, ready, promised, open } = data.steps;
  const sum = limitSum(data);
  const dates = data.limitedBy?.dates ?? [];
  const plants: Bar[] = [
    { name: t.stepStuck, value: stuck, from: 0, look: 'whole' },
    { name: t.stepLost, value: lost, from: stuck - lost, look: 'gone' },
    ...(shipped > 0 ? [{ name: t.stepShipped, value: shipped, from: alive, look: 'gone' } as const] : []),
    { name: t.stepAlive, value: alive, from: 0, look: 'whole' },
    { name: t.stepExpected, value: expectedAlive, from: 0, look: 'hoped' },
  ];
  const usable = dates.length > 1 ? t.stepUsableOn(dates.map(format.dayMonth).join(', ')) : t.stepReady;
  const spoken: Bar[] = sum
    ? [
        { name: usable, value: sum.usable, from: 0, look: 'whole' },
        { name: t.stepTaken, value: sum.taken, from: Math.max(0, sum.usable - sum.taken), look: 'gone' },
      ]
    : [
        { name: t.stepReady, value: ready, from: 0, look: 'whole' },
        { name: t.stepPromised, value: promised, from: Math.max(0, ready - promised), look: 'gone' },
      ];
  if (sum && sum.tooFew > 0) spoken.push({ name: t.stepTooFew, value: sum.tooFew, from: sum.usable, look: 'hoped' });
  const trays: Bar[] = [
    { name: t.stepSaleable, value: saleable, from: 0, look: 'hoped' },
    ...spoken,
    { name: t.stepOpen, value: open, from: 0, look: 'open' },
  ];
  return (
    <div className="picture">
      <Bars unit={t.plants} bars={plants} />
      <Bars unit={t.trays} bars={trays} />
    </div>
  );
}

function Bars({ unit, bars }: { unit: string; bars: readonly Bar[] }) {
  const format = useFormats();
  const most = Math.max(1, ...bars.map(({ from, value }) => from + value));
  return (
    <table>
      <caption>{unit}</caption>
      <tbody>
        {bars.map(({ name, value, from, look }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="picture-track" aria-hidden="true">
              {value > 0 && (
                <span
                  className={`bar bar-${look}`}
                  style={{ left: `${(100 * from) / most}%`, width: `max(2px, ${(100 * value) / most}%)` }}
                />
              )}
            </td>
            <td className="rc-number">{format.integer(value)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

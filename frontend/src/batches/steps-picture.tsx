import type { BatchView } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { storyMessages } from './story-messages';

interface Bar {
  readonly name: string;
  readonly value: number;
  /** Where the bar begins, in the same unit. */
  readonly from: number;
  readonly look: 'whole' | 'gone' | 'hoped';
  readonly href: string;
}

/** From stuck to saleable in bars, plants and trays each to their own scale; every figure leads to what it is made of. */
export function StepsPicture({ batch }: { batch: BatchView }) {
  const t = useMessages(storyMessages);
  const { stuck, lost, alive, shipped } = batch.plants;
  const trays = batch.outlook?.saleableTrays;
  return (
    <section aria-label={t.picture} className="steps">
      <Bars
        unit={t.plants}
        bars={[
          { name: t.pictureStuck, value: stuck, from: 0, look: 'whole', href: '#story' },
          { name: t.pictureLost, value: lost, from: stuck - lost, look: 'gone', href: '#losses' },
          ...(shipped > 0
            ? [{ name: t.pictureShipped, value: shipped, from: alive, look: 'gone', href: '#story' } as const]
            : []),
          { name: t.pictureAlive, value: alive, from: 0, look: 'whole', href: '#story' },
        ]}
      />
      {trays && (
        <Bars
          unit={t.saleable}
          bars={[
            { name: t.pictureExpected, value: trays.p50, from: 0, look: 'hoped', href: '#outlook' },
            { name: t.pictureSure, value: trays.p10, from: 0, look: 'whole', href: '#outlook' },
          ]}
        />
      )}
    </section>
  );
}

function Bars({ unit, bars }: { unit: string; bars: readonly Bar[] }) {
  const format = useFormats();
  const most = Math.max(1, ...bars.map(({ from, value }) => from + value));
  return (
    <table>
      <caption>{unit}</caption>
      <tbody>
        {bars.map(({ name, value, from, look, href }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="steps-track" aria-hidden="true">
              {value > 0 && (
                <span
                  className={`steps-bar ${look}`}
                  style={{ left: `${(100 * from) / most}%`, width: `max(2px, ${(100 * value) / most}%)` }}
                />
              )}
            </td>
            <td className="rc-number">
              <a className="rc-link" href={href}>
                {format.integer(value)}
              </a>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

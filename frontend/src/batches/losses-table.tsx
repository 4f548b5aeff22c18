import { Link, useLocation, useSearchParams } from 'react-router';
import type { BatchView } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { Part } from '../shared/part';
import { entryMessages, type EntryMessages } from '../floor/entry-messages';
import { storyMessages } from './story-messages';

/** Where the others went: plants by cause, each leading to its entries. A count that found more shows as negative. */
export function LossesTable({ batch }: { batch: BatchView }) {
  const t = useMessages(storyMessages);
  const words = useMessages(entryMessages);
  const format = useFormats();
  const { pathname } = useLocation();
  const [params] = useSearchParams();
  const causes = Object.entries(batch.lostByCause)
    .filter(([, plants]) => plants !== 0)
    .sort(([, a], [, b]) => b - a);
  const most = Math.max(1, ...causes.map(([, plants]) => plants));
  const linkTo = (cause: string) => {
    const after = new URLSearchParams(params);
    after.set('cause', cause);
    return `${pathname}?${after}#story`;
  };
  return (
    <Part id="losses" className="story-part" title={t.losses}>
      {causes.length === 0 ? (
        <p className="rc-quiet">{t.noLosses}</p>
      ) : (
        <table className="rc-table losses">
          <thead>
            <tr>
              <th scope="col">{t.cause}</th>
              <th scope="col" aria-hidden="true" />
              <th scope="col" className="rc-number">
                {t.plants}
              </th>
              <th scope="col" className="rc-number">
                {t.share}
              </th>
            </tr>
          </thead>
          <tbody>
            {causes.map(([cause, plants]) => (
              <tr key={cause}>
                <th scope="row">{causeWord(cause, words)}</th>
                <td className="steps-track" aria-hidden="true">
                  {plants > 0 && (
                    <span className="steps-bar gone" style={{ left: 0, width: `${(100 * plants) / most}%` }} />
                  )}
                </td>
                <td className="rc-number">
                  <Link className="rc-link" to={linkTo(cause)}>
                    {format.integer(plants)}
                  </Link>
                </td>
                <td className="rc-number">{format.percent(plants / batch.plants.stuck, 1, 1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Part>
  );
}

export function causeWord(cause: string, words: EntryMessages): string {
  const word: unknown = words[cause as keyof EntryMessages];
  return typeof word === 'string' ? word : cause;
}

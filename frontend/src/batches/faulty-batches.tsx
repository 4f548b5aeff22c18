import { Link } from 'react-router';
import type { FaultyBatch } from '../shared/api-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useScreenTitle } from '../shared/screen-title';
import { sharedMessages } from '../shared/shared-messages';

/** Batches that cannot be computed: they stand in no list of figures, so they are named here with the fault. */
export function FaultyBatches({
  batches,
  siteName,
}: {
  batches: readonly FaultyBatch[];
  siteName: (code: string) => string;
}) {
  const t = useMessages(sharedMessages);
  const format = useFormats();
  if (batches.length === 0) return null;
  return (
    <section className="rc-problem" aria-labelledby="batches-faulty">
      <h2 id="batches-faulty">✕ {t.notComputed(batches.length)}</h2>
      <p>{t.notComputedHelp}</p>
      <ul>
        {batches.map(({ id, varietyName, trayFormat, site, stuckAt }) => (
          <li key={id}>
            <Link className="rc-link" to={`/batches/${encodeURIComponent(id)}`}>
              {id}
            </Link>
            , {varietyName}, {trayFormat}, {siteName(site)}, {format.dateTime(stuckAt)}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** In place of the page of a batch that cannot be computed. */
export function NotComputed({ id }: { id: string }) {
  const t = useMessages(sharedMessages);
  useScreenTitle(t.notComputedTitle(id));
  return (
    <div className="rc-state" role="alert">
      <h2>
        <span className="rc-broken" aria-hidden="true">
          ✕{' '}
        </span>
        {t.notComputedTitle(id)}
      </h2>
      <p>{t.notComputedHelp}</p>
    </div>
  );
}

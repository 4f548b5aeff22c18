import { useDeferredValue, useState } from 'react';
import { Link } from 'react-router';
import { useSensors } from '../climate/climate-api';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useCrops, useHouses, useSites, useTrayFormats, useVarieties } from '../shared/setup-lists';
import { TakeTable } from '../shared/take-table';
import { AccessLayout } from './access-layout';
import { changesMessages } from './changes-messages';
import { changeOf, type Change, type ChangedList } from './changes-state';
import { useSetupChanges } from './people-api';

/** Who changed the set-up, when and what, in words. */
export function ChangesView() {
  const t = useMessages(changesMessages);
  useScreenTitle(t.title);
  const format = useFormats();
  const nameOf = useNames();
  const [text, setText] = useState('');
  const wanted = useDeferredValue(text.trim());
  const changes = useSetupChanges(wanted);
  const lines = changes.data?.pages.flat() ?? [];
  const said = (what: string) => {
    const change = changeOf(what);
    // A kind that this page does not know yet is shown as the server writes it.
    if (!change) return { what };
    const which = nameOf(change);
    return {
      what: t[change.kind],
      which: change.version === undefined ? which : t.version(which, change.version),
      to: `/setup/${change.list}/${encodeURIComponent(change.code)}`,
    };
  };
  const table = () => ({
    head: [t.at, t.who, t.what, t.which],
    rows: lines.map(({ at, who, what }) => {
      const words = said(what);
      return [at, who, words.what, words.which ?? ''];
    }),
  });
  const body = () => {
    if (changes.isPending) return <Loading />;
    if (!changes.data) return <Failed failure={changes.error} retry={() => void changes.refetch()} />;
    if (lines.length === 0) {
      return wanted === '' ? <Empty title={t.none} /> : <p className="rc-quiet setup-none">{t.noneFits}</p>;
    }
    return (
      <>
        <div className="rc-sheet people-sheet rc-cards-room">
          <table className="rc-table rc-cards" aria-labelledby="changes-list">
            <HeadRow heads={[t.at, t.who, t.what, t.which]} />
            <tbody>
              {lines.map(({ id, at, who, what }) => {
                const words = said(what);
                return (
                  <tr key={id}>
                    <td data-label={t.at} className="audit-tight">
                      {format.dateTime(at)}
                    </td>
                    <th scope="row">{who}</th>
                    <td data-label={t.what}>{words.what}</td>
                    <td data-label={t.which}>
                      {words.to === undefined ? (
                        '–'
                      ) : (
                        <Link className="rc-link" to={words.to}>
                          {words.which}
                        </Link>
                      )}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
        {changes.hasNextPage && (
          <Button disabled={changes.isFetchingNextPage} onClick={() => void changes.fetchNextPage()}>
            {t.older}
          </Button>
        )}
      </>
    );
  };
  return (
    <AccessLayout list="changes">
      <div className="rc-row rc-spread setup-head">
        <h2 id="changes-list">{t.title}</h2>
        <span className="rc-row">
          <input
            type="search"
            className="plain-select"
            aria-label={t.find}
            placeholder={t.find}
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
          {lines.length > 0 && <TakeTable table={table} fileName="rootcast-setup-changes" label={t.title} />}
        </span>
      </div>
      <p className="rc-quiet">{t.help}</p>
      {body()}
    </AccessLayout>
  );
}

/** What a thing of the set-up is called, or its code if it has no name or is not there any more. */
function useNames(): (change: Change) => string {
  const named: Readonly<Record<ChangedList, readonly { readonly code: string; readonly name?: string }[]>> = {
    sites: useSites().data ?? [],
    houses: useHouses().data ?? [],
    'tray-formats': useTrayFormats().data ?? [],
    crops: useCrops().data ?? [],
    varieties: useVarieties().data ?? [],
    sensors: useSensors().data ?? [],
  };
  return ({ list, code }) => named[list].find((each) => each.code === code)?.name ?? code;
}

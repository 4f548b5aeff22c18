import { useQuery } from '@tanstack/react-query';
import { useDeferredValue, useEffect, useEffectEvent, useId, useRef, useState, type KeyboardEvent } from 'react';
import { useNavigate } from 'react-router';
import { answer, api } from '../shared/http';
import { useIdle } from '../shared/idle';
import { useMessages } from '../shared/messages';
import { keys } from '../shared/query-keys';
import { useVarieties } from '../shared/setup-lists';
import { appMessages } from './app-messages';
import { findsFor, type Find } from './search-state';

/** Type-ahead from anywhere: `/` comes here, arrows choose, Enter opens, Escape goes back. */
export function SearchBox() {
  const t = useMessages(appMessages);
  const navigate = useNavigate();
  const listId = useId();
  const input = useRef<HTMLInputElement>(null);
  const before = useRef<Element | null>(null);
  const [typed, setTyped] = useState('');
  const [chosen, setChosen] = useState(0);
  const [open, setOpen] = useState(false);
  /** Enter was pressed before anything to open was there: it opens what comes. */
  const [entered, setEntered] = useState(false);
  const idle = useIdle();
  const varieties = useVarieties(idle || open).data ?? [];
  const wanted = useDeferredValue(typed.trim());
  const batches = useQuery({
    queryKey: keys.batchSearch(wanted),
    queryFn: ({ signal }) =>
      answer(api.GET('/api/batches', { params: { query: { text: wanted, state: 'live' } }, signal })),
    enabled: wanted.length >= 2,
  });
  const finds = findsFor(typed, varieties, wanted.length >= 2 ? (batches.data?.batches ?? []) : []);
  const shown = open && typed.trim() !== '';

  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey || isTyping(event)) return;
      event.preventDefault();
      before.current = document.activeElement;
      input.current?.focus();
      input.current?.select();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);

  const go = (find: Find | undefined) => {
    if (!find) return;
    setOpen(false);
    setTyped('');
    input.current?.blur();
    void navigate(find.path, { state: { found: true } });
  };
  const goOnArrival = useEffectEvent(() => {
    setEntered(false);
    go(finds[chosen]);
  });
  const awaited = entered && finds.length > 0;
  useEffect(() => {
    if (awaited) goOnArrival();
  }, [awaited]);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'ArrowDown') setChosen((i) => Math.min(i + 1, finds.length - 1));
    else if (event.key === 'ArrowUp') setChosen((i) => Math.max(i - 1, 0));
    else if (event.key === 'Enter') setEntered(typed.trim() !== '');
    else if (event.key === 'Escape') {
      setOpen(false);
      setTyped('');
      if (before.current instanceof HTMLElement) before.current.focus();
      else input.current?.blur();
    } else return;
    event.preventDefault();
  };

  return (
    <div className="search rc-no-print" role="search">
      <svg className="search-mark" viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
        <path
          d="M13 13l4.5 4.5M14.5 8.75a5.75 5.75 0 1 1-11.5 0a5.75 5.75 0 0 1 11.5 0Z"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.6"
          strokeLinecap="round"
        />
      </svg>
      <input
        ref={input}
        type="text"
        role="combobox"
        aria-label={t.search}
        aria-expanded={shown}
        aria-controls={listId}
        aria-autocomplete="list"
        aria-activedescendant={shown && finds[chosen] ? `${listId}-${chosen}` : undefined}
        aria-keyshortcuts="/"
        placeholder={matchMedia('(pointer: coarse)').matches ? t.search : `${t.search} (${t.searchKey})`}
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setEntered(false);
          setChosen(0);
          setOpen(true);
        }}
        onFocus={() => setOpen(true)}
        onBlur={() => {
          setOpen(false);
          setEntered(false);
        }}
        onKeyDown={onKeyDown}
      />
      <ul id={listId} role="listbox" aria-label={t.search} hidden={!shown}>
        {finds.map((find, i) => (
          <li
            key={find.key}
            id={`${listId}-${i}`}
            role="option"
            aria-selected={i === chosen}
            // The press would take the focus and close the list before the click arrives.
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => go(find)}
          >
            <span className="search-name">{find.name}</span>
            <span className="rc-quiet">{find.detail}</span>
            <span className="search-kind">{t[find.kind]}</span>
          </li>
        ))}
        {finds.length === 0 && !batches.isFetching && (
          <li role="option" aria-selected="false" aria-disabled="true" className="rc-quiet">
            {t.noMatch}
          </li>
        )}
      </ul>
    </div>
  );
}

function isTyping(event: globalThis.KeyboardEvent): boolean {
  const target = event.composedPath()[0];
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName))
  );
}

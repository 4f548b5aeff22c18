import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { Link, useNavigate, useSearchParams } from 'react-router';
import { Button } from '../shared/button';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { usePreferences } from '../shared/preferences';
import { Problem } from '../shared/problem';
import { groups } from '../shared/query-keys';
import { needsLevels, needsLightSource } from '../shared/reading-units';
import { Empty, ProblemNote } from '../shared/screen-states';
import { sharedMessages } from '../shared/shared-messages';
import { useProblemWords } from '../shared/use-problem-words';
import { CropProfileFields } from './crop-profile-fields';
import { isFolded, startedFrom } from './crop-form-state';
import { CropStart } from './crop-start';
import { changeItem, createItem } from './setup-api';
import { SetupField } from './setup-field';
import { LIST_WORDS, setupMessages } from './setup-messages';
import {
  bodyOf,
  draftOf,
  FIELDS,
  newItem,
  withTyped,
  type Draft,
  type Field,
  type FieldWrong,
  type Item,
  type ListName,
} from './setup-state';

interface SetupFormProps {
  readonly list: ListName;
  /** Undefined for a new one. */
  readonly code: string | undefined;
  readonly items: Readonly<Record<ListName, readonly Item[]>>;
}

const NOTHING_WRONG: ReadonlyMap<string, FieldWrong> = new Map();

/** Creates or changes one item. Keeps what was typed, marks what is wrong beside it. */
export function SetupForm({ list, code, items }: SetupFormProps) {
  const t = useMessages(setupMessages);
  const [given] = useSearchParams();
  const found = code === undefined ? newItem(list, given) : items[list].find((item) => item['code'] === code);
  // The item as it was when the form was opened: a change by someone else must not overwrite what is being typed.
  const [item] = useState(found);
  if (!item) {
    return (
      <Empty title={t.gone(code ?? '')}>
        <Link className="rc-link" to={`/setup/${list}`}>
          {t[LIST_WORDS[list].title]}
        </Link>
      </Empty>
    );
  }
  return <Fields list={list} code={code} item={item} items={items} />;
}

function Fields({
  list,
  code,
  item: opened,
  items,
}: Omit<SetupFormProps, 'code'> & { code: string | undefined; item: Item }) {
  const t = useMessages(setupMessages);
  const refusals = useProblemWords();
  const shared = useMessages(sharedMessages);
  const navigate = useNavigate();
  const queries = useQueryClient();
  const preferences = usePreferences();
  // Texts typed in °F stay °F while this form is open, whatever is switched elsewhere.
  const [units] = useState({ temperature: preferences.temperature, length: preferences.length });
  const [item, setItem] = useState(opened);
  const [draft, setDraft] = useState<Draft>(() => draftOf(list, item, units));
  const [wrong, setWrong] = useState(NOTHING_WRONG);
  const [failure, setFailure] = useState<unknown>();
  const [sending, setSending] = useState(false);
  const sent = useRef<{ body: string; key: string } | undefined>(undefined);

  const put = (path: string, text: string) => {
    setDraft((before) => withTyped(list, before, path, text));
    if (wrong.has(path)) setWrong(new Map([...wrong].filter(([each]) => each !== path)));
  };
  const faultOf = (path: string): string | undefined => {
    const mine = wrong.get(path);
    const said = { code: t.wrongCode, whole: t.wrongWhole, unit: t.wrongUnit };
    if (mine) return { needed: shared.needed, number: shared.notANumber, ...said }[mine];
    return refusals.faultOf(failure, path);
  };
  const save = async () => {
    const made = bodyOf(list, draft, item, units);
    if ('wrong' in made) {
      setWrong(made.wrong);
      return;
    }
    const body = JSON.stringify(made.body);
    if (sent.current?.body !== body) sent.current = { body, key: newKey() };
    setSending(true);
    setFailure(undefined);
    try {
      if (code === undefined) await createItem(list, made.body, sent.current.key);
      else await changeItem(list, code, made.body);
      // What a house's sensors said is asked for by house: a new sensor is not in the answer that is kept.
      void queries.invalidateQueries({ queryKey: groups.climate() });
      await queries.invalidateQueries({ queryKey: groups.setup() });
      notice({ text: t.savedAs(String(made.body['code'])) });
      void navigate(`/setup/${list}`);
    } catch (refused) {
      if (refused instanceof Problem) sent.current = undefined;
      setFailure(refused);
    } finally {
      setSending(false);
    }
  };
  const besideFields =
    failure instanceof Problem &&
    failure.fieldFaults.length > 0 &&
    failure.fieldFaults.every(({ field }) => FIELDS[list].some(({ path }) => failure.names(field, path)));
  const plain = FIELDS[list].filter(
    ({ path }) =>
      !path.startsWith('profile.') &&
      (path !== 'lightSource' || needsLightSource(draft['unit'])) &&
      (!path.startsWith('levels.') || needsLevels(draft['quantity'], draft['unit'])),
  );
  const drawn = (field: Field) => (
    <SetupField
      key={field.path}
      list={list}
      field={field}
      draft={draft}
      fault={faultOf(field.path)}
      units={units}
      items={items}
      fixed={field.kind === 'code' && code !== undefined}
      put={(text) => put(field.path, text)}
    />
  );
  return (
    <form
      className="setup-form"
      noValidate
      aria-labelledby="setup-form"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <h2 id="setup-form">
        {code === undefined ? t[LIST_WORDS[list].create] : t.change(String(opened['name'] ?? code))}
      </h2>
      {list === 'crops' && code === undefined && (
        <CropStart
          crops={items.crops}
          start={(start, seeded) => {
            const begun = startedFrom(start, seeded, draft);
            setItem(begun);
            setDraft(draftOf(list, begun, units));
            setWrong(NOTHING_WRONG);
            setFailure(undefined);
          }}
        />
      )}
      <div className="setup-fields">{plain.map(drawn)}</div>
      {list === 'crops' && (
        <CropProfileFields
          code={code}
          draft={draft}
          faultOf={faultOf}
          units={units}
          drawn={drawn}
          faulty={FIELDS.crops.some(({ path }) => isFolded(path) && faultOf(path) !== undefined)}
          put={put}
        />
      )}
      {wrong.size > 0 && (
        <div className="rc-problem" role="alert">
          <p>✕ {t.checkFields}</p>
        </div>
      )}
      {/* What is said beside the fields is not said again in the server's words. */}
      {besideFields && (
        <div className="rc-problem" role="alert">
          <p>✕ {t.checkFields}</p>
        </div>
      )}
      <ProblemNote failure={besideFields ? undefined : failure}>
        {failure instanceof Problem && failure.status === 409 && draft['code'] && (
          <Link className="rc-link" to={`/setup/${list}/${encodeURIComponent(draft['code'].trim())}`}>
            {t.takenLook}
          </Link>
        )}
      </ProblemNote>
      <div className="rc-row setup-actions">
        <Button theme="primary" disabled={sending} onClick={() => void save()}>
          {shared.save}
        </Button>
        <Button theme="tertiary" onClick={() => void navigate(`/setup/${list}`)}>
          {shared.cancel}
        </Button>
        <button type="submit" hidden />
      </div>
    </form>
  );
}

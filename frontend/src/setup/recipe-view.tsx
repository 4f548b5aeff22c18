import { useQueryClient } from '@tanstack/react-query';
import { TextArea } from '@vaadin/react-components/TextArea.js';
import { useEffect, useState } from 'react';
import { Link, useBlocker, useNavigate, useParams } from 'react-router';
import { Button } from '../shared/button';
import type { CropRecipe } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { NumberInput } from '../shared/number-input';
import { usePreferences } from '../shared/preferences';
import { groups } from '../shared/query-keys';
import { Empty, Failed, Loading, ProblemNote } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useCrops } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { temperatureUnitName } from '../shared/units';
import { useProblemWords } from '../shared/use-problem-words';
import { saveRecipe, useRecipe, useRecipeVersions } from './recipe-api';
import { recipeMessages } from './recipe-messages';
import { draftOf, MIST_NEEDS, recipeOf, WHOLE, type RecipeDraft, type RecipeFault } from './recipe-state';
import { RecipeTable } from './recipe-table';
import { RecipeVersions } from './recipe-versions';
import './recipe.css';

/** What a crop asks of its house in each phase, to be changed in versions. */
export function RecipeView() {
  const t = useMessages(recipeMessages);
  const { code = '', version } = useParams();
  const crops = useCrops();
  const crop = crops.data?.find((each) => each.code === code);
  useScreenTitle(t.title(crop?.name ?? code));
  const newest = useRecipe(code);
  const versions = useRecipeVersions(code);
  if (crops.isPending || newest.isPending || versions.isPending) return <Loading />;
  const toCrops = (
    <Link className="rc-link" to="/setup/crops">
      {t.toCrops}
    </Link>
  );
  if (crops.data && !crop) return <Empty title={t.unknownCrop(code)}>{toCrops}</Empty>;
  if (!newest.data || !versions.data) {
    return (
      <Failed
        failure={newest.error ?? versions.error}
        retry={() => void Promise.all([newest.refetch(), versions.refetch()])}
      />
    );
  }
  const looked = version === undefined ? newest.data : versions.data.find((each) => String(each.version) === version);
  if (!looked) return <Empty title={t.unknownVersion(version ?? '')}>{toCrops}</Empty>;
  return (
    <div className="rc-screen recipe-screen">
      <div className="rc-row rc-spread rc-no-print">
        <span className="rc-row">
          <Link className="rc-link" to={`/setup/crops/${encodeURIComponent(code)}`}>
            {t.toCrop}
          </Link>
          {toCrops}
        </span>
        <Button theme="tertiary" onClick={() => print()}>
          {t.print}
        </Button>
      </div>
      <RecipeForm key={looked.version} crop={code} looked={looked} newest={newest.data} />
      {versions.data.length > 0 && <RecipeVersions crop={code} versions={versions.data} looked={looked} />}
    </div>
  );
}

interface RecipeFormProps {
  readonly crop: string;
  readonly looked: CropRecipe;
  readonly newest: CropRecipe;
}

function RecipeForm({ crop, looked, newest }: RecipeFormProps) {
  const t = useMessages(recipeMessages);
  const refusals = useProblemWords();
  const shared = useMessages(sharedMessages);
  const format = useFormats();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const { temperature } = usePreferences();
  // Texts typed in °F stay °F while this form is open, whatever is switched elsewhere.
  const [unit] = useState(temperature);
  const [began] = useState<RecipeDraft>(() => draftOf(looked, unit));
  const [draft, setDraft] = useState(began);
  const [wrong, setWrong] = useState<ReadonlyMap<string, RecipeFault>>(new Map());
  const [failure, setFailure] = useState<unknown>();
  const [sending, setSending] = useState(false);
  const touched = Object.keys(draft).some((path) => draft[path] !== began[path]);
  const leaving = useUnsaved(touched && !sending);
  const put = (path: string, text: string) => {
    setDraft((before) => ({ ...before, [path]: text }));
    setFailure(undefined);
    if (wrong.has(path)) setWrong(new Map([...wrong].filter(([each]) => each !== path)));
  };
  const faultOf = (path: string): string | undefined => {
    const mine = wrong.get(path);
    if (mine) return { needed: shared.needed, number: shared.notANumber, turned: t.turned }[mine];
    return refusals.faultOf(failure, path);
  };
  const save = async () => {
    const made = recipeOf(draft, looked, unit);
    if ('wrong' in made) {
      setWrong(made.wrong);
      return;
    }
    setSending(true);
    setFailure(undefined);
    try {
      const saved = await saveRecipe(crop, made.recipe);
      await queries.invalidateQueries({ queryKey: groups.recipe(crop) });
      notice({ text: saved.version === newest.version ? t.nothingChanged : t.saved(saved.version) });
      void navigate(`/setup/crops/${encodeURIComponent(crop)}/recipe`);
    } catch (refused) {
      setFailure(refused);
      setSending(false);
    }
  };
  const when = looked.recordedAt === null ? '' : format.dateTime(looked.recordedAt);
  const state =
    looked.version === 0
      ? t.usual
      : looked.version === newest.version
        ? t.inForce(looked.version, when)
        : t.earlier(looked.version, when);
  const units = { lowLightMol: t.lowLightMolUnit, lowLightMediumLeastC: temperatureUnitName(unit) };
  return (
    <form
      noValidate
      aria-label={t.phasesTitle}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <p>{state}</p>
      <RecipeTable recipe={looked} draft={draft} began={began} unit={unit} faultOf={faultOf} put={put} />
      <section aria-label={t.wholeTitle}>
        <h2>{t.wholeTitle}</h2>
        <div className="recipe-whole">
          <label className="recipe-need">
            <span>{t.mistNeed}</span>
            <select
              className="rc-select"
              value={draft['mistNeed'] ?? ''}
              onChange={(event) => put('mistNeed', event.target.value)}
            >
              {MIST_NEEDS.map((need) => (
                <option key={need} value={need}>
                  {t[need]}
                </option>
              ))}
            </select>
          </label>
          {WHOLE.map(({ name }) => (
            <NumberInput
              key={name}
              label={t[name]}
              value={draft[name] ?? ''}
              fault={faultOf(name)}
              required
              {...(name in units ? { unit: units[name as keyof typeof units] } : {})}
              onValue={(text) => put(name, text)}
            />
          ))}
        </div>
        <TextArea
          className="recipe-note"
          label={t.note}
          value={draft['note'] ?? ''}
          maxlength={2000}
          onValueChanged={({ detail }) => {
            if (detail.value !== (draft['note'] ?? '')) put('note', detail.value);
          }}
        />
        <p className="rc-quiet">{t.caution}</p>
      </section>
      {leaving && (
        <div className="rc-problem" role="alert">
          <p>▲ {t.unsaved}</p>
          <span className="rc-row">
            <Button onClick={leaving.stay}>{t.stay}</Button>
            <Button theme="tertiary" onClick={leaving.leave}>
              {t.leave}
            </Button>
          </span>
        </div>
      )}
      <ProblemNote failure={failure} />
      <div className="rc-row rc-no-print">
        <Button
          theme="primary"
          disabled={sending || (!touched && looked.version === newest.version)}
          onClick={() => void save()}
        >
          {t.save}
        </Button>
        <button type="submit" hidden />
      </div>
    </form>
  );
}

/** Asks before what was typed is left behind; undefined while nobody wants to leave. */
function useUnsaved(unsaved: boolean): { readonly stay: () => void; readonly leave: () => void } | undefined {
  const blocker = useBlocker(unsaved);
  useEffect(() => {
    if (!unsaved) return undefined;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener('beforeunload', ask);
    return () => removeEventListener('beforeunload', ask);
  }, [unsaved]);
  return blocker.state === 'blocked' ? { stay: () => blocker.reset(), leave: () => blocker.proceed() } : undefined;
}

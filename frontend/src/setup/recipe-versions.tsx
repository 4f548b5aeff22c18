import { Link } from 'react-router';
import { climateMessages } from '../climate/climate-messages';
import type { CropRecipe } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { HeadRow } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { unitNameAs } from '../shared/units';
import { recipeMessages } from './recipe-messages';
import { BANDS, changesBetween, figureShown, WHOLE, type RecipeChange } from './recipe-state';

interface RecipeVersionsProps {
  readonly crop: string;
  /** Newest first. */
  readonly versions: readonly CropRecipe[];
  readonly looked: CropRecipe;
}

/** Everything that was saved, with what each version changed of the one before. */
export function RecipeVersions({ crop, versions, looked }: RecipeVersionsProps) {
  const t = useMessages(recipeMessages);
  const format = useFormats();
  const say = useChangeWords();
  return (
    <section aria-label={t.versions}>
      <h2>{t.versions}</h2>
      <div className="recipe-scroll rc-sheet" tabIndex={0} role="group" aria-label={t.versions}>
        <table className="rc-table">
          <HeadRow heads={[t.version, t.when, t.changes]} />
          <tbody>
            {versions.map((each, i) => {
              const before = versions[i + 1];
              const changes = before ? changesBetween(before, each) : [];
              const current = each.version === looked.version ? 'page' : undefined;
              return (
                <tr key={each.version} aria-current={current && 'true'}>
                  <th scope="row">
                    <Link
                      className="rc-link"
                      to={`/setup/crops/${encodeURIComponent(crop)}/recipe/${each.version}`}
                      aria-current={current}
                    >
                      {t.version} {each.version}
                    </Link>
                  </th>
                  <td>{each.recordedAt && format.dateTime(each.recordedAt)}</td>
                  <td>
                    {changes.length === 0 ? (
                      <span className="rc-quiet">{before ? t.noChange : t.first}</span>
                    ) : (
                      <ul className="recipe-changes">
                        {changes.map((change) => (
                          <li key={`${change.phase} ${change.what}`}>{say(change)}</li>
                        ))}
                      </ul>
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function useChangeWords(): (change: RecipeChange) => string {
  const t = useMessages(recipeMessages);
  const climate: Readonly<Record<string, unknown>> = useMessages(climateMessages);
  const own: Readonly<Record<string, unknown>> = t;
  const format = useFormats();
  const { temperature } = usePreferences();
  const figure = [...BANDS, ...WHOLE];
  return ({ phase, what, before, after }) => {
    const measure = figure.find(({ name }) => name === what)?.measure ?? 'other';
    const number = (value: number | null) => {
      if (value === null) return t.open;
      const shown = figureShown(measure, value, temperature);
      return format.decimal(shown, String(shown).split('.')[1]?.length ?? 0);
    };
    const value = (said: RecipeChange['before']): string => {
      if (said === null) return t.open;
      if (typeof said === 'string') return String(own[said] ?? climate[said] ?? said);
      if (typeof said === 'number') return number(said);
      return `${number(said.least)} – ${number(said.most)}`;
    };
    const unitName = unitNameAs(measure, temperature);
    const unit = unitName ? ` ${unitName}` : '';
    const where = phase === undefined ? '' : `${String(climate[phase])}, `;
    return `${where}${String(own[what])}: ${t.from(value(before), value(after))}${unit}`;
  };
}

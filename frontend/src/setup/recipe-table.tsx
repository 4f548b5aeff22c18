import { useId } from 'react';
import { climateMessages } from '../climate/climate-messages';
import type { CropRecipe } from '../shared/climate-types';
import { useMessages } from '../shared/messages';
import { unitNameAs, type TemperatureUnit } from '../shared/units';
import { recipeMessages } from './recipe-messages';
import { bandPath, BANDS, MIST, mistPath, type RecipeDraft } from './recipe-state';

interface RecipeTableProps {
  readonly recipe: CropRecipe;
  readonly draft: RecipeDraft;
  readonly began: RecipeDraft;
  readonly unit: TemperatureUnit;
  readonly faultOf: (path: string) => string | undefined;
  readonly put: (path: string, text: string) => void;
}

const ENDS = ['least', 'most'] as const;

/** What a crop asks for, a line per quantity and a column per phase; on a phone a block per quantity. */
export function RecipeTable({ recipe, draft, began, unit, faultOf, put }: RecipeTableProps) {
  const t = useMessages(recipeMessages);
  const climate = useMessages(climateMessages);
  const title = useId();
  const fault = (path: string) =>
    faultOf(path) && (
      <span id={`fault-${path}`} className="rc-broken rc-small recipe-fault">
        ✕ {faultOf(path)}
      </span>
    );
  const given = (path: string, label: string) => ({
    value: draft[path] ?? '',
    'aria-label': label,
    'aria-invalid': faultOf(path) !== undefined,
    'aria-describedby': faultOf(path) ? `fault-${path}` : undefined,
  });
  const changed = (paths: readonly string[]) =>
    paths.some((path) => draft[path] !== began[path]) && <span className="rc-small recipe-changed">• {t.changed}</span>;
  return (
    <section aria-labelledby={title}>
      <h2 id={title}>{t.phasesTitle}</h2>
      <p className="rc-quiet">{t.phasesHelp}</p>
      <div className="recipe-scroll rc-sheet" tabIndex={0} role="group" aria-labelledby={title}>
        <table className="rc-table recipe">
          <thead>
            <tr>
              <th scope="col">{t.quantity}</th>
              {recipe.phases.map(({ phase }, i) => (
                <th key={phase} scope="col">
                  {climate[phase]}
                  {fault(`phases.${i}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {BANDS.map(({ name, measure, unit: plain }) => {
              const unitName = unitNameAs(measure, unit) ?? plain;
              return (
                <tr key={name}>
                  <th scope="row">
                    {t[name]} <small>{unitName}</small>
                  </th>
                  {recipe.phases.map(({ phase }, i) => {
                    const paths = ENDS.map((end) => bandPath(i, name, end));
                    return (
                      <td key={phase} data-label={climate[phase]}>
                        <span className="recipe-band">
                          {ENDS.map((end, which) => (
                            <input
                              key={end}
                              {...given(
                                paths[which] as string,
                                `${climate[phase]}, ${t[name]} (${unitName}), ${t[end]}`,
                              )}
                              type="text"
                              inputMode="decimal"
                              autoComplete="off"
                              onChange={(event) => put(paths[which] as string, event.target.value)}
                            />
                          ))}
                        </span>
                        {paths.map(fault)}
                        {changed(paths)}
                      </td>
                    );
                  })}
                </tr>
              );
            })}
            <tr>
              <th scope="row">{t.mist}</th>
              {recipe.phases.map(({ phase }, i) => (
                <td key={phase} data-label={climate[phase]}>
                  <select
                    className="rc-select"
                    {...given(mistPath(i), `${climate[phase]}, ${t.mist}`)}
                    onChange={(event) => put(mistPath(i), event.target.value)}
                  >
                    {MIST.map((regime) => (
                      <option key={regime} value={regime}>
                        {climate[regime]}
                      </option>
                    ))}
                  </select>
                  {changed([mistPath(i)])}
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </div>
    </section>
  );
}

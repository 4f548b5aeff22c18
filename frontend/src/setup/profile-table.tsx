import { Fragment, useId } from 'react';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { sharedMessages } from '../shared/shared-messages';
import { temperatureUnitName, type TemperatureUnit } from '../shared/units';
import { setupMessages } from './setup-messages';
import { sourceSaid } from './source-words';
import { STAGE_FIELDS, STAGES, type Draft } from './setup-state';

interface ProfileTableProps {
  readonly draft: Draft;
  readonly faultOf: (path: string) => string | undefined;
  readonly units: { readonly temperature: TemperatureUnit };
  readonly put: (path: string, text: string) => void;
}

/**
 * A source is sentences, not a figure: it has a line of its own under the figures it speaks of. The days stand before
 * the fold.
 */
const IN_LINE = STAGE_FIELDS.filter(
  (field): field is Exclude<(typeof STAGE_FIELDS)[number], { readonly name: 'source' | 'daysAtReference' }> =>
    field.name !== 'source' && field.name !== 'daysAtReference',
);

/** The three stages of a crop, one line each, with where each number comes from below it. */
export function ProfileTable({ draft, faultOf, units, put }: ProfileTableProps) {
  const t = useMessages(setupMessages);
  const shared = useMessages(sharedMessages);
  const { language } = usePreferences();
  const title = useId();
  const degrees = temperatureUnitName(units.temperature);
  const head = (name: (typeof IN_LINE)[number]['name'], kind: string) =>
    t[name] + (kind === 'limit' ? ` ${degrees}` : kind === 'percent' ? ' %' : '');
  const common = (path: string, label: string) => ({
    'aria-label': label,
    'aria-invalid': faultOf(path) !== undefined,
    'aria-describedby': faultOf(path) ? `fault-${path}` : undefined,
    value: draft[path] ?? '',
  });
  const fault = (path: string) =>
    faultOf(path) && (
      <span id={`fault-${path}`} className="rc-broken rc-small profile-fault">
        ✕ {faultOf(path)}
      </span>
    );
  return (
    <section aria-labelledby={title}>
      <h3 id={title}>{t.stages}</h3>
      <p className="rc-quiet">{t.stagesHelp}</p>
      <div className="setup-scroll">
        <table className="rc-table profile">
          <thead>
            <tr>
              <th scope="col">{t.stage}</th>
              {IN_LINE.map(({ name, kind }) => (
                <th key={name} scope="col" title={name === 'survivalWeight' ? t.survivalWeightHint : undefined}>
                  {head(name, kind)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {STAGES.map((stage, i) => {
              const source = `profile.stages.${i}.source`;
              return (
                <Fragment key={stage}>
                  <tr className="profile-figures">
                    <th scope="row">{shared[`stage${stage}`]}</th>
                    {IN_LINE.map(({ name, kind }) => {
                      const path = `profile.stages.${i}.${name}`;
                      const given = common(path, `${shared[`stage${stage}`]} ${head(name, kind)}`);
                      return (
                        <td key={name} className={`profile-${name}`} data-label={head(name, kind)}>
                          {name === 'form' ? (
                            <select {...given} onChange={(event) => put(path, event.target.value)}>
                              <option value="BETA">{t.formBETA}</option>
                              <option value="LINEAR">{t.formLINEAR}</option>
                            </select>
                          ) : (
                            <input
                              {...given}
                              type="text"
                              inputMode="decimal"
                              autoComplete="off"
                              onChange={(event) => put(path, event.target.value)}
                            />
                          )}
                          {fault(path)}
                        </td>
                      );
                    })}
                  </tr>
                  <tr className="profile-source">
                    <th scope="row" className="rc-small">
                      {t.source}
                    </th>
                    <td colSpan={IN_LINE.length}>
                      <textarea
                        {...common(source, `${shared[`stage${stage}`]} ${t.source}`)}
                        value={sourceSaid(draft[source] ?? '', language)}
                        rows={2}
                        onChange={(event) => put(source, event.target.value)}
                      />
                      {fault(source)}
                    </td>
                  </tr>
                </Fragment>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}

import { useId } from 'react';
import { useMessages } from '../shared/messages';
import { sharedMessages } from '../shared/shared-messages';
import { temperatureUnitName, type TemperatureUnit } from '../shared/units';
import { setupMessages } from './setup-messages';
import { STAGE_FIELDS, STAGES, type Draft } from './setup-state';

interface ProfileTableProps {
  readonly draft: Draft;
  readonly faultOf: (path: string) => string | undefined;
  readonly units: { readonly temperature: TemperatureUnit };
  readonly put: (path: string, text: string) => void;
}

/** The three stages of a crop, one line each, with where each number comes from. */
export function ProfileTable({ draft, faultOf, units, put }: ProfileTableProps) {
  const t = useMessages(setupMessages);
  const shared = useMessages(sharedMessages);
  const title = useId();
  const degrees = temperatureUnitName(units.temperature);
  const head = (name: (typeof STAGE_FIELDS)[number]['name'], kind: string) =>
    t[name] + (kind === 'temperature' ? ` ${degrees}` : kind === 'percent' ? ' %' : '');
  return (
    <section aria-labelledby={title}>
      <h3 id={title}>{t.stages}</h3>
      <p className="rc-quiet">{t.stagesHelp}</p>
      <div className="setup-scroll">
        <table className="rc-table profile">
          <thead>
            <tr>
              <th scope="col">{t.stage}</th>
              {STAGE_FIELDS.map(({ name, kind }) => (
                <th key={name} scope="col" title={name === 'survivalWeight' ? t.survivalWeightHint : undefined}>
                  {head(name, kind)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {STAGES.map((stage, i) => (
              <tr key={stage}>
                <th scope="row">
                  {stage}
                  <br />
                  <span className="rc-quiet rc-small">{shared[`stage${stage}`]}</span>
                </th>
                {STAGE_FIELDS.map(({ name, kind }) => {
                  const path = `profile.stages.${i}.${name}`;
                  const label = `${stage} ${head(name, kind)}`;
                  const fault = faultOf(path);
                  const common = {
                    'aria-label': label,
                    'aria-invalid': fault !== undefined,
                    'aria-describedby': fault ? `fault-${path}` : undefined,
                    value: draft[path] ?? '',
                  };
                  return (
                    <td key={name} className={`profile-${name}`} data-label={head(name, kind)}>
                      {name === 'form' ? (
                        <select {...common} onChange={(event) => put(path, event.target.value)}>
                          <option value="BETA">{t.formBETA}</option>
                          <option value="LINEAR">{t.formLINEAR}</option>
                        </select>
                      ) : (
                        <input
                          {...common}
                          type="text"
                          inputMode={kind === 'text' ? 'text' : 'decimal'}
                          autoComplete="off"
                          onChange={(event) => put(path, event.target.value)}
                        />
                      )}
                      {fault && (
                        <span id={`fault-${path}`} className="rc-broken rc-small profile-fault">
                          ✕ {fault}
                        </span>
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

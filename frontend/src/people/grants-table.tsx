import { useMessages } from '../shared/messages';
import { useSites } from '../shared/setup-lists';
import { accountMessages } from './account-messages';
import { cellOf, isPerSite, toggled, unknownSites } from './grants-state';
import { peopleMessages } from './people-messages';
import type { Grant, Role } from './people-types';

interface GrantsTableProps {
  readonly roles: readonly Role[];
  readonly grants: readonly Grant[];
  readonly change: (grants: readonly Grant[]) => void;
  readonly fault?: string | undefined;
}

/** Roles by site: a row for all sites and one for each, a column per role. */
export function GrantsTable({ roles, grants, change, fault }: GrantsTableProps) {
  const t = useMessages(peopleMessages);
  const words = useMessages(accountMessages);
  const sites = useSites().data ?? [];
  const known = sites.map(({ code }) => code);
  const rows: readonly { code: string | null; name: string }[] = [
    { code: null, name: t.everySite },
    ...sites,
    ...unknownSites(grants, known).map((code) => ({ code, name: code })),
  ];
  return (
    <fieldset
      className="grants"
      aria-invalid={fault !== undefined}
      aria-describedby={fault ? 'grants-fault' : undefined}
    >
      <legend>{t.roles}</legend>
      <p className="rc-quiet">{t.rolesHelp}</p>
      <div className="grants-scroll">
        <table>
          <thead>
            <tr>
              <th scope="col">{t.site}</th>
              {roles.map((role) => (
                <th key={role} scope="col">
                  {words[`role${role}`]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ code, name }) => (
              <tr key={code ?? '~all'} className={code === null ? 'grants-all' : undefined}>
                <th scope="row">{name}</th>
                {roles.map((role) => (
                  <td key={role}>
                    {(code === null || isPerSite(role)) && (
                      <GrantBox
                        {...cellOf(grants, role, code)}
                        label={`${words[`role${role}`]}, ${name}`}
                        coveredWords={t.throughAll}
                        toggle={() => change(toggled(grants, role, code))}
                      />
                    )}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <dl className="grants-about">
        {roles.map((role) => (
          <div key={role}>
            <dt>{words[`role${role}`]}</dt>
            <dd>{t[`about${role}`]}</dd>
          </div>
        ))}
      </dl>
      {fault && (
        <p id="grants-fault" className="entry-fault">
          <span aria-hidden="true">✕ </span>
          {fault}
        </p>
      )}
    </fieldset>
  );
}

interface GrantBoxProps {
  readonly given: boolean;
  readonly covered: boolean;
  readonly label: string;
  readonly coveredWords: string;
  readonly toggle: () => void;
}

function GrantBox({ given, covered, label, coveredWords, toggle }: GrantBoxProps) {
  return (
    <label className="grant-box">
      <input type="checkbox" checked={given} disabled={covered} onChange={toggle} />
      <span className="rc-hidden">
        {label}
        {covered && `, ${coveredWords}`}
      </span>
    </label>
  );
}

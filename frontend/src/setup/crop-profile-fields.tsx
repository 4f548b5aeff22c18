import { useState, type ReactNode } from 'react';
import { Link } from 'react-router';
import { useMessages } from '../shared/messages';
import { NumberInput } from '../shared/number-input';
import { temperatureUnitName } from '../shared/units';
import { FIRST_FIGURES } from './crop-form-state';
import { profilesMessages } from './profiles-messages';
import { ProfileTable } from './profile-table';
import { recipeMessages } from './recipe-messages';
import { setupMessages } from './setup-messages';
import { FIELDS, STAGES, type Draft, type Field, type Units } from './setup-state';

interface CropProfileFieldsProps {
  /** Undefined for a new one. */
  readonly code: string | undefined;
  readonly draft: Draft;
  readonly faultOf: (path: string) => string | undefined;
  readonly units: Units;
  readonly drawn: (field: Field) => ReactNode;
  /** Whether something that is folded away is wrong. */
  readonly faulty: boolean;
  readonly put: (path: string, text: string) => void;
}

const FOLDED_FIELDS = FIELDS.crops.filter(({ path }) => /^profile\.\w+$/.test(path));

/** A crop's profile: the three figures that a grower knows, and the rest of the model folded away until it is wanted. */
export function CropProfileFields({ code, draft, faultOf, units, drawn, faulty, put }: CropProfileFieldsProps) {
  const t = useMessages(setupMessages);
  const profileWords = useMessages(profilesMessages);
  const recipeWords = useMessages(recipeMessages);
  const [opened, setOpened] = useState(false);
  const reference = draft['profile.stages.0.referenceC'];
  const help = reference ? t.firstFiguresAt(`${reference} ${temperatureUnitName(units.temperature)}`) : t.firstFigures;
  return (
    <>
      {code !== undefined && (
        <p>
          <Link className="rc-link" to={`/setup/crops/${encodeURIComponent(code)}/profiles`}>
            {profileWords.manage}
          </Link>{' '}
          <Link className="rc-link" to={`/setup/crops/${encodeURIComponent(code)}/recipe`}>
            {recipeWords.manage}
          </Link>
        </p>
      )}
      <section aria-labelledby="first-figures">
        <h3 id="first-figures">{t.inSum}</h3>
        <p className="rc-quiet">{help}</p>
        <div className="setup-fields">
          {STAGES.map((stage, i) => {
            const path = FIRST_FIGURES[i] ?? '';
            return (
              <NumberInput
                key={stage}
                label={t[`daysOf${stage}`]}
                unit={t.days}
                value={draft[path] ?? ''}
                fault={faultOf(path)}
                required
                onValue={(text) => put(path, text)}
              />
            );
          })}
        </div>
      </section>
      <details
        className="profile-rest"
        open={opened || faulty}
        onToggle={(event) => setOpened(event.currentTarget.open)}
      >
        <summary>{t.profileRest}</summary>
        <ProfileTable draft={draft} faultOf={faultOf} units={units} put={put} />
        <div className="setup-fields">{FOLDED_FIELDS.map(drawn)}</div>
      </details>
    </>
  );
}

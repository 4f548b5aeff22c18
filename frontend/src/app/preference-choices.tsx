import { useMessages } from '../shared/messages';
import { prefer, usePreferences } from '../shared/preferences';
import { appMessages } from './app-messages';

/** Language, units and look: behind a button, and on a phone in the open in the side menu. */
export function PreferenceChoices() {
  const t = useMessages(appMessages);
  const chosen = usePreferences();
  return (
    <div className="preferences">
      <Choice
        label={t.language}
        value={chosen.language}
        options={[
          ['en', 'English'],
          ['es', 'Español'],
        ]}
        choose={(language) => prefer({ language })}
      />
      <Choice
        label={t.temperature}
        value={chosen.temperature}
        options={[
          ['C', '°C'],
          ['F', '°F'],
        ]}
        choose={(temperature) => prefer({ temperature })}
      />
      <Choice
        label={t.length}
        value={chosen.length}
        options={[
          ['mm', t.millimetres],
          ['in', t.inches],
        ]}
        choose={(length) => prefer({ length })}
      />
      <Choice
        label={t.look}
        value={chosen.theme}
        options={[
          ['system', t.lookSystem],
          ['light', t.lookLight],
          ['dark', t.lookDark],
        ]}
        choose={(theme) => prefer({ theme })}
      />
    </div>
  );
}

interface ChoiceProps<V extends string> {
  readonly label: string;
  readonly value: V;
  readonly options: readonly (readonly [V, string])[];
  readonly choose: (value: V) => void;
}

function Choice<V extends string>({ label, value, options, choose }: ChoiceProps<V>) {
  return (
    <fieldset>
      <legend>{label}</legend>
      {options.map(([each, name]) => (
        <label key={each}>
          <input type="radio" name={label} checked={each === value} onChange={() => choose(each)} />
          {name}
        </label>
      ))}
    </fieldset>
  );
}

import { useState } from 'react';
import { later } from '../shared/later';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { appMessages } from './app-messages';

const PreferencesMenu = later(async () => (await import('./preferences-menu')).PreferencesMenu);

/** The reader's language, units and look, behind a button where there is room for one. */
export function PreferencesButton() {
  const t = useMessages(appMessages);
  const chosen = usePreferences();
  const [opened, setOpened] = useState<boolean>();
  return (
    <>
      <button
        id="preferences"
        type="button"
        className="icon-button rc-no-print"
        aria-label={t.preferences}
        title={t.preferences}
        aria-haspopup="dialog"
        aria-expanded={opened === true}
        onClick={() => setOpened(true)}
      >
        {chosen.language.toUpperCase()} · °{chosen.temperature}
      </button>
      {opened !== undefined && <PreferencesMenu opened={opened} setOpened={setOpened} />}
    </>
  );
}

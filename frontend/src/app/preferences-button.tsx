import { later } from '../shared/later';
import { MenuButton } from '../shared/menu-button';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { appMessages } from './app-messages';

const PreferencesMenu = later(async () => (await import('./preferences-menu')).PreferencesMenu);

/** The reader's language, units and look, behind a button where there is room for one. */
export function PreferencesButton() {
  const t = useMessages(appMessages);
  const { language, temperature } = usePreferences();
  return (
    <MenuButton id="preferences" says={t.preferences} menu={PreferencesMenu}>
      {language.toUpperCase()} · °{temperature}
    </MenuButton>
  );
}

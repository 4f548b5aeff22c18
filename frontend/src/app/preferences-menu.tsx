import type { MenuProps } from '../shared/menu-button';
import { MenuPanel } from '../shared/menu-panel';
import { useMessages } from '../shared/messages';
import { appMessages } from './app-messages';
import { PreferenceChoices } from './preference-choices';

/** What opens from the button with language and unit. */
export function PreferencesMenu(menu: MenuProps) {
  const t = useMessages(appMessages);
  return (
    <MenuPanel of="preferences" name={t.preferences} {...menu}>
      <PreferenceChoices />
    </MenuPanel>
  );
}

import { Popover } from '@vaadin/react-components/Popover.js';
import { useMessages } from '../shared/messages';
import { appMessages } from './app-messages';
import { PreferenceChoices } from './preference-choices';

interface PreferencesMenuProps {
  readonly opened: boolean;
  readonly setOpened: (opened: boolean) => void;
}

/** What opens from the button with language and unit. */
export function PreferencesMenu({ opened, setOpened }: PreferencesMenuProps) {
  const t = useMessages(appMessages);
  return (
    <Popover
      for="preferences"
      trigger={[]}
      position="bottom-end"
      modal
      accessibleName={t.preferences}
      opened={opened}
      onOpenedChanged={({ detail }) => setOpened(detail.value)}
    >
      <PreferenceChoices />
    </Popover>
  );
}

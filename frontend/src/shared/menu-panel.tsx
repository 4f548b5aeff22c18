import { Popover } from '@vaadin/react-components/Popover.js';
import type { ReactNode } from 'react';
import type { MenuProps } from './menu-button';

interface MenuPanelProps extends MenuProps {
  /** The `id` of its button. */
  readonly of: string;
  readonly name: string;
  readonly children: ReactNode;
}

/** What opens from a `MenuButton`. */
export function MenuPanel({ of, name, opened, setOpened, children }: MenuPanelProps) {
  return (
    <Popover
      for={of}
      trigger={[]}
      position="bottom-end"
      modal
      accessibleName={name}
      opened={opened}
      onOpenedChanged={({ detail }) => setOpened(detail.value)}
    >
      {children}
    </Popover>
  );
}

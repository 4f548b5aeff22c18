import { useState, type ComponentType, type ReactNode } from 'react';

/** What opens from a button of the bar, drawn with `MenuPanel`. */
export interface MenuProps {
  readonly opened: boolean;
  readonly setOpened: (opened: boolean) => void;
}

interface MenuButtonProps {
  /** Where the panel hangs. */
  readonly id: string;
  /** What is said of the button, and shown where the pointer rests. */
  readonly says: string;
  readonly className?: string;
  /** Drawn from the first press on; its code may come `later`. */
  readonly menu: ComponentType<MenuProps>;
  readonly children: ReactNode;
}

/** A button of the bar with a menu behind it. */
export function MenuButton({ id, says, className = '', menu: Menu, children }: MenuButtonProps) {
  const [opened, setOpened] = useState<boolean>();
  return (
    <>
      <button
        id={id}
        type="button"
        className={`icon-button rc-no-print ${className}`}
        aria-label={says}
        title={says}
        aria-haspopup="dialog"
        aria-expanded={opened === true}
        onClick={() => setOpened(true)}
      >
        {children}
      </button>
      {opened !== undefined && <Menu opened={opened} setOpened={setOpened} />}
    </>
  );
}

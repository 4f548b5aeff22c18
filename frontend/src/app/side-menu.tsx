import { useEffect, useRef, type ReactNode } from 'react';

interface SideMenuProps {
  readonly opened: boolean;
  readonly close: () => void;
  /** Whether it lies over the screen, as on a phone, instead of standing beside it. */
  readonly over: boolean;
  readonly label: string;
  readonly children: ReactNode;
}

/** Where the names of the rooms stand: beside the screen, or over it until one is chosen. */
export function SideMenu({ opened, close, over, label, children }: SideMenuProps) {
  if (over) {
    return (
      <OverScreen opened={opened} close={close} label={label}>
        {children}
      </OverScreen>
    );
  }
  return opened ? (
    <div id="menu" className="side-menu rc-no-print">
      {children}
    </div>
  ) : null;
}

/** The browser's own modal dialog keeps the focus within, closes on Escape and gives the focus back. */
function OverScreen({ opened, close, label, children }: Omit<SideMenuProps, 'over'>) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (opened) dialog.current?.showModal();
    else dialog.current?.close();
  }, [opened]);
  return (
    <dialog
      ref={dialog}
      id="menu"
      className="side-menu over rc-no-print"
      aria-label={label}
      onClose={close}
      // Beside it is the dialog's own backdrop.
      onClick={(event) => event.target === event.currentTarget && close()}
    >
      {children}
    </dialog>
  );
}

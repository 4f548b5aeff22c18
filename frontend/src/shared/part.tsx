import { useEffect, useState, type ReactNode } from 'react';
import { useLocation } from 'react-router';
import { usePhone } from './phone';
import './part.css';

interface PartProps {
  /** Where links within the page lead. */
  readonly id?: string;
  readonly title: string;
  /** Beside the title, also while the part is folded. */
  readonly aside?: ReactNode;
  readonly className?: string;
  /** Whether it is open on a phone from the beginning, or from when this becomes true. */
  readonly first?: boolean;
  readonly children: ReactNode;
}

/** A part of a long page under its title. On a phone it folds, so that the page is a list of what there is. */
export function Part({ id, title, aside, className, first = false, children }: PartProps) {
  const phone = usePhone();
  const { hash } = useLocation();
  const led = id !== undefined && hash === `#${id}`;
  const [opened, setOpened] = useState(first);
  useEffect(() => {
    if (led || first) setOpened(true);
  }, [led, hash, first]);
  const head = (
    <h2>
      {title} {aside}
    </h2>
  );
  return (
    <section id={id} tabIndex={id === undefined ? undefined : -1} className={className} aria-label={title}>
      {phone ? (
        <details className="part" open={opened} onToggle={(event) => setOpened(event.currentTarget.open)}>
          <summary>{head}</summary>
          {/* What is folded is not drawn: a page of plots would be slow for nothing. */}
          {opened && children}
        </details>
      ) : (
        <>
          {head}
          {children}
        </>
      )}
    </section>
  );
}

import { useEffect, useRef, type ReactNode } from 'react';

/**
 * The heading of what has just taken the place of something else. It takes the focus, so that the keyboard and whoever
 * listens go on from here and not from the top.
 */
export function ArrivedHeading({ id, children }: { id: string; children: ReactNode }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <h2 id={id} ref={heading} tabIndex={-1}>
      {children}
    </h2>
  );
}

import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { mayGo } from './rights-state';
import { useGrants } from './signed-in';

/** A link for those whom it leads somewhere; the same words for the others. */
export function OfferedLink({ to, children }: { to: string; children: ReactNode }) {
  const grants = useGrants();
  if (!mayGo(grants, to)) return <span>{children}</span>;
  return (
    <Link className="rc-link" to={to}>
      {children}
    </Link>
  );
}

import type { ReactNode } from 'react';
import type { Right } from './rights-state';
import { useMay } from './signed-in';

/** Shows what is inside to those whose roles allow it, at `site` or, without one, anywhere. */
export function Offered({ right, site, children }: { right: Right; site?: string | undefined; children: ReactNode }) {
  return useMay(right, site) ? children : null;
}

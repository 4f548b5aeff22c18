import { useState } from 'react';
import { Navigate } from 'react-router';
import { Failed, Loading } from '../shared/screen-states';
import { useSites } from '../shared/setup-lists';
import { ClosedView } from './closed-view';
import { may, startFor } from './rights-state';
import { takeNext } from './session-memory';
import { useGrants } from './signed-in';

/** The address without a screen leads to where this reader's work begins. */
export function StartView() {
  const grants = useGrants();
  const sites = useSites();
  const [kept] = useState(takeNext);
  if (!may(grants, 'read')) return <ClosedView />;
  if (kept && kept !== '/') return <Navigate to={kept} replace />;
  if (sites.isPending) return <Loading />;
  if (!sites.data) return <Failed failure={sites.error} retry={() => void sites.refetch()} />;
  return <Navigate to={startFor(grants, sites.data.length === 0)} replace />;
}

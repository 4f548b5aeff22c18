import { Link, useLocation } from 'react-router';
import { useMay } from '../people/signed-in';
import { useMessages } from '../shared/messages';
import { climateMessages } from './climate-messages';
import './readings-links.css';

/** The ways to where readings come from: the sensors, CSV import, and what came in. */
export function ReadingsLinks() {
  const t = useMessages(climateMessages);
  const { pathname } = useLocation();
  const maySetUp = useMay('set-up');
  if (!maySetUp) return null;
  const ways = [
    ['/setup/sensors', t.sensorMap],
    ['/setup/readings', t.csvImport],
    ['/setup/ingest', t.cameIn],
  ] as const;
  return (
    <nav className="rc-row rc-no-print readings-links" aria-label={t.cameFrom}>
      {ways
        .filter(([path]) => path !== pathname)
        .map(([path, word]) => (
          <Link key={path} className="rc-link" to={path}>
            {word}
          </Link>
        ))}
    </nav>
  );
}

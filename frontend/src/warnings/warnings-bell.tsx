import { Link } from 'react-router';
import { useFormats } from '../shared/formats';
import { useIdle } from '../shared/idle';
import { useMessages } from '../shared/messages';
import { useSiteFilter } from '../shared/site-filter';
import { useLiveWarnings, useStandingWarnings } from './warnings-api';
import { warningsMessages } from './warnings-messages';
import { unseen } from './warnings-state';
import './bell.css';

/** How many warnings nobody has seen, from anywhere; leads to them. */
export function WarningsBell() {
  const t = useMessages(warningsMessages);
  const format = useFormats();
  const [site] = useSiteFilter();
  useLiveWarnings();
  const warnings = useStandingWarnings(site, useIdle()).data;
  const count = warnings ? unseen(warnings) : 0;
  const said = count > 0 ? t.bell(format.integer(count)) : t.bellNone;
  return (
    <Link
      className={`bell rc-no-print ${count > 0 ? 'ringing' : ''}`}
      to={`/warnings${site ? `?site=${encodeURIComponent(site)}` : ''}`}
      title={said}
      aria-label={said}
    >
      <svg viewBox="0 0 20 20" width="16" height="16" aria-hidden="true">
        <path
          d="M10 3a4.5 4.5 0 0 0-4.5 4.5c0 4-1.5 5-2 6h13c-.5-1-2-2-2-6A4.5 4.5 0 0 0 10 3Zm-1.8 12.5a1.8 1.8 0 0 0 3.6 0"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.5"
          strokeLinejoin="round"
        />
      </svg>
      {count > 0 && <span>{format.integer(count)}</span>}
    </Link>
  );
}

import { useEffect, useRef, useState } from 'react';
import { NavLink, Outlet, useLocation, useNavigation } from 'react-router';
import { UnsentBar } from '../outbox/unsent-bar';
import { AccountButton } from '../people/account-button';
import { ClosedView } from '../people/closed-view';
import { mayGo } from '../people/rights-state';
import { SessionGate } from '../people/session-gate';
import { useGrants } from '../people/signed-in';
import { useKeepHomeZone } from '../shared/home-zone';
import { useMessages } from '../shared/messages';
import { Notices } from '../shared/notices';
import { usePhone } from '../shared/phone';
import { useLiveQueries } from '../shared/queries';
import { useCurrentTitle } from '../shared/screen-title';
import { useSites } from '../shared/setup-lists';
import { sharedMessages } from '../shared/shared-messages';
import { useSiteFilter } from '../shared/site-filter';
import { WarningsBell } from '../warnings/warnings-bell';
import { appMessages } from './app-messages';
import { PaperHead } from './paper-head';
import { ConnectionNote } from './connection-note';
import { PreferenceChoices } from './preference-choices';
import { PreferencesButton } from './preferences-button';
import { SearchBox } from './search-box';
import { menuStaysOpen, OWN_SEARCH } from './shell-state';
import { SideMenu } from './side-menu';
import './shell.css';

const ROOMS = [
  { path: 'board', word: 'board' },
  { path: 'floor', word: 'floor' },
  { path: 'batches', word: 'batches' },
  { path: 'climate', word: 'climate' },
  { path: 'rounds', word: 'rounds' },
  { path: 'warnings', word: 'warnings' },
  { path: 'treatments', word: 'treatments' },
  { path: 'feed', word: 'feed' },
  { path: 'what-if', word: 'whatIf' },
  { path: 'track-record', word: 'trackRecord' },
  { path: 'setup', word: 'setup' },
] as const;

/** Everything behind the sign-in. */
export function Shell() {
  return (
    <SessionGate>
      <ShellOfPerson />
    </SessionGate>
  );
}

/** What stays while screens change: the rooms, the title, the site, the search, the state of the connection. */
function ShellOfPerson() {
  const t = useMessages(appMessages);
  const title = useCurrentTitle();
  const { pathname } = useLocation();
  const loading = useNavigation().state !== 'idle';
  const [site] = useSiteFilter();
  const main = useRef<HTMLElement>(null);
  const grants = useGrants();
  useLiveQueries();
  useKeepHomeZone();

  const room = pathname.split('/')[1] ?? '';
  const phone = usePhone();
  const [menuOpened, setMenuOpened] = useState(() => menuStaysOpen(room, innerWidth));
  useEffect(() => setMenuOpened(menuStaysOpen(room, innerWidth)), [room, phone]);

  return (
    <>
      <div className="shell">
        <header className="top">
          <a
            className="skip"
            href="#main"
            onClick={(event) => {
              event.preventDefault();
              main.current?.focus();
            }}
          >
            {t.skip}
          </a>
          <button
            type="button"
            className="icon-button menu-button rc-no-print"
            aria-label={t.menu}
            aria-expanded={menuOpened}
            aria-controls="menu"
            onClick={() => setMenuOpened(!menuOpened)}
          >
            <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
              <path
                d="M3 5h14M3 10h14M3 15h14"
                fill="none"
                stroke="currentColor"
                strokeWidth="1.6"
                strokeLinecap="round"
              />
            </svg>
          </button>
          <h1>{title}</h1>
          {!phone && <SiteChoice />}
          {!(phone && OWN_SEARCH.has(room)) && <SearchBox />}
          <span className="top-space" />
          <WarningsBell />
          <ConnectionNote />
          {!phone && <PreferencesButton />}
          <AccountButton />
        </header>
        <SideMenu label={t.menu} over={phone} opened={menuOpened} close={() => setMenuOpened(false)}>
          {phone && <SiteChoice />}
          <nav aria-label={t.rooms} className="rooms">
            {ROOMS.filter(({ path }) => mayGo(grants, `/${path}`)).map(({ path, word }) => (
              <NavLink
                key={path}
                to={`/${path}${site ? `?site=${encodeURIComponent(site)}` : ''}`}
                // Where it lies over the screen it has done its part, even if that screen is open already.
                onClick={() => phone && setMenuOpened(false)}
              >
                {t[word]}
              </NavLink>
            ))}
          </nav>
          {phone && <PreferenceChoices />}
        </SideMenu>
        <main id="main" ref={main} tabIndex={-1} aria-busy={loading}>
          <PaperHead />
          <UnsentBar quiet={room !== 'floor' && room !== 'rounds'} />
          {mayGo(grants, pathname) ? <Outlet /> : <ClosedView />}
        </main>
      </div>
      <Notices />
    </>
  );
}

function SiteChoice() {
  const t = useMessages(sharedMessages);
  const sites = useSites().data ?? [];
  const [site, choose] = useSiteFilter();
  // Keeps a site from a pasted link that is not (or not yet) known, instead of showing another.
  const unknown = site !== undefined && !sites.some((each) => each.code === site);
  if (sites.length < 2 && !unknown) return null;
  return (
    <select
      className="plain-select rc-no-print"
      aria-label={t.site}
      value={site ?? ''}
      onChange={(event) => choose(event.target.value || undefined)}
    >
      <option value="">{t.allSites}</option>
      {unknown && <option value={site}>{site}</option>}
      {sites.map((each) => (
        <option key={each.code} value={each.code}>
          {each.name}
        </option>
      ))}
    </select>
  );
}

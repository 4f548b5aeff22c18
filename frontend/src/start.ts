import { screenAt, screens } from './app/screens';
import { rememberedSession } from './people/session-memory';
import { askAhead, firstQuestions } from './shared/asked-ahead';

/**
 * The first thing that runs, and small, so that it runs at once: what the address will show is fetched and asked for beside
 * the program that draws it, not after it.
 */
const { pathname, search } = location;
// Whoever is not signed in is told so by the first question; the others would only be refused.
askAhead(rememberedSession() ? firstQuestions(pathname, search) : ['/api/session', '/api/about']);
const shown = screenAt(pathname);
// The router fetches it again where this fails, and says so.
if (shown) screens[shown]().catch(() => undefined);
void import('./main');

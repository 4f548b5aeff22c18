/**
 * Questions that are sure to be asked, asked while the program that asks them is still being read: on a slow device that
 * takes longer than the answers. Each answer serves once, and only the first moment after the page was opened.
 */
const SERVES_MS = 10_000;
const asked = new Map<string, Promise<Response>>();

export function askAhead(paths: readonly string[]): void {
  for (const path of paths) {
    const request = new Request(path, { headers: { Accept: 'application/json, application/problem+json' } });
    const answer = fetch(request);
    asked.set(request.url, answer);
    // Whoever takes it hears of the failure; if nobody does, nothing has failed.
    answer.catch(() => undefined);
  }
  setTimeout(() => asked.clear(), SERVES_MS);
}

export function askedAhead({ method, url }: Request): Promise<Response> | undefined {
  if (method !== 'GET') return undefined;
  const answer = asked.get(url);
  asked.delete(url);
  return answer;
}

/** What the screen at an address asks for first, in the words in which it asks. */
export function firstQuestions(pathname: string, search: string): readonly string[] {
  const [, room = '', thing] = pathname.split('/');
  const everywhere = ['/api/session', '/api/sites', '/api/about'];
  const batch = room === 'floor' ? new URLSearchParams(search).get('batch') : room === 'batches' ? thing : undefined;
  if (batch) return [...everywhere, `/api/batches/${batch}`, '/api/houses'];
  // Setup has one set of lists, whichever of them is shown.
  const whole = search === '' && (thing === undefined || (room === 'setup' && LISTS_OF_SETUP.has(thing)));
  return [...everywhere, ...(whole ? (OF_ROOM[room] ?? []) : [])];
}

const LISTS_OF_SETUP: ReadonlySet<string> = new Set([
  'sites',
  'houses',
  'tray-formats',
  'crops',
  'varieties',
  'sensors',
]);

const OF_ROOM: Readonly<Record<string, readonly string[]>> = {
  board: ['/api/board?weeks=8&confidence=0.9'],
  batches: ['/api/houses', '/api/crops', '/api/batches?state=live'],
  climate: ['/api/houses', '/api/batches?state=live'],
  warnings: ['/api/houses', '/api/warnings'],
  treatments: ['/api/treatments', '/api/houses', '/api/treatments/closed-houses'],
  'what-if': ['/api/houses', '/api/batches?state=live'],
  setup: ['/api/houses', '/api/tray-formats', '/api/crops', '/api/varieties', '/api/sensors'],
};

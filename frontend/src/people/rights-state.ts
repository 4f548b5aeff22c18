import type { Grant, Role } from './people-types';

/**
 * What a person may do, from the roles the server names. It decides what is offered; the server decides what happens.
 * One table, in the words of the guide.
 */
export type Right =
  /** Look at board, batches, climate, rounds, warnings, treatments, track record. */
  | 'read'
  /** Entries, rounds, treatments, acknowledgements, readings by hand. */
  | 'record'
  /** Orders and promises. */
  | 'sell'
  /** Set-up, profiles, recipes, planned set-points, what-if. */
  | 'set-up'
  /** People, keys and the audit list. */
  | 'people';

const ROLES_WITH: Readonly<Record<Right, readonly Role[]>> = {
  read: ['SALES', 'PRODUCTION', 'MANAGER', 'OWNER'],
  record: ['PRODUCTION', 'MANAGER', 'OWNER'],
  sell: ['SALES', 'MANAGER', 'OWNER'],
  'set-up': ['MANAGER', 'OWNER'],
  people: ['OWNER'],
};

/** Whether `grants` give the right at `site`; without a site, whether they give it anywhere. */
export function may(grants: readonly Grant[], right: Right, site?: string): boolean {
  return grants.some(
    ({ role, site: at }) => ROLES_WITH[right].includes(role) && (site === undefined || !at || at === site),
  );
}

/** The rooms of the application and what each needs. */
export const RIGHT_OF_ROOM = {
  board: 'read',
  floor: 'record',
  batches: 'read',
  climate: 'read',
  rounds: 'read',
  warnings: 'read',
  treatments: 'read',
  feed: 'read',
  'what-if': 'set-up',
  'track-record': 'read',
  setup: 'set-up',
} as const satisfies Readonly<Record<string, Right>>;

/** Lists of Setup that need more than Setup itself. */
const RIGHT_OF_LIST: Readonly<Record<string, Right>> = {
  people: 'people',
  keys: 'people',
  audit: 'people',
  changes: 'people',
};

/** What the address needs; undefined when anyone who is signed in may go there. */
export function rightFor(pathname: string): Right | undefined {
  const [, room = '', list = ''] = pathname.split('/');
  if (room === 'setup' && Object.hasOwn(RIGHT_OF_LIST, list)) return RIGHT_OF_LIST[list];
  return Object.hasOwn(RIGHT_OF_ROOM, room) ? RIGHT_OF_ROOM[room as keyof typeof RIGHT_OF_ROOM] : undefined;
}

export function mayGo(grants: readonly Grant[], pathname: string): boolean {
  const right = rightFor(pathname);
  return right === undefined || may(grants, right);
}

/** The site of every grant, when all are for one and the same. */
export function onlySite(grants: readonly Grant[]): string | undefined {
  const [first] = grants;
  return first?.site && grants.every(({ site }) => site === first.site) ? first.site : undefined;
}

/**
 * Where work begins: the floor for those who only record, otherwise the board, narrowed to the one site somebody works
 * at. An owner of an empty business begins with setting it up.
 */
export function startFor(grants: readonly Grant[], nothingSetUp = false): string {
  if (nothingSetUp && may(grants, 'set-up')) return '/setup/first-day';
  const room = may(grants, 'record') && !may(grants, 'sell') ? '/floor' : '/board';
  const site = onlySite(grants);
  return site === undefined ? room : `${room}?site=${encodeURIComponent(site)}`;
}

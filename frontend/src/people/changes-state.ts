/** What a line of the list of changes of the set-up says: the server keeps method and path. */

const LISTS = ['sites', 'houses', 'tray-formats', 'crops', 'varieties', 'sensors'] as const;
export type ChangedList = (typeof LISTS)[number];

export type ChangeKind =
  | `${ChangedList}-made`
  | `${ChangedList}-changed`
  | 'setpoint-planned'
  | 'crop-taken'
  | 'recipe-changed'
  | 'profile-adopted'
  | 'profile-learned'
  | 'walk-changed';

export interface Change {
  readonly kind: ChangeKind;
  /** Where what was changed is kept. */
  readonly list: ChangedList;
  readonly code: string;
  /** Of a profile. */
  readonly version?: string;
}

const OF_PLACE: readonly (readonly [RegExp, ChangeKind, ChangedList])[] = [
  [/^POST \/api\/houses\/([^/]+)\/setpoints$/, 'setpoint-planned', 'houses'],
  [/^POST \/api\/seeded-crops (.+)$/, 'crop-taken', 'crops'],
  [/^PUT \/api\/crops\/([^/]+)\/recipe$/, 'recipe-changed', 'crops'],
  [/^POST \/api\/crops\/([^/]+)\/profiles\/(\d+)\/adoption$/, 'profile-adopted', 'crops'],
  [/^POST \/api\/crops\/([^/]+)\/learning$/, 'profile-learned', 'crops'],
  [/^PUT \/api\/rounds\/houses\?site=(.+)$/, 'walk-changed', 'sites'],
];

/** Undefined for what these screens do not know yet. */
export function changeOf(what: string): Change | undefined {
  const [, method, path, item = ''] = /^(POST|PUT) \/api\/([a-z-]+)\/([^/]+)$/.exec(what) ?? [];
  const list = LISTS.find((each) => each === path);
  if (list !== undefined) return { kind: `${list}-${method === 'POST' ? 'made' : 'changed'}`, list, code: item };
  for (const [pattern, kind, of] of OF_PLACE) {
    const [, code, version] = pattern.exec(what) ?? [];
    if (code !== undefined) return { kind, list: of, code, ...(version === undefined ? {} : { version }) };
  }
  return undefined;
}

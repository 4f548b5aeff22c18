import type { House, Site, TrayFormat } from '../shared/api-types';
import { folded } from '../shared/loose-words';
import { mmTyped, numberTyped, type LengthUnit } from '../shared/units';

/** The first day of a business: what is filled in for it, and what is made of what was typed. */

const LONGEST_CODE = 32;

/** A code out of a name: `House 1` is `house-1`. Empty where a name has no letter or digit that a code may hold. */
export function codeFor(name: string, before = ''): string {
  const made = folded(`${before} ${name}`)
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+/, '')
    .slice(0, LONGEST_CODE);
  return made.replace(/-+$/, '');
}

export interface PlaceDraft {
  readonly site: string;
  readonly timeZone: string;
  readonly house: string;
}

export function placeOf(
  draft: PlaceDraft,
): { readonly site: Site; readonly house: House } | { readonly missing: readonly (keyof PlaceDraft)[] } {
  const missing = (['site', 'timeZone', 'house'] as const).filter((field) =>
    field === 'timeZone' ? draft.timeZone === '' : codeFor(draft[field]) === '',
  );
  if (missing.length > 0) return { missing };
  const site = codeFor(draft.site);
  return {
    site: { code: site, name: draft.site.trim(), timeZone: draft.timeZone, shipDay: 'MONDAY' },
    house: { code: codeFor(draft.house, site), site, name: draft.house.trim() },
  };
}

export interface FormatDraft {
  readonly code: string;
  readonly cells: string;
  readonly saleCount: string;
  readonly length: string;
  readonly width: string;
}

export const NO_FORMAT: FormatDraft = { code: '', cells: '', saleCount: '', length: '', width: '' };

const CODE = /^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$/;

/** A tray is called by its cells unless somebody calls it otherwise. */
export function formatOf(
  draft: FormatDraft,
  unit: LengthUnit,
): { readonly format: TrayFormat } | { readonly wrong: readonly (keyof FormatDraft)[] } {
  const code = draft.code.trim() || draft.cells.trim();
  const whole = (text: string) => {
    const value = numberTyped(text);
    return value !== undefined && Number.isInteger(value) ? value : undefined;
  };
  const size = (text: string) => {
    const value = numberTyped(text);
    return value === undefined ? undefined : whole(String(mmTyped(value, unit)));
  };
  const [cells, saleCount] = [whole(draft.cells), whole(draft.saleCount)];
  const [lengthMm, widthMm] = [size(draft.length), size(draft.width)];
  const wrong = [
    ...(CODE.test(code) ? [] : ['code' as const]),
    ...(cells === undefined ? ['cells' as const] : []),
    ...(saleCount === undefined ? ['saleCount' as const] : []),
    ...(lengthMm === undefined ? ['length' as const] : []),
    ...(widthMm === undefined ? ['width' as const] : []),
  ];
  if (cells === undefined || saleCount === undefined || lengthMm === undefined || widthMm === undefined || wrong.length)
    return { wrong };
  return { format: { code, cells, saleCount, lengthMm, widthMm } };
}

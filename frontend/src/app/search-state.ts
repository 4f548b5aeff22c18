import type { BatchView, Variety } from '../shared/api-types';
import { folded, found } from '../shared/loose-words';

/** One thing the search can open. */
export interface Find {
  readonly kind: 'variety' | 'batch';
  readonly key: string;
  readonly name: string;
  readonly detail: string;
  readonly path: string;
}

const MOST_OF_A_KIND = 8;

/** What `typed` may mean, best first: varieties by name or code, then the batches the server found. */
export function findsFor(typed: string, varieties: readonly Variety[], batches: readonly BatchView[]): readonly Find[] {
  const wanted = folded(typed);
  if (wanted === '') return [];
  const named = found(varieties, typed, ({ code, name }) => `${name} ${code}`)
    .map((variety) => ({ variety, rank: rankOf(wanted, variety) }))
    .sort((a, b) => a.rank - b.rank || a.variety.name.localeCompare(b.variety.name))
    .slice(0, MOST_OF_A_KIND)
    .map(({ variety: { code, name } }): Find => ({
      kind: 'variety',
      key: `variety ${code}`,
      name,
      detail: code,
      path: `/board?text=${encodeURIComponent(code)}`,
    }));
  const grown = batches.slice(0, MOST_OF_A_KIND).map((batch): Find => ({
    kind: 'batch',
    key: `batch ${batch.id}`,
    name: batch.id,
    detail: `${batch.varietyName}, ${batch.house}`,
    path: `/batches/${encodeURIComponent(batch.id)}`,
  }));
  return [...named, ...grown];
}

/** Several words, or a slip. */
const IN_PARTS = 4;

function rankOf(wanted: string, { code, name }: Variety): number {
  const foldedName = folded(name);
  if (folded(code) === wanted || foldedName === wanted) return 0;
  if (foldedName.startsWith(wanted) || folded(code).startsWith(wanted)) return 1;
  if (foldedName.split(/[\s'"‘’]+/).some((word) => word.startsWith(wanted))) return 2;
  return foldedName.includes(wanted) || folded(code).includes(wanted) ? 3 : IN_PARTS;
}

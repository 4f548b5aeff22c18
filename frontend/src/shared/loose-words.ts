/** Finding by what people type: several words in any order, without accents and case, through small slips. */

/** Without accents and case, so that "salvia" finds "Sálvia". */
export function folded(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim();
}

/** The words that all must be found. */
export function wordsOf(typed: string): readonly string[] {
  return folded(typed).split(/\s+/).filter(Boolean);
}

/**
 * What `typed` finds among `all`: what holds every word as it was typed, and only where nothing does, what holds
 * words that differ by a slip. So a code that was typed right never brings its neighbours along.
 */
export function found<T>(all: readonly T[], typed: string, says: (one: T) => string): readonly T[] {
  const words = wordsOf(typed);
  if (words.length === 0) return all;
  const told = all.map((one) => ({ one, text: folded(says(one)) }));
  const exact = told.filter(({ text }) => words.every((word) => text.includes(word)));
  const near = () => told.filter(({ text }) => words.every((word) => soundsIn(word, text)));
  return (exact.length > 0 ? exact : near()).map(({ one }) => one);
}

function soundsIn(word: string, text: string): boolean {
  return text.includes(word) || text.split(/[^\p{L}\p{N}]+/u).some((there) => isNear(word, there));
}

/** How many slips a word may have: none in a short one or in a number, where each sign counts. */
function slipsIn(word: string): number {
  if (word.length < 4 || /\d/.test(word)) return 0;
  return word.length < 8 ? 1 : 2;
}

/** Whether `typed` is the beginning of `word`, but for its slips. */
function isNear(typed: string, word: string): boolean {
  const allowed = slipsIn(typed);
  if (allowed === 0 || word.length < typed.length - allowed) return false;
  return slipsToBegin(typed, word.slice(0, typed.length + allowed)) <= allowed;
}

/**
 * The fewest slips (a letter too many, too few, another one, or two swapped) that make `typed` a beginning of `word`.
 * Source: Damerau 1964, in the form where no part is changed twice.
 */
function slipsToBegin(typed: string, word: string): number {
  let before: number[] = [];
  let last = Array.from({ length: word.length + 1 }, (_, j) => j);
  for (let i = 1; i <= typed.length; i++) {
    const row = [i];
    for (let j = 1; j <= word.length; j++) {
      const same = typed[i - 1] === word[j - 1] ? 0 : 1;
      let least = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      if (typed[i - 1] === word[j - 2] && typed[i - 2] === word[j - 1])
        least = Math.min(least, (before[j - 2] ?? 0) + 1);
      row.push(least);
    }
    before = last;
    last = row;
  }
  return Math.min(...last);
}

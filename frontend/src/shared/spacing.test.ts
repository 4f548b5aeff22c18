import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

/** Space between things comes from one scale, that of theme.css; only paper is laid out in millimetres. */

const SPACED =
  /(?<![\w-])(?:(?:scroll-)?(?:margin|padding)|gap|row-gap|column-gap|--vaadin-[a-z-]*(?:padding|gap|margin))(?:-[a-z]+)*\s*:\s*([^;}]+)/g;
/** A length of its own; `0px` is none, and what stands in for a missing variable is not laid out with. */
const LOOSE = /(?<![\w.-])-?(?!0px)\d*\.?\d+(?:px|r?em|ch|ex|pt)\b/;

function looseSpaces(css: string): readonly string[] {
  const code = css.replace(/\/\*[\s\S]*?\*\//g, '');
  return [...code.matchAll(SPACED)].filter(([, value]) => LOOSE.test(value ?? '')).map(([found]) => found.trim());
}

const SOURCES = join(import.meta.dirname, '..');
const sheets = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.css'));

describe('space', () => {
  test('a loose length is found wherever it stands', () => {
    expect(looseSpaces('a { margin: 0 auto 7px; }')).toHaveLength(1);
    expect(looseSpaces('a { padding-left: 1.5em }')).toHaveLength(1);
    expect(looseSpaces('a { gap: var(--rc-space-2) 3px; }')).toHaveLength(1);
    expect(looseSpaces('a { --vaadin-grid-cell-padding: 4px 8px; }')).toHaveLength(1);
    expect(
      looseSpaces('a { margin: 0 3mm; padding: var(--rc-space-2); width: 7px; top: 3px; /* gap: 9px; */ }'),
    ).toEqual([]);
  });

  test.each(sheets)('in %s is on the scale', (sheet) => {
    expect(looseSpaces(readFileSync(join(SOURCES, sheet), 'utf8'))).toEqual([]);
  });

  test('grows from step to step', () => {
    const theme = readFileSync(join(SOURCES, 'shared/theme.css'), 'utf8');
    const steps = [...theme.matchAll(/--rc-space-(\d): (\d+)px;/g)].map(([, step, px]) => [Number(step), Number(px)]);
    expect(steps.map(([step]) => step)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(steps.map(([, px]) => px)).toEqual([...steps.map(([, px]) => px as number)].sort((a, b) => a - b));
  });
});

/** Head of a column: its words, or words with how they stand. */
export type Head = string | { readonly words: string; readonly as: 'figure' | 'spoken' };

/** Over a column of figures: to the right, as they are. */
export function figure(words: string): Head {
  return { words, as: 'figure' };
}

/** Over a column of buttons: heard, not seen. */
export function spoken(words: string): Head {
  return { words, as: 'spoken' };
}

/** The row of heads of a plain table, in the order of its columns. */
export function HeadRow({ heads }: { readonly heads: readonly Head[] }) {
  return (
    <thead>
      <tr>
        {heads.map((head) => {
          const { words, as } = typeof head === 'string' ? { words: head, as: 'words' } : head;
          return (
            <th key={words} scope="col" className={as === 'figure' ? 'rc-number' : undefined}>
              {as === 'spoken' ? <span className="rc-hidden">{words}</span> : words}
            </th>
          );
        })}
      </tr>
    </thead>
  );
}

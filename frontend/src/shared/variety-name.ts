/** A variety's name in the two parts that people look for: the cultivar, and what it is one of. */
export interface NameParts {
  /** With its quotation marks, as the code for cultivated plants writes it; the whole name where there is none. */
  readonly cultivar: string;
  /** Genus, species and the like; empty where there is no cultivar. */
  readonly kind: string;
}

export function nameParts(name: string): NameParts {
  const [, kind, cultivar] = /^(.*\S)\s+(['‘].+['’].*)$/u.exec(name.trim()) ?? [];
  return kind && cultivar ? { cultivar, kind } : { cultivar: name.trim(), kind: '' };
}

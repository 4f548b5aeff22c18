/** Why a request did not do what was asked. */

/** A place in the sent body and what is wrong there, as a code with its values; `useProblemWords` says it. */
export interface FieldFault {
  readonly field: string;
  readonly code: string;
  readonly values: Readonly<Record<string, unknown>>;
}

/** The server refused: an RFC 9457 problem with its numbers. */
export class Problem extends Error {
  override readonly name = 'Problem';

  constructor(
    readonly status: number,
    readonly type: string,
    readonly title: string,
    /** In English, for logs; a reader is told by type and members. */
    readonly detail: string,
    /** Every member of the body, also the ones this class does not name. */
    readonly members: Readonly<Record<string, unknown>>,
  ) {
    super(detail || title);
  }

  /** Last part of the type, e.g. `more-than-alive`. */
  get kind(): string {
    return this.type.slice(this.type.lastIndexOf('/') + 1);
  }

  /** A batch that is set apart because it cannot be computed: asking again changes nothing. */
  get isNotComputed(): boolean {
    return this.kind === 'batch-not-computed';
  }

  /** Faults that belong beside an input; empty when the problem concerns the whole. */
  get fieldFaults(): readonly FieldFault[] {
    const listed: unknown = this.members['errors'];
    if (!Array.isArray(listed)) return [];
    return (listed as unknown[]).flatMap((each) => {
      const { field, code, values } = each as Record<string, unknown>;
      return typeof field === 'string' && typeof code === 'string' ? [{ field, code, values: valuesOf(values) }] : [];
    });
  }

  /** The fault of a field named by its path with dots: `code`, `profile.stages.0.minC`. */
  faultAt(field: string): FieldFault | undefined {
    return this.fieldFaults.find(({ field: at }) => this.names(at, field));
  }

  /** Whether `at`, as the server writes a place in the body, is the field with the dotted path `field`. */
  names(at: string, field: string): boolean {
    return `.${at.replace(/\[(\d+)\]/g, '.$1')}`.endsWith(`.${field}`);
  }
}

/** No answer came: the network or the server is away. What was sent may or may not have happened. */
export class Unreachable extends Error {
  override readonly name = 'Unreachable';
}

/** Makes the problem out of an answer that was not a success, whatever its body is. */
export async function problemOf(response: Response): Promise<Problem> {
  const raw = await response.text();
  let members: Record<string, unknown> = {};
  try {
    const parsed: unknown = JSON.parse(raw);
    if (typeof parsed === 'object' && parsed !== null) members = parsed as Record<string, unknown>;
  } catch {
    // A proxy in between may answer with a page; its status still says enough.
  }
  return new Problem(
    response.status,
    text(members['type']) ?? 'about:blank',
    text(members['title']) ?? response.statusText,
    text(members['detail']) ?? '',
    members,
  );
}

function valuesOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}

function text(value: unknown): string | undefined {
  return typeof value === 'string' && value !== '' ? value : undefined;
}

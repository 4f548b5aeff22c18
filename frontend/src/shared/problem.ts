/** Why a request did not do what was asked. */

/** A place in the sent body and what is wrong there. */
export interface FieldFault {
  readonly field: string;
  readonly message: string;
}

/** The server refused: an RFC 9457 problem with its numbers. */
export class Problem extends Error {
  override readonly name = 'Problem';

  constructor(
    readonly status: number,
    readonly type: string,
    readonly title: string,
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
    const listed = [this.members['violations'], this.members['errors']].find(Array.isArray) as unknown[] | undefined;
    if (listed) {
      return listed.flatMap((each) => {
        const { field, message, detail } = each as Record<string, unknown>;
        return typeof field === 'string' ? [{ field, message: text(message) ?? text(detail) ?? this.message }] : [];
      });
    }
    const field = text(this.members['field']);
    return field === undefined ? [] : [{ field, message: this.message }];
  }

  /** The fault of a field named by its path with dots: `code`, `profile.stages.0.minC`. */
  faultOf(field: string): string | undefined {
    return this.fieldFaults.find(({ field: at }) => this.names(at, field))?.message;
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

function text(value: unknown): string | undefined {
  return typeof value === 'string' && value !== '' ? value : undefined;
}

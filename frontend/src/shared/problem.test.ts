import { describe, expect, it } from 'vitest';
import { Problem, problemOf } from './problem';

const refusal = (members: Record<string, unknown>, status = 400) =>
  problemOf(new Response(JSON.stringify(members), { status, headers: { 'Content-Type': 'application/problem+json' } }));

describe('a problem', () => {
  it('keeps the numbers of a refusal', async () => {
    const problem = await refusal(
      {
        type: '/problems/more-than-alive',
        title: 'More than alive',
        detail: '500 asked, 480 alive',
        asked: 500,
        alive: 480,
      },
      422,
    );
    expect(problem.kind).toBe('more-than-alive');
    expect(problem.message).toBe('500 asked, 480 alive');
    expect(problem.members['alive']).toBe(480);
  });

  it('finds the fault of a field by the end of its path', async () => {
    const problem = await refusal({
      errors: [
        { field: 'profile.stages[0].minC', code: 'at-most', values: { most: 20 }, message: 'must be at most 20' },
      ],
    });
    expect(problem.faultAt('stages.0.minC')).toEqual({
      field: 'profile.stages[0].minC',
      code: 'at-most',
      values: { most: 20 },
    });
    expect(problem.faultAt('profile.stages.1.minC')).toBeUndefined();
    expect(problem.faultAt('C')).toBeUndefined();
  });

  it('takes no fault without a code, for which there would be no words', async () => {
    const problem = await refusal({ errors: [{ field: 'colour', message: 'is not a field here' }] });
    expect(problem.fieldFaults).toEqual([]);
  });

  it('survives a body that is no JSON', async () => {
    const problem = await problemOf(new Response('<html>', { status: 502, statusText: 'Bad Gateway' }));
    expect(problem).toBeInstanceOf(Problem);
    expect(problem.message).toBe('Bad Gateway');
    expect(problem.fieldFaults).toEqual([]);
  });
});

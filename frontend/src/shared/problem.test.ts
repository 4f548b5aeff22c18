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
      violations: [{ field: 'create.profile.stages[0].minC', message: 'above the optimum' }],
    });
    expect(problem.faultOf('profile.stages.0.minC')).toBe('above the optimum');
    expect(problem.faultOf('profile.stages.1.minC')).toBeUndefined();
    expect(problem.faultOf('C')).toBeUndefined();
  });

  it('takes a single named field', async () => {
    const problem = await refusal({ detail: 'unknown field colour', field: 'colour' });
    expect(problem.faultOf('colour')).toBe('unknown field colour');
  });

  it('survives a body that is no JSON', async () => {
    const problem = await problemOf(new Response('<html>', { status: 502, statusText: 'Bad Gateway' }));
    expect(problem).toBeInstanceOf(Problem);
    expect(problem.message).toBe('Bad Gateway');
    expect(problem.fieldFaults).toEqual([]);
  });
});

import { expect, it } from 'vitest';
import { changeOf } from './changes-state';
import { changesMessages } from './changes-messages';

it.each([
  ['POST /api/houses/NORTH-1', { kind: 'houses-made', list: 'houses', code: 'NORTH-1' }],
  ['PUT /api/tray-formats/T84', { kind: 'tray-formats-changed', list: 'tray-formats', code: 'T84' }],
  ['POST /api/houses/NORTH-1/setpoints', { kind: 'setpoint-planned', list: 'houses', code: 'NORTH-1' }],
  ['POST /api/seeded-crops lavender', { kind: 'crop-taken', list: 'crops', code: 'lavender' }],
  ['PUT /api/crops/lavender/recipe', { kind: 'recipe-changed', list: 'crops', code: 'lavender' }],
  [
    'POST /api/crops/lavender/profiles/3/adoption',
    { kind: 'profile-adopted', list: 'crops', code: 'lavender', version: '3' },
  ],
  ['POST /api/crops/lavender/learning', { kind: 'profile-learned', list: 'crops', code: 'lavender' }],
  ['PUT /api/rounds/houses?site=NORTH', { kind: 'walk-changed', list: 'sites', code: 'NORTH' }],
] as const)('reads %s', (what, change) => {
  expect(changeOf(what)).toEqual(change);
  for (const words of [changesMessages.en, changesMessages.es]) expect(words[change.kind]).not.toMatch(/\/|POST|PUT/);
});

it('leaves what it does not know to the server’s own words', () => {
  expect(changeOf('DELETE /api/moons/1')).toBeUndefined();
  expect(changeOf('PUT /api/moons/1')).toBeUndefined();
});

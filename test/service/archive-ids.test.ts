import { describe, expect, it } from '@jest/globals';
import { withNewIds } from '../../src/archive/renew-ids.js';

const OLD = '3f2b8c1e-0000-4000-8000-000000000001';
const NEW = 'a17d5e90-0000-4000-8000-00000000000a';
const SAMPLE = 'meat-3f2b8c1e';
const ids = new Map([
  [OLD, NEW],
  [SAMPLE, 'new-sample'],
]);
const renewed = (value: unknown): unknown => withNewIds({ value }, ids)['value'];

describe('new ids in the place of old ones', () => {
  it.each([
    [OLD, NEW],
    [SAMPLE, 'new-sample'],
    [`own/${OLD}`, `own/${NEW}`],
    [`batch/${SAMPLE}/delivery.2`, 'batch/new-sample/delivery.2'],
    [`herd/${OLD}/${OLD}.c0.watch`, `herd/${NEW}/${NEW}.c0.watch`],
    [`event/${OLD}/calving-2`, `event/${NEW}/calving-2`],
    [`sitter-${OLD}`, `sitter-${NEW}`],
    [`herd/${OLD}/cow-${SAMPLE}.watch`, `herd/${NEW}/cow-new-sample.watch`],
    [`event/${OLD}/calving-cow-${OLD}`, `event/${NEW}/calving-cow-${NEW}`],
  ])('finds it in %s', (old, now) => expect(renewed(old)).toBe(now));

  it('finds it anywhere in JSON, in names too, and leaves their order', () => {
    const old = { b: [OLD, { [`own/${OLD}`]: 1 }], a: null, n: 1.5 };
    expect(JSON.stringify(renewed(old))).toBe(
      JSON.stringify({ b: [NEW, { [`own/${NEW}`]: 1 }], a: null, n: 1.5 }),
    );
    expect(renewed(`{"a": "${OLD}"}`)).toBe(`{"a":"${NEW}"}`);
  });

  it.each([
    `see ${OLD} in the shed`,
    `${OLD}0`,
    `x${OLD}`,
    '{ "a": 1 }',
    '[ not JSON',
    'meat-3f2b8c1f',
    '',
  ])('leaves %s as it is', (text) => expect(renewed(text)).toBe(text));
});

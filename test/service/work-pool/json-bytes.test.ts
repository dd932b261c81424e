import { describe, expect, it } from '@jest/globals';
import { jsonBytes } from '../../../src/work-pool/json-bytes.js';

describe('bytes of JSON put down part by part', () => {
  it.each([
    ['a plan', { name: '“Hay” – 3 °C', lists: [[1, 2.5], [], [{ a: undefined, b: null }]], n: 0 }],
    ['what is left out', { gone: undefined, there: false, none: null, list: [undefined, 1] }],
    ['a list', [{ a: 1 }, 'two', null, undefined]],
    ['nothing in it', {}],
    ['an empty list', []],
    ['empty lists in it', { a: [], b: {} }],
  ])('are those of %s written in one go', (_what, data) => {
    expect(new TextDecoder().decode(jsonBytes(data))).toBe(JSON.stringify(data));
  });
});

import { describe, expect, it } from '@jest/globals';
import type { Product } from '../../shared/farm/product.js';
import { readReceipts } from '../../shared/farm/receipt-table.js';

const MASH: Product = {
  ...{ id: 'm', kind: 'feed', name: 'Layer mash', phaseIds: ['layer'] },
  ...{ bagKg: 22.68, price: '20' },
};
const KNOWN = { products: [MASH], units: 'us' as const, today: '2027-11-01' };
const read = (text: string, more: Partial<Parameters<typeof readReceipts>[1]> = {}) =>
  readReceipts(
    text.split('\n').map((line) => line.split(';')),
    { ...KNOWN, ...more },
  );

describe('readReceipts', () => {
  it('reads lines as they are copied, with the bag of a feed that the place knows', () => {
    const { lines, problems } = read('2027-04-21;Valley mill;layer MASH;6;$117.60');
    expect(problems).toEqual([]);
    expect(lines).toEqual([
      {
        on: '2027-04-21',
        details: {
          ...{ what: 'feed', name: 'Layer mash', amount: 6, eachKg: 22.68 },
          ...{ money: '117.60', from: 'Valley mill' },
        },
      },
    ]);
  });

  it('goes by a line of heads, and by how days and money are written in a country', () => {
    const us = read('Paid;Feed;Date;Bags;lb\n1,204.50;Scratch;4/21/2027;2;50');
    expect(us.lines[0]!.on).toBe('2027-04-21');
    expect(us.lines[0]!.details).toMatchObject({ money: '1204.50', amount: 2 });
    expect(us.lines[0]!.details.eachKg).toBeCloseTo(22.68, 2);
    const metric = read('21.4.2027;Mühle;Hay;12;84,50', { units: 'metric' });
    expect(metric.lines[0]).toMatchObject({
      on: '2027-04-21',
      details: { what: 'hay', money: '84.50' },
    });
  });

  it('names the line and what is wrong, and takes nothing for granted', () => {
    const { lines, problems } = read(
      [
        '2027-13-01;Mill;Layer mash;6;10',
        '2028-01-01;Mill;Layer mash;6;10',
        '2027-04-21;Mill;;6;10',
        '2027-04-21;Mill;Layer mash;0;10',
        '2027-04-21;Mill;Layer mash;6;0',
        '2027-04-21;Mill;Layer mash;6;-5',
        '2027-04-21;Mill;Layer mash;6;10;0 lb',
        '2027-04-21;Mill;Layer mash;6;',
      ].join('\n'),
    );
    expect(problems).toHaveLength(7);
    problems.forEach((problem, k) => expect(problem).toMatch(new RegExp(`^Line ${k + 1}: `)));
    expect(lines).toHaveLength(1);
  });
});

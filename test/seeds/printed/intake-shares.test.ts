import { describe, expect, it } from '@jest/globals';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

const classOf = (id: string) => rowById(tables.cattle.classes, id);

describe('intake as a share of body weight', () => {
  // Oklahoma State University, "Estimating feed intake in beef cows", 2024, Table 1 (Hibberd and
  // Thrift 1992), retrieved: forage under 52 % TDN, 53 to 59 %, over 59 %.
  it.each([
    ['dry-cow', 1.8, 2.2, 2.5],
    ['cow-calf', 2.2, 2.5, 2.7],
  ])('is for %s %d, %d and %d %% (Oklahoma State 2024, Table 1)', (id, low, middle, high) => {
    const share = classOf(id).bodyWeightShare;
    expect([share.low, share.value, share.high]).toEqual(
      [low, middle, high].map((percent) => expect.closeTo(percent / 100, 9)),
    );
  });

  // Progressive Cattle, "Forage intake in beef cattle", 2022, retrieved.
  it.each(['stocker', 'calf'])(
    'is 3 %% for young growing cattle: %s (Progressive Cattle 2022)',
    (id) => {
      expect(classOf(id).bodyWeightShare.value).toBe(0.03);
    },
  );
});

import { expect, it } from '@jest/globals';
import { ageSaid, oldSaid } from '../../shared/plan/age-said.js';

it.each([
  [0, 'day 0'],
  [139, 'day 139'],
  [140, '20 weeks'],
  [404, '58 weeks'],
])('says %d days as "%s"', (days, said) => {
  expect(ageSaid(days)).toBe(said);
});

it.each([
  [1, '1 day'],
  [58, '58 days'],
  [423, '60 weeks'],
])('says that %d days are "%s" old', (days, said) => {
  expect(oldSaid(days)).toBe(said);
});

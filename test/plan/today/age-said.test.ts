import { expect, it } from '@jest/globals';
import { ageSaid } from '../../../shared/plan/today/age-said.js';

it.each([
  [0, 'day 0'],
  [139, 'day 139'],
  [140, '20 weeks'],
  [404, '58 weeks'],
])('says %d days as "%s"', (days, said) => {
  expect(ageSaid(days)).toBe(said);
});

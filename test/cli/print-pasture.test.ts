import { describe, expect, it } from '@jest/globals';
import { seasonRows } from '../../shared/plan/pasture/season-rows.js';
import { printPasture } from '../../src/cli/print-pasture.js';
import { newPaddocks, newPastureRequest } from '../support/pasture-factories.js';
import { plannedPasture } from '../support/pictures.js';

describe('printPasture', () => {
  it('lists every stay, every run of days on hay and every cut, in the order of their days', () => {
    const request = newPastureRequest({
      paddocks: newPaddocks(14, { areaM2: 4000, forageId: 'mixed' }),
      choices: { to: '2027-08-31' },
    });
    const plan = plannedPasture(request);
    const text = printPasture(plan, request.farm, request.tables);
    const moves = text.slice(text.indexOf('\nMoves\n'), text.indexOf('\nGrass to mow\n'));
    const lines = moves.split('\n').filter((line) => /│ (Mon|Tue|Wed|Thu|Fri|Sat|Sun) /.test(line));
    expect(lines).toHaveLength(seasonRows(plan).length);
    expect(moves).toMatch(/Wed 21 Apr .* Cows on hay .* kg dry/);
    expect(moves).toMatch(/Close Paddock \d+ /);
    expect(moves).toMatch(/Mow Paddock \d+ .* bales, [\d,]+ kg/);
  });
});

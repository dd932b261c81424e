import { describe, expect, it } from '@jest/globals';
import { EXAMPLE_FARM } from '../../../shared/checks/example-farm.js';
import { climateFromMonthlyMeans } from '../../../shared/weather/climate.js';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { Quantity } from '../../../shared/explain/quantity.js';
import type { Move } from '../../../shared/plan/pasture/moves.js';
import { moveHeads, moveQuantities } from '../../../shared/plan/pasture/move-quantities.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import { rowTitle, seasonRows } from '../../../shared/plan/pasture/season-rows.js';
import { END_WORDS } from '../../../shared/plan/pasture/stay-reasons.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { tables } from '../../support/factories.js';
import { rowById } from '../../../shared/tables/tables.js';
import { plannedPasture } from '../../support/pictures.js';

type More = Parameters<typeof newPastureRequest>[0];
const planOf = (more: More): PasturePlan => plannedPasture(newPastureRequest(more));
const inputOf = ({ inputs }: Quantity, label: string): number | string | undefined =>
  inputs.find((each) => each.label === label)?.value;

const land = newPaddocks(12, { areaM2: 3300, forageId: 'mixed' });
const plan = planOf({ paddocks: land, choices: { to: '2027-09-15' } });
const paddockOf = (move: Move) => plan.paddocks.find((each) => each.id === move.paddockId)!;

describe('a move', () => {
  it('goes in on the day after the stay before, or after hay, or at turn-out', () => {
    plan.moves.forEach((move, k) => {
      const before = plan.moves[k - 1];
      if (!before) expect(move.start).toBe('turn-out');
      else expect(move.start).toBe(addDays(before.to, 1) === move.from ? 'next' : 'after-hay');
      expect(move.endBefore).toBe(before?.end);
    });
  });

  it('says why it ends, and in how many strips it is grazed where it is longer than one stay', () => {
    for (const move of plan.moves) {
      if (move.end === 'plan-ends') expect(move.to).toBe(plan.to);
      expect(move.strips).toBe(Math.ceil(move.days / move.longestDays));
    }
    const kinds = new Set(plan.moves.map((move) => move.end));
    expect(kinds.size).toBeGreaterThan(1);
  });

  it('is eaten down when what is left above the residual feeds no day more', () => {
    const dense = planOf({
      paddocks: land,
      herds: [newHerd({ groups: [newGroup({ head: 14 })] })],
      choices: { to: '2027-07-31' },
    });
    const down = dense.moves.filter((move) => move.end === 'eaten-down');
    expect(down.length).toBeGreaterThan(0);
    for (const move of down) {
      const { area, residualKgPerHa } = paddockOf(move);
      const aboveKg = ((move.massAfter - residualKgPerHa) * area.value) / 10_000;
      const need = dense.herds[0]!.needByDay[daysBetween(dense.from, move.to)]!;
      // A part is trampled, and strips grazed first have grown again.
      expect(aboveKg).toBeLessThan(2 * need);
    }
  });

  it('ends before days on which the paddock is shut, and says so', () => {
    const before = 4;
    const shutFrom = addDays(plan.moves[before]!.from, 1);
    const shut = planOf({
      paddocks: land.map((own) => ({
        ...own,
        closedDays: [{ from: shutFrom, to: addDays(shutFrom, 5), why: 'wet' as const }],
      })),
      choices: { to: '2027-09-15' },
    });
    expect(shut.moves[before]).toMatchObject({ days: 1, end: 'shut', start: 'next' });
    expect(shut.moves[before + 1]!.start).toBe('after-hay');
  });

  it('does not begin where all land is shut again soon after: the herd waits', () => {
    const shutFrom = addDays(plan.moves[0]!.from, 1);
    const last = addDays(shutFrom, 5);
    const { moves } = planOf({
      paddocks: land.map((own) => ({
        ...own,
        closedDays: [{ from: shutFrom, to: last, why: 'wet' as const }],
      })),
      choices: { to: '2027-09-15' },
    });
    expect(moves[0]!.start).toBe('turn-out');
    expect(last < moves[0]!.from).toBe(true);
  });

  it('of a herd that stands in its paddock already is no turn-out', () => {
    const readings = land.map((own, k) => ({
      id: `r${k}`,
      paddockId: own.id,
      date: '2027-05-31',
      heightCm: 22,
    }));
    const out = planOf({
      paddocks: land.map((own) => ({ ...own, lastGrazedOn: '2027-05-05' })),
      readings,
      today: '2027-06-01',
      herds: [newHerd({ inPaddockId: 'p3', inSince: '2027-06-01' })],
      choices: { to: '2027-07-31' },
    });
    const [there] = out.moves;
    expect(there!.start).toBe('out-already');
    // The stay runs: no rest is counted to a day on which it was over, and nobody goes in.
    expect(there!.restDays).toBeUndefined();
    expect(moveHeads(out, there!).heightBefore.label).toBe('Height now');
    const row = seasonRows(out).find(({ kind }) => kind === 'graze')!;
    expect(rowTitle(out, row)).toMatch(/^Cows still in /);
    expect(out.keyDates.herds[0]!.turnOut).toBeUndefined();
  });

  it('opens its date, its days, its heights and its rest', () => {
    for (const move of plan.moves) {
      const { date, days, heightBefore, heightAfter, rest } = moveHeads(plan, move);
      const { perCm, residualHeightCm } = paddockOf(move);
      expect(date.value).toBe(move.from);
      expect(inputOf(days, 'Why they leave')).toBe(END_WORDS[move.end]);
      // A tenth of a centimeter, and a tenth of a kg/ha.
      expect(Math.abs(heightBefore.value - move.massBefore / perCm.value)).toBeLessThan(0.051);
      expect(Math.abs(heightAfter.value - move.massAfter / perCm.value)).toBeLessThan(0.051);
      expect(heightAfter.spread!.low).toBeLessThan(heightAfter.value);
      expect(inputOf(heightAfter, 'Residual')).toBeCloseTo(residualHeightCm, 3);
      expect(rest?.value).toBe(move.restDays);
    }
  });

  it('stands at what stood and grew before, and less what went during the stay', () => {
    for (const move of plan.moves) {
      const of = (label: string) => {
        const found = moveQuantities(plan, move).find((each) => each.label === label)!;
        return (symbol: string): number =>
          Number(found.inputs.find((each) => each.symbol === symbol)!.value);
      };
      const before = of('Grass before');
      expect(Math.abs(before('W₀') + before('ΔW') - move.massBefore)).toBeLessThan(0.2);
      const after = of('Grass after');
      const went = (after('growth') - after('F') - after('trampled')) / (after('A') / 10_000);
      // Three amounts of a tenth of a kilogram on a third of a hectare.
      expect(Math.abs(after('W₀') + went - move.massAfter)).toBeLessThan(0.2 + (3 * 0.05) / 0.33);
    }
  });
});

describe('turn-out', () => {
  const turnOut = plan.keyDates.herds[0]!.turnOut!;

  it('is the first day from the ground’s on which an open paddock is tall enough for the first pass', () => {
    const ready = (day: number): boolean =>
      plan.paddocks.some((own) => {
        const { eaten, trampled } = own.days;
        const mass = own.massByDay[day]! + eaten[day]! + trampled[day]!;
        const { firstPassCm, readyHeightCm } = rowById(tables.forages, 'mixed').heights;
        const least = (own.turnInKgPerHa * firstPassCm) / readyHeightCm;
        return least <= mass + 0.5; // masses by day are whole kg/ha
      });
    const fit = daysBetween(
      plan.from,
      String(inputOf(turnOut, 'Ground drained and grass growing from')),
    );
    const out = daysBetween(plan.from, String(turnOut.value));
    expect(fit).toBeGreaterThanOrEqual(0);
    expect(ready(out)).toBe(true);
    for (let day = fit; day < out; day++) expect(ready(day)).toBe(false);
    expect(Number(inputOf(turnOut, 'Height then'))).toBeGreaterThanOrEqual(
      Number(inputOf(turnOut, 'Height for the first quick pass')) - 1e-4,
    );
  });

  it('waits until grass gains, where winter left it tall enough', () => {
    // Hills of western Pennsylvania, means estimated from their place; nobody measured the grass.
    const minC = [-6.5, -5.6, -1.5, 4, 9.3, 14, 16.9, 16, 11.6, 5.8, 0.5, -3.9];
    const maxC = [2.9, 5.1, 11, 17.6, 23.1, 27.3, 29.5, 28.6, 24.6, 18.5, 11.6, 5.6];
    const rainMm = [65, 62, 73, 89, 97, 98, 98, 94, 85, 80, 79, 74];
    const hills = planOf({
      farm: { ...EXAMPLE_FARM, latitudeDeg: 40.24 },
      climate: climateFromMonthlyMeans(minC, maxC, 6, rainMm),
      today: '2027-03-01',
      paddocks: newPaddocks(12, { areaM2: 3035, forageId: 'mixed' }),
      herds: [newHerd({ groups: [newGroup({ head: 4 })] })],
      choices: { to: '2027-06-15' },
    });
    const out = String(hills.keyDates.herds[0]!.turnOut!.value);
    const [first] = hills.paddocks;
    const standsOn = (date: string): number => first!.massByDay[daysBetween(hills.from, date)]!;
    const least = (first!.turnInKgPerHa * 11.4) / first!.readyHeightCm;
    expect(standsOn('2027-03-20')).toBeGreaterThan(least);
    expect(out > '2027-04-01' && out < '2027-05-10').toBe(true);
  });

  it('names the date that was set, and the day from which the herd can graze', () => {
    const set = planOf({
      paddocks: land,
      herds: [newHerd({ turnOutOn: '2027-06-10' })],
      choices: { to: '2027-07-31' },
    }).keyDates.herds[0]!.turnOut!;
    expect(inputOf(set, 'Not before the date you set')).toBe('2027-06-10');
    expect(set.value).toBe('2027-06-10');
    const later = planOf({
      paddocks: land,
      herds: [newHerd({ groups: [newGroup({ arrivesOn: '2027-06-20' })] })],
      choices: { to: '2027-07-31' },
    }).keyDates.herds[0]!.turnOut!;
    expect(inputOf(later, 'Herd can graze from')).toBe('2027-06-20');
    expect(later.value).toBe('2027-06-20');
  });
});

describe('the last day on grass', () => {
  const autumn = planOf({
    paddocks: newPaddocks(4),
    herds: [newHerd({ groups: [newGroup({ head: 10 })] })],
  });
  const { lastGrazing } = autumn.keyDates.herds[0]!;

  it('says why the herd leaves, and that the ripest paddock is below its height or not rested', () => {
    expect(lastGrazing!.value).toBe(autumn.moves.at(-1)!.to);
    expect(inputOf(lastGrazing!, 'Why they leave it')).toBe(END_WORDS[autumn.moves.at(-1)!.end]);
    const [height, needed] = ['Its height', 'Its ready height'].map((label) =>
      Number(inputOf(lastGrazing!, label)),
    );
    const [rested, asked] = String(inputOf(lastGrazing!, 'Its rest')).match(/\d+/g)!.map(Number);
    expect(height! < needed! || rested! < asked!).toBe(true);
  });

  it('leaves no later day on which a paddock is at its height', () => {
    const after = daysBetween(autumn.from, String(lastGrazing!.value)) + 1;
    for (const own of autumn.paddocks)
      for (const mass of own.massByDay.slice(after))
        expect(mass).toBeLessThan(own.turnInKgPerHa + 0.5);
  });

  it('is the last of the plan where the plan ends first', () => {
    const { lastGrazing: cut } = plan.keyDates.herds[0]!;
    expect(cut!.value).toBe('2027-09-15');
    expect(inputOf(cut!, 'Why they leave it')).toBe('the plan ends');
  });
});

describe('grass kept for fall', () => {
  it('grows from the residual, in the paddock that is named', () => {
    const { forageOnHand: standing, paddockIds } = plan.keyDates.stockpile!;
    expect(standing.value).toBeGreaterThan(Number(inputOf(standing, 'Residual')));
    const first = plan.paddocks.find((own) => own.id === paddockIds[0])!;
    expect(inputOf(standing, 'Paddock')).toBe(first.name);
  });
});

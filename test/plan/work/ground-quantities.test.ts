import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { explain } from '../../../shared/formulas/explanation.js';
import { dryEnoughFrom, groundOn } from '../../../shared/plan/work/ground-quantities.js';
import { workOutlookOf } from '../../../shared/plan/work/work-outlook.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { WorkPlan } from '../../../shared/plan/work/planned-work.js';
import type { WorkRequest } from '../../../shared/plan/work/work-request.js';
import { tables } from '../../support/factories.js';
import { newWork } from '../../support/season-factories.js';

const today = '2027-04-20';
const USUAL_MM = tables.work.workableGround.drierThanFieldCapacityMm;

/** A place of known soil after thirty measured days, with 30 mm of rain on one of them. */
function place(checks: readonly [daysAgo: number, isWorkable: boolean][] = []): WorkRequest {
  const request = newWork({
    today,
    farm: { gardenSoilId: 'loam' },
    groundChecks: checks.map(([ago, isWorkable]) => ({ date: addDays(today, -ago), isWorkable })),
  });
  const recent = Array.from({ length: 30 }, (_, k) => ({
    ...{ date: addDays(today, k - 30), minC: 5, maxC: 18 },
    rainMm: k === 20 ? 30 : 0,
  }));
  const forecast = Array.from({ length: 5 }, (_, k) => ({
    ...{ date: addDays(today, k), minC: 5, maxC: 18 },
    rainMm: k === 3 ? 20 : 0,
  }));
  return { ...request, climate: { ...request.climate, recent, forecast } };
}
const planOf = (checks?: Parameters<typeof place>[0]): WorkPlan => workPlanOf(place(checks), 20);

describe('the figure for dry enough', () => {
  it('is the table’s, with its mark, until a ground check asks for another', () => {
    const usual = dryEnoughFrom(planOf().ground.dryEnough);
    expect(usual).toMatchObject({ value: USUAL_MM, mark: tables.work.workableGround.mark });
    // Found dry enough when more than the usual was missing: nothing goes against the table.
    const agreed = planOf([[0, true]]).ground.dryEnough;
    expect(dryEnoughFrom(agreed)).toMatchObject({ value: USUAL_MM, mark: 'estimate' });
    expect(agreed.checks).toBe(1);
  });

  it('is the farm’s own record once ground checks moved it, in the plan and in the outlook', () => {
    // Two days after the rain less than the usual is missing, and it was found dry enough.
    const request = place([[8, true]]);
    const plan = workPlanOf(request, 20);
    const figure = dryEnoughFrom(plan.ground.dryEnough);
    expect(figure.value).toBeLessThan(USUAL_MM);
    expect(figure.mark).toBe('own-record');
    expect(workOutlookOf({ ...request, history: [] }, 5).dryEnough).toEqual(plan.ground.dryEnough);
  });
});

describe('the ground of a day', () => {
  it('that was checked is the farm’s own record, and rests on nothing else', () => {
    for (const [isWorkable, words] of [
      [true, 'dry enough to work'],
      [false, 'too wet'],
    ] as const) {
      const plan = planOf([[0, isWorkable]]);
      expect(groundOn(plan, 0)).toMatchObject({ value: words, mark: 'own-record' });
      expect(plan.weather.isWorkable[0]).toBe(isWorkable ? 1 : 0);
    }
  });

  it('after a check is reckoned on from it, and no surer than the reckoning', () => {
    const ground = groundOn(planOf([[0, false]]), 1);
    expect(ground.mark).toBe('estimate');
    expect(ground.inputs).toContainEqual(
      expect.objectContaining({ value: today, mark: 'own-record' }),
    );
  });

  it('shows the figure it goes by with that one’s mark', () => {
    const figureOf = (plan: WorkPlan) =>
      groundOn(plan, 0).inputs.find(({ symbol }) => symbol === 'D*');
    expect(figureOf(planOf())).toMatchObject({ value: USUAL_MM, mark: 'estimate' });
    expect(figureOf(planOf([[8, true]]))).toMatchObject({ mark: 'own-record' });
  });

  it('is what the plan goes by, day by day', () => {
    const plan = planOf();
    for (let day = 0; day < 14; day++) {
      const { value, inputs } = groundOn(plan, day);
      const of = (symbol: string) => Number(inputs.find((each) => each.symbol === symbol)!.value);
      const isForecast = plan.weather.isForecast[day] === 1;
      const isDry = isForecast
        ? of('D*') <= of('D') && of('P') < of('P_wet') && 0 < of('T_max')
        : inputs.some(({ symbol }) => symbol === 'q*') && of('q*') < of('q');
      expect(value).toBe(isDry ? 'dry enough to work' : 'too wet');
      expect(plan.weather.isWorkable[day]).toBe(isDry ? 1 : 0);
    }
    expect(groundOn(plan, 3).value).toBe('too wet'); // 20 mm are forecast
  });

  it('is frozen where no hour of the day thaws, unless it was looked at', () => {
    const frosty = (checks?: Parameters<typeof place>[0]): WorkPlan => {
      const request = place(checks);
      const forecast = request.climate.forecast!.map((each, k) =>
        k < 2 ? { ...each, minC: -12, maxC: -3 } : each,
      );
      return workPlanOf({ ...request, climate: { ...request.climate, forecast } }, 20);
    };
    expect([0, 1, 3].map((day) => groundOn(frosty(), day).value)).toEqual([
      'frozen or under snow',
      'frozen or under snow',
      'too wet', // 20 mm are forecast
    ]);
    expect(groundOn(frosty([[0, false]]), 0).value).toBe('too wet');
  });

  it('opens to a formula and its sources', () => {
    for (const plan of [planOf(), planOf([[0, true]])]) {
      for (const each of [groundOn(plan, 0), dryEnoughFrom(plan.ground.dryEnough)]) {
        const opened = explain(each, tables, { units: 'metric', currency: 'USD' });
        expect(opened.words.length).toBeGreaterThan(20);
        expect(opened.sources.length).toBeGreaterThan(0);
      }
    }
  });
});

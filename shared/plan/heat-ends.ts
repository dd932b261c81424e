import type { Brooder } from '../farm/facility.js';
import { airRiseK } from '../poultry/brooder-box.js';
import { birdSensibleHeatW, freshAirM3PerH, ventilationWPerK } from '../poultry/brooder-heat.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { scheduleOf } from './brooding.js';
import type { PlanContext } from './context.js';
import { nightAround, type BroodingHeat, type DayHeat } from './heat-days.js';
import { lastHeatDayOf } from './heat-energy.js';
import { nightLowAt } from './move-out.js';
import { rowsOfMove } from './nights-of-move.js';

/**
 * Whether birds that stay in the brooder past the end of the schedule are warm enough there by
 * themselves, held against what birds of their age stand by the rule of the move. Nothing is said where
 * the nights around the brooder are no colder than that.
 *
 * Left out: drafts, and that wet bedding cools them.
 */
export function heatEnds(
  context: PlanContext,
  brooder: Brooder,
  heat: BroodingHeat,
  days: readonly DayHeat[],
): PlanIssue[] {
  const { brooderDays, dateOf, today, say, life, moveOutRule } = context;
  const off = lastHeatDayOf(days) + 1;
  // Where the schedule goes on, the nights are as warm as it asks.
  if (off < days.length || off === 0) return [];
  const nights = Array.from({ length: Math.max(0, brooderDays - off) }, (_, k) => {
    const day = off + k;
    const standC = nightLowAt(moveOutRule, life.arrivalAgeDays + day);
    return { day, standC, ...nightWithoutHeat(context, brooder, heat, day) };
  }).filter(({ day, aroundC, standC }) => today <= dateOf(day) && aroundC < standC);
  if (nights.length === 0) return [];
  const worst = nights.reduce((a, b) => (a.airC - a.standC <= b.airC - b.standC ? a : b));
  const { day, airC, aroundC, standC } = worst;
  const rows = [scheduleOf(context), ...rowsOfMove(context, day)];
  const ends = dateOf(off) < today ? 'ended' : 'ends';
  const said = `The schedule ${ends} the heat on ${say(dateOf(off), 'date')}, at ${say(life.arrivalAgeDays + off, 'day')}. On a cold night, ${say(dateOf(day), 'date')}, it is ${say(aroundC, 'degC')} around ${brooder.name}, and their own warmth keeps it at about ${say(airC, 'degC')} in there with all of them in it and no draft; birds of that age stand ${say(standC, 'degC')} in a dry shelter.`;
  return [
    airC < standC
      ? issue(
          'act',
          'heat-ends-cold',
          `${said} Keep heaters on at night until none huddles, with a part of the top covered, and take them off one at a time, on mild days first.`,
          rows,
        )
      : issue(
          'note',
          'heat-ends',
          `${said} Take the heat off over some days, and leave one heater hung for the night on which they huddle.`,
          rows,
        ),
  ];
}

/** Air around the brooder and in it on a cold night, its lid on where it has one and no heat but the birds’. */
function nightWithoutHeat(
  { life, weather, tables, farm }: PlanContext,
  brooder: Brooder,
  { rig }: BroodingHeat,
  day: number,
): { aroundC: number; airC: number } {
  const { heat: table } = tables;
  const aroundC = nightAround(brooder, weather.coldMinC[day]!, table);
  const birds = life.aliveAll[day]!;
  const weightKg = life.meanWeightKg[day]!;
  const freshAir = freshAirM3PerH(table.ventilation, { birds, weightKg, unventedGas: false });
  const watts = birds * birdSensibleHeatW(table.birds, weightKg, aroundC).mid;
  const rise = airRiseK(
    table.openTop,
    rig.box(1, !rig.hasLid),
    ventilationWPerK(freshAir.mid, farm.elevationM),
    { watts, warmed: 'all-air' },
  );
  return { aroundC, airC: aroundC + rise };
}

import type { FarmPicture } from '../farm/picture.js';
import { facilityOf } from '../farm/facility.js';
import type { IssueLevel } from '../problems/plan-issue.js';
import type { Tables } from '../tables/tables.js';
import { batchContext } from './batch-request.js';
import { conductionOf, headroomOf } from './heat.js';
import { levelOfHeat } from './heat-dangers.js';
import { broodingHeat, daysOfHeat, workingOf } from './heat-days.js';
import { lastHeatDayOf } from './heat-energy.js';
import { instructionsOf, type HeatWeekPart } from './heat-instructions.js';
import { heatOfSpan, heatWeeks, sharesNeeded } from './heat-weeks.js';

/** How the heaters are set on a day, and how pressing the heat of its noon is. */
interface HeatOfDay extends HeatWeekPart {
  readonly noonHeat: IssueLevel;
  readonly suffersAboveC: number;
}

/**
 * How the heaters are set on one day and in the night after it, where the brooder card of the week
 * goes by its coldest night: with a forecast the next night is known better than that.
 *
 * @param day days after arrival, 0 or more
 * @param night a night as they usually are then; left out, one as cold as is to be expected
 * @returns undefined without a brooder, and where no heat is asked for any more
 */
export function heatOfDay(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
  day: number,
  night?: 'usual',
): HeatOfDay | undefined {
  const context = batchContext(picture, tables, batchId);
  const brooder = facilityOf(context.facilities, 'brooder', context.batch.brooderId);
  if (!brooder) return undefined;
  const heat = broodingHeat(context, brooder, workingOf(context, brooder));
  const needed = sharesNeeded(heat, brooder.lengthM * brooder.widthM);
  const days = daysOfHeat(heat, brooder.closesOff ? needed : needed.map(() => 1));
  const headroomM = headroomOf(context, brooder);
  const weeks = heatWeeks(heat, days, lastHeatDayOf(days), headroomM);
  const week = weeks.find(({ first, last }) => first <= day && day <= last);
  const asked = heat.conditions[day];
  if (!week || !asked) return undefined;
  // A night may be counted to the day before it or to the day after.
  const coldC = Math.min(asked.nightC, heat.conditions[day + 1]?.nightC ?? asked.nightC);
  const { minC, coldMinC } = context.weather;
  const nightC = night === 'usual' ? asked.nightC + minC[day]! - coldMinC[day]! : coldC;
  const ofDay = heatOfSpan(
    heat,
    { coldDay: { ...asked, nightC }, usualDay: asked, hotDay: asked },
    {
      ...{ first: day, last: day, share: week.share, headroomM: headroomM(day) },
      hangsAtM: week.night.heightM,
    },
  );
  const conduction = conductionOf(context, brooder);
  const [only] = instructionsOf(context, brooder, heat, { conduction, weeks: [ofDay] });
  return { ...only!, noonHeat: levelOfHeat(ofDay), suffersAboveC: asked.warnC };
}

import { dayLengthFormulas, dayLengthH } from '../calendar/day-length.js';
import { addDays, dayOfYear, type PlainDate } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import {
  fromTable,
  givenOrTable,
  input,
  quantity,
  type NumberQuantity,
} from '../explain/quantity.js';
import type { PlanContext } from './context.js';

export const lampFormulas = {
  lampHours: {
    id: 'light-to-add',
    title: 'Lamp hours to add',
    words:
      'Hours of light wanted, less the natural day. From 16 weeks the wanted day grows by an hour a week to what the lamp makes up, 15 hours where you have not said; it never shrinks while hens lay.',
    symbols: 'h = max(0, L_wanted − N)',
    sources: ['NOAA_SOLAR'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface LightStep {
  readonly from: PlainDate;
  readonly wanted: NumberQuantity;
  readonly natural: NumberQuantity;
  readonly add: NumberQuantity;
}

/** The steps from the one that is in force today on: those before it are past. */
export function lightFrom(steps: readonly LightStep[], today: PlainDate): readonly LightStep[] {
  const inForce = steps.findLastIndex(({ from }) => from <= today);
  return steps.slice(Math.max(0, inForce));
}

/** Lamp hours by week from 16 weeks of age, one row wherever they change by half an hour. */
export function lightSteps({ life, lay, tables, farm, dateOf, batch }: PlanContext): LightStep[] {
  const { light } = tables;
  const isGiven = lay?.isLit ?? false;
  const targetH = isGiven ? lay!.lampH : light.targetH;
  const start = light.startAgeDays - life.arrivalAgeDays;
  const steps: LightStep[] = [];
  let wantedH: number | undefined;
  let lastAdd: number | undefined;
  for (let i = start; i < life.days; i += 7) {
    const date = addDays(batch.arrivalDate, i);
    const naturalH = dayLengthH({ latitudeDeg: farm.latitudeDeg, dayOfYear: dayOfYear(date) });
    // Start from the natural day, then lengthen; light for hens must not get shorter.
    wantedH = Math.max(
      wantedH === undefined
        ? Math.min(naturalH, targetH)
        : Math.min(targetH, wantedH + light.risePerWeekH),
      Math.min(naturalH, targetH),
    );
    const add = Math.round(Math.max(0, wantedH - naturalH) * 2) / 2;
    if (add === lastAdd) continue;
    lastAdd = add;
    steps.push({
      from: dateOf(i),
      wanted: quantity(
        'Light wanted',
        wantedH,
        'h',
        lampFormulas.lampHours,
        [
          input('Age', life.arrivalAgeDays + i, 'day'),
          givenOrTable(isGiven, light, 'Final', targetH, 'h'),
        ],
        wantedH < targetH || isGiven
          ? {}
          : {
              spread: {
                low: light.low,
                high: light.high,
                because: 'sources hold lay with 14 to 16 hours',
              },
            },
      ),
      natural: quantity('Natural day', naturalH, 'h', dayLengthFormulas.dayLength, [
        input('Latitude', `${farm.latitudeDeg}°`, 'text', 'φ'),
        input('Date', date, 'date'),
      ]),
      add: quantity('Lamp hours to add', add, 'h', lampFormulas.lampHours, [
        fromTable(light, 'Light wanted', wantedH, 'h', 'L_wanted'),
        input('Natural day', naturalH, 'h', 'N'),
      ]),
    });
  }
  return steps;
}

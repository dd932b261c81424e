import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { datedFact, fromFarm, fromTable, type Quantity } from '../../explain/quantity.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { daysOff, isBed, lastDayOf } from './closed-beds.js';
import type { PastureContext } from './pasture-context.js';

export const bedFormulas = {
  lastDay: {
    id: 'last-manure-before-harvest',
    title: 'Last day for animals and raw manure',
    words:
      'First harvest less the days that organic rules set from raw manure to harvest: 120 where what is eaten touches the soil, 90 where it does not. Certifiers count from the day that grazing animals and poultry leave in the same way.',
    symbols: 'D = harvest − days',
    sources: [],
    mark: 'published',
  },
  freeFrom: {
    id: 'bed-free-again',
    title: 'Free for animals again',
    words: 'The day after the last harvest.',
    symbols: 'D = last harvest + 1',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Ground of a paddock that becomes a garden. */
export interface BedPart {
  readonly paddockId: string;
  readonly name: string;
  readonly firstHarvest: PlainDate;
  /** Last day on which cattle, birds and raw manure may be there before the harvest. */
  readonly lastDay: Quantity;
  /** Left out while nobody has said when the last harvest is. */
  readonly freeFrom?: Quantity;
}

/** What is to be known of every bed that is harvested in the plan or after it. */
export function bedsOf({ paddocks, tables, dateOf, span }: PastureContext): BedPart[] {
  const { rawManure } = tables.pasture;
  return paddocks.filter(isBed).flatMap((bed): BedPart[] => {
    const { lastHarvestOn } = bed;
    if (lastHarvestOn !== undefined && lastHarvestOn < dateOf(span.from)) return [];
    return [
      {
        paddockId: bed.id,
        name: bed.name,
        firstHarvest: bed.harvestOn,
        lastDay: datedFact(
          `${bed.name}: last day for cattle, birds and raw manure`,
          lastDayOf(bed, rawManure),
          bedFormulas.lastDay,
          [
            fromFarm('First harvest', bed.harvestOn, 'date'),
            fromTable(rawManure, 'Days before it', daysOff(bed, rawManure), 'day'),
          ],
        ),
        ...(lastHarvestOn === undefined
          ? {}
          : {
              freeFrom: datedFact(
                `${bed.name}: free for them again`,
                addDays(lastHarvestOn, 1),
                bedFormulas.freeFrom,
                [fromFarm('Last harvest', lastHarvestOn, 'date')],
              ),
            }),
      },
    ];
  });
}

/** Days on which animals stood in a paddock. */
export interface StoodThere {
  readonly paddock: number;
  readonly last: PlainDate;
}

/** Beds on which animals stood too shortly before the harvest, and what is to be kept off which. */
export function bedIssues(context: PastureContext, stood: readonly StoodThere[]): PlanIssue[] {
  const { paddocks, tables, say } = context;
  const { rawManure } = tables.pasture;
  const late = paddocks.flatMap((bed, p) => {
    if (!isBed(bed)) return [];
    const known = bed.lastGrazedOn === undefined ? [] : [bed.lastGrazedOn];
    const last = [
      ...stood.filter(({ paddock }) => paddock === p).map((each) => each.last),
      ...known,
    ]
      .filter((date) => date < bed.harvestOn)
      .sort()
      .at(-1);
    if (last === undefined || daysOff(bed, rawManure) <= daysBetween(last, bed.harvestOn))
      return [];
    return [
      `${bed.name} (animals there until ${say(last, 'date')}, harvest ${say(bed.harvestOn, 'date')}; harvest from ${say(addDays(last, daysOff(bed, rawManure)), 'date')})`,
    ];
  });
  const stop =
    late.length === 0
      ? []
      : [
          issue(
            'stop',
            'manure-before-harvest',
            `Fewer than ${rawManure.touchingSoilDays} days between animals and harvest, ${rawManure.offSoilDays} where the crop stands clear of the ground: ${late.join('; ')}.`,
            [rawManure],
          ),
        ];
  return [...stop, ...keepOff(context)];
}

/** The dates of beds that are still ahead. */
function keepOff(context: PastureContext): PlanIssue[] {
  const { say, tables } = context;
  const beds = bedsOf(context);
  if (beds.length === 0) return [];
  const texts = beds.map(
    ({ name, lastDay, firstHarvest, freeFrom }) =>
      `${name} after ${say(lastDay.value, 'date')} (harvest ${say(firstHarvest, 'date')}; ${
        freeFrom
          ? `free again from ${say(freeFrom.value, 'date')}`
          : 'say the last harvest to graze it again'
      })`,
  );
  return [
    issue('note', 'bed-kept-off', `Keep cattle, birds and raw manure off ${texts.join('; ')}.`, [
      tables.pasture.rawManure,
    ]),
  ];
}

import type { PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { datedFact, fromTable, input, type Quantity } from '../../explain/quantity.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { isBed, lastDayOf } from './closed-beds.js';
import { cattleFrom } from './closed-pens.js';
import type { PastureContext } from './pasture-context.js';
import type { Penned } from './penned.js';

export const pensFormulas = {
  cattleFrom: {
    id: 'cattle-after-birds',
    title: 'Cattle again where birds stood',
    words:
      'The day the birds leave, and the days that stock is kept off ground with spread poultry litter. Pick up every dead bird: what is left of one can kill cattle.',
    symbols: 'D = day they leave + days',
    sources: [],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Ground on which birds stand, in the days of the plan. */
export interface PensPart {
  readonly batchId: string;
  readonly paddockId: string;
  readonly from: PlainDate;
  readonly leaveOn: PlainDate;
  /** First day on which cattle may be there again. */
  readonly cattleFrom: Quantity;
}

/** Birds that keep cattle off a paddock on any day of the plan. */
const inPlan = ({ penned = [], span, dateOf, tables }: PastureContext): Penned[] =>
  penned.filter(
    (birds) => birds.from < dateOf(span.to) && dateOf(span.from) < cattleFrom(birds, tables),
  );

const nameOf = ({ paddocks }: PastureContext, { paddockId }: Penned): string =>
  paddocks.find(({ id }) => id === paddockId)!.name;

export const pensOf = (context: PastureContext): PensPart[] =>
  inPlan(context).map((birds) => {
    const { batchId, paddockId, from, leaveOn, rows } = birds;
    const { birdsOff } = context.tables.pasture;
    return {
      ...{ batchId, paddockId, from, leaveOn },
      cattleFrom: datedFact(
        `${nameOf(context, birds)}: free for cattle after ${birds.name}`,
        cattleFrom(birds, context.tables),
        pensFormulas.cattleFrom,
        [
          input('They leave', leaveOn, 'date'),
          fromTable(birdsOff, 'Days after them', birdsOff.value, 'day'),
        ],
        { rows },
      ),
    };
  });

/** What is to be known of birds in a paddock: when cattle keep off it, and a harvest in their way. */
export const pensIssues = (context: PastureContext): PlanIssue[] =>
  inPlan(context).flatMap((birds) => [
    ...onBed(context, birds),
    ...behindToo(context, birds),
    keptOff(context, birds),
  ]);

function keptOff(context: PastureContext, birds: Penned): PlanIssue {
  const { say, tables } = context;
  const { birdsOff } = tables.pasture;
  return issue(
    'note',
    'birds-in-paddock',
    `${birds.name} stand in ${nameOf(context, birds)} from ${say(birds.from, 'date')} to ${say(birds.leaveOn, 'date')}. Keep cattle off it then and for ${say(birdsOff.value, 'day')} after: it can be grazed again from ${say(cattleFrom(birds, tables), 'date')}.`,
    [birdsOff],
  );
}

/** Birds where a bed is to be harvested, too late or in the middle of it. */
function onBed(context: PastureContext, birds: Penned): PlanIssue[] {
  const { say, tables } = context;
  const { rawManure } = tables.pasture;
  const bed = context.paddocks.find(({ id }) => id === birds.paddockId)!;
  if (!isBed(bed)) return [];
  const lastDay = lastDayOf(bed, rawManure);
  const isOver = bed.lastHarvestOn !== undefined && bed.lastHarvestOn < birds.from;
  if (birds.leaveOn <= lastDay || isOver) return [];
  return [
    issue(
      'stop',
      'birds-before-harvest',
      `${birds.name} are to stand in ${bed.name} from ${say(birds.from, 'date')} to ${say(birds.leaveOn, 'date')}, and it is harvested from ${say(bed.harvestOn, 'date')}: the last day there for birds is ${say(lastDay, 'date')}. Choose another paddock under the batch${bed.lastHarvestOn === undefined ? '' : `, or let them come after ${say(bed.lastHarvestOn, 'date')}`}.`,
      [rawManure],
    ),
  ];
}

function behindToo(context: PastureContext, birds: Penned): PlanIssue[] {
  const { alsoBehind } = birds;
  if (alsoBehind === undefined) return [];
  return [
    issue(
      'act',
      'birds-in-two-places',
      `${birds.name} are said to stand in ${nameOf(context, birds)} and to follow ${alsoBehind}. They are planned to stand: take one of the two away.`,
    ),
  ];
}

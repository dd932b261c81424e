import {
  datedFact,
  from,
  fromRow,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
} from '../explain/quantity.js';
import type { PlainDate } from '../calendar/plain-date.js';
import { facilityOf, type Freezer } from '../farm/facility.js';
import { freezerRoomL, processingFormulas } from '../poultry/processing.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { rowById } from '../tables/tables.js';
import type { PlanContext } from './context.js';
import { cockerelsLeaving } from './cockerels.js';
import { found, type Found } from './found.js';
import { eatenUpOn, leftOn, type EatingPace, type Packed } from './freezer-account.js';
import { birdsToProcess } from './leaving-weights.js';
import { processingDays } from './processing-days.js';

/** The freezer after a batch, or a day's part of it, was packed in. */
export interface FreezerStep {
  readonly on: PlainDate;
  readonly batchName: string;
  readonly birds: number;
  readonly filled: NumberQuantity;
  readonly isOver: boolean;
}

export interface FreezerPart {
  readonly freezerNeed: NumberQuantity;
  /** Room for this batch on the day that it is packed in, other batches counted. */
  readonly freezerFree?: NumberQuantity;
  /** Of all batches that go into the same freezer, from the first that is still in it. */
  readonly freezerSteps?: readonly FreezerStep[];
  readonly eatenUp?: Quantity;
}

/** What a batch brings to its freezer, by day; of layers the cockerels. Nothing without a freezer. */
export function packedOf(context: PlanContext): Packed[] {
  const { batch, life } = context;
  const { freezerId } = batch;
  if (freezerId === undefined || life.strain.dressing === undefined) return [];
  if (batch.purpose !== 'meat') {
    const leaving = cockerelsLeaving(context);
    if (!leaving) return [];
    const { day, date, birds } = leaving;
    const literEach = literEachOf(context, life.weightKg.male[day - 1]!);
    return [{ batchName: batch.name, freezerId, on: date, birds, literEach }];
  }
  return processingDays(context, birdsToProcess(life)).leaving.map(({ date, birds, index }) => ({
    batchName: batch.name,
    freezerId,
    on: date,
    birds,
    literEach: literEachOf(context, life.meanWeightKg[index]!),
  }));
}

/** Liters of freezer that a bird takes, packed. */
function literEachOf({ batch, life, tables }: PlanContext, liveKg: number): number {
  const { processing } = tables;
  const share = batch.dressingShare ?? rowById(processing.dressing, life.strain.dressing!).share;
  return freezerRoomL(processing, liveKg * share);
}

/** Room the batch needs, room there is by day with all other batches, and when it is over. */
export function planFreezer(context: PlanContext, packedAll: NumberQuantity): Found<FreezerPart> {
  const { packing } = context.tables.processing;
  const freezer = facilityOf(context.facilities, 'freezer', context.batch.freezerId);
  const freezerNeed = quantity(
    'Freezer room needed',
    packedAll.value / packing.kgPerL,
    'freezerL',
    processingFormulas.freezer,
    [
      from(packedAll, 'W_p', 'Packed, all birds'),
      fromTable(packing, 'A liter holds', packing.kgPerL, 'kgPerL', 'ρ'),
    ],
    {
      spread: {
        low: packedAll.value / packing.high,
        high: packedAll.value / packing.low,
        because: packing.because ?? 'packing differs',
      },
    },
  );
  if (!freezer) return found({ freezerNeed });
  const account = accountOf(context, freezer, freezerNeed);
  return found({ freezerNeed, ...account.part }, { issues: account.issues });
}

/** Freezer room of the cockerels of layers; undefined without any, or where none is chosen. */
export function cockerelsInFreezer(context: PlanContext): Found<NumberQuantity | undefined> {
  const { batch, facilities, life, tables } = context;
  const freezer = facilityOf(facilities, 'freezer', batch.freezerId);
  const [own] = batch.purpose === 'meat' ? [] : packedOf(context);
  if (!freezer || !own) return found(undefined);
  const { packing, dressing } = tables.processing;
  const need = quantity(
    'Freezer room for cockerels',
    own.birds * own.literEach,
    'freezerL',
    processingFormulas.freezer,
    [
      input('Cockerels', own.birds, 'count', 'n'),
      fromTable(packing, 'A liter holds', packing.kgPerL, 'kgPerL', 'ρ'),
    ],
    { rows: [rowById(dressing, life.strain.dressing!), life.losses, ...life.weightRows] },
  );
  return found(need, { issues: accountOf(context, freezer, need).issues });
}

/** What is in a freezer by day. */
interface Account {
  readonly packed: readonly Packed[];
  readonly pace: EatingPace;
  readonly isOwn: (each: Packed) => boolean;
}

function accountOf(
  context: PlanContext,
  freezer: Freezer,
  freezerNeed: NumberQuantity,
): Found<Omit<FreezerPart, 'freezerNeed'>> {
  const own = packedOf(context);
  const account: Account = {
    packed: [...context.packed.filter(({ freezerId }) => freezerId === freezer.id), ...own].sort(
      byDay,
    ),
    pace: paceOf(context, freezer),
    isOwn: (each) => own.includes(each),
  };
  const steps = account.packed.map((each) => stepOf(context, freezer, account, each, freezerNeed));
  const firstOwn = account.packed.findIndex(account.isOwn);
  const before = leftOn(account.packed, account.pace, account.packed[firstOwn]!.on);
  const isShown = (k: number): boolean => firstOwn <= k || 0 < before[k]!;
  return found(
    {
      freezerFree: freeFor(context, freezer, account),
      freezerSteps: steps.filter((_, k) => isShown(k)),
      eatenUp: datedFact(
        'Eaten up',
        eatenUpOn(account.packed, account.pace, account.isOwn),
        processingFormulas.eatenUp,
        [
          input(
            'Birds packed',
            own.reduce((n, { birds }) => n + birds, 0),
            'count',
          ),
          paceInput(context, freezer),
        ],
        { rows: [context.life.losses] },
      ),
    },
    { issues: overIssue(context, freezer, account, steps) },
  );
}

/** Those of one day by name, so that two batches tell of them alike. */
const byDay = (a: Packed, b: Packed): number =>
  a.on === b.on ? (a.batchName < b.batchName ? -1 : 1) : a.on < b.on ? -1 : 1;

export const paceOf = ({ tables }: Pick<PlanContext, 'tables'>, freezer: Freezer): EatingPace =>
  freezer.birdsEatenPerWeek === undefined
    ? { evenlyOverDays: tables.processing.keeping.days }
    : { birdsPerWeek: freezer.birdsEatenPerWeek };

const paceInput = ({ tables }: PlanContext, freezer: Freezer): QuantityInput =>
  freezer.birdsEatenPerWeek === undefined
    ? fromTable(
        tables.processing.keeping,
        'Eaten evenly over',
        tables.processing.keeping.days,
        'day',
      )
    : fromRow(
        freezer,
        'birdsEatenPerWeek',
        'Birds eaten a week',
        freezer.birdsEatenPerWeek,
        'ratio',
      );

function stepOf(
  context: PlanContext,
  freezer: Freezer,
  { packed, pace }: Account,
  { on, batchName, birds }: Packed,
  freezerNeed: NumberQuantity,
): FreezerStep {
  // On one day all that comes is counted, so that both batches of it hear of a full freezer.
  const there = leftOn(packed, pace, on);
  const byBatch = new Map<string, number>();
  packed.forEach((each, k) => {
    const liters = there[k]! * each.literEach;
    if (0 < liters) byBatch.set(each.batchName, (byBatch.get(each.batchName) ?? 0) + liters);
  });
  const liters = freezer.usedL + [...byBatch.values()].reduce((sum, l) => sum + l, 0);
  return {
    on,
    batchName,
    birds,
    isOver: freezer.liters + 1e-9 < liters,
    filled: quantity('In the freezer', liters, 'freezerL', processingFormulas.freezerFilled, [
      fromRow(freezer, 'usedL', 'Other food', freezer.usedL, 'freezerL'),
      ...[...byBatch].map(([name, l]) => ({
        ...input(name, l, 'freezerL'),
        mark: freezerNeed.mark,
      })),
      paceInput(context, freezer),
    ]),
  };
}

/** Least room there is for the batch on a day on which it comes. */
function freeFor(context: PlanContext, freezer: Freezer, { packed, pace, isOwn }: Account) {
  const last = packed.findLast(isOwn)!.on;
  const left = leftOn(packed, pace, last);
  const others = packed.reduce(
    (sum, each, k) => (isOwn(each) ? sum : sum + left[k]! * each.literEach),
    0,
  );
  return quantity(
    'Freezer room for this batch',
    Math.max(0, freezer.liters - freezer.usedL - others),
    'freezerL',
    processingFormulas.freezerLeft,
    [
      fromRow(freezer, 'liters', 'Freezer', freezer.liters, 'freezerL'),
      fromRow(freezer, 'usedL', 'Other food', freezer.usedL, 'freezerL'),
      { ...input('Left of other batches', others, 'freezerL'), mark: context.life.losses.mark },
      paceInput(context, freezer),
    ],
  );
}

/** The first day on which the freezer is over while birds of this batch are in it. */
function overIssue(
  context: PlanContext,
  freezer: Freezer,
  { packed, pace, isOwn }: Account,
  steps: readonly FreezerStep[],
): PlanIssue[] {
  const { say } = context;
  const over = steps.find(
    ({ on, isOver }) =>
      isOver && leftOn(packed, pace, on).some((left, k) => 0 < left && isOwn(packed[k]!)),
  );
  if (!over) return [];
  const left = leftOn(packed, pace, over.on);
  const names = [...new Set(packed.filter((_, k) => 0 < left[k]!).map((p) => p.batchName))];
  const together = 1 < names.length ? ` ${names.join(' and ')} are in it together.` : '';
  return [
    issue(
      'act',
      'freezer-full',
      `${freezer.name} is over from ${say(over.on, 'date')}: about ${say(over.filled.value, 'freezerL')} in it, and it holds ${say(freezer.liters, 'freezerL')}.${together} Sell or give some fresh, cut up the birds, find more room, or move a batch.`,
      [context.tables.processing.packing],
    ),
  ];
}

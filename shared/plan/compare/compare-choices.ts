import type { BatchChoice } from '../../farm/batch-choice.js';
import type { FarmPicture, NamedBatch } from '../../farm/picture.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { tablesIn } from '../../tables/in-own-units.js';
import { formatValue, type Reader } from '../../units/format.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { batchRequest } from '../batch-request.js';
import { planContext } from '../plan-context.js';
import { breakEvenOf } from '../cost/break-even.js';
import type { Fetching } from '../cost/fetching.js';
import { planningDay } from '../planning-day.js';
import { fewWords } from '../today/warnings.js';
import { chosenBatches, wasTold } from './chosen-batch.js';
import { columnNumbers, type ColumnNumbers } from './column-numbers.js';
import { labelOf } from './label-of.js';
import { saidBeside } from './said-beside.js';

/** One way to raise the batch: a whole plan, read into the numbers that people choose by. */
export interface ChoiceColumn extends Partial<ColumnNumbers> {
  readonly label: string;
  /** In words against the first column. */
  readonly said: readonly string[];
  /** What the farm has no room, hands or warmth for, in a few words. */
  readonly doesNotFit: readonly string[];
  /** What its cost leaves out, in words; empty where all of it has a price. */
  readonly leftOut?: readonly string[];
  /** Why it cannot be planned at all. */
  readonly notPlanned?: string;
}

export interface Comparison {
  readonly columns: readonly ChoiceColumn[];
  /** Set where something was told of the batch, which no column counts. */
  readonly isWithoutTold: boolean;
}

/** A choice with its plans. */
interface PlannedChoice {
  readonly plans: readonly BatchPlan[];
  readonly numbers: ColumnNumbers;
}

/**
 * A batch as it is planned beside other ways to raise it, each a whole plan by the same core.
 *
 * @param fetching what the farm's trips for feed cost, of which each column bears its share by weight
 * @throws FieldError when the batch itself cannot be planned; of a choice its column says so
 */
export function compareChoices(
  picture: FarmPicture,
  allTables: Tables,
  batch: NamedBatch,
  choices: readonly BatchChoice[],
  fetching?: Fetching,
): Comparison {
  const tables = tablesIn(picture.farm.units, allTables);
  const reader: Reader = { ...picture.farm, today: picture.today };
  const plannedOf = (choice: BatchChoice) =>
    planned(picture, tables, { batch, choice, fetching: fetchedAs(batch.id, fetching) });
  const asIs = plannedOf({});
  const columns = choices.map((choice): ChoiceColumn => {
    const label = labelOf(choice, tables, reader);
    try {
      const other = plannedOf(choice);
      const said = saidBeside(asIs.numbers, other.numbers, reader);
      return { label, ...columnOf(other), said };
    } catch (error) {
      if (!(error instanceof FieldError)) throw error;
      const notPlanned = error.problems.map(({ fix }) => fix).join(' ');
      return { label, said: [], doesNotFit: [], notPlanned };
    }
  });
  const first = {
    label: `As planned: ${formatValue(batch.wantedBirds, 'count', reader)} ${batch.wantedBirds === 1 ? 'bird' : 'birds'}`,
  };
  return {
    columns: [{ ...first, ...columnOf(asIs), said: [] }, ...columns],
    isWithoutTold: wasTold(picture, batch.id),
  };
}

interface Asked {
  readonly batch: NamedBatch;
  readonly choice: BatchChoice;
  readonly fetching: Fetching | undefined;
}

/** Every column is fetched for like the batch itself. */
const fetchedAs = (batchId: string, fetching: Fetching | undefined): Fetching | undefined =>
  fetching && { perKg: fetching.batches[batchId] ?? fetching.perKg, batches: {} };

function planned(
  picture: FarmPicture,
  tables: Tables,
  { batch, choice, fetching }: Asked,
): PlannedChoice {
  const chosen = chosenBatches(picture, batch, choice, tables);
  const made = chosen.batchIds.map((id) => {
    const own = chosen.picture.batches.find((each) => each.id === id)!;
    const of = { ...chosen.picture, today: planningDay(own, picture.today) };
    const plan = planBatch(of, tables, id);
    return {
      plan,
      breakEven: breakEvenOf(planContext(batchRequest(of, tables, id)), plan, fetching),
    };
  });
  return { plans: made.map(({ plan }) => plan), numbers: columnNumbers(made) };
}

const columnOf = (of: PlannedChoice): Omit<ChoiceColumn, 'label' | 'said'> => ({
  ...of.numbers,
  leftOut: of.plans[0]!.bill.leftOut,
  doesNotFit: doesNotFit(of),
});

/** What is in the way, once each: a first half batch and a second say much the same. */
const doesNotFit = ({ plans }: PlannedChoice): string[] => [
  ...new Set(
    plans.flatMap(({ issues }) =>
      issues.filter((each) => OF_ROOM.test(each.code) && each.level !== 'note').map(fewWords),
    ),
  ),
];

const OF_ROOM =
  /^(brooder-|heat-too-weak|circuit-overloaded|no-warm-nights|move-|cold-later|pens-|coop-|stocking-|place-taken|freezer-|store-|processing-|eggs-short|withdrawal-|no-post)/;

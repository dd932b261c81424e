import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import type { Quantity } from '../../shared/explain/quantity.js';
import { comparisonFields } from '../../shared/farm/batch-choice.js';
import { problemsOfRow } from '../../shared/farm/check-row.js';
import { problemsOfNumber } from '../../shared/farm/bounds.js';
import { BATCH_KG } from '../../shared/farm/ration-asked.js';
import { factsOfBought } from '../../shared/farm/told-fact.js';
import type { FarmPicture, NamedBatch } from '../../shared/farm/picture.js';
import type { ReadyGoal } from '../../shared/farm/ready-goal.js';
import { planAnimals, type AnimalPlans } from '../../shared/plan/farm/animal-plans.js';
import { findArrivals, whyNot } from '../../shared/plan/arrival-finder.js';
import { planBatch } from '../../shared/plan/batch-plan.js';
import { compareChoices } from '../../shared/plan/compare/compare-choices.js';
import { whatMoves } from '../../shared/plan/compare/what-moves.js';
import { batchCost } from '../../shared/plan/cost/batch-cost.js';
import { refuseUnplannable } from '../../shared/plan/farm/check-picture.js';
import { batchQuantities, pastureQuantities } from '../../shared/plan/farm/explain-plans.js';
import { feedSpent } from '../../shared/plan/feed-spent/feed-spent.js';
import { feedYear } from '../../shared/plan/feed-year/feed-year.js';
import { sitterSheet } from '../../shared/plan/handover/sitter-sheet.js';
import { stopsOn } from '../../shared/plan/handover/sheet-stops.js';
import { grassYears } from '../../shared/plan/pasture/grass-years.js';
import { planPasture } from '../../shared/plan/pasture/pasture-plan.js';
import { todayOf } from '../../shared/plan/today/today.js';
import { readyBy } from '../../shared/plan/ready-by.js';
import { calendarEntries } from '../../shared/plan/work/calendar-entries.js';
import type { WorkPlan } from '../../shared/plan/work/planned-work.js';
import { planWork, workOutlook } from '../../shared/plan/farm/work-of-farm.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { checkedRation } from '../../shared/ration/check-ration.js';
import { rationOf } from '../../shared/ration/ration.js';
import type { Tables } from '../../shared/tables/tables.js';
import type { Reader } from '../../shared/units/format.js';
import { fromShown } from '../../shared/units/unit.js';
import { loadSolver } from '../rations/solver.js';
import { feedText } from '../calendar/feed.js';
import { choicesOf, printComparison } from './print-compare.js';
import { printCost } from './print-cost.js';
import { buyingListCsv } from '../documents/buying-list.js';
import { printSpent } from './print-spent.js';
import { printFeed } from './print-feed.js';
import { printGrassYears, printPasture } from './print-pasture.js';
import { printArrivals, printPlan } from './print-plan.js';
import { printRation } from './print-ration.js';
import { printReady } from './print-ready.js';
import { printToday } from './print-today.js';
import { printOutlook, printSheet, printWork } from './print-work.js';
import { explanationsText } from './text.js';

/** What is asked of a farm in the terminal. */
export interface Asked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  /** Words after what is wanted: a batch, a span, the place of a hand-over. */
  readonly words: readonly string[];
  readonly json: boolean;
  /** A word in the labels of the numbers to open; empty for all of them. */
  readonly explain: string | undefined;
  readonly batch: string | undefined;
  readonly whyNot: string | undefined;
}

/** Feed that the document says was bought, as it would have been told. */
const boughtIn = ({ feedBought = [] }: FarmPicture) => factsOfBought(feedBought);

/** What the farm's trips for feed cost by weight; undefined where none has a price. */
const fetchingOf = ({ picture, tables }: Asked) =>
  feedYear(picture, tables, planAnimals(picture, tables), boughtIn(picture)).fetching;

/** Everything that can be asked for, by the word for it. */
export const OUTPUTS = {
  work: (asked: Asked): string => {
    const { plan } = workOf(asked);
    return asked.json ? JSON.stringify(plan) : printWork(plan, readerOf(asked.picture));
  },

  today: (asked: Asked): string => {
    const { picture, tables } = asked;
    const { plan, animals } = workOf(asked);
    const day = todayOf(picture, tables, animals, plan);
    return asked.json ? JSON.stringify(day) : printToday(day, readerOf(picture));
  },

  chances: (asked: Asked): string => {
    const { picture, tables } = asked;
    refuseUnplannable(picture, tables);
    return printOutlook(
      workOutlook(picture, tables, planAnimals(picture, tables), []),
      readerOf(picture),
    );
  },

  batch: (asked: Asked): string => {
    const { picture, tables, explain } = asked;
    const plan = atItsPlace(asked, batchOf(asked, asked.words[0]), ({ id }) =>
      planBatch(picture, tables, id),
    );
    if (explain !== undefined) return opened(asked, batchQuantities(plan, tables));
    return asked.json ? JSON.stringify(plan) : printPlan(plan, picture.farm, tables);
  },

  cost: (asked: Asked): string => {
    const { picture, tables, explain } = asked;
    const batch = batchOf(asked, asked.words[0]);
    const plan = atItsPlace(asked, batch, ({ id }) => planBatch(picture, tables, id));
    const cost = {
      ...batchCost(picture, tables, batch.id, { plan, fetching: fetchingOf(asked) }),
      moves: whatMoves({ picture, tables, batch, plan }),
    };
    if (explain !== undefined) return opened(asked, quantitiesIn(cost));
    return asked.json ? JSON.stringify(cost) : printCost(cost, picture.farm, picture.today);
  },

  compare: (asked: Asked): string => {
    const { picture, tables } = asked;
    const choices = choicesOf(asked.words);
    const problems = problemsOfRow(comparisonFields, { choices });
    if (0 < problems.length) throw new FieldError(problems);
    const compared = atItsPlace(asked, batchOf(asked, asked.batch), (batch) =>
      compareChoices(picture, tables, batch, choices, fetchingOf(asked)),
    );
    return asked.json
      ? JSON.stringify(compared)
      : printComparison(compared, picture.farm, picture.today);
  },

  weeks: (asked: Asked): string => {
    const { picture, tables, whyNot: date } = asked;
    const [from = '', to = ''] = asked.words;
    const weeks = atItsPlace(asked, batchOf(asked, asked.batch), ({ id }) =>
      findArrivals(picture, tables, id, { from, to }),
    );
    const reader = readerOf(picture);
    return date === undefined ? printArrivals(weeks, reader) : whyNot(weeks, date, reader);
  },

  slot: (asked: Asked): string => {
    const [on = '', head] = asked.words;
    return ready(asked, {
      goal: 'slot',
      on,
      ...(head === undefined ? {} : { head: Number(head) }),
    });
  },

  ready: (asked: Asked): string => {
    const { purpose } = batchOf(asked, asked.batch);
    return ready(asked, { goal: purpose === 'meat' ? 'ready' : 'eggs', on: asked.words[0] ?? '' });
  },

  pasture: (asked: Asked): string => {
    const { picture, tables, explain } = asked;
    const plan = planPasture(picture, tables);
    if (explain !== undefined) return opened(asked, pastureQuantities(plan, tables));
    return asked.json ? JSON.stringify(plan) : printPasture(plan, picture.farm, tables);
  },

  /** The feed of the year; `feed csv` is the shopping list for a spreadsheet, `feed spent` the last year’s. */
  feed: (asked: Asked): string => {
    const { picture, tables, explain } = asked;
    refuseUnplannable(picture, tables);
    const animals = planAnimals(picture, tables);
    if (asked.words[0] === 'spent') {
      const spent = feedSpent(picture, tables, animals, boughtIn(picture));
      return asked.json ? JSON.stringify(spent ?? {}) : printSpent(spent, readerOf(picture));
    }
    const year = feedYear(picture, tables, animals, boughtIn(picture));
    if (explain !== undefined) return opened(asked, quantitiesIn(year));
    if (asked.json) return JSON.stringify(year);
    return asked.words[0] === 'csv'
      ? buyingListCsv(year, picture.farm).trimEnd()
      : printFeed(year, readerOf(picture));
  },

  'grass-years': (asked: Asked): string => {
    const { picture, tables } = asked;
    const plan = planPasture(picture, tables);
    return printGrassYears(grassYears(picture, tables), plan, readerOf(picture));
  },

  sheet: (asked: Asked): string => {
    const { picture, tables } = asked;
    const { plan, animals } = workOf(asked);
    const which = asked.words[0] ?? '1';
    const handover = picture.handovers[Number(which) - 1];
    if (!handover) throw noHandover(which, picture.handovers.length);
    const stops = stopsOn(picture, tables, animals, handover);
    return printSheet(
      sitterSheet(handover, plan, stops, { people: picture.people, jobs: picture.jobs, tables }),
      readerOf(picture),
    );
  },

  mix: async (asked: Asked): Promise<string> => {
    const { picture, tables } = asked;
    const [birdsId, stageId, given, ...others] = asked.words;
    const birds = tables.rationNeeds.find(({ id }) => id === birdsId) ?? tables.rationNeeds[0]!;
    const ration = rationOf(
      checkedRation(
        {
          birdsId: birdsId ?? birds.id,
          stageId: stageId ?? birds.stages[0]!.id,
          alsoFor: inPairs(others),
          batchKg: batchKgOf(given, picture),
        },
        picture,
        tables,
      ),
      tables,
      await loadSolver(),
    );
    return asked.json ? JSON.stringify(ration) : printRation(ration, readerOf(picture));
  },

  calendar: (asked: Asked): string => {
    const { plan, animals } = workOf(asked);
    const { name, units } = asked.picture.farm;
    return feedText(calendarEntries(plan, units, animals.pasture), { name, id: name, revision: 1 });
  },
};

/** Further flocks of one mix: birds and age, one after the other. */
const inPairs = (words: readonly string[]): { birdsId: string; stageId: string }[] =>
  Array.from({ length: Math.ceil(words.length / 2) }, (_, k) => ({
    birdsId: words[2 * k]!,
    stageId: words[2 * k + 1] ?? '',
  }));

/** What is mixed at once, as it was typed in the farm's units; a hundredweight or 50 kg else. */
function batchKgOf(given: string | undefined, { farm }: FarmPicture): number {
  const usual = farm.units === 'us' ? '100' : '50';
  const kg = fromShown(Number(given ?? usual), 'kg', farm.units);
  const problems = problemsOfNumber('batchKg', kg, BATCH_KG.bounds);
  if (0 < problems.length) throw new FieldError(problems.map((each) => ({ ...each, given })));
  return kg;
}

/** A batch planned from its end. */
function ready(asked: Asked, goal: ReadyGoal): string {
  const { picture, tables } = asked;
  const answer = atItsPlace(asked, batchOf(asked, asked.batch), ({ id }) =>
    readyBy(picture, tables, id, goal),
  );
  return asked.json ? JSON.stringify(answer) : printReady(answer, readerOf(picture));
}

function workOf({ picture, tables }: Asked): { plan: WorkPlan; animals: AnimalPlans } {
  refuseUnplannable(picture, tables);
  const animals = planAnimals(picture, tables);
  const { keep: _keep, ...plan } = planWork(picture, tables, animals);
  return { plan, animals };
}

/** Who reads it: the household, on the day it is there. */
const readerOf = ({ farm, today }: FarmPicture): Reader => ({ ...farm, today });

const opened = ({ picture, tables, explain }: Asked, quantities: readonly Quantity[]): string =>
  explanationsText(quantities, tables, readerOf(picture), explain ?? '');

/** A batch by its name or id; the first where none is named. */
function batchOf({ picture: { batches } }: Asked, given: string | undefined): NamedBatch {
  const batch =
    given === undefined
      ? batches[0]
      : batches.find(({ id, name }) => given === id || given === name);
  if (batch) return batch;
  throw new FieldError([
    given === undefined
      ? { field: 'batches', code: 'missing', given, fix: 'Add a batch to the file first.' }
      : {
          field: 'batch',
          code: 'not-allowed',
          given,
          allowed: batches.map(({ name }) => name),
          fix: 'Name one of the batches in the file.',
        },
  ]);
}

/** Problems of a batch are named by its place in the file. */
function atItsPlace<T>({ picture }: Asked, batch: NamedBatch, plan: (batch: NamedBatch) => T): T {
  try {
    return plan(batch);
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    const place = `batches.${picture.batches.indexOf(batch)}`;
    throw new FieldError(
      error.problems.map((each) => ({ ...each, field: each.field.replace(/^batch\b/, place) })),
    );
  }
}

const noHandover = (given: string, most: number): FieldError =>
  new FieldError([
    {
      field: 'sheet',
      code: 'out-of-bounds',
      given,
      min: 1,
      max: most,
      fix:
        most === 0
          ? 'Add days away (handovers) to the file first.'
          : 'Give the place of the days away in the file.',
    },
  ]);

import { describe, expect, it } from '@jest/globals';
import { join } from 'node:path';
import { quantityOfDay } from '../../shared/explain/daily-series.js';
import type { AboutNumbers, Moved } from '../../shared/explain/moved.js';
import type { Quantity } from '../../shared/explain/quantity.js';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import type { FarmPicture, NamedBatch } from '../../shared/farm/picture.js';
import { explain } from '../../shared/formulas/explanation.js';
import { FORMULAS } from '../../shared/formulas/formulas.js';
import {
  NEVER_BETTER,
  NEVER_SETTLED,
  NOTHING_MOVES,
  openThingOf,
  YOURS_TO_CHOOSE,
} from '../../shared/plan/open/open-things.js';
import { planBatch } from '../../shared/plan/batch-plan.js';
import { planAnimals } from '../../shared/plan/farm/animal-plans.js';
import { batchQuantities, pastureQuantities } from '../../shared/plan/farm/explain-plans.js';
import { workOfFarm } from '../../shared/plan/farm/work-of-farm.js';
import { yearOfFarm } from '../../shared/plan/farm/year-of-farm.js';
import { aboutGrass } from '../../shared/plan/pasture/about-grass.js';
import { planPasture } from '../../shared/plan/pasture/pasture-plan.js';
import { aboutBatch } from '../../shared/plan/story/about-batch.js';
import { todayOf } from '../../shared/plan/today/today.js';
import { groundOn } from '../../shared/plan/work/ground-quantities.js';
import { workOutlookOf } from '../../shared/plan/work/work-outlook.js';
import { workPlanOf } from '../../shared/plan/work/work-plan.js';
import {
  jobQuantities,
  outlookQuantities,
  weekQuantities,
} from '../../shared/plan/work/work-quantities.js';
import { pictureOfFile } from '../../src/cli/farm-file.js';
import { SEEDS_DIR } from '../../src/reference/load-tables.js';
import { tables } from '../support/factories.js';

const example = pictureOfFile(join(SEEDS_DIR, 'farm.example.jsonc'), tables);
const reader = example.farm;
const hatched: NamedBatch = {
  ...example.batches[0]!,
  ...{ id: 'hatched', origin: 'incubator', hatchToArrivalDays: 0 },
};
const withHatched: FarmPicture = { ...example, batches: [...example.batches, hatched] };

function movedBy(about: AboutNumbers, quantity: Quantity): Moved | undefined {
  const asking = about.movedMost(quantity);
  for (;;) {
    const { done, value } = asking.next();
    if (done === true) return value ?? undefined;
  }
}

/** Every number of the plans of birds and grass, with what is found when each thing is tried. */
const tried: readonly { readonly of: Quantity; readonly moved: Moved | undefined }[] = [
  ...withHatched.batches.flatMap((batch) => {
    const plan = planBatch(withHatched, tables, batch.id);
    const about = aboutBatch({ picture: withHatched, tables, batch, plan, reader });
    const days = plan.daily.flatMap(({ id }) =>
      [5, 30].flatMap((day) => quantityOfDay(plan.daily, id, day) ?? []),
    );
    return [...batchQuantities(plan, tables), ...days].map((of) => ({
      of,
      moved: movedBy(about, of),
    }));
  }),
  ...(() => {
    const plan = planPasture(example, tables);
    const about = aboutGrass(example, plan, tables);
    return pastureQuantities(plan, tables).map((of) => ({ of, moved: movedBy(about, of) }));
  })(),
];

/** Every number of the year, the work and the day: before the chicks come and with them in the brooder. */
function ofTheFarm(today: string): Quantity[] {
  const picture = { ...example, today };
  const animals = planAnimals(picture, tables);
  const request = workOfFarm(picture, tables, animals);
  const { keep: _keep, ...work } = workPlanOf(request, 5);
  const outlook = workOutlookOf({ ...request, history: [] }, 5);
  return [
    ...quantitiesIn(todayOf(picture, tables, animals, work)),
    ...quantitiesIn(yearOfFarm(picture, tables, { animals, work, history: [] })),
    ...work.jobs.flatMap((job) => Object.values<Quantity>(jobQuantities(job, work.basis))),
    ...work.weeks.flatMap((each) => Object.values<Quantity>(weekQuantities(each, work.basis))),
    ...outlook.jobs.flatMap((job) => quantitiesIn(outlookQuantities(outlook, job))),
    groundOn(work, 0),
  ];
}

const names = (of: readonly Quantity[]): string[] => [
  ...new Set(of.map(({ formula, label }) => `${formula}: ${label}`)),
];

describe('every opened number', () => {
  it('says when it is known better, or that it never is, of each kind of number there is', () => {
    const kinds = [...FORMULAS.keys()];
    expect(kinds.length).toBeGreaterThan(300);
    const { spread: _spread, ...one } = tried[0]!.of;
    for (const formula of kinds)
      for (const spread of [{}, { spread: { low: 1, high: 3, because: 'they differ' } }])
        expect(explain({ ...one, formula, ...spread }, tables, reader).knownBetter).toMatch(
          /^[A-Z].{20,}\.$/,
        );
  });

  it('never says “never” where something that happens was found to move it', () => {
    const never = tried.filter(
      ({ moved }) =>
        moved?.to &&
        moved.knownBetter.startsWith('Never') &&
        !/^If (you want|they come|five more)/.test(moved.what),
    );
    expect(names(never.map(({ of }) => of))).toEqual([]);
  });

  it('is a fact only where nothing that happens was found to move it', () => {
    const facts = tried.filter(
      ({ of: { spread: _spread, ...of } }) => openThingOf(of) === undefined,
    );
    expect(facts.length).toBeGreaterThan(50);
    const found = facts.filter(({ moved }) => moved?.to && moved.knownBetter !== YOURS_TO_CHOOSE);
    expect(names(found.map(({ of }) => of))).toEqual([]);
  });

  it('says of each range what settles it: advice that differs too is seen at the animals', () => {
    const ranges = tried.filter(({ moved }) => moved && !moved.to);
    for (const one of ['cattle-shade', 'fence-energizer', 'hatch-setting', 'light-to-add'])
      expect(ranges.map(({ of }) => of.formula)).toContain(one);
    const never = ranges.filter(({ moved }) => moved?.knownBetter === NEVER_SETTLED);
    expect(names(never.map(({ of }) => of))).toEqual([]);
  });

  it('says what moves it of the day, the year and the work, but for what was counted or typed', () => {
    const numbers = [example.today, '2027-05-01'].flatMap((today) => ofTheFarm(today));
    const wasTried = new Set(tried.map(({ of }) => of.formula));
    const counted = ({ mark, inputs, formula }: Quantity): boolean =>
      mark === 'own-record' || inputs.every(({ unit }) => unit === 'date') || wasTried.has(formula);
    const silent = numbers.filter(
      (each) => explain(each, tables, reader).knownBetter === NEVER_BETTER && !counted(each),
    );
    for (const one of ['age-today', 'hours-of-week', 'frost-of-the-year', 'chance-in-time'])
      expect(numbers.map(({ formula }) => formula)).toContain(one);
    expect(names(silent)).toEqual([]);
  });

  it('says in the terminal and the answers of the service that nothing moves a fact', () => {
    const fact = tried.find(({ of }) => of.formula === 'as-given')!.of;
    expect(explain(fact, tables, reader)).toMatchObject({
      movedBy: NOTHING_MOVES,
      knownBetter: NEVER_BETTER,
    });
  });
});

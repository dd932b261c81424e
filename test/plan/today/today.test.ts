import { describe, expect, it } from '@jest/globals';
import { parse } from 'jsonc-parser';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { AnimalPlans } from '../../../shared/plan/farm/animal-plans.js';
import type { BatchLine } from '../../../shared/plan/today/batch-line.js';
import { carriedSaid } from '../../../shared/units/carried.js';
import { herdLines, type HerdLine } from '../../../shared/plan/today/herd-line.js';
import { todayOf, type Today } from '../../../shared/plan/today/today.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { printToday } from '../../../src/cli/print-today.js';
import type { FarmDocumentDto } from '../../../src/documents/farm-document.dto.js';
import { pictureOfDocument } from '../../../src/picture/farm-document.js';
import { readSeed } from '../../../src/reference/load-tables.js';
import { tables } from '../../support/factories.js';

const example = parse(readSeed('farm.example.jsonc'), undefined, {
  allowTrailingComma: true,
}) as FarmDocumentDto;

const TRIES = 20;

interface Told {
  readonly day: Today;
  readonly text: string;
  readonly animals: AnimalPlans;
}

/** The example farm on a day. */
function on(today: string, more: Partial<FarmDocumentDto> = {}): Told {
  const picture = pictureOfDocument({ ...example, ...more, today }, tables, 0);
  const animals = planAnimals(picture, tables, planPasture(picture, tables));
  const { keep: _keep, ...plan } = workPlanOf(workOfFarm(picture, tables, animals), TRIES);
  const day = todayOf(picture, tables, animals, plan);
  return { day, animals, text: printToday(day, { ...picture.farm, today }) };
}

const batch = ({ day }: Told, id: string): BatchLine =>
  day.animals.find((line): line is BatchLine => line.kind === 'batch' && line.id === id)!;
const herd = ({ day }: Told): HerdLine =>
  day.animals.find((line): line is HerdLine => line.kind === 'herd')!;
const lineOf = ({ text }: Told, name: string): string =>
  text.split('\n').find((line) => line.startsWith(`  ${name} ·`))!;

describe('the day of hens that are past their first laying year', () => {
  it.each(['2028-11-20', '2029-06-01', '2032-06-01'])('has them still: %s', (today) => {
    const told = on(today);
    const { id, name, plan } = told.animals.batches.find(
      ({ plan: { purpose } }) => purpose === 'layers',
    )!;
    const hens = batch(told, id);
    expect(hens).toMatchObject({ name, stage: 'out' });
    expect(Number(hens.head.value)).toBeGreaterThan(1);
    expect(Number(hens.feed!.amount.value)).toBeGreaterThan(0.5);
    expect(Number(hens.eggs!.value)).toBeGreaterThan(0);
    expect(Number(hens.water!.value)).toBeGreaterThan(0.1);
    expect(told.day.chores.some(({ of }) => of === name)).toBe(true);
    expect(plan.issues.map(({ code }) => code)).not.toContain('move-out-unsure');
  });
});

describe('chicks that nobody has ordered', () => {
  it.each(['2027-04-05', '2027-04-15'])('are asked for at once, on %s as well', (today) => {
    const { day } = on(today, {
      readings: [],
      people: example.people!.map((person) => ({
        ...person,
        away: [{ from: today, to: addDays(today, 3) }],
      })),
    });
    // No day to come is told for what is for today.
    expect(day.keyDates.filter(({ text }) => text.includes('order'))).toEqual([]);
    const order = day.attention.find(({ key }) => key.startsWith('order/batch/pullets/'))!;
    expect(order.words).toMatch(/^order 23 chicks today: the day for it was \w{3}, Mar \d+$/);
  });
});

describe('the day of the example farm, chicks in the brooder', () => {
  // Chicks of Apr 21, hatched the day before: 17 days old.
  const told = on('2027-05-07');
  const meat = batch(told, 'meat');
  const { plan } = told.animals.batches.find(({ id }) => id === 'meat')!;

  it('says their age, the heat asked for, and the low of tonight beside it', () => {
    // The usual schedule: 95 °F in the first week and 5 °F less in each that follows.
    expect(lineOf(told, 'Spring meat birds')).toMatch(
      /day 17 · \d+ alive · Shed brooder · 85 °F under the heat, 42 °F tonight/,
    );
    expect(told.day.animals[0]).toBe(meat);
  });

  it('says of what comes with each calf how long one takes, and not its share of a day', () => {
    // 15 h and 4 h for ten head.
    expect(told.text).toMatch(/Attend birth: [^\n]* 1 h 30 min each, as they come/);
    expect(told.text).toMatch(/Navel, tag, record[^\n]* 24 min each, as they come/i);
  });

  it('expects them on the day they are to come, and calls them alive once that was told', () => {
    const [here, next] = ['2027-04-21', '2027-04-23'].map((date) =>
      lineOf(on(date), 'Spring meat birds'),
    );
    expect(here).toMatch(/ · \d+ expected today · /);
    expect(next).toMatch(/ · \d+ expected Wed, Apr 21: nobody has told that they came · /);
    expect(here + next!).not.toContain('alive');
    // Before the box is opened, and not on a day after it.
    expect(here).toMatch(/brooder warm since yesterday, water and feed out\. Then count them/);
    expect(next).not.toContain('the box is opened');
    expect(lineOf(on('2027-04-25'), 'Spring meat birds')).toContain(' alive');
  });

  it('says which lamps are on by day and tonight, each to be opened', () => {
    expect(meat.heat!.day!.words).toMatch(/^(No|\d of 2) lamps on/);
    expect(meat.heat!.night!.words).toMatch(/^(No|\d of 2) lamps on/);
    expect(meat.heat!.night!.on.value).toBeGreaterThanOrEqual(meat.heat!.day!.on.value);
    expect(meat.heat!.night!.around.formula).toBe('around-brooder-then');
    expect(meat.cautions.map(({ title }) => title)).toEqual([tables.cautions['heat-lamp']!.title]);
  });

  it('gives feed and water as the plan of the batch has them for the day', () => {
    const day = 16; // days after arrival
    const series = (id: string) => plan.daily.find((each) => each.id === id)!.values[day];
    expect(meat.feed!.amount.value).toBeCloseTo(series('feed-day')!, 4);
    expect(meat.water!.value).toBeCloseTo(series('water-day')!, 4);
    expect(meat.feed!.phase).toBe('Starter');
  });

  it('knows what a bag and a bird weigh by the plan, for whoever tells what they do', () => {
    expect(meat.weighs!.bagKg).toBe(plan.feed.phases[0]!.bagKg);
    const each = plan.daily.find(({ id }) => id === 'weight-mean')!.values[16]!;
    expect(meat.weighs!.liveKg).toBe(each);
    // Of the bird at the end so much is left when it is dressed.
    const { dressedEach, liveEach } = plan.leaving!;
    expect(meat.weighs!.dressedKg! / each).toBeCloseTo(dressedEach.value / liveEach.value, 9);
    expect(meat.weighs!.dressedKg).toBeLessThan(each);
  });

  it('says when they are out of the brooder, as their plan does', () => {
    expect(meat.next).toMatchObject({
      words: 'out of the brooder',
      on: plan.outdoors.moveOut!.value,
    });
    expect(meat.next!.days.value).toBe(11); // May 7 to May 18
  });

  it('shows the pullets to come in the last line', () => {
    expect(told.day.animals.at(-1)).toMatchObject({ id: 'pullets', stage: 'coming' });
    expect(lineOf(told, 'Pullets')).toMatch(/to come · chicks arrive in 33 days, Wed, Jun 9/);
  });

  it('says in a few words what needs attention, and by when', () => {
    const words = told.day.attention.map(({ words: few }) => few);
    expect(words).toContain('brooder too small');
    expect(told.text).toContain('brooder too small, by Tue, May 11');
    expect(words.filter((few) => 70 <= few.length)).toEqual([]);
  });

  it('names the next key dates, absences among them', () => {
    expect(told.text).toContain('Tue, May 11  Adult B away for 4 days');
    expect(told.text).toContain('Tue, May 18  Spring meat birds: out of the brooder');
  });
});

describe('the day of the example farm, birds on grass', () => {
  // Fence, water and first paddocks are done: cattle for which they are not go out once they are.
  const readied = on('2027-06-05').animals.pasture!.tasks.flatMap((task) =>
    task.event === 'turn-out' && task.noUseAfter !== undefined
      ? [{ key: `herd/${task.belongsToId!}/${task.id}`, doneOn: '2027-05-01' }]
      : [],
  );
  const told = on('2027-06-05', { progress: readied });

  it('has no heat any more, and nothing to say of the brooder', () => {
    const meat = batch(told, 'meat');
    expect(meat.stage).toBe('out');
    expect(meat.heat).toBeUndefined();
    expect(meat.where).toBe('Field pen');
    expect(meat.next!.words).toBe('they leave');
    const ofMeat = told.day.attention.filter(({ of }) => of === 'Spring meat birds');
    expect(ofMeat.map(({ words }) => words)).toContain('freezer too small');
    // Cleaning it out stands among the work.
    const ofPlan = ofMeat.filter(({ key }) => key.startsWith('batch/'));
    expect(ofPlan.some(({ words }) => /brooder|feeder|noon/.test(words))).toBe(false);
  });

  // Nobody has told of this farm that they went there.
  it('says which paddock the herd goes into, until when, and what comes next', () => {
    expect(lineOf(told, 'Cows')).toMatch(
      /4 head · into \w+ today, until .+ · [\d.]+ gal water · on to \w+ (in \d+ days|tomorrow), /,
    );
  });

  it('asks whether a herd is out that goes out today by the plan and of which no move was told', () => {
    const asked = ({ day }: Told): string[] =>
      day.attention.flatMap(({ words, of }) => (/are they out/.test(words) ? [of!] : []));
    expect(asked(told)).toEqual(['Cows']);
    expect(asked(on('2027-05-07'))).toEqual([]);
  });
});

describe('herdLines', () => {
  it('knows the cow that is due about now, where it can be no other', () => {
    const [bluebell] = example.cows!;
    const due = { ...bluebell!, id: 'bluebell', calvesOn: '2027-05-10' };
    const named = (today: string, cows: NonNullable<FarmDocumentDto['cows']>): string | undefined =>
      herdLines(pictureOfDocument({ ...example, cows, today }, tables, 0), tables, undefined)[0]!
        .dueCowId;
    expect(named('2027-05-07', [due])).toBe('bluebell');
    expect(named('2027-07-20', [due])).toBeUndefined();
    const other = { ...due, id: 'clover', name: 'Clover' };
    expect(named('2027-05-07', [due, other])).toBeUndefined();
  });
});

describe('the day of the example farm in winter', () => {
  const told = on('2027-12-20');

  it('feeds the cows on hay, in bales, and the round says so', () => {
    const { hay, on: grass, head } = herd(told);
    expect(head.value).toBe(4);
    expect(grass).toBeUndefined();
    // Four dry cows of 1,150 lb eat about 2 % of their weight: 92 lb of dry matter, more as hay.
    const lb = hay!.weight.value / 0.45359237;
    expect(lb).toBeGreaterThan(92 / 0.9);
    expect(lb).toBeLessThan(2.2 * 92);
    expect(hay!.said).toMatch(/^a bale every \d days$/); // round ones
    expect(told.day.chores.map(({ name, of }) => `${of}: ${name}`)).toContain(
      'Cows: Feed hay, look at water and every animal',
    );
    // 0.25 h and 0.1 h for ten head of hay, 0.35 h and 0.05 h for ten head to look at them.
    // To the minute, as the hours of a day are shared out.
    expect(told.day.chores.find(({ of }) => of === 'Cows')!.hours).toBeCloseTo(40 / 60, 6);
    expect(told.text).not.toContain('Nothing');
  });

  it('says a caution of several flocks once, at the first of them, which names the others', () => {
    const pullets = example.batches!.find(({ id }) => id === 'pullets')!;
    const twins = { ...pullets, id: 'twins', name: 'Twins' };
    const { day } = on(told.day.date, { batches: [...example.batches!, twins] });
    const said = day.animals.flatMap((line) =>
      line.kind === 'batch' ? line.cautions.map(({ title }) => title) : [],
    );
    expect(said).toHaveLength(new Set(batch(told, 'pullets').cautions).size);
    expect(said.join()).toMatch(
      new RegExp(`${tables.cautions['frozen-drinkers']!.title} \\(.* too\\)`),
    );
  });

  it('says how many eggs to expect', () => {
    const { head, eggs, stage, age } = batch(told, 'pullets');
    expect(stage).toBe('out');
    expect(age!.value).toBe(195); // hatched Jun 8
    expect(Number(eggs!.value)).toBeGreaterThan(0);
    expect(Number(eggs!.value)).toBeLessThanOrEqual(Number(head.value));
  });
});

describe('carriedSaid', () => {
  it.each([
    [0.13, 'a bale every 8 days'],
    [0.5, 'a bale every 2 days'],
    [0.8, '1 bale'],
    [1.2, '1 bale'],
    [1.4, '1½ bales'],
    [3.6, '3½ bales'],
    [7.9, '8 bales'],
  ])('says %s bales a day as “%s”', (aDay, said) => {
    expect(carriedSaid(aDay, 'bale')).toBe(said);
  });
});

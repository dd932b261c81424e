import { describe, expect, it } from '@jest/globals';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'jsonc-parser';
import { addDays, datesFrom, daysBetween } from '../../../shared/calendar/plain-date.js';
import { weakestMark } from '../../../shared/explain/formula.js';
import { quantitiesIn } from '../../../shared/explain/quantities-in.js';
import { withBatch, type FarmPicture } from '../../../shared/farm/picture.js';
import { planBatch } from '../../../shared/plan/batch-plan.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { planWork, workOutlook } from '../../../shared/plan/farm/work-of-farm.js';
import { yearOfFarm } from '../../../shared/plan/farm/year-of-farm.js';
import { arrivalEffects } from '../../../shared/plan/year/arrival-effects.js';
import { awayRows } from '../../../shared/plan/year/away-rows.js';
import { slidPlan } from '../../../shared/plan/year/slid-plan.js';
import { isFetch } from '../../../shared/plan/tasks/fetches.js';
import type { FittedDays } from '../../../shared/plan/work/fitted-days.js';
import { batchRowWithWork } from '../../../shared/plan/year/batch-row.js';
import { herdRow } from '../../../shared/plan/year/herd-row.js';
import { firstAhead, type YearRow } from '../../../shared/plan/year/year-row.js';
import { isOver, overWeeks } from '../../../shared/plan/work/full-weeks.js';
import { FORMULAS } from '../../../shared/formulas/formulas.js';
import { recordedFrost } from '../../../shared/weather/frost.js';
import type { FarmDocumentDto } from '../../../src/documents/farm-document.dto.js';
import { pictureOfDocument } from '../../../src/picture/farm-document.js';
import { PROJECT_ROOT } from '../../../src/reference/load-tables.js';
import { overInWords } from '../../../src/web/screens/year/year-words.js';
import { tables } from '../../support/factories.js';

const example = parse(
  readFileSync(join(PROJECT_ROOT, 'seeds', 'farm.example.jsonc'), 'utf8'),
) as FarmDocumentDto;
const picture = pictureOfDocument(
  { ...example, jobs: [...(example.jobs ?? []), taken()] },
  tables,
  Date.UTC(2027, 3, 5, 12),
);
const animals = planAnimals(picture, tables);
const work = planWork(picture, tables, animals);
const year = yearOfFarm(picture, tables, { animals, work, history: [] });

/** A job of a set, further ahead than the plan of the work goes. */
function taken() {
  return {
    id: 'supers',
    name: 'Add supers',
    hours: 2,
    notBefore: '2028-03-20',
    dueOn: '2028-03-28',
    priority: 'should',
    conditions: {},
    canBeSpread: true,
    setId: 'hives',
  } as const;
}

const rowOf = (name: string): YearRow => year.rows.find((row) => row.name === name)!;
const barOf = (row: YearRow, kind: string) => row.bars.find((bar) => bar.kind === kind);
const planOf = (name: string) => animals.batches.find((batch) => batch.name === name)!;

describe('a batch on the strip', () => {
  it('begins and ends each line on a date of its plan', () => {
    const { id, plan } = planOf('Spring meat birds');
    const row = rowOf('Spring meat birds');
    const processed = plan.leaving!.processingDays.map(({ on }) => on);
    expect(row).toMatchObject({ kind: 'batch', id, arrivesOn: plan.arrivalDate });
    expect(row.bars).toEqual([
      { kind: 'brooder', from: plan.arrivalDate, until: plan.outdoors.moveOut!.value },
      { kind: 'pens', from: plan.outdoors.moveOut!.value, until: processed.at(-1) },
      { kind: 'freezer', from: processed[0], until: plan.leaving!.eatenUp!.value },
    ]);
    expect(row.dates.filter(({ words }) => words === 'processing').map(({ on }) => on)).toEqual(
      processed,
    );
  });

  it('says on which day birds are ordered: where there is time for it, else counted back', () => {
    const { id } = planOf('Spring meat birds');
    const plan = planBatch({ ...picture, today: '2027-01-15' }, tables, id);
    const key = `batch/${id}/meat.order-chicks-for-a-named-arrival`;
    const order = (fitted: FittedDays, settled: readonly string[] = []) =>
      batchRowWithWork(id, plan, { fitted, settled: new Set(settled) }).dates.find(
        ({ words }) => words === `order ${plan.birds.chicksPlaced.value} chicks`,
      );
    const when = { on: '2027-02-06', dueBy: '2027-03-24' };
    const day = { name: 'Order chicks', spareDays: 46, ...when };
    expect(order(new Map([[key, day]]))).toMatchObject(when);
    expect(order(new Map())?.on).toBe(
      plan.tasks.tasks.find((task) => key.endsWith(task.id))!.start,
    );
    expect(order(new Map([[key, day]]), [key])).toBeUndefined();
  });

  it('says on which days feed is fetched, as the plan of the work does', () => {
    const { id } = planOf('Spring meat birds');
    const trip = work.jobs.find(({ key }) => key.startsWith(`batch/${id}/`) && isFetch(key))!;
    expect(rowOf('Spring meat birds').feed).toContainEqual({
      on: trip.pieces[0]!.date,
      words: trip.name.replace(/^Fetch feed[^:]*: /, '').replace(/, \$.*$/, ''),
      dueBy: trip.latest,
    });
  });

  it('names what comes first, of whatever it is', () => {
    const ahead = year.rows.flatMap(({ dates }) => dates.map(({ on }) => on).sort());
    const first = ahead.filter((on) => year.today <= on).sort()[0];
    expect(firstAhead(year)!.date.on).toBe(first);
  });

  it('lays from the first egg on', () => {
    const { plan } = planOf('Pullets');
    const row = rowOf('Pullets');
    const firstEgg = plan.laying!.firstEgg.value;
    expect(barOf(row, 'coop')).toMatchObject({
      from: plan.outdoors.moveOut!.value,
      until: firstEgg,
    });
    expect(barOf(row, 'laying')).toMatchObject({ from: firstEgg, until: plan.lastDate });
  });

  it('cannot be moved once it has come', () => {
    const later = { ...picture, today: '2027-05-01' };
    const rows = yearOfFarm(later, tables, {
      animals: planAnimals(later, tables, animals.pasture),
      work,
      history: [],
    }).rows;
    expect(rows.find(({ name }) => name === 'Spring meat birds')!.arrivesOn).toBeUndefined();
  });
});

describe('a herd on the strip', () => {
  const plan = animals.pasture!;
  const row = rowOf('Cows');

  it('is on grass on the days of its moves, and on hay on all others', () => {
    const on = (date: string, kinds: readonly string[]): boolean =>
      row.bars.some((bar) => kinds.includes(bar.kind) && bar.from <= date && date < bar.until);
    for (let date = plan.from; date <= plan.to; date = addDays(date, 1)) {
      const grazes = plan.moves.some(({ from, to }) => from <= date && date <= to);
      expect([date, on(date, ['grass'])]).toEqual([date, grazes]);
      expect([date, on(date, ['hay'])]).toEqual([date, !grazes]);
    }
    expect(on(addDays(plan.to, 1), ['hay'])).toBe(true);
    const hay = row.bars.filter(({ kind }) => kind === 'hay');
    expect(hay.length).toBeGreaterThan(1);
    // A winter that begins in the plan and goes on after it is one bar.
    for (const { from } of hay) expect(hay.map(({ until }) => until)).not.toContain(from);
  });

  it('ends where there is grass again, which is not planned yet', () => {
    const out = '2027-04-20';
    const herds = plan.herds.map((herd) => ({ ...herd, hayByDay: [], grassAgain: out }));
    const autumn = { ...plan, from: '2026-11-02', to: '2026-12-15', today: '2026-11-02', herds };
    const span = { from: '2026-11-01', until: '2027-12-01', days: 395 };
    const { bars, dates } = herdRow(picture.herds[0]!, { ...autumn, moves: [] }, span);
    expect(bars.filter(({ kind }) => kind === 'hay').map(({ until }) => until)).toContain(out);
    expect(bars.filter(({ kind, until }) => kind !== 'calving' && out < until)).toEqual([]);
    expect(dates).toContainEqual({
      on: out,
      words: 'grass again about, as this year: not planned yet',
    });
  });

  it('writes out turn-out and calving as they are planned', () => {
    const [dates] = plan.keyDates.herds;
    expect(row.dates).toContainEqual({ on: dates!.turnOut!.value, words: 'turn-out' });
    expect(row.dates).toContainEqual({ on: dates!.calvings[0]!.due.value, words: 'calving due' });
    expect(barOf(row, 'calving')).toEqual({
      kind: 'calving',
      from: dates!.calvings[0]!.early,
      until: addDays(dates!.calvings[0]!.late, 1),
    });
  });
});

describe('jobs and people on the strip', () => {
  it('stand on the days they are planned for, those of next spring too', () => {
    const others = rowOf('Other jobs');
    for (const { id, name } of example.jobs!) {
      const { pieces } = work.jobs.find(({ key }) => key === `own/${id!}`)!;
      expect(others.dates).toContainEqual({ on: pieces[0]!.date, words: name });
    }
    const hives = rowOf('Hives in spring');
    expect(hives.bars).toEqual([{ kind: 'work', from: '2028-03-20', until: '2028-03-29' }]);
    expect(hives.dates).toEqual([{ on: '2028-03-20', words: 'Add supers' }]);
  });

  it('are away to the last day, and say who is in charge', () => {
    const [{ from, to }] = example.people![1]!.away as [{ from: string; to: string }];
    expect(rowOf('Adult B').bars).toEqual([{ kind: 'away', from, until: addDays(to, 1) }]);
    expect(barOf(rowOf('Adult A in charge'), 'sitter')!.from).toBe(example.handovers![0]!.from);
  });
});

describe('the hours of the strip', () => {
  it('are those that people give, week by week, as the country counts them', () => {
    // Written in the example: (5 × 2.5 + 7 + 4) and (5 × 3 + 6 + 4) hours, and it reads US units.
    expect(year.weeks[1]).toMatchObject({ from: '2027-04-11', hoursAvailable: 48.5 });
    // Of the first week Sunday, with four hours of each, is past.
    expect(year.weeks[0]).toMatchObject({ from: '2027-04-04', hoursAvailable: 40.5 });
    // One is away from Tuesday to Friday and hands over to the other, who then has the hours of
    // the hand-over in place of 2.5 a day.
    const away = year.weeks.find(({ from }) => from === '2027-05-09')!;
    const perDay = example.handovers![0]!.hoursPerDay!;
    expect(away.hoursAvailable).toBe(48.5 - 4 * (2.5 + 3) + 4 * perDay);
  });

  it('hold all work that is planned, and call a week short when more is wanted', () => {
    const end = addDays(year.weeks.at(-1)!.from, 7);
    const planned = work.jobs.flatMap(({ pieces }) =>
      pieces
        .filter(({ date }) => date < end)
        .map(({ hours, personIds }) => hours * personIds.length),
    );
    const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
    expect(sum(year.weeks.map(({ workHours }) => workHours))).toBeGreaterThan(sum(planned) - 2);
    for (const { isShort, hoursAvailable, choreHours, workHours } of year.weeks)
      expect(isShort).toBe(hoursAvailable < choreHours + workHours - 0.05);
  });

  it('say more only of a week in which it is more, else that not all of it fits', () => {
    // Two days with 2.5 hours: work for three hours, of one day, does not go into one of them.
    const [adult] = picture.people;
    const alone = { ...adult!, hoursByWeekday: [0, 0, 0, 0, 0, 2.5, 2.5], away: [] };
    const day = '2027-04-17';
    const { setId: _set, ...gate } = taken();
    const job = { ...gate, notBefore: day, dueOn: day, hours: 3, canBeSpread: false };
    const lone: FarmPicture = {
      ...{ ...picture, batches: [], herds: [], handovers: [] },
      people: [alone],
      jobs: [job],
    };
    const none = planAnimals(lone, tables);
    const plan = planWork(lone, tables, none);
    const { weeks } = yearOfFarm(lone, tables, { animals: none, work: plan, history: [] });
    const week = weeks.find(({ from }) => from === '2027-04-11')!;
    expect(week).toMatchObject({ hoursAvailable: 5, workHours: 3 });
    expect([week.isShort, week.unfitChoreDays, isOver(week)]).toEqual([false, 0, true]);
    const words = `no time for “${job.name}”`;
    expect(week.unfitJobs).toEqual([{ key: `own/${job.id}`, words, on: day }]);
    expect(overInWords(week)).toBe('');
    // The work plan tells of the same weeks.
    expect(overWeeks(plan)).toEqual(weeks.filter(isOver).map(({ from }) => from));
    const over = { ...week, workHours: 5.2, unfitJobs: [], isShort: true };
    expect(overInWords(over)).toBe('the work takes 5 h 12 min, you have 5 h');
  });
});

describe('the weather of the strip', () => {
  it('keeps to the household’s own frost dates, with safe ones beyond them', () => {
    const turns = new Map(year.weather.turns.map(({ label, value }) => [label, value]));
    expect(turns.get('Usual last frost')).toBe('2027-05-20');
    expect(turns.get('Usual first frost')).toBe('2027-09-28');
    expect(turns.get('Safe from frost after')! > '2027-05-20').toBe(true);
    expect(turns.get('Safe from frost until')! < '2027-09-28').toBe(true);
  });

  it('has the frost dates that stand beside the odds of the work', () => {
    const { frost } = workOutlook(picture, tables, animals, []);
    const freeze = frost.find(({ thresholdC }) => thresholdC === 0)!;
    expect(freeze.last!.usual).toBe('05-20');
    const turns = new Map(year.weather.turns.map(({ label, value }) => [label, value]));
    expect(turns.get('Safe from frost after')).toBe(`2027-${freeze.last!.safe}`);
    expect(turns.get('Safe from frost until')).toBe(`2027-${freeze.first!.safe}`);
  });

  it('opens every figure to a formula that is listed', () => {
    const figures = quantitiesIn(year.weather);
    expect(figures.length).toBeGreaterThan(50);
    for (const { formula, value, mark, inputs } of figures) {
      expect(FORMULAS.has(formula)).toBe(true);
      const marks = inputs.flatMap((each) => each.mark ?? []);
      expect(weakestMark(mark, FORMULAS.get(formula)!.mark, ...marks)).toBe(mark);
      if (typeof value === 'number') expect(value >= 0 && value <= 1).toBe(true);
    }
  });

  it('counts in a daily record where that holds ten years', () => {
    // Frost on the same two nights of every year, and rain on every third day but in July.
    const history = datesFrom('2014-01-01', 13 * 365).map((date, k) => ({
      date,
      minC: ['05-12', '10-01'].includes(date.slice(5)) ? -1 : 8,
      maxC: 20,
      rainMm: k % 3 === 0 && date.slice(5, 7) !== '07' ? 5 : 0,
    }));
    const { farm } = picture;
    const climate = { ...picture.climate, recordedFrost: recordedFrost(history, farm.latitudeDeg) };
    const recorded = { ...picture, climate };
    const { turns, dryRuns } = yearOfFarm(recorded, tables, { animals, work, history }).weather;
    expect(turns.map(({ value }) => value)).toEqual([
      ...['2027-05-12', '2027-05-12', '2027-10-01', '2027-10-01'],
    ]);
    for (const { from, of } of dryRuns!) expect(of.value).toBe(from.startsWith('2027-07') ? 1 : 0);
  });

  it('has its winter in July south of the equator', () => {
    const farm = {
      ...picture.farm,
      latitudeDeg: -42,
      lastFrost: '10-20',
      firstFrost: '04-20',
    };
    const half = (year: readonly number[]) => [...year.slice(183), ...year.slice(0, 183)];
    const { meanMinC, meanMaxC, coldMinC, hotMaxC } = picture.climate;
    const climate = {
      ...picture.climate,
      meanMinC: half(meanMinC),
      meanMaxC: half(meanMaxC),
      coldMinC: half(coldMinC),
      hotMaxC: half(hotMaxC),
    };
    const south = { ...picture, farm, climate };
    const { frosts } = yearOfFarm(south, tables, { animals, work, history: [] }).weather;
    expect(frosts.filter(({ isUsual }) => isUsual)).toContainEqual({
      from: '2027-04-20',
      until: '2027-10-21',
      isUsual: true,
    });
  });

  it('says nothing of dry spells where no rain is known', () => {
    const { meanRainMm: _rain, ...climate } = picture.climate;
    const dry = { ...picture, climate };
    expect(yearOfFarm(dry, tables, { animals, work, history: [] }).weather.dryRuns).toBeUndefined();
  });
});

describe('awayRows', () => {
  it('calls an illness one: nobody leaves, nobody comes back', () => {
    const span = { from: '2027-05-01', to: '2027-05-03' };
    const wordsOf = (more: object) =>
      awayRows([{ id: 'a', name: 'Adult A', away: [{ ...span, ...more }] }], []).flatMap(
        ({ dates }) => dates.map(({ words }) => words),
      );
    expect(wordsOf({ isIll: true })).toEqual(['ill', 'well again']);
    expect(wordsOf({})).toEqual(['leaves', 'is back']);
  });

  it('has one row for all who are away on the same days', () => {
    const trip = { from: '2027-05-01', to: '2027-05-03' };
    const [ill, other] = [
      { ...trip, isIll: true },
      { from: '2027-05-02', to: '2027-05-03' },
    ];
    const person = (name: string, ...away: (typeof trip)[]) => ({ id: name, name, away });
    const people = [
      person('Ann', trip),
      person('Ben', ill),
      person('Cleo', trip),
      person('Dora', other),
      person('Ed', other, trip),
      person('Flo', trip),
      person('Gus', trip, other),
    ];
    expect(awayRows(people, []).map(({ name, dates }) => [name, dates[0]!.words])).toEqual([
      ['Ann, Cleo and Flo', 'leave'],
      ['Ben', 'ill'],
      ['Dora', 'leaves'],
      ['Ed and Gus', 'leave'],
    ]);
  });
});

describe('arrivalEffects', () => {
  const { id, plan } = planOf('Pullets');
  const on = (arrivalDate: string) => {
    const batch = picture.batches.find((each) => each.id === id)!;
    return planBatch(withBatch(picture, { ...batch, arrivalDate }), tables, id);
  };

  it('is nothing for the same day', () => {
    expect(arrivalEffects(plan, plan)).toMatchObject({ moved: [], worse: [], better: [] });
  });

  it('moves what hangs on the arrival, by the dates of both plans', () => {
    const then = on(addDays(plan.arrivalDate, 14));
    expect(arrivalEffects(plan, then).moved).toContainEqual({
      words: 'first eggs',
      from: plan.laying!.firstEgg.value,
      to: then.laying!.firstEgg.value,
    });
  });

  it('says that the brooder is free when they come after the others have left it', () => {
    const early = on(addDays(plan.arrivalDate, -20));
    const codes = (issues: readonly { code: string }[]) => issues.map(({ code }) => code);
    expect(codes(arrivalEffects(early, plan).better)).toContain('place-taken');
    expect(codes(arrivalEffects(plan, early).worse)).toContain('place-taken');
    const near = on(addDays(plan.arrivalDate, -21));
    expect(codes(arrivalEffects(early, near).still)).toContain('place-taken');
  });
});

describe('slidPlan', () => {
  const { id, plan } = planOf('Pullets');
  const slid = { batchId: id, arrivalDate: addDays(plan.arrivalDate, 9) };
  const withOwn = (more: object) => ({
    ...picture,
    batches: picture.batches.map((batch) => (batch.id === id ? { ...batch, ...more } : batch)),
  });

  it('shows the batch as it would be, and moves the jobs that are tied to it as far', () => {
    const tiedTo = { eventId: `event/${id}/arrival`, on: plan.arrivalDate };
    const tied = { ...taken(), name: 'Sweep the shed', dueOn: plan.arrivalDate, tiedTo };
    const moved = slidPlan({ picture: { ...picture, jobs: [taken(), tied] }, tables }, slid);
    expect(moved).toMatchObject({
      row: { id, arrivesOn: slid.arrivalDate },
      jobs: [{ name: 'Sweep the shed', from: plan.arrivalDate, to: slid.arrivalDate }],
    });
  });

  it('says which absences they would be young in, and how old', () => {
    const from = addDays(slid.arrivalDate, 3);
    const span = { from, to: addDays(from, 1) };
    const adults = [
      { id: 'a', name: 'Adult A', away: [] },
      { id: 'b', name: 'Adult B', away: [{ ...span, from: slid.arrivalDate }] },
    ];
    const of = (more: object): readonly string[] => {
      const planned = slidPlan({ picture: { ...picture, people: adults, ...more }, tables }, slid);
      return 'refused' in planned ? [] : planned.nobodyHome;
    };
    const age = daysBetween(plan.hatchDate, plan.arrivalDate);
    expect(of({ handovers: [] })).toEqual([
      expect.stringContaining(`They are ${age} to ${age + 4} days old when Adult B is away (`),
    ]);
    const sheet = {
      id: 'h',
      sitter: 'Ruth',
      hoursPerDay: 2,
      phones: [],
      whereabouts: [],
      roundOrder: [],
    };
    const [, nobody] = of({ handovers: [{ ...sheet, ...span }] });
    expect(nobody).toContain(
      `They are ${age + 3} to ${age + 4} days old when nobody of the household is there but Ruth (`,
    );
    expect(of({ people: [adults[0]], handovers: [] })).toEqual([]);
  });

  it('says which field does not let it come then', () => {
    const moveOutDate = addDays(plan.arrivalDate, 5);
    const refused = slidPlan({ picture: withOwn({ moveOutDate }), tables }, slid);
    expect(refused).toMatchObject({
      refused: { problems: [{ field: 'batch.moveOutDate', min: addDays(slid.arrivalDate, 1) }] },
    });
  });
});

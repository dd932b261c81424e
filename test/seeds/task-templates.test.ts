import { describe, expect, it } from '@jest/globals';
import { backSchedule } from '../../shared/schedule/back-schedule.js';
import type { Origin } from '../../shared/farm/batch-origin.js';
import type { TaskTemplate } from '../../shared/tables/task-template.js';
import { tables } from '../support/factories.js';

const templates = tables.taskTemplates;
const byId = new Map(templates.map((t) => [t.id, t]));
/** A template hung on a day; how long work goes on that lasts until another event does not matter. */
const hung = (template: TaskTemplate) => ({
  ...template,
  anchorDate: '2027-05-05',
  lengthDays: template.lengthDays ?? 1,
});
/** What work can hang on, by what the birds are for; own eggs are set for either. */
const EVENTS = {
  meat: ['arrival', 'mild-days', 'move-out', 'processing', 'delivery'],
  layers: ['arrival', 'move-out', 'first-egg', 'delivery'],
  both: ['eggs-set', 'candle', 'lockdown', 'arrival', 'move-out'],
};

/** Templates that one plan can hold together. */
const sets = [
  [
    'meat, processed at home',
    templates.filter((t) => t.purpose === 'meat' && t.processing !== 'hired'),
  ],
  [
    'meat, processed for hire',
    templates.filter((t) => t.purpose === 'meat' && t.processing !== 'home'),
  ],
  ['layers', templates.filter((t) => t.purpose === 'layers')],
  ['own eggs', templates.filter((t) => t.id.startsWith('hatch.'))],
] as const;

describe('task templates', () => {
  it('wait only for tasks that are listed, of the same purpose or of processing, which cockerels have too', () => {
    const wrong = templates.flatMap((t) =>
      t.waitsFor
        .map((id) => byId.get(id) ?? { id, purpose: 'none', event: 'none' })
        .filter(({ purpose, event }) => purpose !== t.purpose && event !== 'processing')
        .map(({ id }) => id)
        .map((id) => `${t.id} waits for ${id}`),
    );
    expect(wrong).toEqual([]);
  });

  it('wait for none that starts later on the same event', () => {
    const wrong = templates.flatMap((t) =>
      t.waitsFor
        .map((id) => byId.get(id)!)
        .filter((before) => before.event === t.event && t.offsetDays < before.offsetDays)
        .map((before) => `${t.id} (${t.offsetDays}) waits for ${before.id} (${before.offsetDays})`),
    );
    expect(wrong).toEqual([]);
  });

  it('wait for none that is still going on when they start, on the same event', () => {
    // Daily care goes on beside other work; it is not waited for as a whole but from its first day.
    const wrong = templates.flatMap((t) =>
      t.waitsFor
        .map((id) => byId.get(id)!)
        .filter((before) => before.event === t.event && !before.isDaily && 1 < before.lengthDays!)
        .filter((before) => t.offsetDays < before.offsetDays + before.lengthDays!)
        .map(
          (before) =>
            `${t.id} (${t.offsetDays}) waits for ${before.id} (${before.offsetDays} + ${before.lengthDays})`,
        ),
    );
    expect(wrong).toEqual([]);
  });

  it.each(sets)('of %s hold no circle', (_, set) => {
    expect(() => backSchedule(set.map(hung), '2027-01-01')).not.toThrow();
  });

  it('have a name, a length, hours and what goes wrong when they are late', () => {
    for (const t of templates) {
      expect(t.name.length).toBeGreaterThan(3);
      expect(t.ifLate.length).toBeGreaterThan(3);
      expect(Number.isInteger(t.offsetDays)).toBe(true);
      if (t.until === undefined) expect(t.lengthDays).toBeGreaterThanOrEqual(1);
      expect(t.hoursBase + t.hoursPerUnit).toBeGreaterThan(0);
    }
  });

  it('hang only on events that their purpose has', () => {
    for (const t of templates) {
      const events = EVENTS[t.purpose ?? 'both'];
      const ofBoth = ['heaters-short', 'hands-short', 'harden-off', 'last-medicated'];
      expect([...events, ...ofBoth]).toContain(t.event);
      if (t.until) expect(events).toContain(t.until);
    }
  });

  it('count birds, or eggs that are set here', () => {
    expect([...new Set(templates.map((t) => t.unit))]).toEqual(['hundred-birds', 'hundred-eggs']);
    for (const t of templates.filter(({ unit }) => unit === 'hundred-eggs'))
      expect(t.origins).not.toContain('hatchery');
  });

  it('of birds from a box speak of no eggs, and those under a hen of no brooder', () => {
    const of = (origin: Origin) =>
      templates.filter(({ origins }) => origins === undefined || origins.includes(origin));
    expect(of('hatchery').filter(({ id }) => id.startsWith('hatch.'))).toEqual([]);
    expect(of('hen').filter(({ name }) => /brooder|heat|lamp/i.test(name))).toEqual([]);
    expect(
      of('incubator').filter(({ name }) =>
        /order chicks|dispatch|collect chicks|collect, count/i.test(name),
      ),
    ).toEqual([]);
  });
});

describe('task templates of herds', () => {
  const ofHerds = tables.herdTaskTemplates;
  const kinds = ['turn-out', 'cattle-arrival', 'calving', 'mowing', 'topping'] as const;

  it('hang on the events of a herd and count head, acres or tons', () => {
    expect([...new Set(ofHerds.map((t) => t.event))].sort()).toEqual([...kinds].sort());
    expect([...new Set(ofHerds.map((t) => t.unit))].sort()).toEqual(['acre', 'ten-head', 'ton']);
  });

  it('have ids that no other task has', () => {
    const ids = [...templates, ...ofHerds].map((t) => t.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it.each(kinds)(
    'wait only for what hangs on %s too and every such herd has, in no circle',
    (kind) => {
      const set = ofHerds.filter((t) => t.event === kind);
      const wrong = set.flatMap((t) =>
        t.waitsFor.filter((id) => {
          const before = set.find((each) => each.id === id);
          return !before;
        }),
      );
      expect(wrong).toEqual([]);
      expect(() => backSchedule(set.map(hung), '2027-01-01')).not.toThrow();
    },
  );
});

// A trip to the shop on two days is two trips.
it('what is bought or fetched is one trip: in one go, or on the one day of its event', () => {
  const all = [...templates, ...tables.herdTaskTemplates];
  const trips = all.filter(({ name }) => /^(buy|fetch|gather cones|collect)/i.test(name));
  expect(trips.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['calving.buy-kit-and-colostrum-replacer-100-g', 'meat.fetch-feed']),
  );
  const isOfItsDay = (t: TaskTemplate): boolean => t.offsetDays === 0 && t.lengthDays === 1;
  expect(trips.filter((t) => !t.notSplit && !isOfItsDay(t)).map(({ id }) => id)).toEqual([]);
});

it('what a calving asks for is there before the first may calve, two weeks early', () => {
  const calving = tables.herdTaskTemplates.filter(({ event }) => event === 'calving');
  const watch = calving.find(({ id }) => id === 'calving.start-watching-early-calvers-run-to-14')!;
  expect(watch.offsetDays).toBe(-14);
  const ready = calving.filter(({ beforeEvent }) => beforeEvent);
  expect(ready.length).toBeGreaterThan(1);
  for (const { id, latestOffsetDays = 0, lengthDays = 1 } of ready)
    expect([id, latestOffsetDays + lengthDays <= watch.offsetDays]).toEqual([id, true]);
});

it('a cow that is looked at around the clock is not watched twice a day besides', () => {
  const of = (id: string) => tables.herdTaskTemplates.find((template) => template.id === id)!;
  const watch = of('calving.start-watching-early-calvers-run-to-14');
  const clock = of('calving.round-the-clock-checks-every-3-to');
  expect(watch.offsetDays + watch.lengthDays!).toBe(clock.offsetDays);
});

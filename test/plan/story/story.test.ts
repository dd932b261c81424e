import { describe, expect, it } from '@jest/globals';
import { quantityOfDay } from '../../../shared/explain/daily-series.js';
import { quantitiesIn } from '../../../shared/explain/quantities-in.js';
import type { Moved } from '../../../shared/explain/moved.js';
import type { Quantity } from '../../../shared/explain/quantity.js';
import type { BatchPlan } from '../../../shared/plan/batch-plan.js';
import { planBatch } from '../../../shared/plan/batch-plan.js';
import { lifeLineOf } from '../../../shared/plan/story/life-line.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { placeOf, quantityAt } from '../../../shared/plan/story/place-in-plan.js';
import { STORY_PARTS, storyPartOf } from '../../../shared/plan/story/story-part.js';
import { aboutBatch } from '../../../shared/plan/story/about-batch.js';
import { formatDate } from '../../../shared/units/dates.js';
import { newBatch, newBrooder, newFarm, newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const TODAY = '2026-11-25';
const farm = newFarm();
const reader = { ...farm, today: TODAY };

function planned(
  more: Parameters<typeof newBatch>[0] = {},
  today = TODAY,
  people: FarmPicture['people'] = [],
) {
  const batch = { ...newBatch({ brooderId: 'brooder', ...more }), id: 'batch' };
  const picture = newPicture({
    farm,
    climate: newRequest({ farm }).climate,
    today,
    facilities: [newBrooder()],
    batches: [batch],
    people,
  });
  return { picture, tables, batch, reader, plan: planBatch(picture, tables, batch.id) };
}

const meat = planned();
const layers = planned({ purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' });

/** What is asked of a batch plans it again once for each change, however many numbers are opened. */
const asked = new WeakMap<object, ReturnType<typeof aboutBatch>>();

function moved(of: ReturnType<typeof planned>, quantity: Quantity): Moved | undefined {
  const about = asked.get(of) ?? aboutBatch(of);
  asked.set(of, about);
  const asking = about.movedMost(quantity);
  for (;;) {
    const { done, value } = asking.next();
    if (done === true) return value as Moved | undefined;
  }
}

describe('lifeLineOf', () => {
  const labels = ({ plan, batch }: ReturnType<typeof planned>) =>
    lifeLineOf(plan, batch).map(({ label }) => label);

  it('tells the life of meat birds from the order to the last day, in order', () => {
    const line = lifeLineOf(meat.plan, meat.batch);
    expect(labels(meat)[0]).toBe('Order');
    expect(labels(meat).at(-1)).toBe('Processing');
    expect(labels(meat)).toEqual(
      expect.arrayContaining(['Arrive', 'Heat off by day', 'Out of the brooder']),
    );
    // Not everything on one day.
    expect(labels(meat)).not.toContain('Heat off');
    expect(line.map(({ on }) => on)).toEqual(line.map(({ on }) => on).toSorted());
    expect(line.at(-1)!.on).toBe(meat.plan.lastDate);
  });

  it('says of each of several days of processing how many birds it has, and how many have none', () => {
    const hands = ['a', 'b'].map((id) => ({ id, name: id, away: [] }));
    const said = (wantedBirds: number) => {
      const asked = planned({ wantedBirds, processing: 'home' }, TODAY, hands);
      return {
        birds: Number(asked.plan.birds.atEnd.value),
        days: labels(asked).filter((label) => label.startsWith('Processing')),
      };
    };
    for (const { birds, days } of [said(120), said(900)]) {
      expect(days.length).toBeGreaterThan(1);
      const counts = days.map((label) => Number(/^Processing, (\d+) /.exec(label)![1]));
      expect(counts.reduce((sum, each) => sum + each)).toBe(birds);
    }
    expect(said(900).days.at(-1)).toMatch(/ that nobody has hands for$/);
  });

  it('tells layers of their first eggs, and an order that was made by its own day', () => {
    expect(labels(layers)).toContain('First eggs');
    expect(labels(layers)).not.toContain('Processing');
    const ordered = planned({ orderDate: '2026-11-20' });
    expect(lifeLineOf(ordered.plan, ordered.batch)[0]).toEqual({
      label: 'Ordered',
      on: '2026-11-20',
      part: 'before',
    });
  });

  it('has one day for an order that the household will make, and its work stands on it', () => {
    const { plan, batch } = planned({ orderDate: '2027-01-11' });
    const order = plan.tasks.tasks.find(({ templateId }) => templateId.includes('order-chicks'))!;
    expect(lifeLineOf(plan, batch)[0]).toEqual({
      label: 'Order',
      on: '2027-01-11',
      part: 'before',
    });
    expect([order.start, order.end]).toEqual(['2027-01-11', '2027-01-11']);
  });
});

describe('storyPartOf', () => {
  const partOf = (plan: BatchPlan, id: string) =>
    storyPartOf(
      plan.tasks.tasks.find(({ templateId }) => templateId === id)!,
      plan,
    );

  it.each([
    ['meat.order-chicks-for-a-named-arrival', 'before'],
    ['meat.preheat-brooder-and-check-floor-temperature', 'before'],
    ['meat.first-day-checks-every-2-to', 'brooder'],
    ['meat.fetch-starter-feed', 'feed'],
    ['meat.fetch-feed', 'feed'],
    ['move-to-pasture.catch-move-and-count', 'out'],
    ['processing.make-or-buy-ice', 'end'],
    ['processing.wash-pens-dry-store-feed', 'end'],
  ])('%s: %s', (id, part) => {
    expect(partOf(meat.plan, id)).toBe(part);
  });

  it('has a part for every piece of work', () => {
    for (const { plan } of [meat, layers])
      for (const task of plan.tasks.tasks) expect(STORY_PARTS).toContain(storyPartOf(task, plan));
  });
});

describe('placeOf', () => {
  it('leads back to every number of a plan, and to a day of its series', () => {
    const { daily: _daily, ...parts } = meat.plan;
    for (const each of quantitiesIn(parts))
      expect(quantityAt(meat.plan, placeOf(meat.plan, each)!)).toEqual(each);
    const day = quantityOfDay(meat.plan.daily, 'feed-day', 20)!;
    expect(quantityAt(meat.plan, placeOf(meat.plan, day)!)).toEqual(day);
    expect(placeOf(layers.plan, meat.plan.feed.total)).toBeUndefined();
  });
});

describe('what moves a number of a batch most', () => {
  it('moves the meat most by growth, the heat by the cold, the eggs by how hens lay', () => {
    const { leaving, heat } = meat.plan;
    const lighter = moved(meat, leaving!.dressedAll)!;
    expect(lighter.what).toBe('If the birds stay a tenth lighter');
    expect(lighter.to!.value).toBeLessThan(leaving!.dressedAll.value);
    const colder = moved(meat, heat!.need)!;
    expect(colder.what).toBe('If it stays 3 °C colder than expected');
    expect(colder.to!.value).toBeGreaterThan(heat!.need.value);
    expect(moved(layers, layers.plan.laying!.eggsPerHen)!.what).toBe(
      'If the hens lay a tenth less',
    );
  });

  it('moves a date in days', () => {
    const out = meat.plan.outdoors.moveOut!;
    const later = moved(meat, out)!;
    expect(String(later.to!.value) > String(out.value)).toBe(true);
  });

  it('names what the household chooses where nothing that happens moves a number', () => {
    expect(moved(meat, meat.plan.birds.toOrder)!.what).toMatch(/^If (five more|you want)/);
    expect(moved(meat, meat.plan.space.needs[0]!.have!)).toBeUndefined();
  });
});

describe('when it is known better', () => {
  const better = (asked: ReturnType<typeof planned>, of: Quantity) => moved(asked, of)?.knownBetter;

  it('is when that happens which moves it most, on its day', () => {
    const weigh = meat.plan.tasks.tasks.find(({ id }) => id.includes('weigh'))!;
    expect(better(meat, meat.plan.leaving!.dressedAll)).toBe(
      `Weigh ${meat.plan.birds.toWeigh.value} birds on ${formatDate(weigh.start, reader)}, and type it.`,
    );
    expect(better(meat, meat.plan.birds.atEnd)).toMatch(
      /^Count the chicks on .* tell the ones that died/,
    );
    expect(better(meat, meat.plan.outdoors.moveOut!)).toMatch(/^The forecast, from /);
    expect(better(layers, layers.plan.laying!.eggsInYear)).toMatch(/^Count the eggs of a week on /);
    expect(better(meat, meat.plan.heat!.cost)).toMatch(/^The forecast, from /);
  });

  it('says of the night of a day that its forecast comes', () => {
    const night = quantityOfDay(meat.plan.daily, 'night-low', 10)!;
    expect(better(meat, night)).toMatch(/^The forecast of that day/);
  });

  it('waits for no forecast of the heat of birds that need none any more', () => {
    const grown = planned({}, '2027-06-20');
    expect(String(grown.plan.heat!.lastHeatDay.value) < grown.plan.today).toBe(true);
    const said = (asked: typeof grown) =>
      quantitiesIn(asked.plan.heat!).map((each) => better(asked, each) ?? '');
    expect(said(grown).filter((each) => /forecast/.test(each))).toEqual([]);
    expect(said(grown).some((each) => /^That time is past/.test(each))).toBe(true);
  });

  it('says nothing of what is measured, and so when all is over', () => {
    expect(better(meat, meat.plan.space.needs[0]!.have!)).toBeUndefined();
    const over = planned({}, '2027-12-01');
    expect(better(over, over.plan.leaving!.dressedAll)).toMatch(/^That time is past/);
    expect(better(over, over.plan.outdoors.moveOut!)).toMatch(/^That time is past/);
  });
});

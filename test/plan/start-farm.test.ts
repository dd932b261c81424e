import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, monthOf, weekdayOf } from '../../shared/calendar/plain-date.js';
import { batchFields } from '../../shared/farm/batch.js';
import { problemsOfRow } from '../../shared/farm/check-row.js';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import { facilityFields, facilityOf, type Facility } from '../../shared/farm/facility.js';
import { farmFields, personFields } from '../../shared/farm/farm.js';
import { herdFields } from '../../shared/farm/herd.js';
import { paddockFields } from '../../shared/farm/paddock.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { cattleToComeFields, equalPaddocksFields } from '../../shared/farm/start.js';
import { findArrivals } from '../../shared/plan/arrival-finder.js';
import { edgesToAdd, gearToGet } from '../../shared/plan/gear-to-get.js';
import { planBatch } from '../../shared/plan/batch-plan.js';
import type { StartedFarm } from '../../shared/plan/start/start-farm.js';
import { yearSpan } from '../../shared/plan/year/year-span.js';
import { yearWeather } from '../../shared/plan/year/year-weather.js';
import { tables } from '../support/factories.js';
import { pictureOf, start, TODAY } from '../support/starts.js';

const FT = 0.3048;

const problemsIn = ({ farm, people, facilities, batches, herds, paddocks }: StartedFarm) => [
  ...problemsOfRow(farmFields, farm),
  ...people.flatMap((row) => problemsOfRow(personFields, row)),
  ...facilities.flatMap((row) => problemsOfRow(facilityFields[row.kind], row)),
  ...batches.flatMap((row) => problemsOfRow(batchFields, row)),
  ...herds.flatMap((row) => problemsOfRow(herdFields, row)),
  ...paddocks.flatMap((row) => problemsOfRow(paddockFields, row)),
];

const withoutAssumed = (facility: Facility): Facility => ({ ...facility, assumed: [] });

describe('the arrival of a start', () => {
  const layers = { birds: 20, from: '2027-03-01', to: '2027-06-30' };
  const heatOf = (rows: StartedFarm, facilities = rows.facilities) =>
    findArrivals({ ...pictureOf(rows), facilities }, tables, rows.batches[0]!.id, {
      from: layers.from,
      to: layers.to,
    }).map(({ reasons }) => reasons.find(({ code }) => code === 'heater')!.points);

  it('is put off for lamps that somebody said are all there are, and not for lamps that are assumed', () => {
    const rows = start({ layers });
    const said = rows.facilities.map((each) =>
      each.kind === 'brooder'
        ? { ...each, heat: { ...each.heat, count: 1 }, assumed: ['heat.kind'] }
        : each,
    );
    const assumed = said.map((each) =>
      each.kind === 'brooder' ? { ...each, assumed: ['heat.count'] } : each,
    );
    expect(Math.max(...heatOf(rows, said))).toBeGreaterThan(0);
    expect(Math.max(...heatOf(rows, assumed))).toBe(0);
  });
});

describe('a start', () => {
  const rows = start({
    meat: { birds: 75, from: '2027-05-01' },
    layers: { birds: 20 },
    cattle: [{ classId: 'cow-calf', head: 5 }],
  });
  const [meat, layers] = rows.batches;

  it('makes rows that could have been typed, with a plan that stands', () => {
    expect(problemsIn(rows)).toEqual([]);
    for (const { id } of rows.batches) {
      const plan = planBatch(pictureOf(rows), tables, id);
      expect(plan.issues.filter(({ level }) => level === 'stop')).toEqual([]);
    }
  });

  it('has no number that opens to a record of the household’s own but of what it said', () => {
    const picture = pictureOf(rows);
    const own = rows.batches.flatMap(({ id }) =>
      quantitiesIn(planBatch(picture, tables, id)).flatMap(({ inputs }) =>
        inputs.filter(({ mark }) => mark === 'own-record').map(({ label }) => label),
      ),
    );
    // Only the height was said of what plans of birds are reckoned with.
    expect([...new Set(own)]).toEqual(['Height above sea level']);
    const [meatPlan] = rows.batches.map(({ id }) => planBatch(picture, tables, id));
    expect(meatPlan!.heat!.heatersNeeded.mark).toBe('assumed');
    expect(meatPlan!.heat!.cost.mark).toBe('assumed');
    const typed = { ...rows.farm, assumed: [], estimated: [] };
    const said = { ...picture, farm: typed, facilities: rows.facilities.map(withoutAssumed) };
    const heat = planBatch(said, tables, meat!.id).heat!;
    expect(heat.installed.inputs.map(({ mark }) => mark)).toEqual(['own-record', 'own-record']);
  });

  it('says that frost dates which it estimated are an estimate', () => {
    const span = yearSpan(TODAY);
    const { turns } = yearWeather(pictureOf(rows), tables, [], span);
    const usual = turns.find(({ label }) => label === 'Usual last frost')!;
    expect(usual).toMatchObject({
      mark: 'estimate',
      inputs: [{ label: 'Estimated for your place', mark: 'estimate' }],
    });
  });

  it('takes a batch to its best week within the month that was named', () => {
    expect([monthOf(meat!.arrivalDate), weekdayOf(meat!.arrivalDate)]).toEqual([5, 3]);
    expect(meat!.assumed).toContain('arrivalDate');
    expect(layers!.arrivalDate > TODAY).toBe(true);
  });

  it('takes the next good season where no month was named, though a later one is better by little', () => {
    // Middle Tennessee in November: by the points alone its best week is in October.
    const tennessee = { latitudeDeg: 35.47, longitudeDeg: -87, elevationM: 199 };
    const zone = { timeZone: 'America/Chicago', place: 'Columbia' };
    const rows = start({ ...tennessee, ...zone, meat: { birds: 75 } });
    const [batch] = rows.batches;
    expect(batch!.arrivalDate < '2027-06-01').toBe(true);
    const picture = pictureOf(rows);
    const weeks = findArrivals(picture, tables, batch!.id, { from: TODAY, to: '2027-11-27' });
    const scores = new Map(weeks.map(({ arrivalDate, score }) => [arrivalDate, score]));
    // The trial brooder is not the one that fits: a few points more or less hang on it.
    expect(scores.get(batch!.arrivalDate)).toBeGreaterThanOrEqual(
      Math.max(...scores.values()) - 10,
    );
  });

  it('takes a batch to the very day that was said, which is then not assumed', () => {
    const [batch] = start({ meat: { birds: 20, from: '2027-05-08', to: '2027-05-08' } }).batches;
    expect(batch!.arrivalDate).toBe('2027-05-08');
    expect(batch!.assumed).not.toContain('arrivalDate');
  });

  it('has two batches of meat birds one after the other in the same places, which hold the larger', () => {
    const meat = { birds: 50, from: '2027-08-01' };
    const made = start({ meat, moreMeat: [{ birds: 75, from: '2027-04-01' }] });
    expect(problemsIn(made)).toEqual([]);
    expect(made.batches.map(({ name, arrivalDate }) => [name, monthOf(arrivalDate)])).toEqual([
      ['First meat birds', 4],
      ['Second meat birds', 8],
    ]);
    const kinds = made.facilities.map(({ kind }) => kind).sort();
    expect(kinds).toEqual(['brooder', 'feed-store', 'field-pen', 'freezer']);
    const picture = pictureOf(made);
    for (const { id } of made.batches) {
      const { issues, space, heat } = planBatch(picture, tables, id);
      expect(issues.filter(({ level }) => level === 'stop')).toEqual([]);
      expect(issues.map(({ code }) => code)).not.toContain('freezer-full');
      expect(space.needs.filter(({ runsOut }) => runsOut)).toEqual([]);
      expect(heat!.enough).toBe(true);
    }
    // What the first batch was in is cleaned for the second, and not built again.
    const [sooner, later] = made.batches.map(({ id }) =>
      planBatch(picture, tables, id).tasks.tasks.map(({ templateId }) => templateId),
    );
    const built = ['meat.get-brooder-and-gear', 'meat.build-pasture-pen'];
    const cleaned = 'meat.clean-disinfect-and-dry-brooder';
    expect(sooner).toEqual(expect.arrayContaining(built));
    expect(sooner).not.toContain(cleaned);
    expect(later).toContain(cleaned);
    expect(later!.filter((id) => built.includes(id))).toEqual([]);
    // Without a month of its own the second one comes once the brooder is free.
    const next = start({ meat: { birds: 75, from: '2027-04-01' }, moreMeat: [{ birds: 75 }] });
    const [first, second] = next.batches.map(({ arrivalDate }) => arrivalDate);
    expect(second! > addDays(first!, 28)).toBe(true);
    expect(second! < '2027-12-01').toBe(true);
    // Whichever was asked for first, the names go by the day they come.
    for (const [one, other] of [
      [{ birds: 75 }, { birds: 50, from: '2027-04-01' }],
      [{ birds: 75, from: '2027-08-01' }, { birds: 50 }],
      [{ birds: 75 }, { birds: 50, from: '2027-10-01' }],
    ] as const) {
      const names = start({ meat: one, moreMeat: [other] })
        .batches.toSorted((a, b) => a.arrivalDate.localeCompare(b.arrivalDate))
        .map(({ name }) => name);
      expect(names).toEqual(['First meat birds', 'Second meat birds']);
    }
  });

  it('has no brooder for pullets that come started, and a coop that holds them', () => {
    const made = start({ layers: { birds: 12, startedWeeks: 16 } });
    expect(problemsIn(made)).toEqual([]);
    expect(made.facilities.map(({ kind }) => kind)).toEqual(['feed-store', 'coop']);
    const [batch] = made.batches;
    expect(batch).toMatchObject({ origin: 'started', arrivalAgeWeeks: 16, sex: 'pullets' });
    const { space, issues } = planBatch(pictureOf(made), tables, batch!.id);
    expect(space.stocking.every(({ birds, fits }) => birds.value <= fits!.value)).toBe(true);
    expect(issues.map(({ code }) => code)).not.toContain('coop-short');
  });

  it('has kinds of cattle as groups of one herd, with grass for all of them', () => {
    const cows = { classId: 'cow-calf', head: 5 };
    const steers = { classId: 'stocker', head: 4, arrivesOn: '2027-05-01' };
    const one = start({ cattle: [cows] });
    const both = start({ cattle: [cows, steers] });
    expect(both.herds.map(({ groups }) => groups)).toEqual([[cows, steers]]);
    expect(both.paddocks[0]!.areaM2).toBeGreaterThan(one.paddocks[0]!.areaM2);
    expect(start({ cattle: [] })).toMatchObject({ herds: [], paddocks: [] });
  });

  it('has the cows of a calving season by when they are due, all head of them', () => {
    const season = (head: number, calvesUntil?: string) =>
      start({
        cattle: [
          {
            classId: 'cow-calf',
            head,
            calvesOn: '2027-04-01',
            ...(calvesUntil ? { calvesUntil } : {}),
          },
        ],
      }).herds[0]!.groups.map((group) => [group.head, group.calvesOn]);
    expect(season(5)).toEqual([[5, '2027-04-01']]);
    expect(season(5, '2027-05-31')).toEqual([
      [3, '2027-04-16'],
      [2, '2027-05-16'],
    ]);
    expect(season(2, '2027-06-30').map(([head]) => head)).toEqual([1, 1]);
    expect(season(20, '2027-06-30').map(([head]) => head)).toEqual([7, 7, 6]);
    expect(
      problemsOfRow(cattleToComeFields, {
        classId: 'cow-calf',
        head: 2,
        calvesUntil: '2027-05-01',
      }),
    ).toMatchObject([{ field: 'calvesUntil', code: 'conflict' }]);
  });

  it('takes the grass as grazed down where cattle are there in winter, on the day that was said', () => {
    const cows = { classId: 'cow-calf', head: 5 };
    expect(start({ cattle: [cows] }).pastureChoices.onHaySince).toBe(TODAY);
    const toCome = { ...cows, arrivesOn: '2027-05-01' };
    expect(start({ cattle: [toCome] }).pastureChoices).not.toHaveProperty('onHaySince');
    expect(start({ cattle: [cows] }, '2027-06-01').pastureChoices).not.toHaveProperty('onHaySince');
  });

  it('makes no hay where nobody says so, and marks that and the day on hay as assumed', () => {
    const cattle = [{ classId: 'cow-calf', head: 5 }];
    expect(start({ cattle }).pastureChoices).toMatchObject({
      makesHay: false,
      assumed: ['makesHay', 'onHaySince'],
    });
    for (const makesHay of [true, false])
      expect(start({ cattle, makesHay }).pastureChoices).toMatchObject({
        makesHay,
        assumed: ['onHaySince'],
      });
  });

  it('gives each batch a brooder that it does not outgrow, of whole feet, with enough lamps', () => {
    for (const { id, brooderId } of rows.batches) {
      const brooder = facilityOf(rows.facilities, 'brooder', brooderId)!;
      for (const side of [brooder.lengthM, brooder.widthM])
        expect(side / FT).toBeCloseTo(Math.round(side / FT), 6);
      const plan = planBatch(pictureOf(rows), tables, id);
      expect(plan.space.needs.filter(({ runsOut }) => runsOut)).toEqual([]);
      const { heatersNeeded } = plan.heat!;
      expect(heatersNeeded!.value).toBeLessThanOrEqual(brooder.heat.count);
      // Never one alone: when it fails the night is cold.
      expect(brooder.heat.count).toBeGreaterThanOrEqual(2);
    }
    // A square foot a chick by the end of brooding, as books say.
    const { lengthM, widthM } = facilityOf(rows.facilities, 'brooder', meat!.brooderId)!;
    expect((lengthM * widthM) / FT ** 2).toBeGreaterThanOrEqual(75 * 0.75);
    expect((lengthM * widthM) / FT ** 2).toBeLessThanOrEqual(75 * 1.5);
  });

  it('takes a smaller lamp where the usual one would leave no cool end', () => {
    const few = start({ layers: { birds: 8, from: '2027-04-01' } });
    const [batch] = few.batches;
    const wattsOf = (of: StartedFarm): number =>
      facilityOf(of.facilities, 'brooder', of.batches[0]!.brooderId)!.heat.wattsEach;
    expect([wattsOf(rows), wattsOf(few)]).toEqual([250, 125]);
    const plan = planBatch(pictureOf(few), tables, batch!.id);
    expect(plan.issues.map(({ code }) => code)).not.toContain('lamp-too-strong');
  });

  it('hangs no dozen of small lamps over twenty pullets, and gives them two feeds', () => {
    const made = start({ layers: { birds: 20 } });
    const [batch] = made.batches;
    const { heat } = facilityOf(made.facilities, 'brooder', batch!.brooderId)!;
    expect(heat.count).toBeLessThanOrEqual(4);
    const { feed, heat: plan } = planBatch(pictureOf(made), tables, batch!.id);
    expect(plan!.enough).toBe(true);
    expect(feed.phases.map(({ name }) => name)).toEqual(['Starter-grower', 'Layer']);
    expect(batch!.assumed).toContain('feedProgramId');
  });

  it('shuts off a part of a winter brooder instead of heating all of it with a dozen lamps or gas', () => {
    const made = start({ meat: { birds: 75, from: '2026-12-04', to: '2026-12-04' } });
    const [batch] = made.batches;
    const brooder = facilityOf(made.facilities, 'brooder', batch!.brooderId)!;
    expect(brooder).toMatchObject({ closesOff: true, heat: { kind: 'lamp' } });
    expect(brooder.assumed).toContain('closesOff');
    expect(brooder.heat.count).toBeLessThanOrEqual(10);
    const heat = planBatch(pictureOf(made), tables, batch!.id).heat!;
    expect(heat.enough).toBe(true);
    // The birds have a cool end on the coldest night of every week, as the brooder card asks for it.
    for (const { night } of heat.weeks)
      expect(night.underHeat!.value - night.air.value).toBeGreaterThanOrEqual(3);
  });

  it('has no work with a pen for birds that never go out, and sets up no shade in January', () => {
    const namesOf = (from: string): string => {
      const made = start({ meat: { birds: 75, from, to: from } });
      const kinds = made.facilities.map(({ kind }) => kind);
      expect([from, kinds.includes('field-pen')]).toEqual([from, from === '2027-05-26']);
      const plan = planBatch(pictureOf(made), tables, made.batches[0]!.id);
      return plan.tasks.tasks.map(({ name }) => name).join('; ');
    };
    const [winter, summer] = [namesOf('2026-12-04'), namesOf('2027-05-26')];
    expect(winter).toContain('Set up tables, water and drain');
    expect(winter).not.toMatch(/pasture pen|shade/);
    expect(summer).toContain('Set up shade, tables');
    expect(summer).toContain('Build or buy the pasture pen');
  });

  it('keeps a thousand pullets warm with gas, not with a hundred lamps', () => {
    const made = start({ layers: { birds: 983, from: '2027-01-01' } });
    const { heat } = facilityOf(made.facilities, 'brooder', made.batches[0]!.brooderId)!;
    expect(heat).toMatchObject({ kind: 'gas', thermostat: true });
    expect(heat.count).toBeLessThanOrEqual(25);
  });

  it('gives hens a coop and meat birds pens and a freezer that hold them', () => {
    const kinds = rows.facilities.map(({ kind }) => kind).sort();
    expect(kinds).toEqual(['brooder', 'brooder', 'coop', 'feed-store', 'field-pen', 'freezer']);
    const plan = planBatch(pictureOf(rows), tables, layers!.id);
    expect(plan.issues.map(({ code }) => code)).not.toContain('coop-short');
    const { leaving } = planBatch(pictureOf(rows), tables, meat!.id);
    const { liters } = facilityOf(rows.facilities, 'freezer', meat!.freezerId)!;
    expect(leaving!.freezerNeed!.value).toBeLessThanOrEqual(liters);
  });

  it('counts twelve equal paddocks for cattle, in quarters of an acre', () => {
    expect(rows.paddocks).toHaveLength(12);
    const acres = rows.paddocks[0]!.areaM2 / 4046.856;
    expect(acres * 4).toBeCloseTo(Math.round(acres * 4), 3);
    // One and a half to two and a half acres of pasture for a cow with calf.
    expect(12 * acres).toBeGreaterThan(5 * 1.5);
    expect(12 * acres).toBeLessThan(5 * 2.5);
    expect(start({ paddocks: { count: 3, areaM2: 2023.4 } }).paddocks).toHaveLength(3);
    expect(start({}).paddocks).toEqual([]);
  });

  it('divides what is there in all among so many paddocks', () => {
    // 8 acres in 6.
    const paddocks = { count: 6, allM2: 8 * 4046.856 };
    const divided = start({ paddocks }).paddocks;
    expect(divided).toHaveLength(6);
    expect(divided[0]!.areaM2 / 4046.856).toBeCloseTo(1.3333, 4);
    expect(divided[0]!.assumed).not.toContain('areaM2');
    expect(() => start({ paddocks: { count: 6, allM2: 200 } })).toThrow(
      /paddocks\.allM2 .*300.*another number of paddocks/,
    );
    expect(problemsOfRow(equalPaddocksFields, { areaM2: 400, allM2: 800 })).toMatchObject([
      { field: 'allM2', code: 'conflict' },
    ]);
  });

  it('marks what nobody said as assumed, and the climate as estimated', () => {
    expect(rows.farm.assumed).toEqual(['name', 'electricityPricePerKWh', 'gasPricePerL']);
    expect(rows.farm.estimated).toContain('monthlyRainMm');
    expect(start({ name: 'Hill', meat: { birds: 10 } }).farm.assumed).not.toContain('name');
    expect(rows.paddocks[0]!.assumed).toEqual(expect.arrayContaining(['areaM2', 'soilId']));
    for (const row of [...rows.facilities, ...rows.batches, ...rows.paddocks])
      for (const path of row.assumed ?? [])
        expect(
          path.split('.').reduce<unknown>((at, name) => (at as never)?.[name], row),
        ).toBeDefined();
  });

  it('has hours by when people are free, and a child beside its parents', () => {
    const { people } = start({
      people: [
        { free: 'evenings' },
        {},
        { isChild: true },
        { isChild: true, childAge: '13-and-up' },
      ],
    });
    // Hours are assumed only where nothing was said of somebody's time.
    expect(people.map(({ assumed }) => assumed!.includes('hoursByWeekday'))).toEqual([
      ...[false, true, true, false],
    ]);
    expect(people.map(({ name }) => name)).toEqual(['Adult 1', 'Adult 2', 'Child 1', 'Child 2']);
    expect(people[0]!.hoursByWeekday).toEqual([2, 2, 2, 2, 2, 5, 3]);
    expect(people[1]!.hoursByWeekday).toBeUndefined();
    // Half days: at home while the hours for the farm run, out for the other half.
    const halves = start({
      people: [{ free: 'at-home-mornings' }, { free: 'at-home-afternoons' }],
    });
    expect(halves.people.map(({ byDay, startH }) => [byDay, startH!.weekday])).toEqual([
      ...[
        ['out-pm', 8],
        ['out-am', 13],
      ],
    ]);
    expect(problemsIn(halves)).toEqual([]);
    // Of a child whose age nobody said no work is expected.
    expect(people[2]).toMatchObject({ isChild: true, hoursByWeekday: [0, 0, 0, 0, 0, 0, 0] });
    expect(people[3]).toMatchObject({ isChild: true, hoursByWeekday: [1, 1, 1, 1, 1, 3, 2] });
  });

  it('asks for the climate where there is no estimate, and takes it', () => {
    const kenya = { latitudeDeg: -1.3, longitudeDeg: 36.8, timeZone: 'Africa/Nairobi' };
    expect(() => start(kenya)).toThrow(/No estimate for this place/);
    const { monthlyMinC, monthlyMaxC } = start({}).farm;
    const climate = {
      ...{ monthlyMinC, monthlyMaxC, monthlyRainMm: monthlyMinC.map(() => 80) },
      ...{ lastFrost: '07-15', firstFrost: '07-15' },
    };
    expect(start({ ...kenya, climate }).farm).not.toHaveProperty('estimated');
  });

  it('makes rows in order from whatever birds come', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1500 }),
        fc.constantFrom<'us' | 'metric'>('us', 'metric'),
        fc.constantFrom<'meat' | 'layers'>('meat', 'layers'),
        fc.integer({ min: 1, max: 12 }),
        (birds, units, purpose, month) => {
          const from = `2027-${String(month).padStart(2, '0')}-01`;
          const made = start({ units, [purpose]: { birds, from } });
          expect(problemsIn(made)).toEqual([]);
          const plan = planBatch(pictureOf(made), tables, made.batches[0]!.id);
          expect(plan.birds.toOrder.value).toBeGreaterThanOrEqual(birds);
        },
      ),
      { numRuns: 5, endOnFailure: true },
    );
  });
});

describe('gear that nobody has said to be there', () => {
  it('is each on the list once, by when it is of use, until it is typed', () => {
    const rows = start({ meat: { birds: 50, from: '2027-05-05', to: '2027-05-05' } });
    const picture = pictureOf(rows);
    const batch = picture.batches[0]!;
    const listOf = (facilities: readonly Facility[], more = {}) => {
      const of = { ...picture, facilities, batches: [{ ...batch, ...more }] } as FarmPicture;
      const plan = planBatch(of, tables, batch.id!);
      return {
        plan,
        gear: gearToGet(plan, { batch: { ...batch, ...more }, facilities, tables }),
      };
    };
    const { plan, gear } = listOf(picture.facilities);
    const names = gear.map(({ what, by }) => `${what} ${by}`);
    expect(new Set(names).size).toBe(names.length);
    for (const what of [/^Drinkers/, /^Bigger drinkers/, /^Feeders/, /^Heat lamps/, /^Killing/])
      expect(names.some((each) => what.test(each))).toBe(true);
    const first = gear.find(({ what }) => what === 'Drinkers')!;
    expect(first.by).toBe(plan.arrivalDate);
    // Two 1-gallon drinkers for 100 chicks in the first week (Extension list in seeds/space-standards.json).
    const liters = 0.0757 * plan.birds.chicksPlaced.value;
    expect(first.amounts[0]!.value).toBeCloseTo(liters, 1);
    const typed = picture.facilities.map((each) =>
      each.kind === 'brooder'
        ? {
            ...each,
            assumed: [],
            drinkersHoldL: 20,
            feedersHoldKg: 20,
            drinkerCm: 300,
            feederCm: 600,
          }
        : each,
    );
    const had = listOf(typed, { killingCones: 4, plucking: 'machine' }).gear;
    const isOfBrooder = ({ by }: { by: string }) => by < String(plan.outdoors.moveOut!.value);
    expect(had.filter(isOfBrooder)).toEqual([]);
    // Both too short from some day on: one that was typed is added to, one that is assumed is got whole.
    const short = (assumed: readonly string[]): Facility[] =>
      picture.facilities.map((each) =>
        each.kind === 'brooder' ? { ...each, assumed, feederCm: 60, drinkerCm: 60 } : each,
      );
    const toAdd = (facilities: readonly Facility[]) =>
      edgesToAdd(listOf(facilities).plan, { batch, facilities });
    expect(toAdd(short(['feederCm', 'drinkerCm']))).toEqual([]);
    expect(toAdd(short(['feederCm']))).toEqual([
      expect.objectContaining({ kind: 'drinkers', haveCm: 60 }),
    ]);
  });
});

import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Mark, Sourced } from '../../shared/explain/formula.js';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import type { Quantity } from '../../shared/explain/quantity.js';
import type { Batch } from '../../shared/farm/batch.js';
import { moveQuantities } from '../../shared/plan/pasture/move-quantities.js';
import { rowById, type Tables } from '../../shared/tables/tables.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { newBrooder, newFarm, newRequest, tables as real } from '../support/factories.js';
import { newGroup, newHerd, newPastureRequest, newReading } from '../support/pasture-factories.js';
import { plannedBatch, plannedPasture } from '../support/pictures.js';

/** A source that no row really has, and the weakest mark: what rests on such a row shows both. */
const TRIED: Sourced = { sources: ['TRIED'], mark: 'assumed' };

const clone = (): Tables => structuredClone(real);

/** Tables in which every row is as well supported as can be, so that one weak row shows. */
function allPublished(): Tables {
  const strengthen = (part: unknown): void => {
    if (typeof part !== 'object' || part === null) return;
    for (const [key, value] of Object.entries(part)) {
      if (key.toLowerCase().endsWith('mark')) Object.assign(part, { [key]: 'published' });
      else strengthen(value);
    }
  };
  const tables = clone();
  strengthen(tables);
  return tables;
}

/** Labels of the quantities that rest on a row: directly, or on others that do. */
function restingOn(
  spoil: (tables: Tables) => void,
  quantitiesOf: (tables: Tables) => readonly Quantity[],
): string[] {
  const tables = allPublished();
  spoil(tables);
  const found = quantitiesOf(tables);
  const direct = found.filter(({ sources }) => sources.includes('TRIED'));
  expect(direct.length).toBeGreaterThan(0);
  expect(direct.filter(({ mark }) => mark !== 'assumed')).toEqual([]);
  const weak = found.filter(({ mark }) => mark === 'assumed');
  expect(weak.length).toBeLessThan(found.length);
  return weak.map(({ label }) => label);
}

const spoilt = (row: Sourced): void => void Object.assign(row, TRIED);

const PLACES = {
  ...{ brooderId: 'brooder', penId: 'pen', coopId: 'coop', freezerId: 'freezer' },
  prices: {
    ...{ perBird: '3.00', beddingPerBag: '8.00', iceBag: '3.00', freezerBag: '0.50' },
    feedPerBag: { starter: '20.00', grower: '20.00', finisher: '20.00' },
  },
};
const batchQuantities =
  (batch: Partial<Batch> = {}) =>
  (tables: Tables): Quantity[] =>
    quantitiesIn(
      plannedBatch(
        newRequest({
          tables,
          batch: { ...PLACES, ...batch },
          facilities: [
            newBrooder({ circuitId: 'circuit', feederCm: 300, drinkerCm: 150 }),
            { kind: 'circuit', id: 'circuit', name: 'C', volts: 120, amps: 15, otherLoadW: 0 },
            { kind: 'field-pen', id: 'pen', name: 'Pen', floorM2: 11, count: 2 },
            {
              kind: 'coop',
              id: 'coop',
              name: 'Coop',
              floorM2: 8,
              roostM: 6,
              nestBoxes: 6,
              runM2: 9,
            },
            { kind: 'freezer', id: 'freezer', name: 'Freezer', liters: 400, usedL: 60 },
          ],
        }),
      ),
    );

describe('rows behind the numbers of a batch', () => {
  it.each<[string, (tables: Tables) => Sourced, string[]]>([
    ['losses', (t) => rowById(t.losses, 'fast-meat'), ['Birds to order', 'Birds to process']],
    ['growth table', (t) => rowById(t.growthTables, 'fast-2020'), ['Live weight each', 'Ice']],
    ['waste', (t) => rowById(t.strains, 'fast-meat').waste, ['Feed for the whole batch']],
    ['usual age', (t) => rowById(t.strains, 'fast-meat').leave, ['Processing']],
    ['feed program', (t) => rowById(t.feedPrograms, 'broiler'), ['Grower from']],
    ['keeping of feed', (t) => t.feedKeeping, ['Buy Starter by']],
    ['weight of a bag', (t) => t.feedKeeping.usualBag, ['Starter bags', 'The bill']],
    ['schedule', (t) => t.broodingSchedules[0]!, ['Under the heat, chick height', 'Cool end']],
    ['space standard', (t) => t.space.brooder[0]!, ['Brooder floor, peak need']],
    ['floor of pens', (t) => t.space.pen, ['Floor needed outdoors', 'Pens needed']],
    ['moves of pens', (t) => t.space.penMoves, ['Pen moves a day', 'Ground covered']],
    ['at home', (t) => rowById(t.growthTables, 'fast-2020').atHome!, ['Live weight each']],
    ['birds to weigh', (t) => t.growing.evenness, ['Birds to weigh']],
    ['water', (t) => t.water.meat, ['Most water in one day']],
    ['rise of water in heat', (t) => t.water.heat, ['Most water in one day']],
    ['air films', (t) => t.heat.films, ['Walls, lid and floor, per degree', 'Energy in all']],
    ['materials', (t) => rowById(t.materials, 'plywood'), ['Walls, lid and floor, per degree']],
    ['warmth of birds', (t) => t.heat.birds, ['Heat needed on the coldest expected night']],
    ['fresh air', (t) => t.heat.ventilation, ['Lamps needed']],
    ['zones of a brooder', (t) => t.heat.zone, ['Cool end']],
    ['rays of a lamp', (t) => t.heat.radiant, ['Lamps needed', 'Under the heat, cold night']],
    ['clearance', (t) => t.heat.clearance, ['Lamp to bedding, at least', 'Lamps needed']],
    ['lamps in use', (t) => t.heat.lamps, ['Lamps above the bedding', 'Lamps on, hot noon']],
    ['what is too hot', (t) => t.heat.tooHot, ['Lamps on, hot noon']],
    ['a bedded floor', (t) => t.heat.floor, ['Walls, lid and floor, per degree']],
    ['other rules', (t) => t.heat.rules[0]!, ['Lamps by it']],
    ['building', (t) => t.heat.building, ['Heat needed on the coldest expected night']],
    ['cold nights', (t) => t.heat.coldNightMarginK, ['Outdoor low that night', 'Lamps needed']],
    ['lamp rule', (t) => t.heat.lampRule, ['Lamps by the common rule']],
    ['circuit', (t) => t.heat.circuit, ['Circuit carries all day']],
    ['bedding', (t) => t.litter, ['Bedding to start with', 'Bags of shavings']],
    ['move-out rule', (t) => rowById(t.moveOut, 'meat'), ['Out of the brooder']],
    ['nights that are to be warm', (t) => t.judgements.birds.moveOutNights, ['Age at the move']],
    ['manure', (t) => t.manure.meat, ['Manure nitrogen on that ground']],
    ['dressing', (t) => t.processing.dressing[0]!, ['Dressed weight each', 'Freezer room needed']],
    ['water in the carcass', (t) => t.processing.waterUptake, ['Packed weight, all birds']],
    ['packing', (t) => t.processing.packing, ['Freezer room needed']],
    ['ice', (t) => t.processing.ice, ['Ice']],
    ['ice by the weather', (t) => t.processing.iceBalance, ['Ice', 'Bags of ice']],
    ['bag of ice', (t) => t.processing.iceBag, ['Bags of ice']],
    ['chilling limit', (t) => t.processing.chilling, ['Legal limit to be below 4.4 °C']],
    ['ice water', (t) => t.processing.chilling.iceWater, ['Time in ice water until cold']],
    ['freezer bags', (t) => t.processing.freezerBags, ['Freezer bags']],
    ['scalding', (t) => t.processing.scalding, ['Propane to scald']],
    ['keeping of frozen birds', (t) => t.processing.keeping, ['In the freezer', 'Eaten up']],
    ['hours of a hand', (t) => t.judgements.birds.handsUnknown, ['Birds a day, at most']],
    ['withdrawal', (t) => t.processing.withdrawalH, ['Hours without feed']],
  ])('say how sure they are of: %s', (_, rowOf, labels) => {
    const found = restingOn((tables) => spoilt(rowOf(tables)), batchQuantities());
    expect(found).toEqual(expect.arrayContaining(labels));
  });

  const inHeat = { moveOutDate: '2027-05-20', arrivalDate: '2027-05-05' } as const;
  it.each<[string, (tables: Tables) => Sourced]>([
    ['best air', (t) => t.growing.best],
    ['heat', (t) => t.growing.heat],
    ['cold', (t) => t.growing.cold],
    ['the strain in heat', (t) => rowById(t.strains, 'fast-meat').heat!],
  ])('say of birds outdoors how sure they are of: %s', (_, rowOf) => {
    const found = restingOn((tables) => spoilt(rowOf(tables)), batchQuantities(inHeat));
    expect(found).toEqual(expect.arrayContaining(['Live weight each', 'Feed for the whole batch']));
  });

  const hens = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
  it.each<[string, (tables: Tables) => Sourced, string[]]>([
    ['lay curve', (t) => rowById(t.layCurves, 'brown-egg'), ['Peak lay', 'Eggs in the week']],
    [
      'what flocks lay of it',
      (t) => rowById(t.layCurves, 'brown-egg').flock,
      ['Peak lay', 'Eggs per hen housed'],
    ],
    ['light felt', (t) => rowById(t.layCurves, 'brown-egg').lightShare, ['Eggs in the week']],
    ['lay by light', (t) => t.light.response, ['Eggs a week without a lamp', 'Peak lay']],
    ['lay by air', (t) => t.laying.air, ['Eggs a week with a lamp', 'Eggs in laying year 1']],
    ['molt', (t) => t.laying.molt, ['Molt begins about', 'Eggs in laying year 2']],
    ['later years', (t) => t.laying.years, ['Eggs in laying year 3']],
    ['light', (t) => t.light, ['Light wanted', 'Lamp hours to add']],
    ['coop', (t) => t.space.coop, ['Nest boxes', 'Roost', 'Coop floor needed']],
    ['losses', (t) => rowById(t.losses, 'layer'), ['Hens at the first egg', 'Eggs in the week']],
  ])('say of hens how sure they are of: %s', (_, rowOf, labels) => {
    const found = restingOn((tables) => spoilt(rowOf(tables)), batchQuantities(hens));
    expect(found).toEqual(expect.arrayContaining(labels));
  });

  it('carry marks that stand beside a row’s own: of egg weights, and of nights for older birds', () => {
    const markOf = (label: string, tables: Tables, batch: Partial<Batch>): Mark =>
      batchQuantities(batch)(tables).find((q) => q.label === label)!.mark;
    const eggs = clone();
    Object.assign(rowById(eggs.layCurves, 'brown-egg'), { eggWeightMark: 'assumed' });
    expect(markOf('Feed in the week', eggs, hens)).toBe('assumed');
    expect(markOf('Peak lay', eggs, hens)).toBe('estimate');
    const nights = clone();
    Object.assign(rowById(nights.moveOut, 'meat'), { laterMark: 'assumed' });
    const late = { moveOutDate: '2027-07-20', leaveAgeDays: 90 };
    expect(markOf('Out of the brooder', nights, late)).toBe('assumed');
    expect(markOf('Out of the brooder', nights, {})).not.toBe('assumed');
    const litter = clone();
    Object.assign(litter.litter, { topUpMark: 'assumed' });
    expect(markOf('Bedding in all', litter, {})).toBe('assumed');
    expect(markOf('Bedding to start with', litter, {})).not.toBe('assumed');
  });

  it('are the household’s own once it has given them', () => {
    const own = {
      firstWeekLossPercent: 1,
      laterLossPercent: 1,
      dressingShare: 0.7,
      bagKg: 25,
      wastePercent: 2,
      movesPerDay: 1,
    };
    const inputOf = (label: string): Mark | undefined =>
      batchQuantities(own)(real)
        .flatMap(({ inputs }) => inputs)
        .find((each) => each.label === label)?.mark;
    for (const label of ['Loss later', 'Dressing percentage', 'One bag', 'Waste', 'Moves a day'])
      expect([label, inputOf(label)]).toEqual([label, 'own-record']);
    expect(batchQuantities({ wastePercent: 2 })(real).map((q) => q.label)).toContain('Ice');
  });
});

const pastureQuantities =
  (more: Partial<Parameters<typeof newPastureRequest>[0]> = {}) =>
  (tables: Tables): Quantity[] => {
    const choices = { feedingId: 'ring', storingId: 'barn', baleId: 'round-4x4' };
    const plan = plannedPasture(newPastureRequest({ tables, choices, ...more }));
    return [...quantitiesIn(plan), ...moveQuantities(plan, plan.moves[1]!)];
  };

describe('rows behind the numbers of a pasture', () => {
  const kind = (t: Tables) => rowById(t.forages, 'orchardgrass-legume');
  const cow = (t: Tables) => rowById(t.cattle.classes, 'cow-calf');
  it.each<[string, (tables: Tables) => Sourced, string[]]>([
    [
      'groups of grasses',
      (t) => kind(t).groups,
      ['First paddock at its ready height', 'Turn-out', 'In on'],
    ],
    [
      'a group',
      (t) => rowById(t.grassGroups, 'B'),
      ['First paddock at its ready height', 'Turn-out', 'In on'],
    ],
    [
      'how a group answers to weather',
      (t) => rowById(t.grassGroups, 'B').response,
      ['First paddock at its ready height', 'Turn-out'],
    ],
    [
      'what the soil gives',
      (t) => t.pasture.nitrogenIndex,
      ['First paddock at its ready height', 'Turn-out'],
    ],
    ['forage in a centimeter', (t) => kind(t).massKgPerHaCm, ['Forage per unit of height']],
    ['heights', (t) => kind(t).heights, ['First paddock at its ready height', 'Turn-out']],
    ['rest', (t) => kind(t).restDays, ['Paddocks for the longest rest', 'In on']],
    ['energy', (t) => kind(t).energyMcalPerKg, ['Dry matter a day, at most']],
    ['legumes', (t) => kind(t).legumeShare, ['Clover and alfalfa in it']],
    ['the bloat limit', (t) => t.pasture.bloatLegumeShare, ['Clover and alfalfa in it']],
    [
      'share eaten',
      (t) => t.pasture.utilisation,
      ['Size of each', 'Head the land carries in the plan'],
    ],
    ['longest stay', (t) => t.pasture.longestStayDays, ['Paddocks for the longest rest']],
    ['magnesium', (t) => t.pasture.magnesiumLeadDays, ['Start magnesium mineral now; it was due']],
    ['change of feed', (t) => t.pasture.gradualDays, ['Feed hay too until']],
    ['fall grass', (t) => t.pasture.stockpile, ['To keep grass for fall, closed from']],
    ['nitrogen limit', (t) => t.pasture.nitrogenLimitKgPerHa, ['Manure nitrogen']],
    [
      'hay',
      (t) => t.pasture.hay,
      ['Hay for the days of the plan', 'Bales for the days of the plan'],
    ],
    [
      'feeding hay',
      (t) => rowById(t.pasture.hay.feeding, 'ring'),
      ['Hay for the days of the plan'],
    ],
    [
      'storing hay',
      (t) => rowById(t.pasture.hay.storing, 'barn'),
      ['Hay for the days of the plan'],
    ],
    ['weights not given', (t) => cow(t).usual, ['Dry matter a day, at most', 'Animal units']],
    ['manure of cattle', (t) => cow(t).manure, ['Manure nitrogen', 'Manure phosphorus']],
    ['share of weight', (t) => cow(t).bodyWeightShare, ['By the share of body weight']],
    ['animal units', (t) => t.cattle.animalUnits, ['Animal units']],
    ['water', (t) => t.cattleWater, ['Water on the hottest day of one year in ten']],
    ['hot days', (t) => t.judgements.grass.highsSpreadK, ['High of that hot day', 'Smallest tank']],
    ['tank', (t) => t.cattleWater.tank, ['Smallest tank']],
    ['refill', (t) => t.cattleWater.refill, ['Smallest tank']],
    ['trough', (t) => t.cattleWater.troughEdgeM, ['Trough length']],
    ['lane', (t) => t.fence.laneWidthM, ['Lane along an average paddock']],
    ['energizer', (t) => t.fence.energizerJPerKm, ['Energizer for all of that fence']],
    ['shade', (t) => t.fence.shadeM2PerHead, ['Shade for all of them']],
    ['weighing of moves', (t) => t.judgements.grazing.mostStrips, ['In on', 'Days of stay']],
    [
      'unread stands',
      (t) => t.judgements.grass.leftBeforeWinterDays,
      ['Grass on hand then', 'First paddock at its ready height'],
    ],
  ])('say how sure they are of: %s', (_, rowOf, labels) => {
    const found = restingOn((tables) => spoilt(rowOf(tables)), pastureQuantities());
    expect(found).toEqual(expect.arrayContaining(labels));
  });

  it('no longer hang on a guessed height once every paddock was read, nor on weights once given', () => {
    const readings = Array.from({ length: 6 }, (_, k) =>
      newReading({ id: `r${k}`, paddockId: `p${k + 1}` }),
    );
    const ready = (more: Parameters<typeof pastureQuantities>[0]): Mark =>
      pastureQuantities(more)(real).find(
        ({ label }) => label === 'First paddock at its ready height',
      )!.mark;
    expect(ready({})).toBe('assumed');
    expect(ready({ readings })).toBe('estimate');
    const groups = [newGroup({ weightKg: 500, gainKgPerDay: 0, milkKgPerDay: 8 })];
    const need = (more: Parameters<typeof pastureQuantities>[0]): Mark =>
      pastureQuantities(more)(real).find(({ label }) => label === 'Dry matter a day, at most')!
        .mark;
    expect(need({})).toBe('assumed');
    expect(need({ herds: [newHerd({ groups })] })).toBe('estimate');
  });

  it('are assumed where no rain is known', () => {
    const readings = Array.from({ length: 6 }, (_, k) =>
      newReading({ id: `r${k}`, paddockId: `p${k + 1}` }),
    );
    const { monthlyMinC, monthlyMaxC } = newFarm();
    const climate = climateFromMonthlyMeans(monthlyMinC, monthlyMaxC, 6);
    const ready = pastureQuantities({ readings, climate })(real).find(
      ({ label }) => label === 'First paddock at its ready height',
    );
    expect(ready).toMatchObject({ mark: 'assumed' });
    expect(ready!.sources).toContain('OWN_DEFAULT');
  });

  it('take the farm’s own growth for a record once its readings outweigh the table', () => {
    // Ten days of May and June in each paddock: most of a reading in full growth.
    const factor = (paddocks: number): Mark =>
      pastureQuantities({
        today: '2027-06-20',
        readings: Array.from({ length: 5 * paddocks }, (_, k) =>
          newReading({
            id: `r${k}`,
            paddockId: `p${1 + (k % paddocks)}`,
            date: addDays('2027-05-01', 10 * Math.floor(k / paddocks)),
            heightCm: 9 + 4 * Math.floor(k / paddocks),
          }),
        ),
      })(real).find(({ label }) => label.startsWith('Your growth against'))!.mark;
    expect(factor(1)).toBe('estimate');
    expect(factor(6)).toBe('own-record');
  });
});

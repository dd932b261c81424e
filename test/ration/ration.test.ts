import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import { costMinor } from '../../shared/money/money.js';
import { birdsFor } from '../../shared/ration/birds-for.js';
import { FORMULAS } from '../../shared/formulas/formulas.js';
import type { Mix } from '../../shared/ration/mix.js';
import type { Ration } from '../../shared/ration/ration.js';
import type { StageOfLife } from '../../shared/tables/ration-tables.js';
import { rowById } from '../../shared/tables/tables.js';
import { KG_PER_LB } from '../../shared/units/convert.js';
import { onScale, sayOnScale } from '../../shared/units/scale.js';
import { tables } from '../support/factories.js';
import { newIngredient, newRation, WHOLE } from '../support/ration-factories.js';

const STAGES = tables.rationNeeds.flatMap((birds) =>
  birds.stages.map((stage) => ({ birdsId: birds.id, stageId: stage.id, is: stage.is })),
);
const ofThese = (...ids: readonly string[]) => WHOLE.filter(({ id }) => ids.includes(id));
const without = (...ids: readonly string[]) => WHOLE.filter(({ id }) => !ids.includes(id));
const mixOf = (ration: Ration): Mix => {
  expect(ration.issues.filter(({ level }) => level === 'stop')).toEqual([]);
  return ration.mix!;
};
const shareOf = (mix: Mix, id: string): number =>
  mix.lines.find((line) => line.ingredientId === id)?.share ?? 0;
const text = (ration: Ration): string => ration.issues.map((each) => each.text).join(' ');

describe('rationOf', () => {
  it.each(STAGES)('mixes a whole feed for $birdsId, $stageId, of corn and soybeans', (stage) => {
    const ration = newRation(stage);
    const mix = mixOf(ration);
    expect(mix.nutrients.filter(({ isMissed }) => isMissed)).toEqual([]);
    expect(mix.nutrients.map(({ nutrient }) => nutrient)).toContain('fiberPercent');
    // Within what feeding programs print for the phase, or above: needs of 1994 hold less protein.
    const protein = mix.nutrients.find(({ nutrient }) => nutrient === 'proteinPercent')!;
    expect(protein.has.value).toBeGreaterThan(protein.need!.value * 1.03);
    for (const line of mix.lines) expect(line.amount.value).toBeGreaterThan(0);
    expect(ration.cautions).toEqual(expect.arrayContaining(['mix-premix', 'mix-calcium']));
  });

  it.each(STAGES)('keeps what a table limits small, for $birdsId, $stageId', (stage) => {
    const limited = tables.ingredients.flatMap(({ id, limits }) =>
      limits.filter(({ stages }) => stages.includes(stage.is as StageOfLife)).map((l) => [id, l]),
    ) as [string, { percent: number }][];
    for (const [id, { percent }] of limited) {
      const cheap = newIngredient(id, '0.01');
      const { mix } = newRation({
        ...stage,
        ingredients: [...without(id, 'salt'), cheap, ...(id === 'salt' ? [] : ofThese('salt'))],
      });
      if (mix) expect(shareOf(mix, id)).toBeLessThanOrEqual(percent / 100 + 0.002);
    }
  });

  it('feeds no fish meal to birds that are about to be eaten', () => {
    const ingredients = [...without('fish-meal'), newIngredient('fish-meal', '0.01')];
    for (const birds of [
      { birdsId: 'meat-chickens', stageId: 'finisher' },
      { birdsId: 'ducks', stageId: 'grower' },
    ]) {
      const mix = mixOf(newRation({ ...birds, ingredients }));
      expect(shareOf(mix, 'fish-meal')).toBe(0);
      expect(mix.prices.join(' ')).toMatch(/No fish meal: the meat would taste of fish/);
    }
  });

  it('does not fill up with limestone or salt, which cost less than any grain', () => {
    const mix = mixOf(newRation());
    for (const nutrient of ['calciumPercent', 'sodiumPercent']) {
      const line = mix.nutrients.find((each) => each.nutrient === nutrient)!;
      expect(line.has.value).toBeLessThan(line.need!.value * 1.05);
    }
  });

  it('adds up to the coin: lines to the total, for any currency', () => {
    for (const currency of ['USD', 'JPY', 'KWD']) {
      const mix = mixOf(newRation({ farm: { units: 'us', currency }, batchKg: 100 * KG_PER_LB }));
      const bought = new Map(WHOLE.map((each) => [each.id, each]));
      const costs = mix.lines.map(({ id, amount }) =>
        costMinor(bought.get(id)!.price, amount.value, currency),
      );
      expect(mix.lines.map(({ costMinor: cost }) => cost)).toEqual(costs);
      expect(mix.totalMinor).toBe(costs.reduce((sum, each) => sum + each, 0));
    }
  });

  it('says of a feed at which price it comes in, and it does just below that', () => {
    const words = mixOf(newRation()).prices.find((each) => each.startsWith('Field peas'))!;
    const price = Number(/fall to \$([\d.]+)/.exec(words)![1]);
    const at = (peas: number) =>
      mixOf(
        newRation({ ingredients: [...without('peas'), newIngredient('peas', peas.toFixed(4))] }),
      );
    expect(shareOf(at(price - 0.01), 'peas')).toBeGreaterThan(0.02);
    expect(shareOf(at(price + 0.02), 'peas')).toBe(0);
  });

  it('agrees with the square by hand', () => {
    for (const stage of STAGES) {
      const { square } = mixOf(newRation(stage));
      expect(square!.grainKg).toBeCloseTo(square!.mixGrainKg, 6);
      expect(square!.grainParts).toBeGreaterThan(0);
      expect(square!.mealParts).toBeGreaterThan(0);
    }
  });

  it('takes what a label says before the table', () => {
    const weak = newIngredient('corn', '0.60', { holds: { proteinShare: 0.065 } });
    const mix = mixOf(newRation({ ingredients: [...without('corn', 'wheat-hard', 'oats'), weak] }));
    const usual = mixOf(newRation({ ingredients: without('wheat-hard', 'oats') }));
    expect(shareOf(mix, 'soybean-meal-48')).toBeGreaterThan(
      shareOf(usual, 'soybean-meal-48') + 0.01,
    );
    const protein = mix.nutrients.find(({ nutrient }) => nutrient === 'proteinPercent')!.has;
    expect(protein.inputs.find(({ label }) => label === 'Corn holds')).toMatchObject({
      value: 6.5,
      mark: 'own-record',
    });
  });

  it('goes by the household’s own limit, and by what the label of a premix tells', () => {
    const most = newIngredient('corn', '0.60', { mostShare: 0.4 });
    const premix = newIngredient('premix', '3.97', { fixedShare: 0.03 });
    const mix = mixOf(newRation({ ingredients: [...without('corn', 'premix'), most, premix] }));
    expect(shareOf(mix, 'corn')).toBeLessThan(0.402);
    expect(shareOf(mix, 'premix')).toBeCloseTo(0.03, 3);
    expect(mix.prices.join(' ')).toMatch(/More corn would make it cheaper, but 40 % is the most/);
  });

  it('says what keeps a mix from being made, how far it is off, and what would help', () => {
    const ration = newRation({ ingredients: ofThese('corn', 'soybean-meal-48', 'premix') });
    expect(ration.mix).toBeUndefined();
    expect(text(ration)).toMatch(/Calcium: it should hold 0\.\d+ %, and comes to 0\.\d+ %/);
    const fix = /\. ([^.]*) would make it possible\.$/.exec(text(ration))![1]!.toLowerCase();
    const named = tables.ingredients.filter(({ name }) => fix.includes(name.toLowerCase()));
    expect(named.map(({ id }) => id)).toContain('salt');
    const more = named.map(({ id }) => newIngredient(id));
    mixOf(newRation({ ingredients: [...ofThese('corn', 'soybean-meal-48', 'premix'), ...more] }));
  });

  it('finds that wheat and peas without bagged methionine stay short of it', () => {
    const ration = newRation({
      birdsId: 'meat-chickens',
      stageId: 'starter',
      ingredients: [
        ...without('corn', 'soybean-meal-48', 'fish-meal', 'methionine', 'wheat-hard'),
        newIngredient('wheat-hard', '0.60', { mostShare: 1 }),
      ],
    });
    expect(text(ration)).toMatch(/Methionine/);
  });

  it('says so where what there is cannot fill a mix', () => {
    expect(text(newRation({ ingredients: ofThese('wheat-hard', 'oats', 'premix') }))).toMatch(
      /may make up 30\.5 % of a mix: at most hard wheat 30 %/,
    );
    const two = [1, 2, 3].map((k) =>
      newIngredient('premix', '1.00', { id: `p${k}`, fixedShare: 0.4 }),
    );
    expect(text(newRation({ ingredients: two }))).toMatch(/comes to 120 %/);
  });

  it('keeps the strictest need of several flocks, and says what no one feed can be to all', () => {
    const chicks = { birdsId: 'brown-hens', stageId: 'starter' };
    const meat = { birdsId: 'meat-chickens', stageId: 'starter' };
    const held = ({ mix }: Ration) =>
      new Map(mix!.nutrients.map(({ nutrient, has }) => [nutrient, has.value]));
    const both = newRation({ ...chicks, alsoFor: [meat] });
    const energy = held(both).get('energyKcalPerKg')!;
    for (const { birdsId, stageId } of [chicks, meat]) {
      const { needs } = rowById(rowById(tables.rationNeeds, birdsId).stages, stageId);
      for (const nutrient of ['proteinPercent', 'lysinePercent', 'calciumPercent'] as const)
        expect(held(both).get(nutrient)! / energy).toBeGreaterThan(
          (0.99 * needs[nutrient]) / needs.energyKcalPerKg,
        );
    }
    expect(both.mix!.perKg.value).toBeGreaterThan(newRation(chicks).mix!.perKg.value);
    const hens = newRation({ birdsId: 'brown-hens', stageId: 'layer', alsoFor: [chicks] });
    expect(hens.mix).toBeUndefined();
    expect(hens.issues[0]!.code).toBe('mix-flocks-differ');
    expect(hens.issues[0]!.text).toContain('3.25 % calcium');
  });

  it('warns of a mix without vitamins', () => {
    expect(text(newRation({ ingredients: without('premix') }))).toMatch(/no vitamin/);
  });

  it('says that buying is cheaper where it is, and what would make them even', () => {
    const feed = (price: string) => ({
      ...({
        kind: 'feed',
        id: 's',
        name: 'Starter',
        phaseIds: ['starter'],
        bagKg: 25,
        price,
      } as const),
    });
    const dear = mixOf(newRation({ products: [feed('50.00')] })).against!;
    expect(dear).toMatchObject({ isCheaper: true, product: 'Starter' });
    const cheap = mixOf(newRation({ products: [feed('18.00')] })).against!;
    expect(cheap.isCheaper).toBe(false);
    expect(cheap.words).toMatch(/^Buying is cheaper by about \$[\d.]+ on 50 kg: /);
    expect(mixOf(newRation({ products: [] })).against).toBeUndefined();
    // The tag says that it is weaker than the table has it: a bag then does less.
    const tagged = { ...feed('50.00'), tag: { energyKcalPerKg: 2900 } };
    const against = mixOf(newRation({ products: [tagged] })).against!;
    expect(against.likeBag.value / dear.likeBag.value).toBeCloseTo(2900 / 3200, 4);
  });

  it('is held against a feed of any list that serves birds of its age', () => {
    let held = 0;
    for (const { id: birdsId, feedFor, stages } of tables.rationNeeds)
      for (const { id: stageId, phaseIds } of stages)
        for (const phaseId of phaseIds) {
          const bag = { ...({ kind: 'feed', id: 's', name: 'Bag', bagKg: 25 } as const), feedFor };
          const products = [{ ...bag, phaseIds: [phaseId], price: '20.00' }];
          const { mix } = newRation({ birdsId, stageId, products });
          if (mix) expect(mix.against).toBeDefined();
          if (mix) held++;
        }
    expect(held).toBeGreaterThan(10);
  });

  it('costs no more with one more feed, nor with a price that fell', () => {
    const perEnergy = ({ perKg, nutrients }: Mix): number => perKg.value / nutrients[0]!.has.value;
    fc.assert(
      fc.property(
        fc.constantFrom(...STAGES),
        fc.constantFrom(...tables.ingredients.map(({ id }) => id)),
        fc.double({ min: 0.05, max: 4, noNaN: true }),
        (stage, id, price) => {
          const ingredients = without(id);
          const before = newRation({ ...stage, ingredients, batchKg: 2000 }).mix;
          const added = newIngredient(id, price.toFixed(4), { id: 'added' });
          const after = newRation({
            ...stage,
            ingredients: [...ingredients, added],
            batchKg: 2000,
          });
          if (!before) return;
          // A handful may be left out at 3 %, and scales round.
          expect(perEnergy(after.mix!)).toBeLessThanOrEqual(perEnergy(before) * 1.035);
        },
      ),
      { numRuns: 60, seed: 20270401 },
    );
  });

  it('opens every number to a formula', () => {
    const quantities = quantitiesIn(newRation());
    expect(quantities.length).toBeGreaterThan(30);
    for (const { formula } of quantities) expect(FORMULAS.get(formula)).toBeDefined();
  });
});

describe('birdsFor', () => {
  it('finds the needs of every breed in every phase that stands for an age', () => {
    expect(birdsFor(tables, { strainId: 'fast-meat', purpose: 'meat', phaseId: 'grower' })).toEqual(
      {
        birdsId: 'meat-chickens',
        stageId: 'grower',
      },
    );
    expect(birdsFor(tables, { strainId: 'heritage', purpose: 'layers', phaseId: 'layer' })).toEqual(
      {
        birdsId: 'brown-hens',
        stageId: 'layer',
      },
    );
    for (const strain of tables.strains) {
      for (const purpose of strain.purposes) {
        const { birdsId } = birdsFor(tables, { strainId: strain.id, purpose });
        const birds = tables.rationNeeds.find(({ id }) => id === birdsId)!;
        expect(birds.strainIds).toContain(strain.id);
        expect(birds.feedFor).toBe(purpose);
      }
    }
  });
});

describe('onScale', () => {
  it('rounds to what a scale reads, and says it so', () => {
    const lb = (pounds: number): string => sayOnScale(pounds * KG_PER_LB, 'us');
    expect([58.32, 6.2, 0.15, 9.99, 0.995, 1].map(lb)).toEqual([
      ...['58.5 lb', '6 lb 3 oz', '2.4 oz', '10 lb', '15.9 oz', '1 lb'],
    ]);
    const kg = (kilos: number): string => sayOnScale(kilos, 'metric');
    expect([26.53, 1.253, 0.0453, 0.4996].map(kg)).toEqual([
      '26.5 kg',
      '1.25 kg',
      '45 g',
      '0.5 kg',
    ]);
  });

  it('never rounds up to less, nor by more than a step', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 500, noNaN: true }), (kg) => {
        const up = onScale(kg, 'us', 'up');
        expect(up).toBeGreaterThanOrEqual(kg * (1 - 1e-6));
        expect(up - kg).toBeLessThanOrEqual(KG_PER_LB / 2 + 1e-9);
      }),
    );
  });
});

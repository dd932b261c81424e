import { within } from './bounds.js';
import {
  choice,
  nested,
  number,
  optional,
  row,
  text,
  type RowRule,
  type SavedRowOf,
} from './field.js';
import { id, OWN, price } from './words.js';

const part = (label: string) =>
  optional(number(label, within(0, 1, 'share', 'Read the share on the bag or in the report.')));

type Shares = Readonly<Record<string, number | undefined>>;

/** A part is no more than what it is a part of. */
const notAbove = (small: string, whole: string): RowRule<Shares> => ({
  name: `${small}-within-${whole}`,
  of: [small, whole],
  find: (shares, at) => {
    const [given, max] = [shares[small], shares[whole]];
    return given === undefined || max === undefined || given <= max
      ? []
      : [
          {
            field: `${at}${small}`,
            code: 'out-of-bounds',
            given,
            max,
            unit: 'share',
            boundBy: `${at}${whole}`,
            fix: 'It is a part of that: read both on the label again.',
          },
        ];
  },
});

/** What the label of a bag or a laboratory says; what is left out is taken from the table. */
const ownCompositionFields = row(
  'OwnComposition',
  {
    energyKcalPerKg: optional(
      number('Energy', within(0, 10_000, 'kcalPerKg', 'Give the energy for poultry, of a kg.')),
    ),
    proteinShare: part('Protein'),
    lysineShare: part('Lysine'),
    methionineShare: part('Methionine'),
    methionineCystineShare: part('Methionine and cystine'),
    threonineShare: part('Threonine'),
    tryptophanShare: part('Tryptophan'),
    calciumShare: part('Calcium'),
    phosphorusShare: part('Usable phosphorus'),
    sodiumShare: part('Sodium'),
    fiberShare: part('Fiber'),
  },
  [
    notAbove('lysineShare', 'proteinShare'),
    notAbove('methionineShare', 'methionineCystineShare'),
    notAbove('methionineCystineShare', 'proteinShare'),
    notAbove('threonineShare', 'proteinShare'),
    notAbove('tryptophanShare', 'proteinShare'),
  ],
);

/** What the household can mix feed of: a row of the table of ingredients at a price of its own. */
export const ingredientProductFields = row('IngredientProduct', {
  ...OWN,
  name: text('Name'),
  kind: choice('Kind', ['ingredient']),
  ingredientId: id('Ingredient'),
  bagKg: number('The price is for', within(0.01, 2000, 'kg', 'Read the weight of one bag.')),
  price: price('Price'),
  /** Of a premix: what its label says goes into a mix. */
  fixedShare: optional(
    number(
      'Share the label tells',
      within(0, 0.5, 'share', 'Read on the label how much of the mix it makes.'),
    ),
  ),
  /** The household's own limit, which goes before that of the table. */
  mostShare: optional(
    number('At most, of a mix', within(0, 1, 'share', 'Give a share from 0 to 100 %.')),
  ),
  holds: optional(nested('What it holds', ownCompositionFields)),
});
export type IngredientProduct = SavedRowOf<typeof ingredientProductFields>;

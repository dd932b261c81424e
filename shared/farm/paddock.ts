import type { PlainDate } from '../calendar/plain-date.js';
import { whole, within } from './bounds.js';
import {
  choice,
  list,
  number,
  optional,
  outline,
  row,
  rows,
  text,
  yesNo,
  type Outline,
  type RowOf,
  type RowRule,
  type SavedRowOf,
} from './field.js';
import { ASSUMED, date, id, OWN, version } from './words.js';

export const STANDS = ['fair', 'good', 'excellent'] as const;
export type Stand = (typeof STANDS)[number];
export const PRODUCTIVITIES = ['low', 'medium', 'high'] as const;
export type Productivity = (typeof PRODUCTIVITIES)[number];

export type { Outline };

const TO_AFTER_FROM: RowRule<{ readonly from: PlainDate; readonly to: PlainDate }> = {
  name: 'to-after-from',
  of: ['to', 'from'],
  find: ({ from, to }, at) =>
    from <= to
      ? []
      : [
          {
            field: `${at}to`,
            code: 'out-of-bounds',
            given: to,
            min: from,
            fix: 'The last closed day must not be before the first.',
          },
        ],
};

/** Days on which no herd may stand in a paddock. */
export const closedDaysFields = row(
  'ClosedDays',
  {
    from: date('First closed day'),
    to: date('Last closed day'),
    why: choice('What it is closed for', [
      'hay',
      'wet',
      'reseeding',
      'stockpile',
      'garden',
      'other',
    ]),
  },
  [TO_AFTER_FROM],
);
export type ClosedDays = RowOf<typeof closedDaysFields>;
export type ClosedFor = ClosedDays['why'];

/** What a paddock is like, as far as no outline shows it. */
const ground = {
  forageId: id('What grows there'),
  stand: choice('Stand', STANDS),
  productivity: choice('Growth', PRODUCTIVITIES),
  soilId: id('Soil'),
  hasWater: yesNo('Water in it'),
  hasShade: yesNo('Shade in it'),
} as const;

const AREA_OR_OUTLINE: RowRule<{ readonly areaM2?: number; readonly outline?: Outline }> = {
  name: 'area-or-outline',
  of: ['areaM2', 'outline'],
  find: ({ areaM2, outline: corners }, at) =>
    areaM2 === undefined && corners === undefined
      ? [
          {
            field: `${at}areaM2`,
            code: 'missing',
            given: undefined,
            fix: 'Give the area, or the outline it is worked out from.',
          },
        ]
      : [],
};

const LAST_HARVEST_AFTER_FIRST: RowRule<{
  readonly harvestOn?: PlainDate;
  readonly lastHarvestOn?: PlainDate;
}> = {
  name: 'last-harvest-after-first',
  of: ['lastHarvestOn', 'harvestOn'],
  find: ({ harvestOn, lastHarvestOn }, at) =>
    lastHarvestOn === undefined || (harvestOn !== undefined && harvestOn <= lastHarvestOn)
      ? []
      : [
          {
            field: `${at}lastHarvestOn`,
            code: 'out-of-bounds',
            given: lastHarvestOn,
            ...(harvestOn === undefined ? {} : { min: harvestOn }),
            fix: 'Give the first harvest, and the last on that day or after it.',
          },
        ],
};

/** A piece of grass that is grazed as one. With an outline, its area may be left out. */
export const paddockFields = row(
  'Paddock',
  {
    ...OWN,
    ...ASSUMED,
    name: text('Name'),
    areaM2: optional(
      number('Area', within(50, 1e7, 'ha', 'Give the grazed area, without lanes and woods.')),
    ),
    ...ground,
    /** The user's own, where they differ from the forage's. */
    readyHeightCm: optional(
      number('Ready height', within(3, 200, 'cm', 'Give the height at which the herd goes in.')),
    ),
    residualHeightCm: optional(
      number(
        'Residual: what you leave',
        within(1, 150, 'cm', 'Give the height that must be left.'),
      ),
    ),
    massKgPerHaCm: optional(
      number(
        'Forage per unit of height',
        within(
          20,
          500,
          'kgPerHaCm',
          'Give the dry matter in a centimeter of height, as cut and weighed.',
        ),
      ),
    ),
    lastGrazedOn: optional(date('Last grazed on')),
    closedDays: rows('Closed days', closedDaysFields, 20, 'span'),
    /** Set when the ground becomes garden: the first harvest. */
    harvestOn: optional(date('Becomes garden: first harvest')),
    /** After it the ground is grazed again; without it the ground stays a garden. */
    lastHarvestOn: optional(date('Last harvest')),
    /** What is eaten of the crop does not touch the soil. */
    cropOffSoil: optional(yesNo('Crop stands clear of the ground')),
    /** Corners of a paddock, degrees east and north, the first not repeated. */
    outline: optional(outline('Corners', 500)),
  },
  [AREA_OR_OUTLINE, LAST_HARVEST_AFTER_FIRST],
);
export type Paddock = Omit<SavedRowOf<typeof paddockFields>, 'areaM2'> & {
  readonly areaM2: number;
};

/** What an outline does not say of a paddock; an import takes it for all that do not say it. */
export const groundFields = row('Ground', {
  forageId: optional(ground.forageId),
  stand: optional(ground.stand),
  productivity: optional(ground.productivity),
  soilId: optional(ground.soilId),
  hasWater: optional(ground.hasWater),
  hasShade: optional(ground.hasShade),
});

/** Parts a paddock may be split into. */
export const PARTS = whole(2, 20, 'count', 'Split a paddock into 2 to 20 parts.');

/** Equal parts, or parts by their shares of the area. */
export const splitFields = row('Split', {
  parts: optional(number('Parts', PARTS)),
  shares: optional(
    list(
      'Shares',
      number(
        'Share',
        within(0.001, 0.999, 'share', 'Give the share of each part of the whole: 0.5 is half.'),
      ),
      PARTS.max,
      'parts',
      PARTS.min,
    ),
  ),
});

/** Several paddocks made into one. */
export const joinFields = row('Join', {
  ids: list('Paddocks', id('Paddock'), 50, 'ids'),
  name: text('Name'),
});

/** A height measured while walking the field. */
export const grassReadingFields = row('GrassReading', {
  paddockId: id('Paddock'),
  date: date('Day'),
  heightCm: number(
    'Height',
    within(0, 250, 'cm', 'Lay the hand flat on the sward and read the height under it.'),
  ),
  /** The plan goes by no height far from what was expected, such as 80 for 8, unless it is said to be right. */
  isSure: optional(yesNo('Right, though not as expected')),
});

/** What a herd left standing, told with its move. */
export const leftHeight = () =>
  optional({ ...grassReadingFields.fields.heightCm, label: 'Height left behind them' });

/** A reading as it is kept. */
export const savedReadingFields = row('SavedGrassReading', {
  ...grassReadingFields.fields,
  id: id(),
  /** Told with the move of the herd that left it so: it is taken back with that. */
  isOfMove: optional(yesNo('Told with a move')),
});
export type GrassReading = RowOf<typeof savedReadingFields>;

/** A paddock after a split or join, and why it has no outline when it has none. */
export const reshapedFields = row('Reshaped', {
  ...paddockFields.fields,
  id: id(),
  version: version(),
  noOutlineBecause: optional(text('Why there is no outline', 1000)),
});

/** Heights of one walk. A second reading of a paddock on the same day replaces the first. */
export const walkFields = row('Walk', {
  readings: rows('Readings', grassReadingFields, 200, 'reading'),
});

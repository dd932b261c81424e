import {
  from,
  fromFarm,
  fromJudgement,
  fromTable,
  input,
  quantity,
  together,
  type NumberQuantity,
} from '../../explain/quantity.js';
import { forageMassFormulas } from '../../pasture/forage-mass.js';
import { recalibrateFormulas } from '../../pasture/recalibrate.js';
import { paddockFactor } from './farm-growth.js';
import type { ManurePart } from './manure.js';
import type { PastureContext } from './pasture-context.js';
import { growthRows } from './pasture-support.js';
import { rounded, steps } from './rounded-days.js';
import type { SeasonSward } from './season-swards.js';
import type { Chosen } from './surplus.js';

/** A paddock of a plan: how it stood on the first day, and what every day brings and takes. */
export interface PaddockPart {
  readonly id: string;
  readonly name: string;
  readonly area: NumberQuantity;
  readonly forage: string;
  readonly perCm: NumberQuantity;
  /** Growth of paddocks like it over the model's, by what was read of them. */
  readonly growthFactor: NumberQuantity;
  /** Height and mass on the first day of the plan. */
  readonly height: NumberQuantity;
  readonly mass: NumberQuantity;
  /** Least and best height to go in at. */
  readonly readyFromCm: number;
  readonly readyHeightCm: number;
  readonly residualHeightCm: number;
  readonly rankCm: number;
  readonly turnInKgPerHa: number;
  readonly residualKgPerHa: number;
  readonly rankKgPerHa: number;
  readonly lastReading?: { readonly date: string; readonly heightCm: number };
  /** How far the last reading was off what had been expected. */
  readonly deviation?: NumberQuantity;
  /** Clover and alfalfa in it, against what is advised because of bloat. */
  readonly legumes: NumberQuantity;
  readonly nitrogen: NumberQuantity;
  readonly phosphorus: NumberQuantity;
  /** Standing in the evening of each day of the plan, kg/ha. */
  readonly massByDay: readonly number[];
  /** What each day of the plan brought and took, kg/ha. */
  readonly days: PaddockDays;
  /** Days on which no herd may go in, those before and after mowing included. */
  readonly closedDays: readonly {
    readonly from: string;
    readonly to: string;
    readonly why: string;
  }[];
}

/** Summed up to any day, each is within a twentieth of a kg/ha. */
export interface PaddockDays {
  readonly grown: readonly number[];
  readonly eaten: readonly number[];
  readonly trampled: readonly number[];
  readonly mown: readonly number[];
  readonly diedOff: readonly number[];
}

/** One paddock of a plan, by its place among them, with what manure the moves leave there. */
export function paddockPart(
  context: PastureContext,
  chosen: Chosen,
  p: number,
  manure: ManurePart,
): PaddockPart {
  const { span } = context;
  return {
    ...onFirstDay(context, context.grass.swards[p]!, chosen.books.startKgPerHa[p]!),
    nitrogen: manure.nitrogen[p]!,
    phosphorus: manure.phosphorus[p]!,
    massByDay: rounded(chosen.books.massKgPerHa[p]!, span.from, span.to, 1),
    days: daysOf(context, chosen, p),
    closedDays: shutDays(context, chosen, p),
  };
}

function onFirstDay(
  context: PastureContext,
  own: SeasonSward,
  startKgPerHa: number,
): Omit<PaddockPart, 'nitrogen' | 'phosphorus' | 'massByDay' | 'days' | 'closedDays'> {
  const { paddock, forage, kgPerHaCm, sward, reading, expectedAtReading } = own;
  const range = forage.massKgPerHaCm[paddock.stand];
  const perCm = quantity(
    'Forage per unit of height',
    kgPerHaCm,
    'kgPerHaCm',
    forageMassFormulas.mass,
    [input('Kind', forage.name, 'text'), input('Stand', paddock.stand, 'text')],
    {
      rows: paddock.massKgPerHaCm === undefined ? [forage.massKgPerHaCm] : [],
      ...(paddock.massKgPerHaCm === undefined
        ? {
            spread: {
              low: range.low,
              high: range.high,
              because: 'the printed range of that stand',
            },
          }
        : {}),
    },
  );
  const heightCm = startKgPerHa / kgPerHaCm;
  const isRead = reading !== undefined && own.heightKnown === 'reading';
  const fromWhat = isRead
    ? [fromFarm('Last reading', reading.heightCm, 'cm'), input('Read on', reading.date, 'date')]
    : own.heightKnown === 'last-grazing'
      ? paddock.lastGrazedOn === undefined
        ? []
        : [fromFarm('Last grazed', paddock.lastGrazedOn, 'date')]
      : own.heightKnown === 'on-hay'
        ? [input('On hay since', context.choices.onHaySince!, 'date')]
        : [fromJudgement(context.tables.judgements.grass.leftBeforeWinterDays)];
  // Its own growth alone: another paddock that nobody read makes this one no less known.
  const growth = together(
    growthRows(context, context.weather, { ...context.grass, swards: [own] }),
  );
  return {
    id: paddock.id,
    name: paddock.name,
    forage: forage.name,
    area: quantity('Area', paddock.areaM2, 'ha', forageMassFormulas.area, []),
    perCm,
    growthFactor: paddockFactor(context, own),
    legumes: legumesOf(context, own),
    height: quantity(
      `Height on ${context.say(context.dateOf(context.span.from), 'date')}`,
      heightCm,
      'cm',
      forageMassFormulas.grownHeight,
      fromWhat,
      { rows: [growth] },
    ),
    mass: quantity(
      'Grass on hand then',
      startKgPerHa,
      'kgPerHa',
      forageMassFormulas.mass,
      [input('Height', heightCm, 'cm', 'h'), from(perCm, 'm')],
      { rows: [growth] },
    ),
    readyFromCm: sward.leastEntryKgPerHa / kgPerHaCm,
    readyHeightCm: sward.turnInKgPerHa / kgPerHaCm,
    residualHeightCm: sward.residualKgPerHa / kgPerHaCm,
    rankCm: sward.rankKgPerHa / kgPerHaCm,
    turnInKgPerHa: sward.turnInKgPerHa,
    residualKgPerHa: sward.residualKgPerHa,
    rankKgPerHa: sward.rankKgPerHa,
    ...(reading ? { lastReading: { date: reading.date, heightCm: reading.heightCm } } : {}),
    ...(reading && expectedAtReading !== undefined
      ? {
          deviation: quantity(
            'Difference from what was expected',
            reading.heightCm / (expectedAtReading / kgPerHaCm) - 1,
            'share',
            recalibrateFormulas.off,
            [
              fromFarm('Read', reading.heightCm, 'cm', 'h_read'),
              input('Expected', expectedAtReading / kgPerHaCm, 'cm', 'h_expected'),
            ],
            { rows: [growth] },
          ),
        }
      : {}),
  };
}

function legumesOf({ tables }: PastureContext, { forage }: SeasonSward): NumberQuantity {
  const { legumeShare } = forage;
  const { bloatLegumeShare: limit } = tables.pasture;
  return quantity(
    'Clover and alfalfa in it',
    legumeShare.value,
    'share',
    forageMassFormulas.legumes,
    [
      input('Kind', forage.name, 'text'),
      fromTable(limit, 'Advised against bloat, at most', limit.value, 'share'),
      fromJudgement(tables.judgements.grass.bloatCautionShare),
    ],
    { rows: [legumeShare] },
  );
}

function daysOf({ span }: PastureContext, { books }: Chosen, p: number): PaddockDays {
  const of = (values: Float64Array): number[] => steps(values, span.from, span.to, 10);
  const { grown, eaten, trampled, mown, diedOff } = books.days[p]!;
  return {
    grown: of(grown),
    eaten: of(eaten),
    trampled: of(trampled),
    mown: of(mown),
    diedOff: of(diedOff),
  };
}

function shutDays(
  { paddocks, dateOf, span }: PastureContext,
  { books }: Chosen,
  p: number,
): PaddockPart['closedDays'] {
  return [
    ...paddocks[p]!.closedDays,
    ...books.cuts
      .filter(({ paddock }) => paddock === p)
      .map(({ shutFrom, openFrom }) => ({
        from: dateOf(shutFrom),
        to: dateOf(Math.min(openFrom, span.to) - 1),
        why: 'hay',
      })),
  ];
}

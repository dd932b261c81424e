import { addDays } from '../calendar/plain-date.js';
import {
  datedFact,
  from,
  fromFarm,
  fromTable,
  givenOrTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { chicksRange, hatchFormulas } from '../poultry/hatch.js';
import { lossFormulas } from '../poultry/losses.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { formatYears } from '../units/format.js';
import { capital } from './bird-words.js';
import type { PlanContext } from './context.js';
import type { EggsSet } from './eggs-set.js';
import { found, joined, type Found } from './found.js';
import { homeForHatch } from './hatch-at-home.js';
import { hatchDatesOf, type HatchDates } from './hatch-dates.js';
import { incubatorOf, type IncubatorPart } from './incubator.js';

/** Eggs that are set here: how many, when, and what comes of them. */
export interface HatchingPart {
  /** What the eggs are of, and what hatches. */
  readonly species: string;
  readonly young: string;
  readonly eggsToSet: NumberQuantity;
  /** How many eggs to be more or less sure of the birds wanted, the fewest first. */
  readonly eggSizes: readonly NumberQuantity[];
  readonly eggs: NumberQuantity;
  readonly share: NumberQuantity;
  readonly chicksExpected: NumberQuantity;
  readonly enough: NumberQuantity;
  readonly keepFrom: Quantity;
  readonly keepAt: NumberQuantity;
  readonly setOn: Quantity;
  readonly candleOn: readonly Quantity[];
  readonly hatchOn: Quantity;
  /** Under a hen: how many must sit at once, and until when they keep the chicks warm. */
  readonly hens?: NumberQuantity;
  readonly withHen?: NumberQuantity;
  /** In an incubator. */
  readonly incubator?: IncubatorPart;
}

/** The eggs of a batch that hatches here; undefined for chicks from a hatchery. */
export function planHatching(context: PlanContext): Found<HatchingPart | undefined> {
  const { eggs } = context.life;
  if (!eggs) return found(undefined);
  const dates = hatchDatesOf(context, eggs);
  const counts = countsOf(context, eggs);
  const incubator = dates.lockdown ? incubatorOf(context, eggs, dates.lockdown) : undefined;
  const part: HatchingPart = {
    species: eggs.species.name,
    young: eggs.species.young,
    ...counts,
    ...datesPart(context, eggs, dates),
    ...(incubator ? { incubator } : { hens: hensOf(eggs, counts.eggs), withHen: withHen(context) }),
  };
  return found(
    part,
    joined([
      { issues: [...keptLong(context, eggs), ...ofACross(context), ...severalHens(part)] },
      { issues: homeForHatch(context, dates) },
      { cautions: [incubator ? 'incubator' : 'broody-hen', 'salmonella'] },
    ]),
  );
}

/** How many eggs, and what comes of them. */
function countsOf({ batch, life, tables }: PlanContext, eggs: EggsSet) {
  const { storage, togetherness } = tables.hatching;
  const { orders } = tables;
  const isOwn = batch.hatchPercent !== undefined;
  const share = quantity(
    'Eggs that hatch',
    eggs.hatching.mean,
    'share',
    hatchFormulas.share,
    [
      givenOrTable(
        isOwn,
        eggs.rate,
        ...(['Of fresh eggs', eggs.hatching.mean + eggs.storageLoss, 'share', 'h₀'] as const),
      ),
      // What a household counted holds its own keeping already.
      ...(isOwn && eggs.storageLoss === 0
        ? []
        : [
            fromTable(storage, 'Lost by keeping', eggs.storageLoss, 'share'),
            keptDays(batch.oldestEggDays !== undefined, eggs, storage),
            fromTable(storage, 'Kept without loss', storage.freeDays, 'day'),
          ]),
    ],
    {
      spread: !isOwn
        ? {
            low: Math.max(0, eggs.rate.low - eggs.storageLoss),
            high: eggs.rate.high,
            because: eggs.rate.because ?? 'hatches differ',
          }
        : undefined,
      outside:
        storage.steepFromDay <= eggs.oldestDays
          ? `From about ${storage.steepFromDay} days on eggs are lost much faster than that.`
          : undefined,
    },
  );
  const rows = { rows: [life.losses, orders.togetherness, orders.surety, togetherness] };
  const inputs: QuantityInput[] = [
    input('Birds wanted', batch.wantedBirds, 'count', 'N_wanted'),
    from(share, 'h'),
    input(
      `${capital(eggs.species.young)} that live to the end`,
      life.odds.survivingShare,
      'share',
      'L',
    ),
    input('Of the sex wanted', life.odds.sexShare, 'share', 's'),
    fromTable(togetherness, 'Hatches are good or bad as a whole', togetherness.value, 'ratio'),
    fromTable(orders.togetherness, 'Losses come together', orders.togetherness.value, 'ratio'),
  ];
  const sureOf = (p: number) => fromTable(orders.surety, 'How sure', p, 'share', 'p');
  const toSet = (label: string, value: number, p: number): NumberQuantity =>
    quantity(label, value, 'eggs', hatchFormulas.toSet, [...inputs, sureOf(p)], rows);
  const eggsToSet = toSet('Eggs to set', eggs.toSet, orders.surety.usual);
  const counted = quantity('Eggs set', eggs.eggs, 'eggs', hatchFormulas.toSet, [
    batch.eggsSet === undefined ? from(eggsToSet) : fromFarm('Eggs set', batch.eggsSet, 'eggs'),
  ]);
  const range = chicksRange(eggs.eggs, eggs.hatching, OUTSIDE_EACH_END);
  return {
    eggsToSet,
    eggSizes: orders.surety.shares.map((p, k) =>
      toSet(`Eggs to have enough ${formatYears(p, 'times in')}`, eggs.sizes[k]!, p),
    ),
    eggs: counted,
    share,
    chicksExpected: quantity(
      `${capital(eggs.species.young)} to expect`,
      eggs.chicks,
      'count',
      hatchFormulas.expected,
      [from(counted, 'n'), from(share, 'h')],
      {
        rows: [togetherness],
        spread: {
          low: Math.min(range.low, eggs.chicks),
          high: Math.max(range.high, eggs.chicks),
          because: 'eight hatches in ten lie between them',
        },
      },
    ),
    enough: quantity(
      'Chance of ending with the number wanted',
      life.enough,
      'chance',
      lossFormulas.enough,
      [from(counted, 'n'), ...inputs],
      rows,
    ),
  };
}

/** Share of hatches left out at each end of the range that is shown. */
const OUTSIDE_EACH_END = 0.1;

const keptDays = (
  isGiven: boolean,
  { oldestDays }: EggsSet,
  storage: PlanContext['tables']['hatching']['storage'],
): QuantityInput =>
  givenOrTable(isGiven, storage, ...(['Oldest egg kept', oldestDays, 'day', 'age'] as const));

function datesPart({ batch, tables }: PlanContext, eggs: EggsSet, dates: HatchDates) {
  const { candling, keeping, storage, hatchWindow } = tables.hatching;
  const { species } = eggs;
  const incubation = [
    input('Hatch', batch.arrivalDate, 'date'),
    fromTable(species, 'Days that eggs take', species.incubationDays, 'day'),
  ];
  const setOn = datedFact('Set the eggs', dates.set, hatchFormulas.dates, incubation);
  return {
    keepFrom: datedFact(
      'Gather eggs from',
      addDays(dates.set, -eggs.oldestDays),
      hatchFormulas.dates,
      [from(setOn), keptDays(batch.oldestEggDays !== undefined, eggs, storage)],
    ),
    keepAt: quantity(
      'Keep the eggs at',
      keeping.airC,
      'degC',
      hatchFormulas.setting,
      [
        fromTable(keeping, 'As printed', keeping.airC, 'degC'),
        fromTable(keeping, 'Humidity', keeping.humidityShare, 'share'),
      ],
      { spread: { low: keeping.low, high: keeping.high, because: 'a cellar or cool pantry does' } },
    ),
    setOn,
    candleOn: dates.candle.map((date, k) =>
      datedFact(k === 0 ? 'Candle' : 'Candle again', date, hatchFormulas.dates, [
        from(setOn),
        fromTable(candling, 'Days after setting', candling.days[k]!, 'day', 'n'),
      ]),
    ),
    hatchOn: datedFact('Hatch', batch.arrivalDate, hatchFormulas.dates, [
      ...incubation,
      fromTable(hatchWindow, 'Early or late by', hatchWindow.days, 'day'),
    ]),
  };
}

function hensOf({ species: { hen } }: EggsSet, eggs: NumberQuantity): NumberQuantity {
  const row = hen!;
  const hens = (each: number): number => Math.ceil(eggs.value / each - 1e-9);
  return quantity(
    'Broody hens needed at once',
    hens(row.eggs),
    'count',
    hatchFormulas.hens,
    [from(eggs, 'n'), fromTable(row, 'Eggs that a hen covers', row.eggs, 'eggs', 'c')],
    {
      spread: {
        low: hens(row.eggsHigh),
        high: hens(row.eggsLow),
        because: 'large hens cover more, small ones and cold weather fewer',
      },
    },
  );
}

const withHen = ({ tables: { hatching } }: PlanContext): NumberQuantity =>
  quantity(
    'The hen keeps them warm for',
    hatching.withHen.days,
    'day',
    hatchFormulas.setting,
    [fromTable(hatching.withHen, 'As remembered', hatching.withHen.days, 'day')],
    {
      spread: {
        low: hatching.withHen.low,
        high: hatching.withHen.high,
        because: hatching.withHen.because ?? 'hens differ',
      },
    },
  );

function keptLong({ tables }: PlanContext, { oldestDays, storageLoss }: EggsSet): PlanIssue[] {
  const { storage } = tables.hatching;
  if (oldestDays <= storage.freeDays) return [];
  const isSteep = storage.steepFromDay <= oldestDays;
  return [
    issue(
      isSteep ? 'act' : 'note',
      'eggs-kept-long',
      isSteep
        ? `Eggs kept ${oldestDays} days hatch badly: from about ${storage.steepFromDay} days on many are dead. Set the eggs of one week, and a second lot later.`
        : `Eggs lose about ${Math.round(storage.lossPerDay * 100)} in a hundred for every day beyond ${storage.freeDays} that they are kept; with the oldest at ${oldestDays} days that is ${(storageLoss * 100).toFixed(1)} in a hundred of all. Turn kept eggs once a day.`,
      [storage],
    ),
  ];
}

/** Chicks of a cross are not what their parents were. */
function ofACross({ life: { strain }, words }: PlanContext): PlanIssue[] {
  return strain.isCross
    ? [
        issue(
          'note',
          'not-true-to-type',
          `${strain.name} birds are crosses and do not breed true: ${words.young} from their eggs are uneven, and grow and lay less than these tables say.`,
        ),
      ]
    : [];
}

function severalHens({ hens }: HatchingPart): PlanIssue[] {
  return hens !== undefined && 1 < hens.value
    ? [
        issue(
          'note',
          'several-hens',
          `${hens.value} hens must be broody at the same time. Keep dummy eggs under the first until the last sits, or set the rest in an incubator.`,
        ),
      ]
    : [];
}

import { plainFormulas } from '../explain/plain-formulas.js';
import {
  from,
  fromTable,
  givenOrTable,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
  type Spread,
} from '../explain/quantity.js';
import { growthFormulas } from '../poultry/growth.js';
import { processingFormulas } from '../poultry/processing.js';
import { rowById } from '../tables/tables.js';
import { capital } from './bird-words.js';
import type { PlanContext } from './context.js';
import { goneBefore } from './gone-before.js';
import type { Life } from './life.js';
import type { LeavingDay } from './processing-days.js';
import { livingInputs, speedInputs, weighedSpread } from './weighed.js';

export interface LiveWeights {
  readonly birdsToProcess: number;
  readonly liveEach: NumberQuantity;
  readonly liveMale?: NumberQuantity;
  readonly liveFemale?: NumberQuantity;
  readonly liveAll: NumberQuantity;
}

/** Birds that come to the last day. Survivors are a fraction; one placed is still one to process. */
export const birdsToProcess = ({ aliveAll, days }: Life): number =>
  Math.max(1, Math.floor(aliveAll[days - 1]! + 1e-9));

/** Which birds a weight is of: those that are told to have gone are not among them. */
const whichBirds = (life: Life): string =>
  goneBefore(life).birds === 0 ? 'all birds' : `the last ${birdsToProcess(life)} birds`;

type DayOfBirds = Pick<LeavingDay, 'index' | 'birds'>;

/**
 * Live weights of an average bird and of all, as they are processed.
 *
 * @param days on which they are; those of an earlier day are lighter. Left out, all on the last
 */
export function liveWeights(
  context: PlanContext,
  days: readonly DayOfBirds[] = [{ index: context.life.days - 1, birds: 1 }],
): LiveWeights {
  const { batch, life, words } = context;
  const birds = birdsToProcess(life);
  const average = averageOver(days);
  const options = { rows: life.weightRows };
  const weigh = (label: string, kg: number, spread?: Spread): NumberQuantity =>
    quantity(
      label,
      kg,
      'kg',
      WEIGHT,
      [
        input('Growth table', life.growthTable.name, 'text'),
        ...agesOf(context, days),
        input('Weight at hatch', life.hatchKg, 'kg', 'W₀'),
        input('Factor on weight', life.weightFactor, 'ratio', 'f'),
        ...livingInputs(context),
        ...speedInputs(life),
      ],
      { ...options, spread },
    );
  const liveEach = weigh('Live weight each', average(life.meanWeightKg), weighedSpread(life));
  return {
    birdsToProcess: birds,
    liveEach,
    ...(batch.sex === 'straight-run'
      ? {
          liveMale: weigh(`${capital(words.male)}, live`, average(life.weightKg.male)),
          liveFemale: weigh(`${capital(words.female)}, live`, average(life.weightKg.female)),
        }
      : {}),
    liveAll: quantity(
      `Live weight, ${whichBirds(life)}`,
      liveEach.value * birds,
      'kg',
      plainFormulas.times,
      [{ ...input('Birds', birds, 'count', 'n'), mark: life.losses.mark }, from(liveEach, 'a')],
    ),
  };
}

/** The average over the birds of each day of what is known by day. */
function averageOver(days: readonly DayOfBirds[]): (byDay: Float64Array) => number {
  const [only] = days;
  if (only && days.length === 1) return (byDay) => byDay[only.index]!;
  const all = days.reduce((sum, { birds }) => sum + birds, 0);
  return (byDay) => days.reduce((sum, { index, birds }) => sum + byDay[index]! * birds, 0) / all;
}

const agesOf = ({ life, say, dateOf }: PlanContext, days: readonly DayOfBirds[]): QuantityInput[] =>
  days.length === 1
    ? [input('Age', life.arrivalAgeDays + days[0]!.index, 'day', 't')]
    : days.map(({ index, birds }) =>
        input(
          `Age of ${birds} of them, on ${say(dateOf(index), 'date')}`,
          life.arrivalAgeDays + index,
          'day',
          't',
        ),
      );

export interface DressedWeights {
  readonly dressedEach: NumberQuantity;
  /** What is in that weight, and what is not. */
  readonly dressedDefinition: string;
  readonly dressedAll: NumberQuantity;
  readonly packedAll: NumberQuantity;
}

export function dressedWeights(
  { batch, life, tables }: PlanContext,
  live: LiveWeights,
): DressedWeights {
  const dressing = rowById(tables.processing.dressing, life.strain.dressing!);
  const { waterUptake } = tables.processing;
  const share = batch.dressingShare ?? dressing.share;
  const dressedEach = quantity(
    'Dressed weight each',
    live.liveEach.value * share,
    'kg',
    processingFormulas.dressed,
    [
      from(live.liveEach, 'W', 'Live weight'),
      givenOrTable(
        batch.dressingShare !== undefined,
        dressing,
        ...(['Dressing percentage', share, 'share', 'y'] as const),
      ),
      input('Definition', dressing.definition, 'text'),
    ],
    {
      spread: {
        low: live.liveEach.value * dressing.low,
        high: live.liveEach.value * dressing.high,
        because: 'sources differ by what is left in the carcass',
      },
    },
  );
  const dressedAll = quantity(
    `Dressed weight, ${whichBirds(life)}`,
    dressedEach.value * live.birdsToProcess,
    'kg',
    plainFormulas.times,
    [
      { ...input('Birds', live.birdsToProcess, 'count', 'n'), mark: life.losses.mark },
      from(dressedEach, 'a'),
    ],
  );
  return {
    dressedEach,
    dressedDefinition: dressing.definition,
    dressedAll,
    packedAll: quantity(
      `Packed weight, ${whichBirds(life)}`,
      dressedAll.value * (1 + waterUptake.share),
      'kg',
      processingFormulas.packed,
      [
        from(dressedAll, 'W_d', 'Dressed, all birds'),
        fromTable(waterUptake, 'Water kept', waterUptake.share, 'share', 'u'),
      ],
      {
        spread: {
          low: dressedAll.value * (1 + waterUptake.low),
          high: dressedAll.value * (1 + waterUptake.high),
          because: waterUptake.because ?? 'water differs',
        },
      },
    ),
  };
}

const WEIGHT = growthFormulas.weight;

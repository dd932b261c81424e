import { hatchesHere } from '../farm/batch-origin.js';
import type { Batch } from '../farm/batch.js';
import { bothShares, storageLossShare, type VaryingShare } from '../poultry/hatch.js';
import { orderChances, type OrderOdds } from '../poultry/losses.js';
import type { Strain } from '../tables/bird-tables.js';
import type { HatchRate, HatchSpecies, IncubatorKind } from '../tables/hatching-table.js';
import { defaultRow, rowById, type Tables } from '../tables/tables.js';

/** Eggs that a household sets itself, and what may become of them. Nothing hangs on the calendar. */
export interface EggsSet {
  readonly species: HatchSpecies;
  /** Left out under a hen. */
  readonly incubator?: IncubatorKind;
  readonly rate: HatchRate;
  readonly oldestDays: number;
  readonly storageLoss: number;
  /** Share of eggs set that hatches, and how it varies. */
  readonly hatching: VaryingShare;
  /** What becomes of an egg up to the birds that are wanted. */
  readonly odds: OrderOdds;
  readonly toSet: number;
  /** Eggs for each way of being sure, as the table of orders lists them. */
  readonly sizes: readonly number[];
  /** Eggs that the plan goes on with: those really set, else those to set. */
  readonly eggs: number;
  readonly chicks: number;
  /** Chance that these eggs leave the number wanted. */
  readonly enough: number;
}

/**
 * The eggs of a batch that hatches on the farm; undefined for birds that are bought.
 *
 * @param chickOdds what becomes of a chick up to the birds that are wanted
 */
export function eggsSetOf(
  batch: Batch,
  strain: Strain,
  tables: Tables,
  chickOdds: OrderOdds,
): EggsSet | undefined {
  const { origin = 'hatchery' } = batch;
  if (!hatchesHere({ origin })) return undefined;
  const { hatching: table, orders } = tables;
  const species = rowById(table.species, strain.species);
  const rate = origin === 'hen' ? species.hen! : species.incubator;
  const oldestDays = batch.oldestEggDays ?? table.storage.usualDays;
  const fresh = batch.hatchPercent === undefined ? rate.share : batch.hatchPercent / 100;
  const storageLoss = storageLossShare(table.storage, oldestDays);
  const hatching = {
    mean: Math.max(0.01, fresh - storageLoss),
    togetherness: table.togetherness.value,
  };
  const { mean, togetherness } = bothShares(hatching, {
    mean: chickOdds.survivingShare,
    togetherness: chickOdds.togetherness,
  });
  const odds: OrderOdds = { ...chickOdds, survivingShare: mean, togetherness };
  const chances = orderChances(odds);
  const toSet = chances.toOrder(orders.surety.usual);
  const eggs = batch.eggsSet ?? toSet;
  return {
    species,
    ...(origin === 'incubator'
      ? {
          incubator:
            batch.incubatorKindId === undefined
              ? defaultRow(table.incubators)
              : rowById(table.incubators, batch.incubatorKindId),
        }
      : {}),
    rate,
    oldestDays,
    storageLoss,
    hatching,
    odds,
    toSet,
    sizes: orders.surety.shares.map(chances.toOrder),
    eggs,
    chicks: Math.max(1, Math.round(eggs * hatching.mean)),
    enough: chances.enough(eggs),
  };
}

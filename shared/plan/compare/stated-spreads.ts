import { type QuantityInput, fromTable, input } from '../../explain/quantity.js';
import type { Sourced } from '../../explain/formula.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../farm/picture.js';
import { rowById, type Tables } from '../../tables/tables.js';
import type { BatchPlan } from '../batch-plan.js';
import { usualOrder } from '../usual-order.js';

/** An input that sources leave open, and the farm with it at either end; planned again for each. */
export interface PlannedSpread {
  readonly what: string;
  readonly because: string;
  readonly rows: readonly Sourced[];
  readonly ends: readonly { readonly input: QuantityInput; readonly picture: () => FarmPicture }[];
}

/** A number of the plan that has a range of its own; nothing is planned again. */
export interface ScaledSpread {
  readonly what: string;
  readonly because: string;
  readonly rows: readonly Sourced[];
  readonly ends: readonly {
    readonly input: QuantityInput;
    /** Added to the bill, whole coins. */
    readonly addsMinor: number;
    /** What the weight or the eggs are multiplied by. */
    readonly yieldFactor: number;
  }[];
}

export interface Asked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly batch: NamedBatch;
  readonly plan: BatchPlan;
}

/** What is tried by planning again: growth, feed and losses, as far as sources state how they differ. */
export function plannedSpreads({ picture, tables, batch, plan }: Asked): readonly PlannedSpread[] {
  const strain = rowById(tables.strains, batch.strainId);
  const usual = usualOrder(batch, tables);
  const table = rowById(tables.growthTables, batch.growthTableId ?? strain.growthTables[0]!);
  const losses = rowById(
    tables.losses,
    (batch.purpose === 'layers' && strain.layLosses) || strain.losses,
  );
  // As many young come, whatever is expected of them.
  const fixed: NamedBatch = { ...batch, orderedBirds: plan.birds.chicksPlaced.value };
  const with_ = (more: Partial<NamedBatch>) => () => withBatch(picture, { ...fixed, ...more });
  const isWeighed = picture.weighings.some(({ batchId }) => batchId === batch.id);
  const isFedByBags = plan.feed.used !== undefined;
  const spreads: PlannedSpread[] = [];
  const others = strain.growthTables.filter((id) => id !== table.id);
  const isAtHome = table.atHome !== undefined && batch.keptAs !== 'trial-house';
  if (!isWeighed && batch.weightFactor === undefined && (0 < others.length || isAtHome))
    spreads.push({
      what: 'How they grow',
      because:
        'published tables of such birds differ, and those of a trial house from birds at home',
      rows: [table, ...others.map((id) => rowById(tables.growthTables, id))],
      ends: [
        ...others.map((growthTableId) => ({
          input: input('Growth table', rowById(tables.growthTables, growthTableId).name, 'text'),
          picture: with_({ growthTableId }),
        })),
        ...(isAtHome && batch.purpose === 'meat'
          ? [
              {
                input: input('Kept as', 'in the trial house', 'text'),
                picture: with_({ keptAs: 'trial-house' as const }),
              },
            ]
          : []),
      ],
    });
  const { feedSpread } = table;
  if (feedSpread && !isFedByBags && batch.feedFactor === undefined && batch.purpose === 'meat')
    spreads.push({
      what: 'How much they eat',
      because: feedSpread.because,
      rows: [feedSpread],
      ends: [feedSpread.low, feedSpread.high].map((factor) => ({
        input: fromTable(feedSpread, 'Feed over the plan’s', factor, 'ratio'),
        picture: with_({ feedFactor: usual.feedFactor * factor }),
      })),
    });
  const { spread } = losses;
  if (spread && batch.laterLossPercent === undefined)
    spreads.push({
      what: 'How many die',
      because: spread.because,
      rows: [spread],
      ends: [spread.lowPercent, spread.highPercent].map((percent) => ({
        input: fromTable(spread, 'Lost in all while they grow', percent / 100, 'share'),
        picture: with_(lossesOf(percent, batch.firstWeekLossPercent ?? usual.firstWeekPercent)),
      })),
    });
  return spreads;
}

/** A loss over the whole growing time as that of the first week and of the rest. */
function lossesOf(percent: number, firstWeekPercent: number): Partial<NamedBatch> {
  const first = Math.min(percent, firstWeekPercent);
  const later = 100 * (1 - (1 - percent / 100) / (1 - first / 100));
  return { firstWeekLossPercent: first, laterLossPercent: Math.max(0, later) };
}

/** What the plan's own numbers leave open: dressing, heat, ice, eggs. */
export function scaledSpreads({ tables, batch, plan }: Asked): readonly ScaledSpread[] {
  const { leaving, laying, bill } = plan;
  const strain = rowById(tables.strains, batch.strainId);
  const spreads: ScaledSpread[] = [];
  if (leaving && batch.dressingShare === undefined) {
    const dressing = rowById(tables.processing.dressing, strain.dressing!);
    spreads.push({
      what: 'How much of them is left when dressed',
      because: leaving.dressedEach.spread?.because ?? 'sources differ',
      rows: [dressing],
      ends: [dressing.low, dressing.high].map((share) => ({
        input: fromTable(dressing, 'Dressing percentage', share, 'share'),
        addsMinor: 0,
        yieldFactor: share / dressing.share,
      })),
    });
  }
  const heat = bill.lines.find(({ label }) => label === 'Heat')?.cost;
  if (heat?.spread && heat.spread.low !== heat.spread.high)
    spreads.push({
      what: 'How much heat they need',
      because: heat.spread.because,
      rows: [],
      ends: [heat.spread.low, heat.spread.high].map((minor) => ({
        input: input('Heat', minor, 'money'),
        addsMinor: Math.round(minor - heat.value),
        yieldFactor: 1,
      })),
    });
  const ice = bill.lines.find(({ label }) => label === 'Ice')?.cost;
  const iceKg = leaving?.ice;
  if (ice && iceKg?.spread && iceKg.spread.low !== iceKg.spread.high)
    spreads.push({
      what: 'How much ice the day takes',
      because: iceKg.spread.because,
      rows: [],
      ends: [iceKg.spread.low, iceKg.spread.high].map((kg) => ({
        input: input('Ice', kg, 'kg'),
        addsMinor: Math.round((ice.value * kg) / iceKg.value - ice.value),
        yieldFactor: 1,
      })),
    });
  const eggs = laying?.eggsPerHen;
  if (eggs?.spread && eggs.spread.low !== eggs.spread.high)
    spreads.push({
      what: 'How well they lay',
      because: eggs.spread.because,
      rows: [],
      ends: [eggs.spread.low, eggs.spread.high].map((count) => ({
        input: input('Eggs of a hen', count, 'eggs'),
        addsMinor: 0,
        yieldFactor: count / eggs.value,
      })),
    });
  return spreads;
}

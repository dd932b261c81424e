import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula, Sourced } from '../../explain/formula.js';
import { from, fromTable, input, quantity, together } from '../../explain/quantity.js';
import type { NumberQuantity } from '../../explain/quantity.js';
import type { Herd } from '../../farm/herd.js';
import type { FarmPicture } from '../../farm/picture.js';
import { hayNeededKg } from '../../pasture/hay.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { carriedSaid } from '../../units/carried.js';
import { hayPartFormulas } from './hay-part.js';
import { pastureContext } from './pasture-context.js';
import { pastureOfFarm } from './pasture-of-farm.js';
import type { PasturePlan } from './pasture-plan.js';
import { needRows, waterRows } from './pasture-support.js';
import { chosenOr } from './surplus.js';

export const herdDayFormulas = {
  hay: {
    id: 'hay-to-put-out',
    title: 'Hay to put out today',
    words:
      'What the herd needs today beyond the grass, as dry matter, divided by the dry share of hay and by what is left after the loss at the feeder.',
    symbols: 'H = F ÷ (dm·(1 − l_feed))',
    sources: ['GRAZING_13'],
    mark: 'published',
  },
  bales: {
    id: 'bales-to-put-out',
    title: 'Bales to put out today',
    words: 'Hay of the day divided by the weight of one bale.',
    symbols: 'n = H ÷ m_bale',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Hay of a day as it is carried: bales first, the weight beside them. */
export interface HayOfDay {
  readonly bales: NumberQuantity;
  /** “3½ bales”, or “a bale every 5 days” of the large ones. */
  readonly said: string;
  /** The kind of bale. */
  readonly bale: string;
  readonly baleKg: number;
  readonly weight: NumberQuantity;
}

/** What a herd is and needs on one day. */
export interface HerdDay {
  readonly on: PlainDate;
  readonly head: number;
  readonly waterL: number;
  readonly dryKg: number;
  readonly water: Sourced;
  readonly fed: Sourced;
}

/**
 * A day of each herd, out of the plan of the pasture; between two seasons, which it leaves out, by
 * itself.
 */
export function herdDays(
  picture: FarmPicture,
  tables: Tables,
  { pasture, on }: { readonly pasture: PasturePlan | undefined; readonly on: PlainDate },
): (herd: Pick<Herd, 'id'>) => HerdDay | undefined {
  if (pasture && pasture.from <= on && on <= pasture.to) {
    const day = daysBetween(pasture.from, on);
    return ({ id }) => {
      const part = pasture.herds.find((each) => each.id === id);
      if (!part) return undefined;
      return {
        on,
        head: part.groups.reduce((sum, { headByDay }) => sum + headByDay[day]!, 0),
        waterL: part.waterByDay[day]!,
        dryKg: part.hayByDay[day]!,
        water: part.water,
        fed: pasture.order,
      };
    };
  }
  if (picture.herds.length === 0) return () => undefined;
  const request = pastureOfFarm(picture, tables);
  const context = pastureContext({
    ...request,
    choices: { ...request.choices, from: on, to: addDays(on, 1) },
  });
  return ({ id }) => {
    const h = context.herds.findIndex((each) => each.id === id);
    const { head, waterL, demandKg } = context.herdDays[h]!;
    const at = context.span.from;
    return {
      on,
      head: head[at]!,
      waterL: waterL[at]!,
      dryKg: demandKg[at]!,
      water: together(waterRows(tables, context.herds[h]!)),
      fed: together(needRows({ ...context, herds: [context.herds[h]!] })),
    };
  };
}

/** Hay to carry, what is lost at the feeder included; what is lost in store is lost already. */
export function hayOfDay(
  { pastureChoices: choices }: Pick<FarmPicture, 'pastureChoices'>,
  tables: Tables,
  { dryKg, fed, on }: HerdDay,
): HayOfDay {
  const { hay } = tables.pasture;
  const feeding = rowById(hay.feeding, choices.feedingId ?? 'ring');
  const bale = rowById(hay.bales, choices.baleId ?? hay.bales.at(-1)!.id);
  const { dryMatterShare } = hay;
  const dry = quantity(
    'Fed by hand today, dry matter',
    dryKg,
    'kg',
    hayPartFormulas.fedToday,
    [input('On', on, 'date')],
    { rows: [fed] },
  );
  const weight = quantity(
    'Hay to put out today',
    hayNeededKg({ dryMatterKg: dryKg, dryMatterShare, storeLoss: 0, feedLoss: feeding.loss }),
    'kg',
    herdDayFormulas.hay,
    [
      from(dry, 'F'),
      fromTable(hay, 'Dry share of hay', dryMatterShare, 'share', 'dm'),
      fromTable(
        chosenOr(choices.feedingId, feeding),
        ...([`Lost at feeding, ${feeding.name}`, feeding.loss, 'share', 'l_feed'] as const),
      ),
    ],
  );
  const one = fromTable(
    chosenOr(choices.baleId, hay),
    ...([`One bale, ${bale.name}`, bale.kg, 'kg', 'm_bale'] as const),
  );
  const bales = quantity(
    'Bales to put out today',
    weight.value / bale.kg,
    'ratio',
    herdDayFormulas.bales,
    [from(weight, 'H'), one],
  );
  return {
    bales,
    said: carriedSaid(bales.value, 'bale'),
    bale: bale.name,
    baleKg: bale.kg,
    weight,
  };
}

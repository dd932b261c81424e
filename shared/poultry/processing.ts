import type { Formula } from '../explain/formula.js';
import type { IceWaterChilling, ProcessingTable } from '../tables/processing-tables.js';

export const processingFormulas = {
  dressed: {
    id: 'dressed-weight',
    title: 'Dressed weight',
    words:
      'Live weight times the dressing percentage. What is left in the carcass differs between sources.',
    symbols: 'W_d = y·W',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  packed: {
    id: 'packed-weight',
    title: 'Packed weight',
    words: 'Dressed weight plus the water a carcass keeps from an ice bath.',
    symbols: 'W_p = W_d·(1 + u)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  freezer: {
    id: 'freezer-liters',
    title: 'Freezer room needed',
    words:
      'Packed weight of all birds divided by what a liter of freezer holds. Whole birds pack looser than blocks.',
    symbols: 'V = N·W_p ÷ ρ',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  freezerFilled: {
    id: 'freezer-filled',
    title: 'In the freezer',
    words:
      'Other food, and of every batch what is not eaten by then. Eaten are the birds a week that the household gives, the oldest first; where it gives none, a batch is eaten evenly over the year it keeps.',
    symbols: 'V = V_other + Σ V_batch·(left ÷ packed)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  freezerLeft: {
    id: 'freezer-left',
    title: 'Freezer room for this batch',
    words: 'What the freezer holds, less other food and what is left of other batches that day.',
    symbols: 'V = V_all − V_other − Σ V_left',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  eatenUp: {
    id: 'eaten-up',
    title: 'Eaten up',
    words: 'Day on which the last bird of the batch is eaten, older batches first.',
    symbols: 't: Σ eaten = Σ packed',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  chillLimit: {
    id: 'chill-limit',
    title: 'Legal limit to be cold by',
    words:
      'A limit, not a forecast: below 4.4 °C (40 °F) within 4 hours for a carcass under 1.8 kg (4 lb), 6 hours to 3.6 kg (8 lb), 8 hours above. Your state may ask for more.',
    symbols: 'h = 4, 6 or 8 by W_d',
    sources: [],
    mark: 'published',
  },
  chillTime: {
    id: 'chill-time',
    title: 'Time in ice water until cold',
    words:
      'Measured from 32 to 4.4 °C on bare carcasses in ice and water; a heavier one takes as much longer as its size squared, that is its weight to the power of two thirds. Stir, keep ice floating, and measure in the thickest breast.',
    symbols: 't = t₀·(W_d ÷ W₀)^(2/3)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  chillingAtOnce: {
    id: 'chilling-at-once',
    title: 'Birds in the ice at once',
    words: 'Birds an hour times the time each takes to be cold, rounded up: tubs and ice for them.',
    symbols: 'n = ⌈r·t⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  birdsADay: {
    id: 'birds-a-day',
    title: 'Birds a day',
    words:
      'Hours of all hands, in daylight, less setting up and cleaning down, divided by the hours a bird takes on the day; rounded down.',
    symbols: 'n = ⌊(Σ h − h₀) ÷ h_bird⌋',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  dayHours: {
    id: 'processing-hours',
    title: 'Hours of work on the days of processing',
    words:
      'Setting up and cleaning down on each day, and what each bird takes; packing is not in it.',
    symbols: 'h = d·h₀ + N·h_bird',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  bags: {
    id: 'freezer-bags',
    title: 'Freezer bags',
    words: 'Birds times the bags for one.',
    symbols: 'n = N·b',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  scaldGas: {
    id: 'scalding-gas',
    title: 'Propane to scald',
    words: 'To heat the water on each day of processing, and to keep it hot for every bird.',
    symbols: 'V = d·v₀ + N·v',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  withdrawal: {
    id: 'feed-withdrawal',
    title: 'Hours without feed before processing',
    words: '8 to 12 hours agree everywhere; 10 is planned. Water stays.',
    symbols: '8 h ≤ h ≤ 12 h',
    sources: [],
    mark: 'published',
  },
  leaveDate: {
    id: 'leave-date',
    title: 'Day of leaving',
    words:
      'Hatch date plus the age at leaving; or the first day on which the mean live weight reaches the target, and where nobody has hands then the first within a week that has. Where the hands there are ask for days before it, the last of those.',
    symbols: 'D = hatch + age, or min{t: W(t) ≥ W_target}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  conversion: {
    id: 'feed-conversion',
    title: 'Feed conversion',
    words: 'Feed given to the whole batch divided by the live weight that leaves.',
    symbols: 'FCR = F ÷ (N·W)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Hours within which the law wants a carcass below 4.4 °C, by its weight. */
export function chillingLimitH(
  rows: readonly { readonly belowKg?: number; readonly hours: number }[],
  carcassKg: number,
): number {
  return rows.find((row) => row.belowKg === undefined || carcassKg < row.belowKg)!.hours;
}

/**
 * Hours that a bare carcass takes in ice water to 4.4 °C: as measured at the middle of the range,
 * times its weight over that to the power of two thirds (heat is conducted over a distance, and the
 * time goes with its square).
 *
 * Left out: water that is not stirred, ice that has melted, a hot start.
 *
 * @param carcassKg above 0; the measured range is `fromKg` to `toKg`
 */
export function chillingTimeH(
  { minutes, deviation, fromKg, toKg }: IceWaterChilling,
  carcassKg: number,
): { usual: number; low: number; high: number } {
  const factor = (carcassKg / ((fromKg + toKg) / 2)) ** (2 / 3) / 60;
  return {
    usual: minutes * factor,
    low: (minutes - deviation) * factor,
    high: (minutes + deviation) * factor,
  };
}

/** Liters of freezer that a carcass takes, with the water it keeps. */
export const freezerRoomL = (
  { waterUptake, packing }: Pick<ProcessingTable, 'waterUptake' | 'packing'>,
  dressedKg: number,
): number => (dressedKg * (1 + waterUptake.share)) / packing.kgPerL;

import type { Formula } from '../explain/formula.js';

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
  ice: {
    id: 'ice',
    title: 'Ice to chill',
    words: 'Three quarters of the dressed weight; half to all of it is common practice, no source.',
    symbols: 'I = 0.75·N·W_d',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  chillBy: {
    id: 'chill-hours',
    title: 'Hours to chill below 4.4 °C (40 °F)',
    words: '4 hours for a carcass under 1.8 kg (4 lb), 6 hours to 3.6 kg (8 lb), 8 hours above.',
    symbols: 'h = 4, 6 or 8 by W_d',
    sources: [],
    mark: 'published',
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
      'Hatch date plus the age at leaving; or the first day on which the mean live weight reaches the target.',
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

/** Hours within which a carcass must be below 4.4 °C, by its weight. */
export function chillingHours(
  rows: readonly { readonly belowKg?: number; readonly hours: number }[],
  carcassKg: number,
): number {
  return rows.find((row) => row.belowKg === undefined || carcassKg < row.belowKg)!.hours;
}

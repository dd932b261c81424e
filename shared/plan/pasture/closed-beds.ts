import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { Paddock } from '../../farm/paddock.js';
import type { PastureTable } from '../../tables/pasture-tables.js';
import type { PastureRequest } from './pasture-request.js';
import type { PastureSpan } from './pasture-span.js';

type RawManure = PastureTable['rawManure'];

/** A paddock that becomes a garden. */
export type Bed = Paddock & { readonly harvestOn: PlainDate };

export const isBed = (paddock: Paddock): paddock is Bed => paddock.harvestOn !== undefined;

/** Days to keep off before what grows there is harvested. */
export const daysOff = ({ cropOffSoil }: Pick<Paddock, 'cropOffSoil'>, rule: RawManure): number =>
  cropOffSoil ? rule.offSoilDays : rule.touchingSoilDays;

/** Last day for animals and raw manure before the first harvest. */
export const lastDayOf = (bed: Bed, rule: RawManure): PlainDate =>
  addDays(bed.harvestOn, -daysOff(bed, rule));

/**
 * The paddocks of a request, beds closed from the day after the last one for animals to the last
 * harvest; without a last harvest to the end of the plan, as the ground has become a garden.
 */
export function withBedsClosed(
  { paddocks, tables }: PastureRequest,
  { first, days }: PastureSpan,
): readonly Paddock[] {
  if (!paddocks.some(isBed)) return paddocks;
  return paddocks.map((paddock) => {
    if (!isBed(paddock)) return paddock;
    const from = addDays(lastDayOf(paddock, tables.pasture.rawManure), 1);
    const to = paddock.lastHarvestOn ?? addDays(first, days - 1);
    if (to < from) return paddock;
    return {
      ...paddock,
      closedDays: [...paddock.closedDays, { from, to, why: 'garden' as const }],
    };
  });
}

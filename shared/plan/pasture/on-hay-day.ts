import { daysBetween } from '../../calendar/plain-date.js';
import type { Paddock } from '../../farm/paddock.js';
import type { PastureRequest } from './pasture-request.js';
import { YEAR, type PastureSpan } from './pasture-span.js';

type Asked = Pick<PastureRequest, 'choices' | 'tables'>;
type Kept = Pick<Paddock, 'closedDays'>;

/**
 * Day of a year on which a paddock is left, grazed to its residual: that on which the herds went on hay,
 * else some days before the season is over.
 */
export const leftOn = (span: PastureSpan, request: Asked, paddock: Kept): number =>
  leftBy(onHayDay(span, request, paddock), span, request);

/** The same of the winter after the season. */
export const leftNextOn = (span: PastureSpan, request: Asked, paddock: Kept): number =>
  leftBy(toldHayDay(span, request, paddock), span, request);

function leftBy(onHay: number | undefined, { seasonDays }: PastureSpan, { tables }: Asked): number {
  const { leftBeforeWinterDays } = tables.judgements.grass;
  return onHay === undefined ? Math.max(0, seasonDays - leftBeforeWinterDays.value) : YEAR + onHay;
}

/** The day on which herds went on hay, where it was told: one that a start took for it says nothing of the next winter. */
export function toldHayDay(
  span: Pick<PastureSpan, 'first' | 'opens'>,
  request: Asked,
  paddock: Kept,
): number | undefined {
  if (request.choices.assumed?.includes('onHaySince')) return undefined;
  return onHayDay(span, request, paddock);
}

/** Day on which herds went on hay in the winter before a season; undefined where a paddock was kept from them. */
export function onHayDay(
  { first, opens }: Pick<PastureSpan, 'first' | 'opens'>,
  { choices: { onHaySince: on }, tables }: Asked,
  { closedDays }: Kept,
): number | undefined {
  if (on === undefined || opens <= on) return undefined;
  const day = daysBetween(first, on);
  const isKept = closedDays.some(({ from, to }) => from <= on && on <= to);
  return isKept || day < -tables.judgements.grass.winterReadingDays.value ? undefined : day;
}

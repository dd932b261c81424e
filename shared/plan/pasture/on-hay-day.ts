import { daysBetween } from '../../calendar/plain-date.js';
import type { Paddock } from '../../farm/paddock.js';
import type { PastureRequest } from './pasture-request.js';
import { YEAR, type PastureSpan } from './pasture-span.js';

/**
 * Day of the next year on which a paddock is left, grazed to its residual: that on which the herds went on
 * hay the winter before, else some days before the season is over.
 */
export function leftOn(
  span: PastureSpan,
  request: Pick<PastureRequest, 'choices' | 'tables'>,
  paddock: Pick<Paddock, 'closedDays'>,
): number {
  const onHay = toldHayDay(span, request, paddock);
  const { leftBeforeWinterDays } = request.tables.judgements.grass;
  return onHay === undefined
    ? Math.max(0, span.seasonDays - leftBeforeWinterDays.value)
    : YEAR + onHay;
}

/** The day on which herds went on hay, where it was told: one that a start took for it says nothing of the next winter. */
export function toldHayDay(
  span: Pick<PastureSpan, 'first' | 'opens'>,
  request: Pick<PastureRequest, 'choices' | 'tables'>,
  paddock: Pick<Paddock, 'closedDays'>,
): number | undefined {
  if (request.choices.assumed?.includes('onHaySince')) return undefined;
  return onHayDay(span, request, paddock);
}

/** Day on which herds went on hay in the winter before a season; undefined where a paddock was kept from them. */
export function onHayDay(
  { first, opens }: Pick<PastureSpan, 'first' | 'opens'>,
  { choices: { onHaySince: on }, tables }: Pick<PastureRequest, 'choices' | 'tables'>,
  { closedDays }: Pick<Paddock, 'closedDays'>,
): number | undefined {
  if (on === undefined || opens <= on) return undefined;
  const day = daysBetween(first, on);
  const isKept = closedDays.some(({ from, to }) => from <= on && on <= to);
  return isKept || day < -tables.judgements.grass.winterReadingDays.value ? undefined : day;
}

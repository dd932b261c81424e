import type { EstimatedClimate } from '../../../../shared/farm/estimated-climate.js';
import { formatMonthDay } from '../../../../shared/units/dates.js';
import { formatAbout, type Reader } from '../../../../shared/units/format.js';
import './farm.css';

const WHY = {
  nights: 'nights here are worked out, with no station nearby',
  rain: 'rain is very uncertain here: mountains change it within a few miles',
  frost: 'winters here are mild, or known to the month only, so frost dates are loose',
} as const;

/** What the household should look at twice, in words. */
export const askedToCheck = ({ toConfirm }: Pick<EstimatedClimate, 'toConfirm'>): string =>
  `Please check: ${toConfirm.map((each) => WHY[each]).join('; ')}. A neighbor or the weather service knows.`;

/** An estimated climate in four lines, and how far off each may be. */
export function EstimateFacts({
  estimate,
  reader,
}: {
  estimate: EstimatedClimate;
  reader: Reader;
}) {
  const say = (value: number, unit: 'degC' | 'K' | 'rainMm') => formatAbout(value, unit, reader);
  const { monthlyMinC, monthlyMaxC, monthlyRainMm, frostErrorDays } = estimate;
  const last = formatMonthDay(estimate.lastFrost, reader);
  const first = formatMonthDay(estimate.firstFrost, reader);
  return (
    <dl className="estimate-facts">
      <dt>Coldest month, nights</dt>
      <dd>
        {say(Math.min(...monthlyMinC), 'degC')}, give or take {say(estimate.nightErrorC, 'K')}
      </dd>
      <dt>Warmest month, days</dt>
      <dd>{say(Math.max(...monthlyMaxC), 'degC')}</dd>
      <dt>Frost</dt>
      <dd>
        {frostErrorDays === undefined
          ? 'rare: no single date'
          : `until about ${last}, from about ${first}, give or take ${frostErrorDays} days`}
      </dd>
      <dt>Rain in a year</dt>
      <dd>
        {say(
          monthlyRainMm.reduce((sum, mm) => sum + mm, 0),
          'rainMm',
        )}
        , give or take {estimate.rainErrorPercent} %
      </dd>
    </dl>
  );
}

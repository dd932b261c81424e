import type { NumberQuantity } from '../../../../shared/explain/quantity.js';
import type { HalfMonth } from '../../../../shared/plan/year/year-weather.js';
import type { YearPlan } from '../../../../shared/plan/year/year-plan.js';
import type { YearSpan } from '../../../../shared/plan/year/year-span.js';
import { memo } from 'react';
import { Link } from 'wouter';
import { useOpener } from '../../explain/explain-panel.js';
import { useSayDate } from '../../explain/say-date.js';
import { sayColdLimit } from './cold-limit.js';
import { LineFill } from './line-fill.js';
import { along, placeOf } from './strip-place.js';
import { StripRow } from './strip-row.js';

/** What the weather of the year usually is: frost, nights too cold for chicks, dry days in a row. */
export const WeatherRows = memo(function WeatherRows({
  year,
  base,
}: {
  year: YearPlan;
  base: string;
}) {
  const { span, weather } = year;
  const href = `${base}/work/chances`;
  const { reader } = useOpener();
  return (
    <>
      <Frost year={year} href={href} />
      <StripRow
        name="Cold nights"
        note={`of 10: ${sayColdLimit(weather.coldNights, reader)}`}
        href={href}
        className="year-odds"
      >
        <Odds halves={weather.coldNights} span={span} kind="cold" href={href} />
      </StripRow>
      {weather.dryRuns && (
        <StripRow
          name="Dry spells"
          note={`years in 10 with ${weather.dryRuns[0]!.of.label}`}
          href={href}
          className="year-odds"
        >
          <Odds halves={weather.dryRuns} span={span} kind="dry" href={href} />
        </StripRow>
      )}
    </>
  );
});

function Frost({ year: { span, weather }, href }: { year: YearPlan; href: string }) {
  const sayDate = useSayDate();
  return (
    <StripRow name="Frost" note="usual, and now and then" href={href}>
      <div className="year-lines" aria-hidden>
        {weather.frosts.map((frost) => (
          <Link
            key={`${frost.from} ${frost.isUsual}`}
            href={href}
            tabIndex={-1}
            className={`year-bar ${frost.isUsual ? 'year-frost' : 'year-some-frost'}`}
            style={placeOf(span, frost)}
          >
            <LineFill />
          </Link>
        ))}
        {weather.turns.map(({ label, value }) => (
          <span
            key={`${label} ${value}`}
            className="year-turn"
            style={{ left: `${along(span, String(value))}%` }}
            title={`${label}: ${sayDate(String(value))}`}
          >
            {Number(String(value).slice(8))}
          </span>
        ))}
      </div>
    </StripRow>
  );
}

/** How many of ten, as a number and a column over each half of a month. */
function Odds({
  halves,
  span,
  kind,
  href,
}: {
  halves: readonly HalfMonth[];
  span: YearSpan;
  kind: 'cold' | 'dry';
  href: string;
}) {
  return (
    <div className="year-lines" aria-hidden>
      {halves.map(({ from, until, of }) => (
        <Link
          key={from}
          href={href}
          tabIndex={-1}
          className="year-half"
          style={placeOf(span, { from, until })}
        >
          <i className={`year-${kind}`} style={{ height: `${100 * of.value}%` }} />
          <b>{ofTen(of)}</b>
        </Link>
      ))}
    </div>
  );
}

/** A share in tenths. */
export const ofTen = ({ value }: NumberQuantity): number => Math.round(10 * value);

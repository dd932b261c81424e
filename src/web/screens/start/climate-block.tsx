import { Checkbox } from '@mantine/core';
import type { EstimatedClimate } from '../../../../shared/farm/estimated-climate.js';
import { farmFields } from '../../../../shared/farm/farm.js';
import { formatMonthDay } from '../../../../shared/units/dates.js';
import { formatValue } from '../../../../shared/units/format.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { MonthDayField } from '../../fields/month-day-input.js';
import { MonthTable } from '../farm/month-table.js';
import type { FoundPlace, StartDraft } from './start-draft.js';

interface Props {
  readonly draft: StartDraft;
  readonly set: (part: Partial<StartDraft>) => void;
  readonly place: FoundPlace;
}

const WHY = {
  nights: 'nights here rest on a model, not on stations nearby',
  rain: 'rain is very uncertain here: mountains change it within a few miles',
  frost: 'winters here are mild, or known to the month only, and frost dates are loose',
} as const;

/** The climate that the plan begins with, how far off it may be, and what to look at twice. */
export function ClimateNote({
  draft,
  set,
  place,
  estimate,
}: Props & { estimate: EstimatedClimate }) {
  const { units = 'metric', currency = 'USD' } = place;
  const reader = { units, currency, today: '' };
  const say = (value: number, unit: 'degC' | 'K' | 'rainMm') => formatValue(value, unit, reader);
  const { monthlyMinC, monthlyMaxC, monthlyRainMm, toConfirm, frostErrorDays } = estimate;
  const rainMm = monthlyRainMm.reduce((sum, mm) => sum + mm, 0);
  return (
    <div className="start-rows">
      <p className="start-small">
        Climate, estimated from coordinates and height. You can change every figure later.
      </p>
      <dl className="start-facts">
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
            : `until about ${formatMonthDay(estimate.lastFrost, reader)}, from about ${formatMonthDay(estimate.firstFrost, reader)}, give or take ${frostErrorDays} days`}
        </dd>
        <dt>Rain in a year</dt>
        <dd>
          {say(rainMm, 'rainMm')}, give or take {estimate.rainErrorPercent} %
        </dd>
      </dl>
      {0 < toConfirm.length && (
        <Checkbox
          label="That looks right to me"
          description={`Please check: ${toConfirm.map((each) => WHY[each]).join('; ')}. A neighbor or the weather service knows.`}
          checked={draft.isConfirmed}
          onChange={(event) => set({ isConfirmed: event.currentTarget.checked })}
        />
      )}
    </div>
  );
}

const FIELDS = farmFields.fields;

/** The figures that the household gives where there is no estimate. */
export function ClimateTyped({ draft, set, place, because }: Props & { because: string }) {
  const { units = 'metric', currency = 'USD' } = place;
  const climate = draft.climate ?? {};
  const change = (part: NonNullable<StartDraft['climate']>) =>
    set({ climate: { ...climate, ...part } });
  return (
    <div className="start-rows">
      <p>{because}</p>
      <MonthTable
        words={wordsOfRow(farmFields, { units, currency, today: '' })}
        units={units}
        errors={{}}
        min={climate.monthlyMinC ?? []}
        max={climate.monthlyMaxC ?? []}
        rain={climate.monthlyRainMm ?? []}
        onMin={(monthlyMinC) => change({ monthlyMinC })}
        onMax={(monthlyMaxC) => change({ monthlyMaxC })}
        onRain={(monthlyRainMm) => change({ monthlyRainMm: monthlyRainMm as number[] })}
      />
      <div className="start-row">
        {(['lastFrost', 'firstFrost'] as const).map((name) => (
          <MonthDayField
            key={name}
            label={FIELDS[name].label}
            value={climate[name]}
            onChange={(value) => change({ [name]: value })}
          />
        ))}
      </div>
    </div>
  );
}

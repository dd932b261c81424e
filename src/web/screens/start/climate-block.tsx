import { Checkbox } from '@mantine/core';
import type { EstimatedClimate } from '../../../../shared/farm/estimated-climate.js';
import { farmFields } from '../../../../shared/farm/farm.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { MonthDayField } from '../../fields/month-day-input.js';
import { askedToCheck, EstimateFacts } from '../farm/estimate-facts.js';
import { MonthTable } from '../farm/month-table.js';
import type { FoundPlace, StartDraft } from './start-draft.js';

interface Props {
  readonly draft: StartDraft;
  readonly set: (part: Partial<StartDraft>) => void;
  readonly place: FoundPlace;
}

/** The climate that the plan begins with, how far off it may be, and what to look at twice. */
export function ClimateNote({
  draft,
  set,
  place,
  estimate,
}: Props & { estimate: EstimatedClimate }) {
  const { units = 'metric', currency = 'USD' } = place;
  const { toConfirm } = estimate;
  return (
    <div className="start-rows">
      <p className="start-small">
        Climate, estimated from coordinates and height. You can change every figure later.
      </p>
      <EstimateFacts estimate={estimate} reader={{ units, currency, today: '' }} />
      {0 < toConfirm.length && (
        <Checkbox
          label="That looks right to me"
          description={askedToCheck(estimate)}
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

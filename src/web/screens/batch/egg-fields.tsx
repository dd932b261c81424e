import { batchFields } from '../../../../shared/farm/batch.js';
import type { Strain } from '../../../../shared/tables/bird-tables.js';
import { choicesFor } from '../../../../shared/tables/tables.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import type { BatchDraft, Setting } from './use-plan.js';

const FIELDS = batchFields.fields;

interface Props {
  readonly setting: Setting;
  readonly draft: BatchDraft;
  readonly errors: Readonly<Record<string, string>>;
  readonly strain: Strain;
  readonly onChange: (more: BatchDraft) => void;
}

/** What a household says of its eggs. */
export function EggFields({ setting, draft, errors, strain, onChange }: Props) {
  const { farm, tables } = setting;
  const quantity = (field: 'eggsWantedPerWeek' | 'ownEggsPerHen', description?: string) => (
    <QuantityInput
      label={FIELDS[field].label}
      field={FIELDS[field]}
      units={farm.units}
      value={draft[field]}
      description={description}
      error={errors[field]}
      onChange={(value) => onChange({ [field]: value })}
    />
  );
  return (
    <>
      {quantity('eggsWantedPerWeek', 'Said of one flock, it holds for all your hens')}
      <Select
        label={FIELDS.layCurveId.label}
        value={draft.layCurveId ?? strain.layCurve}
        error={errors['layCurveId']}
        onChange={(id) => onChange({ layCurveId: id === strain.layCurve ? undefined : id })}
        options={choicesFor(tables.layCurves, strain.layCurve!)}
      />
      {quantity('ownEggsPerHen')}
    </>
  );
}

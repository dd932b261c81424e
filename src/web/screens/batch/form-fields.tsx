import { batchFields } from '../../../../shared/farm/batch.js';
import type { NumberField } from '../../../../shared/farm/field.js';
import { QuantityInput, typedText } from '../../fields/quantity-input.js';
import type { BatchDraft, Setting } from './use-plan.js';

export const FIELDS = batchFields.fields;

/** Fields of a batch that hold a number. */
type NumberName = {
  [K in keyof typeof FIELDS]: (typeof FIELDS)[K] extends NumberField ? K : never;
}[keyof typeof FIELDS];

/** What every part of the order's form is filled from. */
export interface FormProps {
  readonly setting: Setting;
  readonly draft: BatchDraft;
  readonly errors: Readonly<Record<string, string>>;
  readonly onChange: (more: BatchDraft) => void;
}

/** A number of the order; what is used when it is left out stands in the empty box. */
export function OrderNumber({
  form: { setting, draft, errors, onChange },
  field,
  usual,
  label = FIELDS[field].label,
}: {
  form: FormProps;
  field: NumberName;
  usual?: number | undefined;
  label?: string | undefined;
}) {
  const { units } = setting.farm;
  return (
    <QuantityInput
      label={label}
      field={FIELDS[field]}
      units={units}
      value={draft[field]}
      error={errors[field]}
      placeholder={typedText(usual, FIELDS[field], units)}
      onChange={(value) => onChange({ [field]: value })}
    />
  );
}

import { SimpleGrid } from '@mantine/core';
import {
  hatchesHere,
  isStarted,
  USUAL_STARTED_WEEKS,
  type Origin,
} from '../../../../shared/farm/batch-origin.js';
import { batchFields } from '../../../../shared/farm/batch.js';
import { rowById, defaultRow } from '../../../../shared/tables/tables.js';
import { QuantityInput, typedText } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import type { BatchDraft, Setting } from './use-plan.js';

const FIELDS = batchFields.fields;

const ORIGINS: readonly { id: Origin; name: string }[] = [
  { id: 'hatchery', name: 'A hatchery’s box' },
  { id: 'started', name: 'Started pullets, 8 to 20 weeks old' },
  { id: 'incubator', name: 'Own eggs in an incubator' },
  { id: 'hen', name: 'Own eggs under a broody hen' },
];

interface Props {
  readonly setting: Setting;
  readonly draft: BatchDraft;
  readonly errors: Readonly<Record<string, string>>;
  readonly onChange: (more: BatchDraft) => void;
}

/** Where the birds come from, and what is to be said of eggs that are set here. */
export function OwnEggs({ setting, draft, errors, onChange }: Props) {
  const { hatching } = setting.tables;
  const { units } = setting.farm;
  const { origin = 'hatchery' } = draft;
  const strain = setting.tables.strains.find(({ id }) => id === draft.strainId);
  const species = strain && rowById(hatching.species, strain.species);
  const rate = origin === 'hen' ? species?.hen : species?.incubator;
  const quantity = (
    field: 'oldestEggDays' | 'hatchPercent' | 'eggsSet' | 'arrivalAgeWeeks',
    usual?: number,
  ) => (
    <QuantityInput
      label={FIELDS[field].label}
      field={FIELDS[field]}
      units={units}
      value={draft[field]}
      error={errors[field]}
      placeholder={typedText(usual, FIELDS[field], units)}
      onChange={(value) => onChange({ [field]: value })}
    />
  );
  return (
    <>
      <Select
        label={FIELDS.origin.label}
        value={origin}
        error={errors['origin']}
        onChange={(next) => onChange(fromOrigin(next ?? 'hatchery', draft))}
        options={ORIGINS.filter(({ id }) => id !== 'started' || draft.purpose === 'layers')}
      />
      {origin === 'incubator' && (
        <Select
          label={FIELDS.incubatorKindId.label}
          value={draft.incubatorKindId ?? defaultRow(hatching.incubators).id}
          error={errors['incubatorKindId']}
          onChange={(id) => onChange({ incubatorKindId: id })}
          options={hatching.incubators}
        />
      )}
      {origin === 'started' && quantity('arrivalAgeWeeks', USUAL_STARTED_WEEKS)}
      {hatchesHere({ origin }) && (
        <SimpleGrid cols={2}>
          {quantity('oldestEggDays', hatching.storage.usualDays)}
          {quantity('hatchPercent', rate && rate.share * 100)}
          {quantity('eggsSet')}
        </SimpleGrid>
      )}
    </>
  );
}

/**
 * What changes with where the birds come from: own chicks are not on the way, and of both sexes;
 * grown pullets have neither a first week here nor a day on which they move out.
 */
function fromOrigin(origin: Origin, draft: BatchDraft): BatchDraft {
  if (isStarted({ origin })) {
    return {
      ...{ origin, hatchToArrivalDays: 0, sex: 'pullets', ...NO_EGGS },
      arrivalAgeWeeks: draft.arrivalAgeWeeks ?? USUAL_STARTED_WEEKS,
      ...{ moveOutDate: undefined, firstWeekLossPercent: undefined },
    };
  }
  if (hatchesHere({ origin })) {
    return {
      origin,
      arrivalAgeWeeks: undefined,
      hatchToArrivalDays: 0,
      sex: 'straight-run',
      orderDate: undefined,
      ...(hatchesHere(draft) ? {} : { orderedBirds: undefined }),
    };
  }
  return { origin: undefined, arrivalAgeWeeks: undefined, hatchToArrivalDays: 1, ...NO_EGGS };
}

/** A batch that sets no eggs of its own. */
export const NO_EGGS: BatchDraft = {
  incubatorKindId: undefined,
  oldestEggDays: undefined,
  hatchPercent: undefined,
  eggsSet: undefined,
  orderedBirds: undefined,
};

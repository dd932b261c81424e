import { Checkbox, SimpleGrid, Stack } from '@mantine/core';
import type { ReactNode } from 'react';
import {
  jobFields,
  workConditionFields,
  type OwnJob,
  type WorkConditions,
} from '../../../../shared/farm/job.js';
import type { SavedFarm } from '../../api/queries.js';
import { NumberFields } from '../../fields/number-fields.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { FoldedFields } from './folded-fields.js';
import { AMOUNTS, CONDITIONS, conditionsInWords } from './job-words.js';

const CONDITION = workConditionFields.fields;
const FIELDS = jobFields.fields;

/** The weather and the ground that a job needs. */
export function JobConditions({
  farm,
  conditions,
  harmedAtOrBelowC,
  errorAt,
  onChange,
}: {
  farm: SavedFarm;
  conditions: WorkConditions;
  harmedAtOrBelowC: number | undefined;
  errorAt: (field: string) => ReactNode;
  onChange: (part: {
    conditions?: WorkConditions;
    harmedAtOrBelowC?: OwnJob['harmedAtOrBelowC'] | undefined;
  }) => void;
}) {
  return (
    <FoldedFields
      id="job-only-when"
      title="Only when …"
      answer={conditionsInWords(conditions, harmedAtOrBelowC, farm)}
      isWrong={[...AMOUNTS.map((key) => `conditions.${key}`), 'harmedAtOrBelowC'].some((field) =>
        Boolean(errorAt(field)),
      )}
    >
      <Stack gap="xs" mb="sm">
        {CONDITIONS.map((key) => (
          <Checkbox
            key={key}
            label={CONDITION[key].label}
            checked={conditions[key] === true}
            onChange={(e) =>
              onChange({ conditions: { ...conditions, [key]: e.currentTarget.checked } })
            }
          />
        ))}
      </Stack>
      <SimpleGrid cols={{ base: 1, xs: 2 }}>
        <NumberFields
          of={conditions}
          names={AMOUNTS}
          fields={CONDITION}
          units={farm.units}
          errorAt={(name) => errorAt(`conditions.${name}`)}
          onChange={(next) => onChange({ conditions: next })}
        />
        <QuantityInput
          field={FIELDS.harmedAtOrBelowC}
          units={farm.units}
          value={harmedAtOrBelowC}
          error={errorAt('harmedAtOrBelowC')}
          onChange={(degrees) => onChange({ harmedAtOrBelowC: degrees })}
        />
      </SimpleGrid>
    </FoldedFields>
  );
}

import { Button, Group, SimpleGrid, Stack } from '@mantine/core';
import { alsoForFields } from '../../../../shared/farm/ration-asked.js';
import type { BirdsOfAge } from '../../../../shared/ration/birds-for.js';
import { rowById, type Tables } from '../../../../shared/tables/tables.js';
import { Select } from '../../fields/select.js';

const { fields } = alsoForFields;
/** More flocks that one mix is for are no longer one mix. */
const MOST_FLOCKS = 3;

const firstAge = (tables: Tables, birdsId: string): BirdsOfAge => ({
  birdsId,
  stageId: rowById(tables.rationNeeds, birdsId).stages[0]!.id,
});

interface One {
  readonly tables: Tables;
  readonly birds: BirdsOfAge;
  readonly onChange: (birds: BirdsOfAge) => void;
  /** Before the labels of flocks after the first. */
  readonly also?: string;
}

/** Which birds are mixed for, and how old they are. */
export function BirdsFields({ tables, birds, onChange, also = '' }: One) {
  const { stages } = rowById(tables.rationNeeds, birds.birdsId);
  return (
    <>
      <Select
        label={also === '' ? 'For' : `${also} for`}
        value={birds.birdsId}
        options={tables.rationNeeds}
        onChange={(birdsId) => birdsId && onChange(firstAge(tables, birdsId))}
      />
      <Select
        label={also === '' ? fields.stageId.label : 'Their age'}
        value={birds.stageId}
        options={stages}
        onChange={(stageId) => stageId && onChange({ ...birds, stageId })}
      />
    </>
  );
}

interface Several {
  readonly tables: Tables;
  readonly first: BirdsOfAge;
  readonly flocks: readonly BirdsOfAge[];
  readonly onChange: (flocks: readonly BirdsOfAge[]) => void;
}

/** Other flocks that eat of the same mix. */
export function AlsoFor({ tables, first, flocks, onChange }: Several) {
  return (
    <Stack className="no-print" gap="xs">
      {flocks.map((birds, k) => (
        <SimpleGrid key={k} cols={{ base: 1, sm: 3 }} style={{ alignItems: 'end' }}>
          <BirdsFields
            tables={tables}
            birds={birds}
            also="Also"
            onChange={(other) => onChange(flocks.with(k, other))}
          />
          <Button variant="default" onClick={() => onChange(flocks.toSpliced(k, 1))}>
            Leave them out
          </Button>
        </SimpleGrid>
      ))}
      {flocks.length < MOST_FLOCKS && (
        <Group>
          <Button variant="default" onClick={() => onChange([...flocks, other(tables, first)])}>
            One mix for another flock too
          </Button>
        </Group>
      )}
    </Stack>
  );
}

/** The first birds of the table that are not mixed for already. */
const other = (tables: Tables, { birdsId }: BirdsOfAge): BirdsOfAge =>
  firstAge(
    tables,
    (tables.rationNeeds.find(({ id }) => id !== birdsId) ?? tables.rationNeeds[0]!).id,
  );

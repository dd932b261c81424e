import './compare.css';
import { Anchor, Button, Stack, Text, Title } from '@mantine/core';
import { useMemo, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { batchChoiceFields, type BatchChoice } from '../../../../shared/farm/batch-choice.js';
import { problemsOfRow } from '../../../../shared/farm/check-row.js';
import type { NamedBatch } from '../../../../shared/farm/picture.js';
import { compareChoices } from '../../../../shared/plan/compare/compare-choices.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { Select } from '../../fields/select.js';
import { useAll } from '../../shell/states.js';
import { useAfterDrawn } from '../../shell/use-after-drawn.js';
import { Empty } from '../../shell/empty.js';
import { inPicture, type Setting } from '../batch/use-plan.js';
import { ChoiceFields } from './choice-fields.js';
import { Columns } from './columns.js';
import { usualChoices, variedOf, type Varied } from './varied.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  /** Undefined before one was chosen. */
  readonly batchId: string | undefined;
}

/** No box to choose from is wider than its words want. */
const MOST_WIDE = 420;

/** A batch beside other ways to raise it. */
export default function CompareScreen({ farm, tables, batchId }: Props) {
  const all = useAll(usePicture(farm.id));
  const [, go] = useLocation();
  if ('waiting' in all) return all.waiting;
  const [picture] = all.data;
  const { batches } = picture;
  const batch = batches.find(({ id }) => id === batchId) ?? batches[0];
  return (
    <Stack>
      <Title order={1}>Compare</Title>
      {batch ? (
        <>
          <Select
            maw={MOST_WIDE}
            label="Batch"
            value={batch.id}
            onChange={(id) => id !== undefined && go(`/farm/${farm.id}/compare/${id}`)}
            options={batches}
          />
          <OneBatch key={batch.id} setting={{ farm, tables, picture }} batch={batch} />
        </>
      ) : (
        <Empty text="There is no batch to compare yet.">
          <Button component={Link} href={`/farm/${farm.id}/batches/new`}>
            Plan a batch
          </Button>
        </Empty>
      )}
    </Stack>
  );
}

function OneBatch({ setting, batch }: { setting: Setting; batch: NamedBatch }) {
  const { farm, tables, picture } = setting;
  const [varied, setVaried] = useState<Varied>('wantedBirds');
  const [choices, setChoices] = useState<readonly BatchChoice[]>(() =>
    usualChoices('wantedBirds', batch, tables),
  );
  const settled = useAfterDrawn(choices);
  const compared = useMemo(() => {
    const asked = inPicture({ farm, tables, picture }, batch, batch.arrivalDate);
    const typed = settled.filter(
      (choice) =>
        0 < Object.keys(choice).length && problemsOfRow(batchChoiceFields, choice).length === 0,
    );
    return compareChoices(asked.picture, tables, asked.batch, typed);
  }, [farm, tables, picture, batch, settled]);
  return (
    <Stack>
      <Select
        maw={MOST_WIDE}
        label="What to change"
        value={varied}
        onChange={(what) => {
          if (what === undefined) return;
          setVaried(what);
          setChoices(usualChoices(what, batch, tables));
        }}
        options={variedOf(batch)}
      />
      <ChoiceFields
        varied={varied}
        batch={batch}
        farm={farm}
        tables={tables}
        choices={choices}
        onChange={setChoices}
      />
      {compared.isWithoutTold && <Text>What was told of the batch so far is in none of them.</Text>}
      <Columns comparison={compared} />
      <Text size="sm" c="dimmed">
        Each is a whole plan of its own. Press any number to see where it comes from. When to stop
        feeding stands in{' '}
        <Anchor component={Link} href={`/farm/${farm.id}/batches/${batch.id}`} inherit>
          the batch
        </Anchor>{' '}
        under what it costs.
      </Text>
    </Stack>
  );
}

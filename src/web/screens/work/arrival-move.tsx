import { Button, Group, List, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { WorkComparison } from '../../../../shared/plan/work/compare-plans.js';
import type { SavedBatch, SavedFarm } from '../../api/queries.js';
import { useArrivalMove } from '../../api/work-queries.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { Select } from '../../fields/select.js';
import { Answer } from '../../shell/answer.js';
import { Failure } from '../../shell/states.js';
import { ChangeList } from './change-list.js';

const WEEK = 7;

/** Asks what another arrival date of a batch would free or break, before anything is changed. */
export function ArrivalMove({
  farm,
  batches,
}: {
  farm: SavedFarm;
  batches: readonly SavedBatch[];
}) {
  const sayDate = useSayDate();
  const [batchId, setBatchId] = useState(batches[0]!.id);
  const batch = batches.find(({ id }) => id === batchId) ?? batches[0]!;
  const [date, setDate] = useState<string | undefined>(addDays(batch.arrivalDate, WEEK));
  const ask = useArrivalMove(farm.id);
  return (
    <Stack gap="sm">
      <Group align="end">
        <Select
          label="Batch"
          value={batchId}
          options={batches}
          onChange={(id) => {
            const other = batches.find((each) => each.id === id)!;
            setBatchId(other.id);
            setDate(addDays(other.arrivalDate, WEEK));
          }}
        />
        <DateField label="Arrives on" value={date} onChange={setDate} />
        <Button
          disabled={date === undefined}
          loading={ask.isPending}
          onClick={() => ask.mutate({ batchId, arrivalDate: date! })}
        >
          Preview
        </Button>
      </Group>
      <Text size="sm">
        Planned: {batch.name} on {sayDate(batch.arrivalDate)}. Nothing is saved yet.
      </Text>
      <Failure error={ask.error} />
      {ask.data && (
        <Answer key={ask.submittedAt}>
          <Comparison answer={ask.data} />
        </Answer>
      )}
    </Stack>
  );
}

function Comparison({ answer }: { answer: WorkComparison }) {
  const sayDate = useSayDate();
  const { nowFits, noLongerFits } = answer;
  return (
    <Stack gap="xs">
      <Outcome title="You would have time for:" lines={nowFits} />
      <Outcome
        title="You would no longer have time for:"
        lines={noLongerFits.map(({ name, why }) => `${name}. ${why}`)}
      />
      {nowFits.length + noLongerFits.length === 0 && (
        <Text>You would have time for the same work as now.</Text>
      )}
      <Text>
        Work done late: {answer.lateBefore} now, {answer.lateAfter} then. Weeks with more work due
        than hours: {weeks(answer.overloadedBefore, sayDate)} now,{' '}
        {weeks(answer.overloadedAfter, sayDate)} then.
      </Text>
      <ChangeList changes={answer.changes} none="Nothing else would move." />
    </Stack>
  );
}

const weeks = (from: readonly string[], sayDate: SayDate): string =>
  from.length === 0 ? 'none' : from.map(sayDate).join('; ');

function Outcome({ title, lines }: { title: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <div>
      <Text fw={600}>{title}</Text>
      <List>
        {lines.map((line) => (
          <List.Item key={line}>{line}</List.Item>
        ))}
      </List>
    </div>
  );
}

import { Alert, Button, Group } from '@mantine/core';
import { useMemo } from 'react';
import { Link } from 'wouter';
import type { Tables } from '../../../../shared/tables/tables.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { useAll } from '../../shell/states.js';
import { FittedTasksOf } from '../../tick/fitted-tasks.js';
import { planDraft } from '../batch/use-plan.js';
import { BrooderCard, TaskList } from './sheets.js';
import { ShoppingList } from './shopping-list.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly batchId: string;
  readonly sheet: string;
}

const SHEETS = { brooder: BrooderCard, shopping: ShoppingList, tasks: TaskList } as const;

export default function PrintScreen({ farm, tables, batchId, sheet }: Props) {
  const all = useAll(usePicture(farm.id));
  const planned = useMemo(() => {
    if ('waiting' in all) return undefined;
    const [picture] = all.data;
    const batch = picture.batches.find((b) => b.id === batchId);
    return batch && planDraft({ farm, tables, picture }, batch, batch.arrivalDate);
  }, [all, batchId, farm, tables]);
  if ('waiting' in all) return all.waiting;
  const Sheet = SHEETS[sheet as keyof typeof SHEETS];
  if (!planned || !Sheet)
    return <Alert color="stop">There is no such sheet. The batch may have been deleted.</Alert>;
  if ('errors' in planned)
    return (
      <Alert color="stop">
        This batch cannot be planned as it is. {Object.values(planned.errors).join(' ')}
      </Alert>
    );
  return (
    <main className="print-sheet">
      <Group className="no-print" mb="md">
        <Button onClick={() => window.print()}>Print</Button>
        <Button component={Link} href={`/farm/${farm.id}/batches/${batchId}`} variant="default">
          Back to the plan
        </Button>
      </Group>
      <FittedTasksOf farmId={farm.id} isSaved>
        <Sheet plan={planned.plan} asked={planned.asked} />
      </FittedTasksOf>
    </main>
  );
}

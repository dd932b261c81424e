import { Button, Stack, Text } from '@mantine/core';
import { cautionsSaid } from '../../../shared/plan/mishap/cautions-said.js';
import { useTables } from '../api/queries.js';
import { isAwaited, type FirstTold, type MishapProps } from './mishap-props.js';
import { CautionSaid, KeepOrLeave } from './mishap-parts.js';

/** What is told of one batch: which of them, and what to do besides. */
export default function ToldOf({
  farm,
  animals,
  lead,
  first,
  caution,
  onTell,
  onBack,
}: MishapProps & {
  readonly lead: string;
  /** What is told of those that are there; left out, it is asked. */
  readonly first?: FirstTold;
  /** What can hurt them again, by its key. */
  readonly caution?: string;
}) {
  const tables = useTables().data;
  return (
    <Stack gap="sm">
      <Text>{lead}</Text>
      {animals.map((line) => (
        <Button
          key={line.id}
          variant="default"
          size="md"
          justify="start"
          onClick={() => onTell(line, first && isAwaited(line) ? CAME : first)}
        >
          {first && isAwaited(line) ? `${line.name}: did they come? Tell that first` : line.name}
        </Button>
      ))}
      {tables &&
        caution !== undefined &&
        cautionsSaid(tables, farm, [caution]).map((each) => (
          <CautionSaid key={each.title} of={each} />
        ))}
      <KeepOrLeave onBack={onBack} />
    </Stack>
  );
}

/** Of birds of which nobody has told that they came none can have died. */
const CAME: FirstTold = { kind: 'arrived' };

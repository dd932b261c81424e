import { Button, Group, Text } from '@mantine/core';
import type { ProcessingWay } from '../../../../shared/plan/processing-way.js';
import type { BatchDraft } from './use-plan.js';

interface Props {
  readonly ways: readonly ProcessingWay[];
  readonly onChoose: (more: BatchDraft) => void;
}

/** Who processes them and when, where one day is too short for the hands there are. */
export function ProcessingWays({ ways, onChoose }: Props) {
  if (ways.length === 0) return null;
  return (
    <ul className="story-list" aria-label="Ways to get them processed">
      {ways.map(({ id, words, chosenBy }) => (
        <Group component="li" key={id} gap="sm" mb="xs">
          <Text component="span">{words}.</Text>
          {chosenBy ? (
            <Button
              className="no-print"
              variant="light"
              size="compact-md"
              aria-label={`Choose: ${words}`}
              onClick={() => onChoose(chosenBy)}
            >
              Choose
            </Button>
          ) : (
            <b>Planned</b>
          )}
        </Group>
      ))}
    </ul>
  );
}

import { Group, Text } from '@mantine/core';
import type { ReactNode } from 'react';
import { ConfirmButton } from '../../shell/confirm-button.js';

interface Props {
  readonly children: ReactNode;
  /** What is told there, for who cannot see it: "the weighing of May 4". */
  readonly what: string;
  /** Left out for what cannot be taken back here. */
  readonly onDelete: (() => void) | undefined;
}

/** One thing that was told, and a way to take it back. */
export function ToldLine({ children, what, onDelete }: Props) {
  return (
    <Group justify="space-between" wrap="nowrap">
      <Text>{children}</Text>
      {onDelete && (
        <ConfirmButton
          label={`Delete ${what}`}
          question={`Delete ${what}?`}
          onConfirm={onDelete}
          style={{ flexShrink: 0 }}
        >
          Delete
        </ConfirmButton>
      )}
    </Group>
  );
}

import { ActionIcon, Button, Group, Input, TextInput } from '@mantine/core';
import { IconTrash } from '@tabler/icons-react';
import type { ReactNode } from 'react';

type Pair = readonly [string, string];

/** Rows of two short texts, such as who and their number. */
export function PairRows({
  legend,
  labels,
  rows,
  error,
  onChange,
}: {
  legend: string;
  labels: Pair;
  rows: readonly Pair[];
  error?: ReactNode;
  onChange: (rows: Pair[]) => void;
}) {
  const put = (k: number, row: Pair): void =>
    onChange(rows.map((each, i) => (i === k ? row : each)));
  return (
    <Input.Wrapper label={legend} error={error}>
      {rows.map((row, k) => (
        <Group key={k} gap="xs" wrap="nowrap" mt={4}>
          <TextInput
            flex={1}
            aria-label={`${legend}, ${labels[0].toLowerCase()} ${k + 1}`}
            placeholder={labels[0]}
            value={row[0]}
            onChange={(e) => put(k, [e.currentTarget.value, row[1]])}
          />
          <TextInput
            flex={1}
            aria-label={`${legend}, ${labels[1].toLowerCase()} ${k + 1}`}
            placeholder={labels[1]}
            value={row[1]}
            onChange={(e) => put(k, [row[0], e.currentTarget.value])}
          />
          <ActionIcon
            color="stop"
            size={44}
            variant="subtle"
            aria-label={`Remove row ${k + 1} of ${legend.toLowerCase()}`}
            onClick={() => onChange(rows.filter((_, i) => i !== k))}
          >
            <IconTrash aria-hidden size={18} />
          </ActionIcon>
        </Group>
      ))}
      <Button
        variant="default"
        mt="xs"
        display="block"
        onClick={() => onChange([...rows, ['', '']])}
      >
        Add a row
      </Button>
    </Input.Wrapper>
  );
}

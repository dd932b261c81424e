import { ActionIcon, Group, Input, Text } from '@mantine/core';
import { IconArrowDown, IconArrowUp } from '@tabler/icons-react';

/** Batches and herds in the order in which one walks past them. */
export function RoundOrder({
  stops,
  order,
  onChange,
}: {
  stops: readonly { readonly id: string; readonly name: string }[];
  order: readonly string[];
  onChange: (order: string[]) => void;
}) {
  if (stops.length < 2) return null;
  const place = (id: string): number => (order.includes(id) ? order.indexOf(id) : order.length);
  const sorted = [...stops].sort((a, b) => place(a.id) - place(b.id));
  const move = (from: number, to: number): void => {
    const ids = sorted.map(({ id }) => id);
    ids.splice(to, 0, ...ids.splice(from, 1));
    onChange(ids);
  };
  return (
    <Input.Wrapper label="Order of the round">
      {sorted.map(({ id, name }, k) => (
        <Group key={id} gap="xs" wrap="nowrap">
          <ActionIcon
            variant="default"
            size={44}
            disabled={k === 0}
            aria-label={`${name} earlier on the round`}
            onClick={() => move(k, k - 1)}
          >
            <IconArrowUp aria-hidden />
          </ActionIcon>
          <ActionIcon
            variant="default"
            size={44}
            disabled={k === sorted.length - 1}
            aria-label={`${name} later on the round`}
            onClick={() => move(k, k + 1)}
          >
            <IconArrowDown aria-hidden />
          </ActionIcon>
          <Text>
            {k + 1}. {name}
          </Text>
        </Group>
      ))}
    </Input.Wrapper>
  );
}

import { Button, Group, Popover, Text, type ButtonProps } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import type { ReactNode } from 'react';

interface Props extends ButtonProps {
  readonly question: string;
  readonly label: string;
  readonly onConfirm: () => void;
  /** What is done, and what is done instead. */
  readonly yes?: string;
  readonly no?: string;
  readonly children: ReactNode;
}

/** A button that asks once before it does what cannot be undone: it deletes, unless told otherwise. */
export function ConfirmButton({
  question,
  label,
  onConfirm,
  yes = 'Delete',
  no = 'Keep',
  children,
  ...rest
}: Props) {
  const [isAsking, { open, close }] = useDisclosure(false);
  return (
    <Popover
      opened={isAsking}
      onChange={(next) => !next && close()}
      trapFocus
      withArrow
      shadow="md"
      width={280}
    >
      <Popover.Target>
        <Button variant="subtle" color="stop" aria-label={label} onClick={open} {...rest}>
          {children}
        </Button>
      </Popover.Target>
      <Popover.Dropdown aria-label={question}>
        <Text mb="sm">{question}</Text>
        <Group>
          <Button
            color="stop"
            onClick={() => {
              close();
              onConfirm();
            }}
          >
            {yes}
          </Button>
          <Button variant="default" onClick={close}>
            {no}
          </Button>
        </Group>
      </Popover.Dropdown>
    </Popover>
  );
}

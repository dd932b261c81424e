import { Group, Text } from '@mantine/core';
import type { ReactNode } from 'react';

/** What stands where there is nothing yet: why, and the next step as a button. */
export function Empty({ text, children }: { text: string; children: ReactNode }) {
  return (
    <div className="empty">
      <Text fz="lg" mb="md">
        {text}
      </Text>
      <Group>{children}</Group>
    </div>
  );
}

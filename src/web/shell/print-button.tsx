import { Button, Group } from '@mantine/core';

/** Prints the screen it stands on: what is only of use on a screen is left out of the page. */
export const PrintButton = () => (
  <Group className="no-print">
    <Button variant="default" onClick={() => window.print()}>
      Print
    </Button>
  </Group>
);

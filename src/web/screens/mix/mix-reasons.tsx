import { List, Text } from '@mantine/core';
import type { Mix } from '../../../../shared/ration/mix.js';
import { Folded } from '../../shell/folded.js';

/** Prices at which something else would be mixed, and what the needs cost that hold the mix. */
export const MixReasons = ({ mix: { prices, limits } }: { mix: Mix }) => (
  <Folded id="reasons" title="What would change it" isForScreen>
    <List>
      {[...prices, ...limits].map((words) => (
        <List.Item key={words}>{words}</List.Item>
      ))}
    </List>
    <Text size="sm" mt="xs">
      Of all mixes that feed them, this one costs least for the growth it gives.
    </Text>
  </Folded>
);

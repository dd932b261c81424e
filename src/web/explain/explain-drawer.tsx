import { Drawer, Stack, Table, Text, Title } from '@mantine/core';
import type { AboutNumbers } from '../../../shared/explain/moved.js';
import type { Quantity } from '../../../shared/explain/quantity.js';
import { explain } from '../../../shared/formulas/explanation.js';
import type { Tables } from '../../../shared/tables/tables.js';
import type { Reader } from '../../../shared/units/format.js';
import { Caution } from './caution.js';
import { MarkBadge } from './mark-badge.js';
import { SourceView } from './source-view.js';
import { WhatMovesIt } from './what-moves-it.js';

interface Explained {
  readonly quantity: Quantity;
  /** Left out of numbers that nothing is tried with. */
  readonly about: AboutNumbers | undefined;
  readonly tables: Tables;
  readonly reader: Reader;
}

/** One number opened to its formula, inputs and source. It brings the formulas of all plans along. */
export default function ExplainDrawer({
  isOpen,
  close,
  ...explained
}: Explained & { isOpen: boolean; close: () => void }) {
  return (
    <Drawer
      opened={isOpen}
      onClose={close}
      position="right"
      size="md"
      title="Where this number comes from"
      closeButtonProps={{ 'aria-label': 'Close' }}
    >
      <ExplanationView {...explained} />
    </Drawer>
  );
}

function ExplanationView({ quantity, about, tables, reader }: Explained) {
  const e = explain(quantity, tables, reader);
  return (
    <Stack gap="md">
      <div>
        <Text c="dimmed">{e.label}</Text>
        <Text fz="xl" fw={700}>
          {e.value}
        </Text>
        {e.spread && <Text size="sm">Range: {e.spread}</Text>}
      </div>
      {e.outside && <Caution line="Outside the table’s range">{e.outside}</Caution>}
      <section>
        <Title order={3} size="h4">
          {e.formulaTitle}
        </Title>
        <Text>{e.words}</Text>
        <Text ff="monospace" mt="xs" style={{ overflowWrap: 'anywhere' }}>
          {e.symbols}
        </Text>
      </section>
      {0 < e.inputs.length && (
        <Table aria-label="Inputs">
          <Table.Tbody>
            {e.inputs.map((i) => (
              <Table.Tr key={i.label}>
                <Table.Th scope="row" fw={400}>
                  {i.label}
                  {i.symbol && (
                    <Text component="span" c="dimmed">
                      {' '}
                      ({i.symbol})
                    </Text>
                  )}
                </Table.Th>
                <Table.Td ta="right">{i.value}</Table.Td>
                <Table.Td>{i.mark && <MarkBadge mark={i.mark} />}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      )}
      <WhatMovesIt quantity={quantity} about={about} reader={reader} />
      <section>
        <Title order={3} size="h4">
          How sure is this?
        </Title>
        <MarkBadge mark={e.mark} /> <Text component="span">{e.markMeaning}</Text>
      </section>
      {0 < e.sources.length && (
        <section>
          <Title order={3} size="h4">
            {e.sources.length === 1 ? 'Source' : 'Sources'}
          </Title>
          <Stack gap="sm">
            {e.sources.map((source) => (
              <SourceView key={source.id} source={source} />
            ))}
          </Stack>
        </section>
      )}
    </Stack>
  );
}

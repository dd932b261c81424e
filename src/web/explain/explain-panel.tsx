import { Alert, Anchor, Badge, Drawer, Stack, Table, Text, Title } from '@mantine/core';
import { createContext, useCallback, useContext, useMemo, useState, type ReactNode } from 'react';
import { plainDateAt } from '../../../shared/calendar/plain-date.js';
import { explain } from '../../../shared/formulas/explanation.js';
import type { Quantity } from '../../../shared/explain/quantity.js';
import type { Tables } from '../../../shared/tables/tables.js';
import type { Source } from '../../../shared/tables/source.js';
import { formatDate } from '../../../shared/units/dates.js';
import type { Reader } from '../../../shared/units/format.js';

interface Opener {
  /** The household, on the day it is on the farm. */
  readonly reader: Reader;
  readonly sayDate: (date: string) => string;
  readonly open: (quantity: Quantity) => void;
}

const OpenerContext = createContext<Opener | undefined>(undefined);

export function useOpener(): Opener {
  const opener = useContext(OpenerContext);
  if (!opener) throw new Error('Numbers that open need an ExplainProvider around them.');
  return opener;
}

/** Lets every number below it open to its formula, inputs and source. */
export function ExplainProvider({
  tables,
  farm,
  children,
}: {
  tables: Tables;
  farm: Reader & { readonly timeZone: string };
  children: ReactNode;
}) {
  const today = plainDateAt(Date.now(), farm.timeZone);
  const reader = useMemo((): Reader => ({ ...farm, today }), [farm, today]);
  const [shown, setShown] = useState<Quantity>();
  const [isOpen, setOpen] = useState(false);
  const open = useCallback((quantity: Quantity) => {
    setShown(quantity);
    setOpen(true);
  }, []);
  const opener = useMemo(
    () => ({ reader, open, sayDate: (date: string) => formatDate(date, reader) }),
    [reader, open],
  );
  return (
    <OpenerContext value={opener}>
      {children}
      <Drawer
        opened={isOpen}
        onClose={() => setOpen(false)}
        position="right"
        size="md"
        title="Where this number comes from"
        closeButtonProps={{ 'aria-label': 'Close' }}
      >
        {shown && <ExplanationView quantity={shown} tables={tables} reader={reader} />}
      </Drawer>
    </OpenerContext>
  );
}

function ExplanationView({
  quantity,
  tables,
  reader,
}: {
  quantity: Quantity;
  tables: Tables;
  reader: Reader;
}) {
  const e = explain(quantity, tables, reader);
  return (
    <Stack gap="md">
      <div>
        <Text c="dimmed">{e.label}</Text>
        <Text fz="1.7rem" fw={700}>
          {e.value}
        </Text>
        {e.spread && <Text size="sm">Range: {e.spread}</Text>}
      </div>
      {e.outside && (
        <Alert color="orange" title="Outside the table’s range">
          {e.outside}
        </Alert>
      )}
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

export function SourceView({ source }: { source: Source }) {
  return (
    <div>
      <Text fw={500}>
        {source.title}
        {source.year && `, ${source.year}`}
      </Text>
      <Text size="sm">
        {source.publisher} <MarkBadge mark={source.mark} />
      </Text>
      {source.note && <Text size="sm">{source.note}</Text>}
      {source.url && (
        <Anchor
          href={source.url}
          target="_blank"
          rel="noreferrer"
          size="sm"
          style={{ overflowWrap: 'anywhere' }}
        >
          {source.url}
        </Anchor>
      )}
    </div>
  );
}

const MARK_COLORS: Record<string, string> = {
  'own-record': 'moss.9',
  published: 'moss.9',
  computed: 'blue.9',
  'second-hand': 'gray.8',
  'common-practice': 'gray.8',
  'from-memory': 'red.9',
  estimate: 'gray.8',
  assumed: 'red.9',
};

export function MarkBadge({ mark }: { mark: string }) {
  return (
    <Badge variant="outline" color={MARK_COLORS[mark] ?? 'gray.8'} c="bright" tt="none" size="md">
      {mark.replace('-', ' ')}
    </Badge>
  );
}

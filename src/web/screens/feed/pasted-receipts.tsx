import { Button, Stack, Table, Text, Textarea } from '@mantine/core';
import Papa from 'papaparse';
import { useState } from 'react';
import { readReceipts } from '../../../../shared/farm/receipt-table.js';
import { formatPrice, formatValue } from '../../../../shared/units/format.js';
import { todayAt, useTellReceipt } from '../../api/feed-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Failure, Problems } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';
import type { Edible } from './receipt-form.js';

/** Receipts of a year, copied from a spreadsheet: they are shown as they are read, then saved. */
export function PastedReceipts({
  farm,
  edibles,
  onTold,
}: {
  readonly farm: SavedFarm;
  readonly edibles: readonly Edible[];
  readonly onTold: (lines: number) => void;
}) {
  const today = todayAt(farm);
  const sayDate = useSayDate();
  const [text, setText] = useState('');
  const tell = useTellReceipt(farm.id);
  const rows = Papa.parse<string[]>(text.trim(), { skipEmptyLines: true }).data;
  const { lines, problems } = readReceipts(rows, { products: edibles, units: farm.units, today });
  return (
    <Stack gap="sm">
      <Textarea
        label="Lines from a spreadsheet"
        description="Day, seller, feed, bags, paid: a line each. The weight of one bag may follow."
        placeholder={`2027-04-21, Valley mill, Layer mash, 6, 117.60`}
        autosize
        minRows={4}
        maxRows={14}
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      {0 < problems.length && <Problems texts={problems.slice(0, MOST_SHOWN)} />}
      {0 < lines.length && (
        <WideTable label="As it is read">
          <Table>
            <Table.Tbody>
              {lines.map(({ on, details }, k) => (
                <Table.Tr key={k}>
                  <Table.Td>{sayDate(on)}</Table.Td>
                  <Table.Td>{details.from}</Table.Td>
                  <Table.Th scope="row" fw={400}>
                    {details.name}
                  </Table.Th>
                  <Table.Td>
                    {details.amount}
                    {details.eachKg !== undefined &&
                      ` of ${formatValue(details.eachKg, 'kg', farm)}`}
                  </Table.Td>
                  <Table.Td ta="right">
                    {details.money === undefined
                      ? 'no money'
                      : formatPrice(details.money, farm.currency)}
                  </Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
          </Table>
        </WideTable>
      )}
      <Failure error={tell.error} />
      {0 < lines.length && (
        <Button
          size="md"
          style={{ alignSelf: 'start' }}
          disabled={0 < problems.length}
          loading={tell.isPending}
          onClick={() =>
            tell.mutate(lines, {
              onSuccess: () => {
                setText('');
                onTold(lines.length);
              },
            })
          }
        >
          {lines.length === 1 ? 'Save this line' : `Save these ${lines.length} lines`}
        </Button>
      )}
      {0 < problems.length && 0 < lines.length && (
        <Text size="sm">Nothing is saved before every line can be read.</Text>
      )}
    </Stack>
  );
}

const MOST_SHOWN = 8;

import './work.css';
import { Button, Group, Text } from '@mantine/core';
import { Link } from 'wouter';
import type { Tables } from '../../../../shared/tables/tables.js';
import type { SavedFarm } from '../../api/queries.js';
import { useSheet } from '../../api/work-queries.js';
import { useAll } from '../../shell/states.js';
import { AllDaysPage } from './sheet-all-days.js';
import { SheetDay } from './sheet-day.js';

/** A sitter's sheet, a page a day, to print or to read on a phone. */
export default function SheetScreen({
  farm,
  tables,
  handoverId,
}: {
  farm: SavedFarm;
  tables: Tables;
  handoverId: string;
}) {
  const all = useAll(useSheet(farm.id, handoverId));
  if ('waiting' in all) return all.waiting;
  const [sheet] = all.data;
  return (
    <main className="sitter-sheet">
      <Group className="no-print" mb="md">
        <Button onClick={() => window.print()}>Print</Button>
        <Button component={Link} href={`/farm/${farm.id}/work/away`} variant="default">
          Back to While you’re away
        </Button>
      </Group>
      {sheet.fitsNowhere.map(({ name, why }) => (
        <Text key={name} className="no-print" c="stop">
          {name}: no time for it. {why}
        </Text>
      ))}
      {sheet.pages.map((page, k) => (
        <SheetDay
          key={page.date}
          {...{ farm, tables, sheet, page }}
          before={sheet.pages[k - 1]}
          later={sheet.pages.slice(k + 1)}
        />
      ))}
      {1 < sheet.pages.length && <AllDaysPage farm={farm} tables={tables} sheet={sheet} />}
    </main>
  );
}

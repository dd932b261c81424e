import { Badge, Button, Card, Group, Stack, Text } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import { rowsAhead } from '../../../../shared/plan/pasture/herd-now.js';
import { movesMeant } from '../../../../shared/plan/pasture/moves-assumed.js';
import { moveDetails, moveHeads, restIf } from '../../../../shared/plan/pasture/move-quantities.js';
import type { DaysOfMowing } from '../../../../shared/plan/pasture/mowing-laid.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import {
  isThere,
  rowNotes,
  rowTitle,
  seasonRows,
  type GrazeRow,
  type HayRow,
  type MowRow,
  type SeasonRow,
  type TopRow,
} from '../../../../shared/plan/pasture/season-rows.js';
import { toldWithBefore } from '../../../../shared/plan/pasture/move-told.js';
import { useMoved } from '../../api/pasture-queries.js';
import { useTell } from '../../api/told-queries.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { Failure } from '../../shell/states.js';

/** What is under way, and the next of all that comes. */
const NEXT = 3;
/** Mowing is done when the weather lets it, some days before it is due or after. */
const SOON_DAYS = 10;

/** All that happens, dated. Stays open to their numbers; today's can be noted as done. */
export function MoveList({
  plan,
  mowing,
  farmId,
}: {
  plan: PasturePlan;
  mowing: DaysOfMowing | undefined;
  farmId: string;
}) {
  const [isAll, setAll] = useState(false);
  const moved = useMoved(farmId);
  const told = useTell<'paddock-mown'>(farmId);
  const rows = seasonRows(plan, mowing);
  if (rows.length === 0) return <Text>Nothing happens on grass in this plan.</Text>;
  const soon = addDays(plan.today, SOON_DAYS);
  const ahead = rowsAhead(plan, mowing);
  const now = ahead.filter(({ from }) => from <= plan.today).length;
  const shown = isAll ? rows : ahead.slice(0, now + NEXT);
  return (
    <Stack gap="xs">
      {plan.moves.length === 0 && <Text>No herd goes on grass in this plan.</Text>}
      <Failure error={moved.error ?? told.error} />
      <Stack gap="xs" role="list">
        {shown.map((row) => (
          <Card key={keyOf(row)} withBorder py="sm" role="listitem">
            {row.kind === 'graze' ? (
              <Stay
                plan={plan}
                row={row}
                isPending={moved.isPending}
                onIn={() =>
                  moved.mutate(
                    toldWithBefore(
                      {
                        ...{ herdId: row.move.herdId, paddockId: row.move.paddockId },
                        assumed: movesMeant(plan.assumedMoves, row.move.herdId),
                      },
                      plan.today,
                    ),
                  )
                }
              />
            ) : (
              <Other plan={plan} row={row}>
                {isDueBy(row, soon) && (
                  <Button
                    size="compact-md"
                    loading={told.isPending}
                    onClick={() => told.mutate(mownToday(row, plan.today))}
                  >
                    {row.kind === 'top' ? 'Topped today' : 'Mown today'}
                  </Button>
                )}
              </Other>
            )}
          </Card>
        ))}
      </Stack>
      <Group gap="xs">
        {(isAll || shown.length < rows.length) && (
          <Button variant="default" onClick={() => setAll(!isAll)}>
            {isAll ? 'Fewer' : `All ${rows.length} entries`}
          </Button>
        )}
        <Button component={Link} href={`/farm/${farmId}/pasture/print`} variant="default">
          Move sheet
        </Button>
      </Group>
    </Stack>
  );
}

function Stay({
  plan,
  row,
  isPending,
  onIn,
}: {
  plan: PasturePlan;
  row: GrazeRow;
  isPending: boolean;
  onIn: () => void;
}) {
  const [isOpen, setOpen] = useState(false);
  const { date, days, heightBefore, heightAfter, rest } = moveHeads(plan, row.move);
  const condition = restIf(plan, row.move);
  return (
    <>
      <Group justify="space-between" gap="xs" mb={4} className="roomy-numbers">
        <Text fw={600}>
          <Num of={date} />: {rowTitle(plan, row)}
        </Text>
        {row.from <= plan.today && !isThere(row) && (
          <Button size="compact-md" loading={isPending} onClick={onIn}>
            Moved today
          </Button>
        )}
      </Group>
      <Text>
        <Num of={days} />
        {isThere(row) ? ' more, height now ' : ', entry height '}
        <Num of={heightBefore} />, exit height <Num of={heightAfter} />
        {rest && (
          <>
            , after <Num of={rest} /> of rest
            {condition && ` ${condition}`}
          </>
        )}
      </Text>
      <Group gap={4}>
        <Notes row={row} />
        <Button
          variant="subtle"
          size="compact-md"
          aria-label={isOpen ? undefined : `Numbers of this stay: ${rowTitle(plan, row)}`}
          aria-expanded={isOpen}
          onClick={() => setOpen(!isOpen)}
        >
          {isOpen ? 'Less' : 'Numbers'}
        </Button>
      </Group>
      {isOpen && (
        <Facts>
          {moveDetails(plan, row.move).map((q) => (
            <Fact key={q.label} of={q} />
          ))}
        </Facts>
      )}
    </>
  );
}

const isDueBy = (row: SeasonRow, day: string): row is MowRow | TopRow =>
  row.kind === 'mow' ? row.cut.mowFrom <= day : row.kind === 'top' && row.from <= day;

const mownToday = (row: MowRow | TopRow, today: string) => ({
  kind: 'paddock-mown' as const,
  about: row.kind === 'top' ? row.paddockId : row.cut.paddockId,
  on: today,
  details: row.kind === 'top' ? { isLeftLying: true } : {},
});

/** What happens besides stays, in two lines. */
function Other({
  plan,
  row,
  children,
}: {
  plan: PasturePlan;
  row: Exclude<SeasonRow, GrazeRow>;
  children?: ReactNode;
}) {
  const sayDate = useSayDate();
  return (
    <>
      <Group justify="space-between" gap="xs" className="roomy-numbers">
        <Text fw={600}>
          {sayDate(row.from)}: {rowTitle(plan, row)}
        </Text>
        <Notes row={row} />
        {children}
      </Group>
      <Text className="roomy-numbers">
        <RowAmount row={row} />
      </Text>
    </>
  );
}

function Notes({ row }: { row: SeasonRow }) {
  return rowNotes(row).map((note) => (
    <Badge key={note} color="warn" c="bright" variant="outline" tt="none">
      {note}
    </Badge>
  ));
}

/** How long, and how much, of a row that is no stay. */
export function RowAmount({ row }: { row: Exclude<SeasonRow, GrazeRow> }): ReactNode {
  const sayDate = useSayDate();
  switch (row.kind) {
    case 'hay':
      return <HayAmount row={row} />;
    case 'shut':
      return `Nothing goes in, so that it can be mown from ${sayDate(row.cut.mowFrom)}`;
    case 'mow':
      return (
        <>
          <Num of={row.cut.bales} />, <Num of={row.cut.hay} />;{' '}
          {row.isLaid
            ? `the day Work has for it, of the dry days from ${sayDate(row.cut.mowFrom)} on`
            : `Work picks the dry days, from ${sayDate(row.cut.mowFrom)} on`}
          ; closed until {sayDate(row.to)}
        </>
      );
    case 'top':
      return 'Cut to the height you leave; what falls is left lying';
    case 'birds':
      return `${spanOf(row, sayDate)}, behind the herd`;
  }
}

function HayAmount({ row }: { row: HayRow }) {
  const sayDate = useSayDate();
  return (
    <>
      {spanOf(row, sayDate)}, <Num of={row.perDay} /> of dry matter a day
    </>
  );
}

/** How long a row lasts from its day on. */
function spanOf({ from, to }: SeasonRow, sayDate: SayDate): string {
  const days = daysBetween(from, to) + 1;
  return days === 1 ? 'That day' : `${days} days, until ${sayDate(to)}`;
}

/** What tells a row from all others. */
export const keyOf = (row: SeasonRow): string => `${row.kind} ${row.from} ${whoOf(row)}`;

function whoOf(row: SeasonRow): string {
  switch (row.kind) {
    case 'graze':
    case 'birds':
      return row.move.paddockId;
    case 'hay':
      return row.herdId;
    case 'top':
      return row.paddockId;
    case 'shut':
    case 'mow':
      return row.cut.paddockId;
  }
}

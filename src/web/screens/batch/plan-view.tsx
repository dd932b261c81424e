import { Button, Card, Group, Stack, Tabs, Text, Title } from '@mantine/core';
import { IconPrinter } from '@tabler/icons-react';
import { lazy, Suspense, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { IssueList } from '../../explain/issue-list.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import type { AskedBatch, BatchDraft } from './use-plan.js';
import { ArrivalWeeks } from './arrival-weeks.js';
import { BillSection } from './bill-section.js';
import { BrooderSection } from './brooder-section.js';
import { DaySection } from './day-section.js';
import { FeedSection } from './feed-section.js';
import { HatchingSection } from './hatching-section.js';
import { LeavingSection } from './leaving-section.js';
import { OutdoorsSection } from './outdoors-section.js';
import { TaskSection } from './task-section.js';
import { EggCountSection } from './egg-count-section.js';
import { WeighSection } from './weigh-section.js';

const PlanCharts = lazy(() => import('./plan-charts.js'));

interface Props {
  readonly plan: BatchPlan;
  readonly asked: AskedBatch;
  readonly onPickWeek: (more: BatchDraft) => void;
  /** Where the sheets of the saved batch are; undefined while it is not saved. */
  readonly printBase: string | undefined;
}

export function PlanView({ plan, asked, onPickWeek, printBase }: Props) {
  const { tables } = asked;
  const sections: readonly (readonly [string, string, ReactNode])[] = [
    ['glance', 'At a glance', <Glance key="g" plan={plan} asked={asked} printBase={printBase} />],
    ['weeks', 'Which week', <ArrivalWeeks key="w" asked={asked} onPick={onPickWeek} />],
    ...(plan.hatching
      ? [
          [
            'eggs',
            'Eggs set',
            <HatchingSection key="e" plan={plan} hatching={plan.hatching} tables={tables} />,
          ] as const,
        ]
      : []),
    ...(plan.brooding
      ? [
          [
            'brooder',
            'Brooder and heat',
            <BrooderSection key="b" plan={plan} brooding={plan.brooding} tables={tables} />,
          ] as const,
        ]
      : []),
    ['feed', 'Feed and water', <FeedSection key="f" plan={plan} tables={tables} />],
    ['outdoors', 'Outdoors', <OutdoorsSection key="o" plan={plan} tables={tables} />],
    [
      'leaving',
      plan.leaving ? 'Processing' : 'Eggs and light',
      <LeavingSection key="l" plan={plan} tables={tables} />,
    ],
    ['bill', 'Bill', <BillSection key="c" plan={plan} units={asked.farm.units} />],
    [
      'work',
      'Work',
      <TaskSection
        key="t"
        plan={plan}
        tables={tables}
        picture={asked.picture}
        farmId={asked.farm.id}
      />,
    ],
    ['days', 'Day by day', <DaySection key="d" plan={plan} />],
  ];
  return (
    <Tabs defaultValue="glance" keepMounted={false}>
      <div className="no-print">
        <Tabs.List>
          {sections.map(([id, title]) => (
            <Tabs.Tab key={id} value={id} fz="md" py="sm" px={{ base: 'xs', sm: 'md' }}>
              {title}
            </Tabs.Tab>
          ))}
        </Tabs.List>
      </div>
      {sections.map(([id, title, body]) => (
        <Tabs.Panel key={id} value={id} pt="md" aria-label={title}>
          {body}
        </Tabs.Panel>
      ))}
    </Tabs>
  );
}

function Glance({ plan, asked, printBase }: Omit<Props, 'onPickWeek'>) {
  const { hatching, birds, outdoors, leaving, laying, feed, heat, bill, tasks } = plan;
  return (
    <Stack>
      <IssueList issues={plan.issues} tables={asked.tables} />
      {printBase !== undefined && (
        <>
          <WeighSection plan={plan} farm={asked.farm} batchId={asked.batch.id} />
          <EggCountSection plan={plan} farm={asked.farm} batchId={asked.batch.id} />
        </>
      )}
      <Card withBorder component="section">
        <Facts>
          {hatching ? (
            <>
              <Fact of={hatching.eggs} />
              <Fact of={hatching.setOn} />
              <Fact of={hatching.incubator?.lockdownOn} />
              <Fact of={hatching.hens} />
            </>
          ) : (
            [birds.toOrder, ...birds.orderSizes].map((size) => <Fact key={size.label} of={size} />)
          )}
          <Fact of={birds.enough} />
          <Fact of={birds.chicksPlaced} />
          <Fact of={birds.atEnd} />
          <Fact of={heat?.heatersNeeded} />
          <Fact of={heat?.lastHeatDay} />
          <Fact of={outdoors.moveOut} />
          <Fact of={leaving?.on} />
          <Fact of={laying?.firstEgg} />
          <Fact of={birds.cockerelsLeave?.on} />
          <Fact of={leaving?.dressedAll} />
          <Fact of={laying?.eggsInYear} />
          <Fact of={feed.total} />
          <Fact of={feed.peakWater} />
          <Fact of={leaving?.freezerNeed} />
          <Fact of={bill.total} />
          <Fact of={bill.perBird} />
          <Fact of={bill.perKgDressed} />
          <Fact of={bill.perDozen} />
        </Facts>
        <Text size="sm" c="dimmed" mt="sm">
          Weather: {plan.weather.label.toLowerCase()}. Growth: {birds.growthTable}. Work:{' '}
          <Num of={tasks.hoursInAll} /> in all. Press any number to see where it comes from.
        </Text>
      </Card>
      <Suspense fallback={<Text>Drawing the charts …</Text>}>
        <PlanCharts plan={plan} units={asked.farm.units} />
      </Suspense>
      <Sheets printBase={printBase} hasBrooder={plan.brooding !== undefined} />
    </Stack>
  );
}

const SHEETS = [
  ['brooder', 'Brooder card'],
  ['shopping', 'Shopping list'],
  ['tasks', 'Task list'],
] as const;

function Sheets({ printBase, hasBrooder }: { printBase: string | undefined; hasBrooder: boolean }) {
  return (
    <Card withBorder component="section" className="no-print">
      <Title order={2} size="h3">
        Print
      </Title>
      {printBase === undefined ? (
        <Text>
          Save the batch to print its {hasBrooder && 'brooder card, '}shopping list and task list.
        </Text>
      ) : (
        <Group mt="xs">
          {SHEETS.filter(([sheet]) => hasBrooder || sheet !== 'brooder').map(([sheet, name]) => (
            <Button
              key={sheet}
              component={Link}
              href={`${printBase}/${sheet}`}
              variant="light"
              leftSection={<IconPrinter aria-hidden />}
            >
              {name}
            </Button>
          ))}
        </Group>
      )}
    </Card>
  );
}

import { Button, Group, Text } from '@mantine/core';
import { IconPrinter } from '@tabler/icons-react';
import { useMemo } from 'react';
import { Link } from 'wouter';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { nobodyHome } from '../../../../shared/plan/nobody-home.js';
import { withStillHere } from '../../../../shared/plan/left-untold.js';
import { aboutBatch } from '../../../../shared/plan/story/about-batch.js';
import { issuesAhead } from '../../../../shared/plan/today/warnings.js';
import { IssueList } from '../../explain/issue-list.js';
import { NumbersOf } from '../../explain/about-numbers.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Num } from '../../explain/number.js';
import { AloneByDay, NobodyHome } from './alone-by-day.js';
import { WorkMarksOf } from '../../tick/work-marks.js';
import { BeforePart, isHere } from './before-part.js';
import { DaySection } from './day-section.js';
import { KeyFacts } from './key-facts.js';
import { HowItWentPart } from './how-it-went.js';
import { MovedTasks } from './moved-tasks.js';
import { NowSection } from './now-section.js';
import { SoonSection } from './soon-section.js';
import { BrooderPart, CostPart, EndPart, FeedPart, OutPart } from './story-parts.js';
import { StoryFold, StorySection } from './story-section.js';
import type { AskedBatch, BatchDraft } from './use-plan.js';

interface Props {
  readonly plan: BatchPlan;
  readonly asked: AskedBatch;
  /** Takes up what was chosen in the story: a week, a way to go out, days. */
  readonly onChange: (more: BatchDraft) => void;
  /** Where the sheets of the saved batch are; undefined while it is not saved. */
  readonly printBase: string | undefined;
}

/** A batch in the order of its life, one part a question; what is now stands first. */
export function Story({ plan, asked, onChange, printBase }: Props) {
  const { reader } = useOpener();
  const about = useMemo(() => aboutBatch({ ...asked, plan, reader }), [asked, plan, reader]);
  const part = { plan, asked, isSaved: printBase !== undefined };
  const { batch, picture, tables } = asked;
  // Nobody told that they left: they are as much here as on the page of the day.
  const here = useMemo(
    () => withStillHere([{ id: batch.id, plan }], { ...picture, tables })[0]!.plan,
    [batch.id, plan, picture, tables],
  );
  const before = <BeforePart {...part} onPickWeek={onChange} />;
  const isUnderWay = isHere(here);
  return (
    <NumbersOf about={about}>
      <WorkMarksOf farmId={asked.farm.id}>
        <div className="story batch-first">
          {isUnderWay && <NowSection {...part} plan={here} />}
          <KeyFacts plan={plan} />
          <MovedTasks plan={plan} />
          <SoonSection {...part} />
          {part.isSaved ? (
            <AloneByDay farmId={asked.farm.id} batchName={plan.name} />
          ) : (
            <NobodyHome lines={nobodyHome(asked.picture, plan)} />
          )}
          <IssueList
            // What is late of a saved batch stands among its work, without what was ticked off.
            issues={part.isSaved ? issuesAhead(plan) : plan.issues}
            tables={asked.tables}
          />
        </div>
        <div className="batch-parts">
          <div>
            {!isUnderWay && before}
            <BrooderPart {...part} />
            <FeedPart {...part} onChoose={onChange} />
            <OutPart {...part} onChoose={onChange} />
          </div>
          <div>
            <EndPart {...part} onChoose={onChange} />
            <CostPart {...part} onChoose={onChange} />
            {plan.arrivalDate <= plan.today && printBase !== undefined && (
              <HowItWentPart farm={asked.farm} batchId={asked.batch.id!} />
            )}
            {isUnderWay && before}
            <StoryFold part="days" title="Day by day" answer="Every day as a table" isForScreen>
              <DaySection plan={plan} />
            </StoryFold>
          </div>
        </div>
        <div className="story batch-last">
          <div className="no-print">
            <Paper printBase={printBase} hasBrooder={plan.brooding !== undefined} />
          </div>
          <Text size="sm" c="dimmed">
            Weather: {plan.weather.label.toLowerCase()}. Growth: {plan.birds.growthTable}. Work:
            about <Num of={plan.tasks.hoursInAll} /> in all; most hours are estimates. Work stands
            on the days on which you have the time for it, as far ahead as work is planned; later
            days are counted back from the birds’ own dates. Press any number to see where it comes
            from.
          </Text>
        </div>
      </WorkMarksOf>
    </NumbersOf>
  );
}

const SHEETS = [
  ['brooder', 'Brooder card'],
  ['shopping', 'Shopping list'],
  ['tasks', 'Task list'],
] as const;

function Paper({ printBase, hasBrooder }: { printBase: string | undefined; hasBrooder: boolean }) {
  return (
    <StorySection part="paper" title="Print">
      {printBase === undefined ? (
        <Text>
          Save the batch to print its {hasBrooder && 'brooder card, '}shopping list and task list.
        </Text>
      ) : (
        <Group>
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
    </StorySection>
  );
}

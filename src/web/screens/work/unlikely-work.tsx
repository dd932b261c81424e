import { List, Stack, Text } from '@mantine/core';
import { useMemo } from 'react';
import { aboutChances } from '../../../../shared/plan/work/about-work.js';
import {
  betterWords,
  chanceWords,
  elseWords,
  heldUpWords,
  lackWords,
  isTried,
  NOTHING_HELPS,
  slightlyLateWords,
  unlikelyLines,
  type UnlikelyLine,
} from '../../../../shared/plan/work/chance-words.js';
import type { WorkOutlook } from '../../../../shared/plan/work/work-outlook.js';
import { outlookQuantities } from '../../../../shared/plan/work/work-quantities.js';
import { formatChance, formatYears } from '../../../../shared/units/format.js';
import { NumbersOf } from '../../explain/about-numbers.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Num } from '../../explain/number.js';
import { Folded } from '../../shell/folded.js';

/** Pieces of work told at once, those it matters most for first. */
const FIRST = 4;

/** Work that probably does not get done in time, and what would raise its odds most. */
export function UnlikelyWork({ outlook }: { outlook: WorkOutlook }) {
  const lines = unlikelyLines(outlook);
  const slightly = slightlyLateWords(outlook);
  if (lines.length === 0) return <Text>{slightly ?? 'Nothing.'}</Text>;
  const told = (line: UnlikelyLine) => (
    <Unlikely key={line.job.key} line={line} outlook={outlook} />
  );
  return (
    <Stack gap="md">
      {lines.slice(0, FIRST).map(told)}
      {FIRST < lines.length && (
        <Folded
          id="more-unlikely"
          level={3}
          title={`${lines.length - FIRST} more`}
          answer={[...new Set(lines.slice(FIRST).map(({ job }) => job.name))].join(', ')}
        >
          <Stack gap="md">{lines.slice(FIRST).map(told)}</Stack>
        </Folded>
      )}
      {slightly && <Text>{slightly}</Text>}
    </Stack>
  );
}

function Unlikely({ line, outlook }: { line: UnlikelyLine; outlook: WorkOutlook }) {
  const { job, often, times } = line;
  const { reader, sayDate } = useOpener();
  const numbers = outlookQuantities(outlook, job);
  const about = useMemo(() => aboutChances(job, reader.today ?? job.latest, reader), [job, reader]);
  const hasChance = !job.isFewDays && !job.alreadyLate;
  const says = [...elseWords(job, reader), lackWords(job)].filter((words) => words !== undefined);
  return (
    <div>
      <Text fw={600}>
        {job.name}
        {job.belongsTo && ` · ${job.belongsTo.name}`}
        {often && ` (${often}; ${times} of its times, this the hardest of them)`}
      </Text>
      <NumbersOf about={about}>
        <Text>
          {hasChance ? (
            <>
              Done by {sayDate(job.latest)}:{' '}
              <Num of={numbers.chance} said={formatChance(numbers.chance.value)} />.
            </>
          ) : (
            chanceWords(job, reader)
          )}{' '}
          {says.join(' ')}
        </Text>
        <HeldUp line={line} />
        {numbers.startBy && (
          <Text>
            Start by, to be safe {formatYears(outlook.sureShare, 'years in')}:{' '}
            <Num of={numbers.startBy} />
          </Text>
        )}
      </NumbersOf>
      {0 < job.better.length && (
        <>
          <Text>What would help, the most first:</Text>
          <List>
            {job.better.map((better) => (
              <List.Item key={better.kind}>{betterWords(outlook, job, better, reader)}</List.Item>
            ))}
          </List>
        </>
      )}
      {isTried(job) && job.better.length === 0 && <Text>{NOTHING_HELPS}</Text>}
    </div>
  );
}

/** So many names are read at a glance; the rest are asked for. */
const NAMED = 3;

/** What is late with it. */
function HeldUp({ line }: { line: UnlikelyLine }) {
  const { heldUp } = line;
  if (heldUp.length <= NAMED + 1) return <Text>{heldUpWords(line)}</Text>;
  return (
    <details>
      <summary>
        Late with it: {heldUp.slice(0, NAMED).join('; ')} and {heldUp.length - NAMED} more
      </summary>
      {heldUp.slice(NAMED).join('; ')}.
    </details>
  );
}

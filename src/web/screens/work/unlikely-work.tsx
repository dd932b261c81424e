import { List, Stack, Text } from '@mantine/core';
import { useMemo } from 'react';
import { aboutChances } from '../../../../shared/plan/work/about-work.js';
import {
  betterWords,
  chanceWords,
  elseWords,
  lackWords,
  NOTHING_HELPS,
  slightlyLateWords,
  unlikelyOf,
} from '../../../../shared/plan/work/chance-words.js';
import type { JobOutlook } from '../../../../shared/plan/work/job-outlook.js';
import { inSeries } from '../../../../shared/plan/work/repeated-jobs.js';
import type { WorkOutlook } from '../../../../shared/plan/work/work-outlook.js';
import { outlookQuantities } from '../../../../shared/plan/work/work-quantities.js';
import { formatChance, formatYears } from '../../../../shared/units/format.js';
import { NumbersOf } from '../../explain/about-numbers.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Num } from '../../explain/number.js';

/** Work that probably does not get done in time, and what would raise its odds most. */
export function UnlikelyWork({ outlook }: { outlook: WorkOutlook }) {
  const unlikely = unlikelyOf(outlook);
  const slightly = slightlyLateWords(outlook);
  if (unlikely.length === 0)
    return <Text>{slightly ?? 'All of it is likely to get done in time.'}</Text>;
  return (
    <Stack gap="md">
      {inSeries(unlikely).map(({ next: worst, later, often }) => (
        <Unlikely
          key={worst.key}
          job={worst}
          outlook={outlook}
          times={often && `${often}; ${1 + later.length} of its times, this the hardest of them`}
        />
      ))}
      {slightly && <Text>{slightly}</Text>}
    </Stack>
  );
}

function Unlikely({
  job,
  outlook,
  times,
}: {
  job: JobOutlook;
  outlook: WorkOutlook;
  times: string | undefined;
}) {
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
        {times && ` (${times})`}
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
        {numbers.startBy && (
          <Text size="sm">
            Start by, to be safe {formatYears(outlook.sureShare, 'years in')}:{' '}
            <Num of={numbers.startBy} />
          </Text>
        )}
      </NumbersOf>
      {0 < job.better.length && (
        <>
          <Text size="sm">What would help, the most first:</Text>
          <List size="sm">
            {job.better.map((better) => (
              <List.Item key={better.kind}>{betterWords(outlook, job, better, reader)}</List.Item>
            ))}
          </List>
        </>
      )}
      {job.lacks !== undefined && job.better.length === 0 && <Text size="sm">{NOTHING_HELPS}</Text>}
    </div>
  );
}

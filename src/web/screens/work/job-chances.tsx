import './work.css';
import { Table, Text } from '@mantine/core';
import { useMemo, type ReactNode } from 'react';
import { isLikely } from '../../../../shared/plan/work/chance-words.js';
import { aboutChances } from '../../../../shared/plan/work/about-work.js';
import type { JobOutlook } from '../../../../shared/plan/work/job-outlook.js';
import type { WorkOutlook } from '../../../../shared/plan/work/work-outlook.js';
import { inSeries } from '../../../../shared/farm/repeated-jobs.js';
import { outlookQuantities } from '../../../../shared/plan/work/work-quantities.js';
import { formatChance, formatYears } from '../../../../shared/units/format.js';
import { NumbersOf } from '../../explain/about-numbers.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';

/** Work that is done by its date in all but one year of so many needs no line of its own. */
const AS_GOOD_AS_SURE = 0.995;

/** The work that is likely to get done in time, as far as it is not as good as sure. */
export function LikelyWork({ outlook }: { outlook: WorkOutlook }) {
  const likely = outlook.jobs.filter((job) => isLikely(outlook, job));
  const open = likely.filter((job) => job.chance < AS_GOOD_AS_SURE || job.suitableDays);
  const sure = likely.length - open.length;
  if (outlook.jobs.length === 0) return <Text>There is no work in sight.</Text>;
  return (
    <>
      <Text>
        {likely.length} of {outlook.jobs.length} pieces of work are likely to get done in time
        {0 < sure && `, ${sure} of them in nearly every year`}.
      </Text>
      {0 < open.length && (
        <details>
          <summary>Those that depend on the weather or on other work</summary>
          <LikelyTable outlook={outlook} jobs={open} />
        </details>
      )}
    </>
  );
}

function LikelyTable({ outlook, jobs }: { outlook: WorkOutlook; jobs: readonly JobOutlook[] }) {
  return (
    <>
      <WideTable label="Will it get done?">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Work</Table.Th>
              <Table.Th>Done in time</Table.Th>
              <Table.Th>Due by</Table.Th>
              <Table.Th>Start by, to be safe {formatYears(outlook.sureShare, 'years in')}</Table.Th>
              <Table.Th>Suitable days</Table.Th>
              <Table.Th>Usually done by, nearly always by</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {inSeries([...jobs].sort((a, b) => a.chance - b.chance)).map(
              ({ next: worst, later: others, often }) => (
                <Row key={worst.key} job={worst} outlook={outlook}>
                  {often &&
                    ` (${often}; of ${1 + others.length} times the one that is hardest to get done)`}
                </Row>
              ),
            )}
          </Table.Tbody>
        </Table>
      </WideTable>
      <Text size="sm" c="dimmed" mt="sm">
        “Start by” counts the job’s own hours only, kept free for it.
      </Text>
    </>
  );
}

function Row({
  job,
  outlook,
  children,
}: {
  job: JobOutlook;
  outlook: WorkOutlook;
  children: ReactNode;
}) {
  const sayDate = useSayDate();
  const { reader } = useOpener();
  const numbers = outlookQuantities(outlook, job);
  const about = useMemo(() => aboutChances(job, reader.today ?? job.latest, reader), [job, reader]);
  const { suitableDays, windowDays, usuallyBy: halfDone, nearlyAlwaysBy: mostDone } = job;
  return (
    <Table.Tr>
      <Table.Th scope="row">
        {job.name}
        {job.belongsTo && <span className="job-of"> {job.belongsTo.name}</span>}
        {children}
      </Table.Th>
      <Table.Td className="no-wrap" data-label="Done in time">
        <NumbersOf about={about}>
          <Num of={numbers.chance} said={formatChance(numbers.chance.value)} />
        </NumbersOf>
      </Table.Td>
      <Table.Td className="no-wrap" data-label="Due by">
        {sayDate(job.latest)}
      </Table.Td>
      <Table.Td data-label="Start by, to be safe">
        {numbers.startBy ? (
          <NumbersOf about={about}>
            <Num of={numbers.startBy} />
          </NumbersOf>
        ) : (
          'no day is early enough'
        )}
      </Table.Td>
      <Table.Td data-label="Suitable days">
        {suitableDays
          ? `${suitableDays.tenth} to ${suitableDays.ninetieth} of ${windowDays}, mostly ${suitableDays.half}`
          : 'any'}
      </Table.Td>
      <Table.Td data-label="Usually done by, nearly always by">
        {halfDone ? sayDate(halfDone) : 'not in half of them'};{' '}
        {mostDone ? sayDate(mostDone) : `not in ${formatYears(outlook.sureShare, 'of')}`}
      </Table.Td>
    </Table.Tr>
  );
}

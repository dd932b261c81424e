import { Text } from '@mantine/core';
import type { LayAges, LayQuarter } from '../../../../shared/plan/cost/lay-ages.js';
import { Section } from '../../shell/section.js';
import { AgeTable, type AgeColumn } from './age-table.js';

/** What a dozen costs as hens grow old, a line a quarter of a laying year. */
export function AgesOfHens({ ages: { said, quarters } }: { ages: LayAges }) {
  return (
    <Section level={3} title="As the hens grow old">
      {said.map((line) => (
        <Text key={line}>{line}</Text>
      ))}
      <AgeTable
        label="A dozen as the hens grow old"
        ageLabel="Weeks old"
        rows={quarters}
        columns={COLUMNS}
        ageOf={({ ageWeeks }) => `${ageWeeks} weeks`}
      />
    </Section>
  );
}

const COLUMNS: readonly AgeColumn<LayQuarter>[] = [
  ['From', ({ from }) => from],
  ['Eggs', ({ eggs }) => eggs],
  ['Feed', ({ feed }) => feed],
  ['Feed for a dozen', ({ feedCost }) => feedCost],
  ['A dozen so far, raising them too', ({ soFar }) => soFar],
];

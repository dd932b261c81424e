import { Alert, Text } from '@mantine/core';
import { Fragment } from 'react';
import { Link } from 'wouter';
import { useWork } from '../../api/work-queries.js';
import { Ways } from '../../shell/ways.js';

/** Days on which nobody is there for these birds, or not often enough for chicks. */
export function AloneByDay({ farmId, batchName }: { farmId: string; batchName: string }) {
  const { data } = useWork(farmId);
  const gaps = (data?.careGaps ?? []).filter(
    ({ kind, of }) => kind !== 'no-hours' && of.includes(batchName),
  );
  if (gaps.length === 0) return null;
  return (
    <Alert color="warn" title="Who looks in on them?" role="group">
      {gaps.map(({ kind, from, said, ways }) => (
        <Fragment key={`${kind}/${from}`}>
          <Text>{said}</Text>
          What would do:
          <Ways ways={ways} />
        </Fragment>
      ))}
      <Text
        component={Link}
        href={`/farm/${farmId}/work/away`}
        c="inherit"
        td="underline"
        className="no-print"
      >
        Put somebody in charge
      </Text>
    </Alert>
  );
}

/** The same of a batch that is being typed, by the household's days away alone. */
export function NobodyHome({ lines }: { lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <Alert color="warn" title="Who looks in on them?" role="group">
      {lines.map((line) => (
        <Text key={line}>{line}</Text>
      ))}
    </Alert>
  );
}

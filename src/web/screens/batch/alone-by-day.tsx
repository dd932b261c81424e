import { Alert, Text } from '@mantine/core';
import { Link } from 'wouter';
import { useWork } from '../../api/work-queries.js';

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
        <Text key={`${kind}/${from}`} size="sm">
          {said} What would do: {ways.join(' Or: ')}
        </Text>
      ))}
      <Text
        component={Link}
        href={`/farm/${farmId}/work/away`}
        size="sm"
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
        <Text key={line} size="sm">
          {line}
        </Text>
      ))}
    </Alert>
  );
}

import { Anchor, Text } from '@mantine/core';
import type { Source } from '../../../shared/tables/source.js';
import { MarkBadge } from './mark-badge.js';

export function SourceView({ source }: { source: Source }) {
  return (
    <div>
      <Text fw={500}>
        {source.title}
        {source.year && `, ${source.year}`}
      </Text>
      <Text size="sm">
        {source.publisher} <MarkBadge mark={source.mark} />
      </Text>
      {source.note && <Text size="sm">{source.note}</Text>}
      {source.url && (
        <Anchor
          href={source.url}
          target="_blank"
          rel="noreferrer"
          size="sm"
          style={{ overflowWrap: 'anywhere' }}
        >
          {source.mark === 'second-hand' ? 'Where it was read, at second hand' : source.url}
        </Anchor>
      )}
    </div>
  );
}

import { Badge } from '@mantine/core';

const MARK_COLORS: Record<string, string> = {
  'own-record': 'accent',
  published: 'accent',
  computed: 'var(--series-1)',
  'from-memory': 'warn',
  assumed: 'warn',
};

export function MarkBadge({ mark }: { mark: string }) {
  return (
    <Badge
      variant="outline"
      color={MARK_COLORS[mark] ?? 'var(--ink-soft)'}
      c="bright"
      tt="none"
      size="md"
    >
      {mark.replace('-', ' ')}
    </Badge>
  );
}

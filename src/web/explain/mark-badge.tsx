import { Badge } from '@mantine/core';

const MARK_COLORS: Record<string, string> = {
  'own-record': 'moss.9',
  published: 'moss.9',
  computed: 'blue.9',
  'second-hand': 'gray.8',
  'common-practice': 'gray.8',
  'from-memory': 'red.9',
  estimate: 'gray.8',
  assumed: 'red.9',
};

export function MarkBadge({ mark }: { mark: string }) {
  return (
    <Badge variant="outline" color={MARK_COLORS[mark] ?? 'gray.8'} c="bright" tt="none" size="md">
      {mark.replace('-', ' ')}
    </Badge>
  );
}

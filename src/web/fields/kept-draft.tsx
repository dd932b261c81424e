import { Button, Group, Text } from '@mantine/core';

/**
 * What is typed and not yet saved stays in this browser tab, by what is edited, so that another
 * menu entry or a reload loses nothing.
 */
export const draftKey = (...what: string[]): string => `draft:${what.join(':')}`;

export function readDraft<T>(key: string): T | undefined {
  try {
    const text = sessionStorage.getItem(key);
    // Numbers that could not be read, and gaps in lists, were written as null.
    return text === null
      ? undefined
      : (JSON.parse(text, (_name, value: unknown) => (value === null ? undefined : value)) as T);
  } catch {
    return undefined;
  }
}

export function writeDraft(key: string, draft: unknown): void {
  try {
    sessionStorage.setItem(key, JSON.stringify(draft));
  } catch {
    // A browser without storage keeps the draft for as long as the form is open.
  }
}

export function dropDraft(key: string): void {
  try {
    sessionStorage.removeItem(key);
  } catch {
    // Nothing was kept.
  }
}

/** Keeps a draft that differs from what is saved, and forgets one that does not. */
export function keepDraft(key: string, draft: unknown, saved: unknown): void {
  if (JSON.stringify(draft) === JSON.stringify(saved)) dropDraft(key);
  else writeDraft(key, draft);
}

/** Says that there is something unsaved, and offers to throw it away. */
export function UnsavedNote({
  isRestored,
  onDiscard,
}: {
  isRestored: boolean;
  onDiscard: () => void;
}) {
  return (
    <Group gap="xs" className="no-print" role="status">
      <Text fw={600}>Unsaved changes{isRestored ? ', kept from before' : ''}</Text>
      <Button variant="subtle" onClick={onDiscard}>
        Discard changes
      </Button>
    </Group>
  );
}

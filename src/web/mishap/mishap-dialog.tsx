import './mishap.css';
import { Button, Stack } from '@mantine/core';
import { lazy, Suspense, useState, type ComponentType } from 'react';
import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import { FormDialog } from '../fields/form-dialog.js';
import { Working } from '../shell/states.js';
import { isOnHeat, type MishapProps } from './mishap-props.js';

interface Kind {
  readonly id: string;
  readonly words: string;
  readonly isAsked: (animals: readonly AnimalLine[]) => boolean;
  readonly Part: ComponentType<MishapProps>;
}

/** They plan, which the page of the day does not: read when they are asked for. */
const Spell = lazy(() => import('./spell.js'));
const KINDS: readonly Kind[] = [
  {
    id: 'ill',
    words: 'Somebody is ill',
    isAsked: () => true,
    Part: lazy(() => import('./ill.js')),
  },
  {
    id: 'heat',
    words: 'The heat is out',
    isAsked: (animals) => animals.some(isOnHeat),
    Part: lazy(() => import('./heat-out.js')),
  },
  {
    id: 'cold',
    words: 'Cold nights are coming',
    isAsked: (animals) => animals.some(({ kind }) => kind === 'batch'),
    Part: (props: MishapProps) => <Spell {...props} kind="cold" />,
  },
  {
    id: 'hot',
    words: 'Hot days are coming',
    isAsked: (animals) => animals.some(({ kind }) => kind === 'batch'),
    Part: (props: MishapProps) => <Spell {...props} kind="hot" />,
  },
  {
    id: 'paddock',
    words: 'A paddock is lost: flooded, fence down',
    isAsked: (animals) => animals.some(({ kind }) => kind === 'herd'),
    Part: lazy(() => import('./paddock-lost.js')),
  },
];

/** What went wrong: a choice, then what follows from it and what can be done. */
export default function MishapDialog({
  farm,
  animals,
  onClose,
}: Omit<MishapProps, 'onDone' | 'onBack'> & { readonly onClose: () => void }) {
  const [kind, setKind] = useState<Kind>();
  return (
    <FormDialog title={kind?.words ?? 'What went wrong?'} size="lg" onClose={onClose}>
      {kind ? (
        <Suspense fallback={<Working label="Loading" />}>
          <kind.Part
            farm={farm}
            animals={animals}
            onDone={onClose}
            onBack={() => setKind(undefined)}
          />
        </Suspense>
      ) : (
        <Stack gap="xs">
          {KINDS.filter(({ isAsked }) => isAsked(animals)).map((each, k) => (
            <Button
              key={each.id}
              variant="default"
              size="md"
              justify="start"
              data-autofocus={k === 0 || undefined}
              onClick={() => setKind(each)}
            >
              {each.words}
            </Button>
          ))}
        </Stack>
      )}
    </FormDialog>
  );
}

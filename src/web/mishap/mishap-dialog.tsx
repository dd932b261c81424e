import './mishap.css';
import { Button, Stack } from '@mantine/core';
import { lazy, Suspense, useState, type ComponentType } from 'react';
import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import { useTables } from '../api/queries.js';
import { FormDialog } from '../fields/form-dialog.js';
import { useAll, Working } from '../shell/states.js';
import { isBoxDue, isOnHeat, mayBeThere, type MishapProps } from './mishap-props.js';

interface Kind {
  readonly id: string;
  readonly words: string;
  readonly isAsked: (animals: readonly AnimalLine[]) => boolean;
  readonly Part: ComponentType<MishapProps>;
}

/** They plan, which the page of the day does not: read when they are asked for. */
const Spell = lazy(() => import('./spell.js'));
const HeatOut = lazy(() => import('./heat-out.js'));
const NoWater = lazy(() => import('./no-water.js'));
const ToldOf = lazy(() => import('./told-of.js'));
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
    Part: HeatOut,
  },
  {
    id: 'power',
    words: 'The power is out',
    isAsked: () => true,
    Part: (props: MishapProps) =>
      props.animals.some(isOnHeat) ? (
        <HeatOut {...props} isPowerOut />
      ) : (
        <NoWater {...props} isPowerOut />
      ),
  },
  {
    id: 'water',
    words: 'The water is frozen or cut off',
    isAsked: () => true,
    Part: NoWater,
  },
  {
    id: 'box',
    words: 'The box did not come, or comes late',
    isAsked: (animals) => animals.some(isBoxDue),
    Part: (props: MishapProps) => (
      <ToldOf
        {...props}
        animals={props.animals.filter(isBoxDue)}
        lead="Call the post office and the sender today, and keep the brooder warm. When they come: water first, each beak dipped in it, then feed. Then tell when they come, or how many: the plan says what follows."
        caution="post"
      />
    ),
  },
  {
    id: 'predator',
    words: 'A dog, fox or hawk was there',
    isAsked: (animals) => animals.some(mayBeThere),
    Part: (props: MishapProps) => (
      <ToldOf
        {...props}
        animals={props.animals.filter(mayBeThere)}
        lead="Count those that live, and tell how many died: feed, water and dates follow."
        first={{ kind: 'died', start: { cause: 'predator' } }}
        caution="after-predator"
      />
    ),
  },
  {
    id: 'sick',
    words: 'Birds are sick or dying',
    isAsked: (animals) => animals.some(mayBeThere),
    Part: (props: MishapProps) => (
      <ToldOf
        {...props}
        animals={props.animals.filter(mayBeThere)}
        lead="Take out the dead and count them; put a sick one by itself, warm, with water. Then look at the rest. Huddled and loud: too cold. Spread out and panting: too hot. Water in every drinker, feed dry and not moldy. Gasping, blood in the droppings, or more dead than yesterday: call the vet, and keep two of the dead cold. Many dead at once: call before any bird leaves the place. Then tell how many died."
        first={{ kind: 'died', start: { cause: 'sick' } }}
        caution="salmonella"
      />
    ),
  },
  {
    id: 'calving',
    words: 'A cow is down, or calves badly',
    isAsked: (animals) => animals.some(({ kind }) => kind === 'herd'),
    Part: CowInTrouble,
  },
  {
    id: 'cold',
    words: 'Cold nights are coming',
    isAsked: (animals) => 0 < animals.length,
    Part: (props: MishapProps) => <Spell {...props} kind="cold" />,
  },
  {
    id: 'hot',
    words: 'Hot days are coming',
    isAsked: (animals) => 0 < animals.length,
    Part: (props: MishapProps) => <Spell {...props} kind="hot" />,
  },
  {
    id: 'paddock',
    words: 'A paddock is lost: flooded, fence down',
    isAsked: (animals) => animals.some(({ kind }) => kind === 'herd'),
    Part: lazy(() => import('./paddock-lost.js')),
  },
];

/** When to call stands in the caution, for all who read it; here it is not behind a touch. */
function CowInTrouble(props: MishapProps) {
  const all = useAll(useTables());
  // Never the half: who reads what to do until the vet is there has read when to call.
  if ('waiting' in all) return all.waiting;
  const [{ cautions }] = all.data;
  return (
    <ToldOf
      {...props}
      animals={props.animals.filter(({ kind }) => kind === 'herd')}
      lead={`${cautions.calving!.text} Until the vet is there keep the others away, keep a gate between you and her, and never pull on a calf that lies wrong. Then tell what came of it.`}
    />
  );
}

/** What went wrong: a choice, then what follows from it and what can be done. */
export default function MishapDialog({
  farm,
  animals,
  lowC,
  onTell,
  onDone,
  onClose,
}: Omit<MishapProps, 'onBack'> & { readonly onClose: () => void }) {
  const [kind, setKind] = useState<Kind>();
  return (
    <FormDialog title={kind?.words ?? 'What went wrong?'} size="lg" onClose={onClose}>
      {kind ? (
        <Suspense fallback={<Working label="Loading" />}>
          <kind.Part
            farm={farm}
            animals={animals}
            lowC={lowC}
            onDone={onDone}
            onTell={onTell}
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

import { Text, Title } from '@mantine/core';
import { useEffect, useState } from 'react';
import type { AboutNumbers, Moved } from '../../../shared/explain/moved.js';
import type { Quantity } from '../../../shared/explain/quantity.js';
import {
  knownBetterUnmoved,
  NOTHING_MOVES,
  openThingOf,
  sayMoved,
} from '../../../shared/plan/open/open-things.js';
import type { Reader } from '../../../shared/units/format.js';

interface Props {
  readonly quantity: Quantity;
  /** Left out of numbers that nothing is tried with: their formula says what they hang on. */
  readonly about: AboutNumbers | undefined;
  readonly reader: Reader;
}

/** What moves an opened number most, and when it will be known better. */
export function WhatMovesIt({ quantity, about = ABOUT_ANY, reader }: Props) {
  const moved = useMovedMost(quantity, about);
  return (
    <>
      <section aria-live="polite">
        <Title order={3} size="h4">
          What moves it most
        </Title>
        <Text>
          {moved === undefined
            ? 'Asking …'
            : moved === 'nothing'
              ? NOTHING_MOVES
              : sayMoved(moved, reader)}
        </Text>
      </section>
      {moved !== undefined && (
        <section>
          <Title order={3} size="h4">
            When it is known better
          </Title>
          <Text>
            {moved === 'nothing' ? knownBetterUnmoved(quantity.formula) : moved.knownBetter}
          </Text>
        </section>
      )}
    </>
  );
}

const ABOUT_ANY: AboutNumbers = {
  // oxlint-disable-next-line require-yield -- nothing is tried
  *movedMost(quantity): ReturnType<AboutNumbers['movedMost']> {
    return openThingOf(quantity);
  },
};

/** Undefined while it is asked: one plan at a time, so that the page answers meanwhile. */
function useMovedMost(quantity: Quantity, about: AboutNumbers): Moved | 'nothing' | undefined {
  const [answer, setAnswer] = useState<{ of: Quantity; moved: Moved | 'nothing' }>();
  useEffect(() => {
    const asking = about.movedMost(quantity);
    let timer: ReturnType<typeof setTimeout>;
    const step = () => {
      const { done, value } = asking.next();
      if (done === true) setAnswer({ of: quantity, moved: value ?? 'nothing' });
      else timer = setTimeout(step);
    };
    timer = setTimeout(step);
    return () => clearTimeout(timer);
  }, [quantity, about]);
  return answer?.of === quantity ? answer.moved : undefined;
}

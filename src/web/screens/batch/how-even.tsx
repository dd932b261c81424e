import { Text } from '@mantine/core';
import type { EvennessPart } from '../../../../shared/plan/how-even.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';

const SAID = {
  even: 'Your birds are even',
  usual: 'Your birds are about as even as usual',
  uneven: 'Your birds are uneven',
} as const;

/** How alike the birds are by their single weights, and what to do about it. */
export function HowEven({ even }: { even: EvennessPart }) {
  const day = useSayDate()(even.on);
  return (
    <Text>
      {SAID[even.is]}: on {day}, <Num of={even.near} /> of {even.birds} were within 10 % of the
      average, and {even.usuallyNear} usually are. {even.advice}
      {even.more && (
        <>
          {' '}
          Weigh <Num of={even.more} /> more to know the average to within 5 %.
        </>
      )}
    </Text>
  );
}

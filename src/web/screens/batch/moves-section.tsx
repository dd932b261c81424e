import './moves.css';
import { Stack, Text } from '@mantine/core';
import { useMemo } from 'react';
import type { NumberQuantity } from '../../../../shared/explain/quantity.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { whatMoves, type MovedBill } from '../../../../shared/plan/compare/what-moves.js';
import { Num, Range } from '../../explain/number.js';
import type { AskedBatch } from './use-plan.js';

interface Props {
  readonly plan: BatchPlan;
  readonly asked: AskedBatch;
}

/** What moves the bill most, by what sources leave open, and the range of all of it together. */
export default function MovesSection({ plan, asked }: Props) {
  const moves = useMemo(() => whatMoves({ ...asked, plan }), [asked, plan]);
  const { bill, each } = moves;
  // What has no price moves nothing yet.
  const inputs = moves.inputs.filter(({ low, high }) => isApart(low.bill.value, high.bill.value));
  if (inputs.length === 0)
    return (
      <Text>
        {moves.inputs.length === 0
          ? 'No source states how far anything of it could be otherwise.'
          : 'No price is known yet of what could be otherwise: type prices, and it is said how far each moves the bill.'}
      </Text>
    );
  const shown = each ?? bill;
  const endsOf = ({ low, high }: MovedBill): readonly [NumberQuantity, NumberQuantity] =>
    each && low.each && high.each ? [low.each, high.each] : [low.bill, high.bill];
  const all = [shown.value, ...inputs.flatMap((one) => endsOf(one).map(({ value }) => value))];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const at = (value: number): number => (100 * (value - least)) / Math.max(1e-9, most - least);
  return (
    <Stack>
      {0 < plan.bill.leftOut.length && <Text>So far, {plan.bill.leftOut.join(', ')}.</Text>}
      <Text>
        Likely <Num of={shown} />; from <Range of={shown} /> with all of it together, as it hardly
        all goes wrong at once.
        {each && (
          <>
            {' '}
            The whole bill: <Num of={bill} />, from <Range of={bill} />.
          </>
        )}
      </Text>
      <ul className="moves">
        {inputs.map((one) => {
          const [low, high] = endsOf(one);
          const [from, to] = [
            at(Math.min(low.value, high.value)),
            at(Math.max(low.value, high.value)),
          ];
          return (
            <li key={one.what}>
              <b>{one.what}</b>
              <span className="moves-ends">
                <Num of={low} /> to <Num of={high} />
              </span>
              <span className="moves-line" aria-hidden>
                <span
                  className="moves-bar"
                  style={{ insetInlineStart: `${from}%`, inlineSize: `${to - from}%` }}
                />
                <span
                  className="moves-likely"
                  style={{ insetInlineStart: `${at(shown.value)}%` }}
                />
              </span>
              <small>{one.because}</small>
            </li>
          );
        })}
      </ul>
      <Text size="sm" c="dimmed">
        The upright stroke is what is planned. Each line changes one thing alone, as far as sources
        differ. Feed costs as much more or less as you said under Prices, or as it did in three
        years; other prices are taken as you typed them.
      </Text>
    </Stack>
  );
}

/** By a cent at least. */
const isApart = (low: number, high: number): boolean => Math.round(low) !== Math.round(high);

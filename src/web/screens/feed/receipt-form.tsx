import { Button, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { boughtFields } from '../../../../shared/farm/season-facts.js';
import type { Product } from '../../../../shared/farm/product.js';
import type { Supplier } from '../../../../shared/farm/supplier.js';
import type { SavedFarm } from '../../api/queries.js';
import { todayAt, useTellReceipt, type ToldLine } from '../../api/feed-queries.js';
import { DateField } from '../../fields/date-input.js';
import { DescribedField } from '../../fields/described-field.js';
import { problemsIn } from '../../fields/field-words.js';
import { Failure, Problems } from '../../shell/states.js';

/** Things that animals eat, as they can be bought. */
export type Edible = Extract<Product, { kind: 'feed' | 'hay' | 'minerals' }>;
type Typed = Readonly<Partial<Record<'name' | 'amount' | 'money', unknown>>>;

const { name, amount, money, from } = boughtFields.fields;
const EMPTY: Typed = {};

interface Props {
  readonly farm: SavedFarm;
  readonly edibles: readonly Edible[];
  readonly suppliers: readonly Supplier[];
  readonly onTold: (lines: number) => void;
}

/** One receipt: a day, a seller, and a line a feed. There is always one more empty line. */
export function ReceiptForm({ farm, edibles, suppliers, onTold }: Props) {
  const today = todayAt(farm);
  const [on, setOn] = useState<string | undefined>(today);
  const [seller, setSeller] = useState<string>();
  const [lines, setLines] = useState<readonly Typed[]>([EMPTY]);
  const tell = useTellReceipt(farm.id);
  const filled = lines.filter((line) => Object.values(line).some((value) => value !== undefined));
  const isWhole = (line: Typed): boolean =>
    line.name !== undefined && typeof line.amount === 'number' && 0 < line.amount;
  const isRight = on !== undefined && 0 < filled.length && filled.every(isWhole);
  const set = (k: number, more: Typed): void =>
    setLines((old) => {
      const next = old.map((line, i) => (i === k ? { ...line, ...more } : line));
      return k === old.length - 1 ? [...next, EMPTY] : next;
    });
  const problems = problemsIn(tell.error);
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!isRight) return;
        tell.mutate(
          filled.map((line) => ({ on, details: detailsOf(line, seller, edibles) })),
          {
            onSuccess: () => {
              setLines([EMPTY]);
              onTold(filled.length);
            },
          },
        );
      }}
    >
      <Stack gap="sm">
        <Group align="start" grow preventGrowOverflow={false}>
          <DateField label="Day on the receipt" value={on} max={today} onChange={setOn} />
          <DescribedField
            field={from}
            reader={farm}
            suggested={suppliers.map((each) => each.name)}
            value={seller}
            onChange={(value) => setSeller(value as string | undefined)}
          />
        </Group>
        {lines.map((line, k) => (
          <div key={k} className="receipt-line">
            <DescribedField
              field={{ ...name, label: k === 0 ? 'Feed' : `Feed ${k + 1}` }}
              reader={farm}
              suggested={edibles.map((each) => each.name)}
              value={line.name}
              onChange={(value) => set(k, { name: value })}
            />
            <DescribedField
              field={{ ...amount, label: 'Bags' }}
              reader={farm}
              value={line.amount}
              onChange={(value) => set(k, { amount: value })}
            />
            <DescribedField
              field={{ ...money, label: 'Paid' }}
              reader={farm}
              value={line.money}
              onChange={(value) => set(k, { money: value })}
            />
          </div>
        ))}
        {0 < problems.length ? (
          <Problems texts={problems.map(({ fix }) => fix)} />
        ) : (
          <Failure error={tell.error} />
        )}
        <Group>
          <Button type="submit" size="md" disabled={!isRight} loading={tell.isPending}>
            Save the receipt
          </Button>
          <Text size="sm" c="dimmed">
            Hay in bales, all else in bags. “Paid” is for all of one line.
          </Text>
        </Group>
      </Stack>
    </form>
  );
}

function detailsOf(
  { name: typed, amount: count, money: paid }: Typed,
  seller: string | undefined,
  edibles: readonly Edible[],
): ToldLine['details'] {
  const called = String(typed).trim();
  const known = edibles.find((each) => each.name.toLowerCase() === called.toLowerCase());
  return {
    what: known?.kind ?? 'feed',
    name: known?.name ?? called,
    amount: Number(count),
    ...(known && 'bagKg' in known ? { eachKg: known.bagKg } : {}),
    ...(paid === undefined ? {} : { money: String(paid) }),
    ...(seller?.trim() ? { from: seller.trim() } : {}),
  };
}

import './feed.css';
import { Anchor, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import { useFeedSpent, useSuppliers } from '../../api/feed-queries.js';
import { useProducts, type SavedFarm } from '../../api/queries.js';
import { Num } from '../../explain/number.js';
import { Folded } from '../../shell/folded.js';
import { Section } from '../../shell/section.js';
import { useAll } from '../../shell/states.js';
import { PastedReceipts } from './pasted-receipts.js';
import { ReceiptForm, type Edible } from './receipt-form.js';

/** Receipts for feed, typed one after another or pasted from a spreadsheet. */
export default function ReceiptsScreen({ farm }: { farm: SavedFarm }) {
  const all = useAll(useProducts(farm.id), useSuppliers(farm.id));
  const spent = useFeedSpent(farm.id).data?.spent;
  const [saved, setSaved] = useState(0);
  if ('waiting' in all) return all.waiting;
  const [products, suppliers] = all.data;
  const edibles = products.filter((each): each is Edible & typeof each =>
    ['feed', 'hay', 'minerals'].includes(each.kind),
  );
  const onTold = (lines: number): void => setSaved((before) => before + lines);
  const base = `/farm/${farm.id}`;
  return (
    <Stack maw={760}>
      <Title order={1}>Feed receipts</Title>
      <Text>
        Type what you bought in the last twelve months, the newest or the oldest first, and{' '}
        <Anchor component={Link} href={`${base}/feed`} inherit>
          Feed
        </Anchor>{' '}
        says where the money went and what to do otherwise.
      </Text>
      <Section title="One receipt">
        <ReceiptForm farm={farm} edibles={edibles} suppliers={suppliers} onTold={onTold} />
      </Section>
      <Text role="status">
        {0 < saved && (
          <>
            {saved === 1 ? 'One line is' : `${saved} lines are`} saved.{' '}
            {spent && (
              <>
                The last twelve months: <Num of={spent.total} />.{' '}
              </>
            )}
            <Anchor component={Link} href={`${base}/feed`} inherit>
              Where it went
            </Anchor>
          </>
        )}
      </Text>
      <Folded id="paste" title="From a spreadsheet" answer="Paste a year at once">
        <PastedReceipts farm={farm} edibles={edibles} onTold={onTold} />
      </Folded>
      <Text>
        What was told is listed, and can be changed, under{' '}
        <Anchor component={Link} href={`${base}/record`} inherit>
          The record
        </Anchor>
        .
      </Text>
    </Stack>
  );
}

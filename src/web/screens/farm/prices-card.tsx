import { ActionIcon, Button, Card, Group, Stack, Text, Title } from '@mantine/core';
import { IconPencil, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import type { Product } from '../../../../shared/farm/product.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useRemove, type SavedFarm } from '../../api/queries.js';
import { useAddressed } from '../../shell/addressed.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { Failure } from '../../shell/states.js';
import { ProductForm } from './product-form.js';
import { aboutProduct, emptyProduct, PRODUCT_KINDS, type ProductDraft } from './product-kinds.js';

/** What the place buys for its birds, kept from one batch to the next. */
export function PricesCard({
  farm,
  tables,
  products,
}: {
  farm: SavedFarm;
  tables: Tables;
  products: readonly Product[];
}) {
  const part = useAddressed<HTMLElement>('prices');
  const [draft, setDraft] = useState<ProductDraft>();
  const remove = useRemove(farm, 'products');
  return (
    <Card withBorder component="section" id="prices" ref={part}>
      <Title order={2} size="h3">
        Prices
      </Title>
      <Text my="xs">
        Given once, every batch counts with them. What has no price is named in the bill and is not
        counted. A feed for one phase goes before one for several; of two alike the cheaper is
        taken. Electricity and propane stand below.
      </Text>
      <Failure error={remove.error} />
      {PRODUCT_KINDS.map(({ kind, name }) => (
        <Stack key={kind} gap={0} mt="xs">
          <Group justify="space-between" wrap="nowrap">
            <Text fw={600}>{name}</Text>
            <Button
              variant="subtle"
              aria-label={`Add a price: ${name.toLowerCase()}`}
              onClick={() => setDraft(emptyProduct(kind, tables, farm))}
            >
              Add
            </Button>
          </Group>
          <div className="rows">
            {products
              .filter((product) => product.kind === kind)
              .map((product) => (
                <Group key={product.id} justify="space-between" wrap="nowrap">
                  <div>
                    <Text>{product.name}</Text>
                    <Text size="sm">{aboutProduct(product, tables, farm)}</Text>
                  </div>
                  <Group gap={0} wrap="nowrap">
                    <ActionIcon
                      aria-label={`Change ${product.name}`}
                      onClick={() => setDraft(product)}
                    >
                      <IconPencil aria-hidden />
                    </ActionIcon>
                    <ConfirmButton
                      px={10}
                      label={`Delete ${product.name}`}
                      question={`Delete ${product.name}? Batches that count with its price will have none.`}
                      onConfirm={() => remove.mutate(product)}
                    >
                      <IconTrash aria-hidden />
                    </ConfirmButton>
                  </Group>
                </Group>
              ))}
          </div>
        </Stack>
      ))}
      <FormDialog
        isOpen={draft !== undefined}
        onClose={() => setDraft(undefined)}
        title={draft && PRODUCT_KINDS.find(({ kind }) => kind === draft.kind)?.name}
      >
        {draft && (
          <ProductForm
            farm={farm}
            tables={tables}
            start={draft}
            onDone={() => setDraft(undefined)}
          />
        )}
      </FormDialog>
    </Card>
  );
}

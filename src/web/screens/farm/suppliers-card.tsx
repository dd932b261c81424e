import { ActionIcon, Button, Card, Group, Text, Title } from '@mantine/core';
import { IconPencil, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import type { Supplier } from '../../../../shared/farm/supplier.js';
import { listWeekdays } from '../../../../shared/units/dates.js';
import { formatPrice, formatValue } from '../../../../shared/units/format.js';
import { useSuppliers } from '../../api/feed-queries.js';
import { useRemove, type SavedFarm } from '../../api/queries.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { useAddressed } from '../../shell/addressed.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Failure } from '../../shell/states.js';
import { SupplierForm, type SupplierDraft } from './supplier-form.js';

/** From whom the place buys its feed. */
export function SuppliersCard({ farm }: { farm: SavedFarm }) {
  const suppliers = useSuppliers(farm.id).data ?? [];
  const [draft, setDraft] = useState<SupplierDraft>();
  const remove = useRemove(farm, 'suppliers');
  const part = useAddressed<HTMLElement>('suppliers');
  return (
    <Card withBorder component="section" id="suppliers" ref={part}>
      <Group justify="space-between" wrap="nowrap">
        <Title order={2} size="h3">
          Where you buy
        </Title>
        <Button
          variant="light"
          aria-label="Add where you buy"
          onClick={() => setDraft({ name: '', comes: 'fetched' })}
        >
          Add
        </Button>
      </Group>
      {suppliers.length === 0 && (
        <Text my="xs">
          A feed store or a mill, with what a trip there costs: then the shopping list makes few
          trips.
        </Text>
      )}
      <Failure error={remove.error} />
      <div className="rows">
        {suppliers.map((supplier) => (
          <Group key={supplier.id} justify="space-between" wrap="nowrap">
            <div>
              <Text>{supplier.name}</Text>
              <Text size="sm">{aboutSupplier(supplier, farm)}</Text>
            </div>
            <Group gap={0} wrap="nowrap">
              <ActionIcon aria-label={`Change ${supplier.name}`} onClick={() => setDraft(supplier)}>
                <IconPencil aria-hidden />
              </ActionIcon>
              <ConfirmButton
                px={10}
                label={`Delete ${supplier.name}`}
                question={`Delete ${supplier.name}? Feeds that come from there will come from nobody in particular.`}
                onConfirm={() => remove.mutate(supplier)}
              >
                <IconTrash aria-hidden />
              </ConfirmButton>
            </Group>
          </Group>
        ))}
      </div>
      <FormDialog
        isOpen={draft !== undefined}
        onClose={() => setDraft(undefined)}
        title="Where you buy"
      >
        {draft && <SupplierForm farm={farm} start={draft} onDone={() => setDraft(undefined)} />}
      </FormDialog>
    </Card>
  );
}

function aboutSupplier(
  { comes, tripCost, tripH, leadDays, openWeekdays }: Supplier,
  farm: SavedFarm,
): string {
  const trip = comes === 'delivered' ? 'delivery' : 'trip';
  return [
    tripCost === undefined
      ? `a ${trip} of unknown cost`
      : `${formatPrice(tripCost, farm.currency)} a ${trip}`,
    ...(tripH === undefined || comes === 'delivered' ? [] : [formatValue(tripH, 'h', farm)]),
    ...(leadDays ? [`order ${formatValue(leadDays, 'day', farm)} ahead`] : []),
    ...(openWeekdays && openWeekdays.length < 7 ? [`open ${listWeekdays(openWeekdays)}`] : []),
  ].join(' · ');
}

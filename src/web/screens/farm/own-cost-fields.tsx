import type { ReactNode } from 'react';
import {
  gearProductFields,
  meatProductFields,
  type ProductKind,
} from '../../../../shared/farm/product.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { unitLabel } from '../../../../shared/units/unit.js';
import type { SavedFarm } from '../../api/queries.js';
import { UnitPriceInput } from '../../fields/price-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import type { ProductDraft } from './product-kinds.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly draft: ProductDraft;
  readonly set: (more: Partial<ProductDraft>) => void;
  readonly errorAt: (field: string) => ReactNode;
}

/** Kinds that no shop sells: what they are of is typed here, or their price by weight. */
export const OWN_COSTS: ReadonlySet<ProductKind> = new Set(['gear', 'meat']);

/** Gear by the years it lasts; what meat brings by its weight. */
export function OwnCostFields(props: Props) {
  return props.draft.kind === 'gear' ? <GearFields {...props} /> : <MeatFields {...props} />;
}

function GearFields({ farm, draft, set, errorAt }: Props) {
  const { fields } = gearProductFields;
  return (
    <>
      <Select
        label={fields.usedFor.label}
        value={draft.usedFor}
        error={errorAt('usedFor')}
        onChange={(usedFor) => set({ usedFor })}
        options={[
          { id: 'meat', name: 'Meat birds' },
          { id: 'layers', name: 'Layers' },
        ]}
        none="Meat birds and layers"
      />
      <QuantityInput
        field={fields.years}
        units={farm.units}
        value={draft.years}
        error={errorAt('years')}
        onChange={(years) => set({ years })}
      />
      <QuantityInput
        field={fields.batchesAYear}
        units={farm.units}
        value={draft.batchesAYear}
        error={errorAt('batchesAYear')}
        onChange={(batchesAYear) => set({ batchesAYear })}
      />
    </>
  );
}

function MeatFields({ farm, tables, draft, set, errorAt }: Props) {
  const { fields } = meatProductFields;
  return (
    <>
      <Select
        label={fields.strainId.label}
        value={draft.strainId}
        error={errorAt('strainId')}
        onChange={(strainId) => set({ strainId })}
        options={tables.strains}
        none="Any breed"
      />
      <QuantityInput
        field={fields.fromDressedKg}
        units={farm.units}
        value={draft.fromDressedKg}
        error={errorAt('fromDressedKg')}
        onChange={(fromDressedKg) => set({ fromDressedKg })}
      />
      <UnitPriceInput
        of="kg"
        units={farm.units}
        label={`Dressed, ${unitLabel('moneyPerKg', farm.units)}`}
        description="What it brings, or what you would pay for it in the shop."
        currency={farm.currency}
        value={draft.price}
        error={errorAt('price')}
        onChange={(price) => set({ price })}
      />
    </>
  );
}

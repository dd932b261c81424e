import {
  birdsToComeFields,
  cattleToComeFields,
  equalPaddocksFields,
} from '../../../../shared/farm/start.js';
import { formatMonth } from '../../../../shared/units/dates.js';
import { useTables } from '../../api/queries.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import { monthsAhead, unitsOf, type StartDraft } from './start-draft.js';

const BIRDS = birdsToComeFields.fields.birds;
const HEAD = cattleToComeFields.fields.head;
const PADDOCKS = equalPaddocksFields.fields;
/** Until the tables are there, the class a start is most often of. */
const COW_CALF = [{ id: 'cow-calf', name: 'Cow with calf' }];

/** What is coming: birds and cattle, how many and when about. */
export function ComingBlock({
  draft,
  set,
}: {
  draft: StartDraft;
  set: (part: Partial<StartDraft>) => void;
}) {
  const tables = useTables();
  const units = unitsOf(draft);
  const months = monthsAhead(draft.place?.timeZone).map((id) => ({ id, name: formatMonth(id) }));
  const birds = (kind: 'meat' | 'layers', label: string) => (
    <div className="start-row">
      <QuantityInput
        className="start-narrow"
        label={label}
        field={BIRDS}
        units={units}
        value={draft[kind]}
        onChange={(count) => set({ [kind]: count })}
      />
      <Select
        label={`${label}: when`}
        value={draft[`${kind}From`]}
        options={months}
        none="the best week"
        onChange={(from) => set({ [`${kind}From`]: from })}
      />
    </div>
  );
  return (
    <section className="start-block" aria-labelledby="start-coming">
      <h2 id="start-coming">What is coming?</h2>
      <div className="start-rows">
        {birds('meat', 'Meat birds')}
        {birds('layers', 'Layers')}
        <div className="start-row">
          <QuantityInput
            className="start-narrow"
            label="Cattle"
            field={HEAD}
            units={units}
            value={draft.head}
            onChange={(head) => set({ head })}
          />
          <Select
            label="Kind of cattle"
            value={draft.classId}
            options={tables.data?.cattle.classes ?? COW_CALF}
            onChange={(classId) => set({ classId: classId ?? draft.classId })}
          />
          <Select
            label="Cattle: when"
            value={draft.cattleFrom}
            options={months}
            none="they are here"
            onChange={(cattleFrom) => set({ cattleFrom })}
          />
        </div>
        {draft.head ? (
          <div className="start-row">
            <QuantityInput
              label="Equal paddocks"
              field={PADDOCKS.count}
              units={units}
              value={draft.paddocks}
              placeholder="12"
              onChange={(paddocks) => set({ paddocks })}
            />
            <QuantityInput
              label="Size of each"
              field={PADDOCKS.areaM2}
              units={units}
              value={draft.paddockM2}
              placeholder="enough grass"
              onChange={(paddockM2) => set({ paddockM2 })}
            />
          </div>
        ) : null}
      </div>
    </section>
  );
}

import { Button, SimpleGrid, Switch, Text } from '@mantine/core';
import { useState } from 'react';
import { paddockMownFields, type Mowing } from '../../../../shared/farm/mowing.js';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import type { UntoldCut } from '../../../../shared/plan/pasture/hay-untold.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { formatValue } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { useMessage, useTakeBack, useTell } from '../../api/told-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Folded } from '../../shell/folded.js';
import { Failure } from '../../shell/states.js';

interface Props {
  readonly farm: SavedFarm;
  readonly plan: PasturePlan;
  readonly picture: FarmPicture;
}

/** The last of what was told. */
const SHOWN = 8;
const FIELDS = paddockMownFields.fields;

/** What was mown or topped: the plan goes on from it, and its bales are in store. */
export function MownSection({ farm, plan, picture }: Props) {
  const takeBack = useTakeBack(farm.id);
  const sayDate = useSayDate();
  const { mowings = [], paddocks } = picture;
  const last = mowings.at(-1);
  const [untold] = plan.hay.untoldCuts ?? [];
  const nameOf = ({ paddockId }: Mowing): string =>
    paddocks.find(({ id }) => id === paddockId)?.name ?? 'a paddock';
  return (
    <Folded
      id="mown"
      title="What was mown"
      answer={
        untold
          ? 'Was the hay made? Nobody told yet'
          : last
            ? `Last: ${nameOf(last)} on ${sayDate(last.date)}`
            : 'Nothing told yet'
      }
      isForScreen
    >
      <Text size="sm" mb="xs">
        Until you say so, a paddock stays to be mown as long as its work has days left for it; then
        it counts as mown, and its hay as made. What you say goes before it.
      </Text>
      {1 < (plan.hay.untoldCuts ?? []).length && (
        <AsPlanned farmId={farm.id} cuts={plan.hay.untoldCuts!} />
      )}
      <MownForm
        key={untold && `${untold.paddockId} ${untold.on}`}
        farm={farm}
        picture={picture}
        untold={untold}
      />
      <Failure error={takeBack.error} />
      {[...mowings]
        .reverse()
        .slice(0, SHOWN)
        .map((mowing) => {
          const what = `${nameOf(mowing)} on ${sayDate(mowing.date)}`;
          return (
            <div key={mowing.id} className="roomy-numbers">
              {what}: {amountOf(mowing, farm)}{' '}
              <ConfirmButton
                label={`Delete the mowing of ${what}`}
                question={`Delete the mowing of ${what}?`}
                onConfirm={() => takeBack.mutate(mowing.id)}
              >
                Delete
              </ConfirmButton>
            </div>
          );
        })}
    </Folded>
  );
}

/** One touch tells all that was to be mown, each on its planned day; or nothing of it. */
function AsPlanned({ farmId, cuts }: { farmId: string; cuts: readonly UntoldCut[] }) {
  const tell = useMessage(farmId);
  const facts = cuts.map(
    ({ paddockId, on }) => ({ kind: 'paddock-mown', about: paddockId, on, details: {} }) as const,
  );
  return (
    <>
      <Button
        mb="sm"
        variant="light"
        loading={tell.isPending}
        onClick={() => tell.mutate({ message: { does: 'tell', facts } })}
      >
        All {cuts.length} were mown as planned
      </Button>
      <Failure error={tell.error} />
    </>
  );
}

const amountOf = ({ isLeftLying, bales }: Mowing, farm: SavedFarm): string =>
  isLeftLying ? 'topped' : bales === undefined ? 'mown' : formatValue(bales, 'bales', farm);

function MownForm({
  farm,
  picture: { paddocks, today },
  untold,
}: Omit<Props, 'plan'> & { readonly untold: UntoldCut | undefined }) {
  const [paddockId, setPaddockId] = useState(untold?.paddockId ?? paddocks[0]!.id);
  const [on, setOn] = useState<string | undefined>(untold?.on ?? today);
  const [bales, setBales] = useState<number>();
  const [isLeftLying, setLeftLying] = useState(false);
  const tell = useTell<'paddock-mown'>(farm.id);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (on === undefined) return;
        const made = bales === undefined || isLeftLying ? {} : { bales };
        const details = { ...made, ...(isLeftLying ? { isLeftLying } : {}) };
        tell.mutate(
          { kind: 'paddock-mown', about: paddockId, on, details },
          { onSuccess: () => setBales(undefined) },
        );
      }}
    >
      <SimpleGrid cols={{ base: 1, xs: 3 }} style={{ alignItems: 'end' }}>
        <Select
          label="Paddock"
          value={paddockId}
          options={paddocks}
          onChange={(id) => id !== undefined && setPaddockId(id)}
        />
        <DateField label="Mown on" value={on} max={today} onChange={setOn} />
        {!isLeftLying && (
          <QuantityInput
            field={FIELDS.bales}
            units={farm.units}
            value={bales}
            onChange={setBales}
          />
        )}
      </SimpleGrid>
      <Switch
        mt="xs"
        label="Topped: what was cut is left lying"
        checked={isLeftLying}
        onChange={(event) => setLeftLying(event.currentTarget.checked)}
      />
      <Button mt="sm" variant="light" type="submit" disabled={!on} loading={tell.isPending}>
        It was mown
      </Button>
      <Failure error={tell.error} words={wordsOfRow(paddockMownFields, farm)} />
    </form>
  );
}

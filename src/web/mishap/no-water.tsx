import { Stack } from '@mantine/core';
import { tablesIn } from '../../../shared/tables/in-own-units.js';
import { waterOut } from '../../../shared/plan/mishap/water-out.js';
import { useTables } from '../api/queries.js';
import { useAll } from '../shell/states.js';
import type { MishapProps } from './mishap-props.js';
import { Cautions, KeepOrLeave, MishapCard } from './mishap-parts.js';

/** Water that is frozen, or that no pump brings: how much is to be carried, to whom. */
export default function NoWater({
  farm,
  animals,
  lowC,
  onBack,
  isPowerOut = false,
}: MishapProps & { readonly isPowerOut?: boolean }) {
  const all = useAll(useTables());
  if ('waiting' in all) return all.waiting;
  const mishap = waterOut(animals, tablesIn(farm.units, all.data[0]), farm, { lowC, isPowerOut });
  return (
    <Stack gap="sm">
      <MishapCard mishap={mishap} />
      <Cautions of={[mishap]} />
      <KeepOrLeave onBack={onBack} />
    </Stack>
  );
}

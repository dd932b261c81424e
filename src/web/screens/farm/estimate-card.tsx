import { Alert, Button, Group } from '@mantine/core';
import type {
  EstimatedClimate,
  EstimatedField,
} from '../../../../shared/farm/estimated-climate.js';
import { isSame } from '../../../../shared/farm/merge-row.js';
import { usePutFarm, type SavedFarm } from '../../api/queries.js';
import { useEstimate } from '../../api/start-queries.js';
import { Failure } from '../../shell/states.js';
import { askedToCheck, EstimateFacts } from './estimate-facts.js';

/** Fields of a farm that a figure to be checked stands for. */
const FIGURES: Readonly<Record<EstimatedClimate['toConfirm'][number], readonly EstimatedField[]>> =
  { nights: ['monthlyMinC'], rain: ['monthlyRainMm'], frost: ['lastFrost', 'firstFrost'] };

/** How far off a farm's estimated climate may be, and what is to be looked at. */
export function EstimateCard({ farm }: { farm: SavedFarm }) {
  const save = usePutFarm(farm.id);
  const { latitudeDeg, longitudeDeg, elevationM, estimated = [] } = farm;
  const { data, error } = useEstimate({ latitudeDeg, longitudeDeg, elevationM });
  const estimate = data?.estimate;
  if (!estimate) return <Failure error={error} />;
  const toConfirm = estimate.toConfirm.filter((each) =>
    FIGURES[each].some((field) => estimated.includes(field)),
  );
  const isOfAnotherPlace = estimated.some((field) => !isSame(farm[field], estimate[field]));
  const confirm = () => {
    const right = toConfirm.flatMap((each) => FIGURES[each]);
    save.mutate({ ...farm, estimated: estimated.filter((field) => !right.includes(field)) });
  };
  const again = () =>
    save.mutate({
      ...farm,
      ...Object.fromEntries(estimated.map((field) => [field, estimate[field]])),
    });
  return (
    <>
      <EstimateFacts estimate={estimate} reader={farm} />
      {0 < toConfirm.length && (
        <Alert color="warn">
          {askedToCheck({ toConfirm })}
          <Group mt="xs">
            <Button variant="default" loading={save.isPending} onClick={confirm}>
              Those figures look right
            </Button>
          </Group>
        </Alert>
      )}
      {isOfAnotherPlace && (
        <Alert color="warn">
          These are not the figures of the place and height below.
          <Group mt="xs">
            <Button variant="default" loading={save.isPending} onClick={again}>
              Estimate again
            </Button>
          </Group>
        </Alert>
      )}
      <Failure error={save.error} />
    </>
  );
}

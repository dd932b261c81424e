import { Failure } from '../../shell/states.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import type { KeptJob } from '../../../../shared/farm/resting-jobs.js';
import { useJobs } from '../../api/work-queries.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { jobFields } from '../../../../shared/farm/job.js';

/** One touch by which a job in the soil waits for dry ground, now and every time it comes. */
export function WaitForDryGround({
  of,
  farm,
}: {
  of: { key: string; name: string };
  farm: SavedFarm;
}) {
  const { data } = useJobs(farm.id);
  const save = useSave<KeptJob>(farm.id, 'jobs', wordsOfRow(jobFields, farm));
  const [, id] = of.key.split('/');
  const job = data?.find((each) => each.id === id);
  return (
    <>
      <button
        type="button"
        className="today-button"
        disabled={job === undefined || save.isPending}
        aria-label={`Not on wet ground: ${of.name}`}
        onClick={() =>
          job && save.mutate({ ...job, conditions: { ...job.conditions, dryGround: true } })
        }
      >
        Not on wet ground
      </button>
      <Failure error={save.error} />
    </>
  );
}

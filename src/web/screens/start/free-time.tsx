import type { FreeTime } from '../../../../shared/farm/start.js';
import { Choices } from './choices.js';

interface Time {
  readonly id: FreeTime;
  /** Said where a kind of time has several. */
  readonly when?: string;
}

/** Four answers that a household knows at once; which half or which end of a day is asked after it. */
const KINDS: readonly { id: string; name: string; times: readonly [Time, ...Time[]] }[] = [
  { id: 'all-day', name: 'All day', times: [{ id: 'all-day' }] },
  {
    id: 'half-days',
    name: 'Half days',
    times: [
      { id: 'at-home-mornings', when: 'mornings' },
      { id: 'at-home-afternoons', when: 'afternoons' },
    ],
  },
  {
    id: 'around-a-job',
    name: 'Around a job',
    times: [
      { id: 'evenings', when: 'evenings' },
      { id: 'mornings', when: 'mornings' },
      { id: 'mornings-and-evenings', when: 'both' },
    ],
  },
  { id: 'weekends', name: 'Weekends', times: [{ id: 'weekends' }] },
];

/** When somebody has time, in one touch; a second one only for whom it is another end of the day. */
export function FreeTimeChoice({
  legend,
  value,
  hoursIn,
  onChange,
}: {
  legend: string;
  value: FreeTime | undefined;
  /** The hours of a week that each stands for; undefined until they are known. */
  hoursIn: (free: FreeTime) => string | undefined;
  onChange: (free: FreeTime) => void;
}) {
  const kind = KINDS.find(({ times }) => times.some(({ id }) => id === value));
  const hours = value && hoursIn(value);
  return (
    <div className="start-free">
      <Choices
        legend={legend}
        value={kind?.id}
        options={KINDS}
        onChange={(id) => onChange(KINDS.find((each) => each.id === id)!.times[0].id)}
      />
      {value && kind && 1 < kind.times.length && (
        <Choices
          legend="Mostly in the"
          label={`${legend} mostly in the`}
          value={value}
          options={kind.times.map(({ id, when = '' }) => ({ id, name: when }))}
          onChange={onChange}
        />
      )}
      {hours && <p className="start-small">{hours}</p>}
    </div>
  );
}

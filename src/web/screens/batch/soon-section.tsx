import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { Task } from '../../../../shared/plan/tasks/task.js';
import { inOrderOfDays, useAsTrips, useTaskDay } from '../../tick/fitted-tasks.js';
import { StorySection } from './story-section.js';
import type { PartProps } from './story-parts.js';
import { TaskList } from './story-tasks.js';

/** Days ahead that a batch asks attention for, as everywhere. */
const SOON_DAYS = 14;

/** What is to do in the next two weeks, whatever it belongs to; where nothing is, what comes next. */
export function SoonSection({ plan, asked, isSaved }: PartProps) {
  const dayOf = useTaskDay('batch');
  const asTrips = useAsTrips(asked.picture.progress);
  const isTold = (task: Task): boolean =>
    asked.picture.progress.some(
      ({ key, doneOn, struckOut }) =>
        key === `batch/${asked.batch.id}/${task.id}` &&
        (doneOn !== undefined || struckOut === true),
    );
  const open = inOrderOfDays(
    asTrips(plan.tasks.tasks.filter((task) => task.isOver !== true && !isTold(task))),
    dayOf,
  );
  const until = addDays(plan.today, SOON_DAYS);
  // Daily care that has begun is the round of every day, and nothing to look ahead for.
  const ahead = open.filter((task) => !task.isDaily || plan.today <= task.start);
  const soon = ahead.filter((task) => dayOf(task).on < until);
  const next = ahead.slice(0, 1);
  if (ahead.length === 0) return null;
  return (
    <div className="no-print">
      <StorySection part="soon" title="The next two weeks">
        {soon.length === 0 && (
          <p>
            {plan.today < plan.arrivalDate
              ? 'Nothing to do for them yet. What comes first:'
              : 'Nothing beside the daily round. What comes next:'}
          </p>
        )}
        <TaskList tasks={0 < soon.length ? soon : next} asked={asked} isSaved={isSaved} />
      </StorySection>
    </div>
  );
}

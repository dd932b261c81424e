import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import { quantityOfDay } from '../../../../shared/explain/daily-series.js';
import { dayInPlan, type DatedPlan } from '../../../../shared/plan/day-in-plan.js';
import { AWAITED_DAYS } from '../../../../shared/plan/awaited.js';
import { Fact, Facts } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { EggCountSection } from './egg-count-section.js';
import { sayAge } from './say-age.js';
import { Lead, StorySection } from './story-section.js';
import type { PartProps } from './story-parts.js';
import { WeighSection } from './weigh-section.js';

/** Of birds that are here: how many there should be, their heat, feed and water today, and the scale. */
export function NowSection({
  plan,
  asked,
  isSaved,
}: Omit<PartProps, 'plan'> & { plan: PartProps['plan'] & DatedPlan }) {
  const day = daysBetween(plan.arrivalDate, dayInPlan(plan, plan.today) ?? plan.today);
  const ofDay = (series: string) => quantityOfDay(plan.daily, series, day);
  const isAwaited = isSaved && day <= AWAITED_DAYS && plan.birds.counted === undefined;
  const sayDate = useSayDate();
  const isInBrooder = plan.heat !== undefined && ofDay('floor-need') !== undefined;
  const eggs = ofDay('eggs-day');
  const told = { plan, farm: asked.farm, batchId: asked.batch.id };
  return (
    <StorySection part="now" title="Now">
      {isAwaited ? (
        <Lead of={plan.birds.chicksPlaced}>
          <p>
            Expected {sayDate(plan.arrivalDate)}, and nobody has told that they came. Tell it on
            Today, with how many: until then the numbers of the day are as planned.
          </p>
        </Lead>
      ) : (
        <Lead of={ofDay('alive')}>
          <p>
            {sayAge(daysBetween(plan.hatchDate, plan.today))} old. That many should be alive: count
            them when you move or catch them.
            {plan.stillHere &&
              ` ${plan.stillHere.since < String(plan.leaving?.on.value) ? 'The first of them' : 'They'} were to leave on ${sayDate(plan.stillHere.since)}, and nobody has told that they did: tell it on Today.`}
          </p>
        </Lead>
      )}
      <Facts>
        {isInBrooder && <Fact of={ofDay('under-heater')} />}
        {isInBrooder && <Fact of={ofDay('night-low')} />}
        <Fact of={ofDay('feed-day')} />
        <Fact of={ofDay('water-day')} />
        <Fact of={ofDay('weight-mean')} />
        {0 < Number(eggs?.value ?? 0) && <Fact of={eggs} />}
      </Facts>
      {isSaved && <WeighSection {...told} />}
      {isSaved && <EggCountSection {...told} />}
    </StorySection>
  );
}

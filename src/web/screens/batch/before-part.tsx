import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { dayInPlan, type DatedPlan } from '../../../../shared/plan/day-in-plan.js';
import { capital } from '../../../../shared/plan/bird-words.js';
import { useSayDate } from '../../explain/say-date.js';
import { Fact, Facts } from '../../explain/number.js';
import { Cautions } from '../../shell/section.js';
import { ArrivalWeeks } from './arrival-weeks.js';
import { HatchingSection } from './hatching-section.js';
import { Lead, More, StoryFold } from './story-section.js';
import type { PartProps } from './story-parts.js';
import { StoryTasks } from './story-tasks.js';
import type { BatchDraft } from './use-plan.js';

const HATCHED = ['post', 'incubator', 'broody-hen'];
/** Said of the brooder where there is one. */
const YOUNG = ['poults', 'ducklings', 'salmonella'];

/** The order, or the eggs that are set: how many, and which week. */
export function BeforePart({
  onPickWeek,
  ...props
}: PartProps & { onPickWeek: (more: BatchDraft) => void }) {
  const { plan, asked } = props;
  const { hatching, birds } = plan;
  const sayDate = useSayDate();
  const haveCome = birds.counted !== undefined;
  return (
    <StoryFold
      part="before"
      title={haveCome ? 'Before they came' : 'Before they come'}
      isPast={plan.arrivalDate < plan.today}
      answer={`${capital(plan.words.young)} ${hatching ? 'hatch' : 'come'} ${sayDate(plan.arrivalDate)}`}
    >
      <Lead of={hatching?.eggs ?? (haveCome ? birds.chicksPlaced : birds.toOrder)} />
      <Facts>
        {haveCome ? (
          hatching && <Fact of={hatching.setOn} />
        ) : hatching ? (
          <>
            <Fact of={hatching.setOn} />
            <Fact of={hatching.incubator?.lockdownOn} />
            <Fact of={hatching.hens} />
          </>
        ) : (
          birds.orderSizes.map((size) => <Fact key={size.label} of={size} />)
        )}
        {!haveCome && <Fact of={birds.enough} />}
        {(!haveCome || hatching) && <Fact of={birds.chicksPlaced} />}
      </Facts>
      <StoryTasks {...props} part="before" />
      {!haveCome && (
        <Cautions
          keys={plan.cautions}
          of={[...HATCHED, ...(plan.brooding ? [] : YOUNG)]}
          tables={asked.tables}
        />
      )}
      {hatching && (
        <More title={hatching.incubator ? 'The eggs and the incubator' : 'The eggs and the hen'}>
          <HatchingSection plan={plan} hatching={hatching} />
        </More>
      )}
      {plan.today <= plan.arrivalDate && (
        <More title="Another week?">
          <ArrivalWeeks asked={asked} onPick={onPickWeek} />
        </More>
      )}
    </StoryFold>
  );
}

/** Whether the birds are here. */
export const isHere = (plan: BatchPlan & DatedPlan): boolean =>
  plan.arrivalDate <= plan.today &&
  (plan.today <= plan.lastDate || dayInPlan(plan, plan.today) !== undefined);

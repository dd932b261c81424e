import type { Quantity } from '../../../../shared/explain/quantity.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { Fact, Facts } from '../../explain/number.js';

/** What a batch comes to, before what is to mind of it; what is past is left out. */
export function KeyFacts({ plan }: { plan: BatchPlan }) {
  return (
    <section aria-label="In short">
      <Facts>
        {factsOf(plan).map((fact) => (
          <Fact key={fact.label} of={fact} />
        ))}
      </Facts>
    </section>
  );
}

function factsOf(plan: BatchPlan): Quantity[] {
  const { hatching, birds, outdoors, leaving, laying, feed, bill, today } = plan;
  const toCome = (of: Quantity | undefined) => (of && today <= String(of.value) ? of : undefined);
  const isComing = today <= plan.arrivalDate;
  const facts = [
    isComing ? (hatching?.eggs ?? birds.toOrder) : undefined,
    toCome(outdoors.moveOut),
    leaving?.on ?? toCome(laying?.firstEgg),
    leaving?.dressedAll ?? laying?.eggsInYear,
    feed.total,
    bill.leftOut.length === 0 ? bill.total : undefined,
  ];
  return facts.filter((fact) => fact !== undefined);
}

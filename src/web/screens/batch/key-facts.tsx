import type { Quantity } from '../../../../shared/explain/quantity.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { StoryPart } from '../../../../shared/plan/story/story-part.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useOpener } from '../../explain/explain-panel.js';

/** What a batch comes to, before what is to mind of it; each leads to where it opens. */
export function KeyFacts({ plan }: { plan: BatchPlan }) {
  const { reader } = useOpener();
  return (
    <section aria-label="In short">
      <dl className="facts">
        {factsOf(plan).map(([part, { label, value, unit }]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              <a href={`#${part}`} className="story-fact">
                {formatValue(value, unit, reader)}
              </a>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function factsOf(plan: BatchPlan): [StoryPart, Quantity][] {
  const { hatching, birds, outdoors, leaving, laying, feed, bill } = plan;
  const facts: [StoryPart, Quantity | undefined][] = [
    ['before', hatching?.eggs ?? birds.toOrder],
    ['out', outdoors.moveOut],
    ['end', leaving?.on ?? laying?.firstEgg],
    ['end', leaving?.dressedAll ?? laying?.eggsInYear],
    ['feed', feed.total],
    ['cost', bill.leftOut.length === 0 ? bill.total : undefined],
  ];
  return facts.filter((fact): fact is [StoryPart, Quantity] => fact[1] !== undefined);
}

import type { BillPart } from '../../../../shared/plan/bill.js';
import { Num } from '../../explain/number.js';

/** The lines of a bill that have a cost, the dearest first, each as long as it is dear. */
export function BillBars({ bill: { lines } }: { bill: BillPart }) {
  const dear = lines
    .flatMap(({ label, cost }) => (cost && 0 < cost.value ? [{ label, cost }] : []))
    .sort((a, b) => b.cost.value - a.cost.value);
  const most = dear[0]?.cost.value ?? 1;
  return (
    <ul className="story-bars">
      {dear.map(({ label, cost }) => (
        <li key={label}>
          <span>{label}</span>
          <span className="story-bar" style={{ inlineSize: `${(100 * cost.value) / most}%` }} />
          <Num of={cost} />
        </li>
      ))}
    </ul>
  );
}

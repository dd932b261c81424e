import type { NumberQuantity } from '../../../../shared/explain/quantity.js';
import { sayNights } from '../../../../shared/plan/say-ways-out.js';
import { Fact } from '../../explain/number.js';

/** Nights too cold after the move: whole ones, as nobody counts parts of a night. */
export const ColdNights = ({ of }: { readonly of: NumberQuantity | undefined }) =>
  of && <Fact of={of} said={sayNights(of.value)} />;

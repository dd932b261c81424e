import { Stack } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { EggsSection } from './eggs-section.js';
import { Processing } from './processing-section.js';

export function LeavingSection({ plan }: { plan: BatchPlan }) {
  return (
    <Stack>
      {plan.leaving && <Processing leaving={plan.leaving} />}
      {plan.laying && <EggsSection plan={plan} laying={plan.laying} />}
    </Stack>
  );
}

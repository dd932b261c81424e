import { Stack } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { Cautions } from '../../shell/section.js';
import { EggsSection } from './eggs-section.js';
import { Processing } from './processing-section.js';

export function LeavingSection({ plan, tables }: { plan: BatchPlan; tables: Tables }) {
  return (
    <Stack>
      {plan.leaving && <Processing leaving={plan.leaving} />}
      {plan.laying && <EggsSection plan={plan} laying={plan.laying} />}
      <Cautions
        keys={plan.cautions}
        of={['slaughter', 'chilling', 'heat-stress', 'calcium']}
        tables={tables}
      />
    </Stack>
  );
}

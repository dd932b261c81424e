import { Stack } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { LeavingPart } from '../../../../shared/plan/leaving.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { ConversionUnit, Fact, Facts } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Cautions, Section } from '../../shell/section.js';
import { EggsSection } from './eggs-section.js';

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

function Processing({ leaving }: { leaving: LeavingPart }) {
  const sayDate = useSayDate();
  const [day, hour] = leaving.feedOffAt.split(' ');
  return (
    <>
      <Section title="Weights">
        <Facts>
          <Fact of={leaving.on} />
          <Fact of={leaving.age} />
          <Fact of={leaving.liveEach} />
          <Fact of={leaving.liveMale} />
          <Fact of={leaving.liveFemale} />
          <Fact of={leaving.liveAll} />
          <Fact of={leaving.dressedEach} note={`${leaving.dressedDefinition}. `} />
          <Fact of={leaving.dressedAll} />
          <Fact of={leaving.packedAll} />
          <Fact of={leaving.conversion} note={<ConversionUnit />} />
        </Facts>
      </Section>
      <Section title="The day itself">
        <Facts>
          <Fact of={leaving.feedOff} note={`feeders up ${sayDate(day!)} at ${hour}. `} />
          <Fact of={leaving.ice} />
          <Fact of={leaving.chillHours} />
          <Fact of={leaving.freezerNeed} />
          <Fact of={leaving.freezerFree} />
        </Facts>
      </Section>
    </>
  );
}

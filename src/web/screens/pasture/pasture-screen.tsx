import { Alert, Button, Stack, Text, Title } from '@mantine/core';
import { lazy, Suspense, useMemo, useState } from 'react';
import { Link } from 'wouter';
import { aboutGrass } from '../../../../shared/plan/pasture/about-grass.js';
import { herdsNow, sayHerdNow } from '../../../../shared/plan/pasture/herd-now.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { allStandingOn, averageOn, needOn } from '../../../../shared/plan/pasture/standing.js';
import { waysInDry } from '../../../../shared/plan/pasture/ways-in-dry.js';
import { describeForForm } from '../../../../shared/problems/field-problem.js';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { NumbersOf } from '../../explain/about-numbers.js';
import { IssueList } from '../../explain/issue-list.js';
import { Fact, Facts } from '../../explain/number.js';
import { useOpener } from '../../explain/explain-panel.js';
import { useSayDate } from '../../explain/say-date.js';
import { Empty } from '../../shell/empty.js';
import { Folded } from '../../shell/folded.js';
import { Cautions, Section } from '../../shell/section.js';
import { useAll, Working } from '../../shell/states.js';
import { AllHay, HaySection, ToShut } from './hay-section.js';
import { KeyDates } from './key-dates.js';
import { MownSection } from './mown-section.js';
import { MoveList } from './move-list.js';
import { PaddockMap } from './paddock-map.js';
import { PastureNav } from './pasture-nav.js';
import { SeasonStrip, paddockName } from './season-strip.js';
import { StandingBars } from './standing-bars.js';
import { useFittedDays, usePasturePlan } from './use-pasture.js';
import { useGrassYears } from './years-of-grass.js';
import { AS_IS, difference, isWhatIf, pictureIf, WhatIfs, type Changes } from './what-if.js';

const MassChart = lazy(() => import('./mass-chart.js'));

/** The season: where the herds are, what stands, whether it lasts. */
export default function PastureScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePicture(farm.id));
  if ('waiting' in all) return all.waiting;
  const [picture] = all.data;
  return (
    <Stack maw={1100} gap="xs">
      <Title order={1}>Grass and cattle</Title>
      <PastureNav farmId={farm.id} />
      {picture.paddocks.length === 0 || picture.herds.length === 0 ? (
        <Empty text={stillNeeded(picture)}>
          <Button component={Link} href={`/farm/${farm.id}/pasture/land`}>
            Paddocks and herds
          </Button>
        </Empty>
      ) : (
        <Season picture={picture} farm={farm} tables={tables} />
      )}
    </Stack>
  );
}

const stillNeeded = ({ paddocks, herds }: FarmPicture): string =>
  [
    ...(paddocks.length === 0 ? ['Add your paddocks, or import their outlines.'] : []),
    ...(herds.length === 0 ? ['Add a herd with its classes of cattle.'] : []),
  ].join(' ');

function Season({
  picture,
  farm,
  tables,
}: {
  picture: FarmPicture;
  farm: SavedFarm;
  tables: Tables;
}) {
  const { reader, sayDate } = useOpener();
  const laid = useFittedDays(farm.id);
  const [day, setDay] = useState<number>();
  const [changes, setChanges] = useState<Changes>(AS_IS);
  const changed = useMemo(() => pictureIf(picture, changes), [picture, changes]);
  const isChanged = isWhatIf(changes);
  const base = usePasturePlan(picture, tables);
  const whatIf = usePasturePlan(isChanged ? changed : undefined, tables);
  const { problems, failed, isWorking } = isChanged ? whatIf : base;
  // The plan as it is stays on the page until the first what-if is worked out.
  const plan = isChanged ? (whatIf.plan ?? base.plan) : base.plan;
  const played = useGrassYears({ picture: changed, tables });
  const about = useMemo(() => plan && aboutGrass(changed, plan, tables), [changed, plan, tables]);
  if (problems) {
    return (
      <Alert color="stop" title="This pasture cannot be planned">
        {problems.map((p) => (
          <div key={p.field}>{describeForForm(p, { labelOf: () => undefined }, farm)}</div>
        ))}
      </Alert>
    );
  }
  if (failed) return <Alert color="stop">{failed}</Alert>;
  if (!plan || !about) return <Working label="Planning the season" />;
  const last = daysBetween(plan.from, plan.to);
  const turnOut = plan.keyDates.herds.find((h) => h.turnOut)?.turnOut?.value;
  const start = plan.today < plan.from && turnOut !== undefined ? String(turnOut) : plan.today;
  const outcome = isWorking
    ? 'Working it out …'
    : isChanged && base.plan
      ? difference(base.plan, plan, reader) + waysInDry(base.plan, plan, picture.products, reader)
      : '';
  const shownDay = Math.min(last, Math.max(0, day ?? daysBetween(plan.from, start)));
  // Days that Work has are of the farm as it is.
  const mowing = isChanged ? undefined : laid;
  const average = averageOn(plan, shownDay);
  return (
    <NumbersOf about={about}>
      <IssueList
        // What is late stands among the work, without what was ticked off.
        issues={plan.issues.filter(({ code }) => code !== 'herd-tasks-late')}
        tables={tables}
      />
      <Section title="Where the herds are">
        {herdsNow(plan).map((each) => (
          <Text key={each.herd.id} fz="lg" mb="xs">
            {sayHerdNow(plan, each, sayDate)}
          </Text>
        ))}
        <SeasonStrip plan={plan} />
      </Section>
      <Section title="Moves">
        <MoveList plan={plan} mowing={mowing} farmId={farm.id} />
      </Section>
      <Section title="Grass supply and need">
        <Suspense fallback={<Text>Drawing the chart …</Text>}>
          <MassChart plan={plan} units={farm.units} tables={tables} day={shownDay} onDay={setDay} />
        </Suspense>
      </Section>
      <Section title="Grass to mow for hay">
        <ToShut plan={plan} mowing={mowing} />
      </Section>
      <HaySection plan={plan} played={played} farm={farm} tables={tables} picture={picture} />
      <div>
        <AllHay plan={plan} played={played} />
        <KeyDates plan={plan} farm={farm} picture={picture} />
        <Folded
          id="each-paddock"
          title="Grass in each paddock"
          answer={`${formatValue(average.value, average.unit, reader)} on average, ${sayDate(addDays(plan.from, shownDay))}`}
        >
          <StandingBars plan={plan} day={shownDay} onDay={setDay} />
          <Facts>
            {plan.herds.map((herd) => (
              <Fact key={herd.id} of={needOn(plan, herd, shownDay)} />
            ))}
            <Fact of={allStandingOn(plan, shownDay)} />
          </Facts>
        </Folded>
        <PaddockMap
          plan={plan}
          paddocks={picture.paddocks}
          mowings={picture.mowings}
          day={shownDay}
          onDay={setDay}
        />
        <MownSection farm={farm} plan={plan} picture={picture} />
        <Folded
          id="what-if"
          title="What if"
          answer={outcome === '' ? 'Less rain, more head, longer rest' : outcome}
          isForScreen
        >
          <WhatIfs
            usualRainShares={picture.pastureChoices.rainShareByMonth}
            hasRain={plan.weather.hasRain}
            changes={changes}
            onChange={setChanges}
            outcome={outcome}
          />
        </Folded>
        {0 < plan.birds.length && <BirdsBehind plan={plan} />}
        <Folded id="mind" title="What to mind with cattle" answer={titlesOf(plan, tables)}>
          <Cautions keys={plan.cautions} of={plan.cautions} tables={tables} />
        </Folded>
      </div>
      <Text size="sm" c="dimmed">
        Planned from {sayDate(plan.from)} to {sayDate(plan.to)}. Weather:{' '}
        {plan.weather.label.toLowerCase()}
        {plan.weather.hasRain ? '' : ', without rain'}.
      </Text>
    </NumbersOf>
  );
}

const titlesOf = ({ cautions }: PasturePlan, tables: Tables): string =>
  cautions.map((key) => tables.cautions[key]!.title).join(' · ');

function BirdsBehind({ plan }: { plan: PasturePlan }) {
  const sayDate = useSayDate();
  const first = plan.birds[0]!;
  return (
    <Folded
      id="birds"
      title="Birds behind the cattle"
      answer={`${first.name}: ${plan.birds.length} moves from ${sayDate(first.from)}`}
    >
      <Text size="sm">
        {plan.birds.length} moves of {first.name}, the first on {sayDate(first.from)} into{' '}
        {paddockName(plan, first.paddockId)}. They walk on a day at a time within it. Each is listed
        under Moves.
      </Text>
    </Folded>
  );
}

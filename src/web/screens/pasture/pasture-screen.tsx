import { Alert, Button, Group, Stack, Text, Title } from '@mantine/core';
import { lazy, Suspense, useMemo, useState } from 'react';
import { Link } from 'wouter';
import { aboutGrass } from '../../../../shared/plan/pasture/about-grass.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { describeForForm } from '../../../../shared/problems/field-problem.js';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { NumbersOf } from '../../explain/about-numbers.js';
import { IssueList } from '../../explain/issue-list.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useOpener } from '../../explain/explain-panel.js';
import { useSayDate } from '../../explain/say-date.js';
import { Empty } from '../../shell/empty.js';
import { Cautions, Section } from '../../shell/section.js';
import { useAll, Working } from '../../shell/states.js';
import { AutumnGrass } from './autumn-grass.js';
import { HayChoices } from './hay-choices.js';
import { MownSection } from './mown-section.js';
import { MoveList } from './move-list.js';
import { PastureMap } from './pasture-map.js';
import { PastureNav } from './pasture-nav.js';
import { SeasonStrip, paddockName } from './season-strip.js';
import { StandingBars } from './standing-bars.js';
import { usePasturePlan } from './use-pasture.js';
import { SureHay, useGrassYears, YearsOfGrass, YearsWaiting } from './years-of-grass.js';
import { AS_IS, difference, isWhatIf, pictureIf, WhatIfs, type Changes } from './what-if.js';

const MassChart = lazy(() => import('./mass-chart.js'));

/** The season: where the herds are, what stands, whether it lasts. */
export default function PastureScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePicture(farm.id));
  if ('waiting' in all) return all.waiting;
  const [picture] = all.data;
  return (
    <Stack maw={1100}>
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
  const shownDay = Math.min(last, Math.max(0, day ?? daysBetween(plan.from, start)));
  return (
    <NumbersOf about={about}>
      <Group justify="space-between">
        <Text>
          {sayDate(plan.from)} to {sayDate(plan.to)}. Weather: {plan.weather.label.toLowerCase()}
          {plan.weather.hasRain ? '' : ', without rain'}.
        </Text>
        <Button component={Link} href={`/farm/${farm.id}/pasture/print`} variant="default">
          Move sheet to print
        </Button>
      </Group>
      <IssueList issues={plan.issues} tables={tables} />
      <Section title="Where the herds are">
        <SeasonStrip plan={plan} />
      </Section>
      <Section title="What if">
        <WhatIfs
          usualRainShares={picture.pastureChoices.rainShareByMonth}
          hasRain={plan.weather.hasRain}
          changes={changes}
          onChange={setChanges}
          outcome={
            isWorking
              ? 'Working it out …'
              : isChanged && base.plan
                ? difference(base.plan, plan, reader)
                : ''
          }
        />
      </Section>
      <Section title="Does the grass last?">
        <YearsWaiting played={played} />
        <Facts>
          <SureHay played={played} />
          <Fact of={plan.hay.balesToBuy} />
          <Fact of={plan.hay.toBuy} />
          <Fact of={plan.hay.untilPlan} />
          <Fact of={plan.hay.bales} />
          <Fact of={plan.hay.toStore} />
          <Fact of={plan.hay.inSeason} />
          <Fact of={plan.hay.outside} />
          <Fact of={plan.hay.all} />
          <Fact of={plan.hay.inStore} />
          <Fact of={plan.hay.baled} />
          <Fact of={plan.hay.own} />
          <Fact of={plan.hay.nextWinter} />
          <Fact of={plan.hay.saved} />
          <Fact of={plan.hay.runsOut} />
          <Fact of={plan.farmFactor} />
          <Fact
            of={plan.weather.dry?.growthLeft}
            note={plan.weather.dry && `on ${sayDate(plan.weather.dry.worstOn)}. `}
          />
        </Facts>
        <Text size="sm" mt="xs">
          The first of these are counted to {sayDate(plan.to)}; from then to grass again stands
          beside them, and what to buy is of both.
        </Text>
        {0 < plan.surplus.length && (
          <Stack gap={4} mt="sm">
            <Text fw={600}>Grass to mow for hay</Text>
            {plan.surplus.map((cut) => (
              <Text key={cut.paddockId}>
                {paddockName(plan, cut.paddockId)}: closed from {sayDate(cut.shutFrom)}, mow about{' '}
                {sayDate(cut.cutOn)}, <Num of={cut.bales} />, <Num of={cut.hay} />
              </Text>
            ))}
          </Stack>
        )}
        <YearsOfGrass played={played} />
        <HayChoices
          farm={farm}
          tables={tables}
          choices={picture.pastureChoices}
          today={plan.today}
        />
        <MownSection farm={farm} picture={picture} />
      </Section>
      <Section title="Key dates">
        <Facts>
          <Fact of={plan.keyDates.ready} />
          {plan.keyDates.herds.map((herd) => (
            <HerdFacts key={herd.herdId} plan={plan} herd={herd} />
          ))}
          <Fact of={plan.keyDates.stockpile?.shutFrom} />
          <Fact of={plan.keyDates.stockpile?.forageOnHand} />
        </Facts>
        <AutumnGrass plan={plan} farm={farm} choices={picture.pastureChoices} />
      </Section>
      <Section title="Grass supply and need">
        <Suspense fallback={<Text>Drawing the chart …</Text>}>
          <MassChart plan={plan} units={farm.units} day={shownDay} onDay={setDay} />
        </Suspense>
      </Section>
      <Section title="Grass in each paddock">
        <StandingBars plan={plan} day={shownDay} onDay={setDay} />
      </Section>
      <PastureMap plan={plan} paddocks={picture.paddocks} date={addDays(plan.from, shownDay)} />
      <Section title="Moves">
        <MoveList plan={plan} farmId={farm.id} />
      </Section>
      {0 < plan.birds.length && (
        <Section title="Birds behind the cattle">
          <Text size="sm">
            {plan.birds.length} moves of {plan.birds[0]!.name}, the first on{' '}
            {sayDate(plan.birds[0]!.from)} into {paddockName(plan, plan.birds[0]!.paddockId)}. They
            walk on a day at a time within it. Each is listed under Moves.
          </Text>
        </Section>
      )}
      <Cautions keys={plan.cautions} of={plan.cautions} tables={tables} />
    </NumbersOf>
  );
}

function HerdFacts({
  plan,
  herd,
}: {
  plan: PasturePlan;
  herd: PasturePlan['keyDates']['herds'][number];
}) {
  const sayDate = useSayDate();
  const name = plan.herds.find((h) => h.id === herd.herdId)?.name ?? '';
  const label = (what: string): string => (1 < plan.herds.length ? `${name}: ${what}` : what);
  return (
    <>
      <Fact of={herd.turnOut} label={label('Turn-out')} />
      <Fact of={herd.magnesiumFrom} label={label('Magnesium mineral from')} />
      <Fact of={herd.hayBesideUntil} label={label('Feed hay too until')} />
      {herd.calvings.map((c) => (
        <Fact
          key={c.cow?.id ?? c.number}
          of={c.due}
          label={label(c.due.label)}
          note={`${sayDate(c.early)} to ${sayDate(c.late)} in about 19 of 20 calvings. `}
        />
      ))}
      {herd.arrivals.map((a) => (
        <div key={a.on}>
          <dt>{label('Out of quarantine')}</dt>
          <dd>{sayDate(a.out)}</dd>
        </div>
      ))}
      <Fact of={herd.lastGrazing} label={label('Last day on grass')} />
    </>
  );
}

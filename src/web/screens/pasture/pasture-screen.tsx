import { Alert, Button, Group, Slider, Stack, Text, Title } from '@mantine/core';
import { lazy, Suspense, useMemo, useState } from 'react';
import { Link } from 'wouter';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { describeForForm } from '../../../../shared/problems/field-problem.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import {
  formatDate,
  formatShortDate,
  formatValue,
  type Reader,
} from '../../../../shared/units/format.js';
import { usePasture, type PastureOnFarm } from '../../api/pasture-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { Cautions, Section } from '../batch/section.js';
import { useAll, Working } from '../../shell/states.js';
import { MoveList } from './move-list.js';
import { PastureMap } from './pasture-map.js';
import { PastureNav } from './pasture-nav.js';
import { SeasonStrip, paddockName } from './season-strip.js';
import { StandingBars } from './standing-bars.js';
import { usePasturePlan } from './use-pasture.js';

const MassChart = lazy(() => import('./mass-chart.js'));

/** The season: where the herds are, what stands, whether it lasts. */
export default function PastureScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePasture(farm.id));
  if ('waiting' in all) return all.waiting;
  const [onFarm] = all.data;
  return (
    <Stack maw={1100}>
      <Title order={1}>Grass and cattle</Title>
      <PastureNav farmId={farm.id} />
      {onFarm.paddocks.length === 0 || onFarm.herds.length === 0 ? (
        <Alert color="moss" title="What is still needed">
          {onFarm.paddocks.length === 0 && (
            <Text>Add your paddocks, or import their outlines. </Text>
          )}
          {onFarm.herds.length === 0 && <Text>Add a herd with its classes of cattle. </Text>}
          <Button component={Link} href={`/farm/${farm.id}/pasture/land`} mt="sm">
            Paddocks and herds
          </Button>
        </Alert>
      ) : (
        <Season onFarm={onFarm} farm={farm} tables={tables} />
      )}
    </Stack>
  );
}

function Season({
  onFarm,
  farm,
  tables,
}: {
  onFarm: PastureOnFarm;
  farm: SavedFarm;
  tables: Tables;
}) {
  const [augustRain, setAugustRain] = useState(100);
  const [dryMonth] = useState(8);
  const [day, setDay] = useState<number>();
  const [headShare, setHeadShare] = useState(100);
  const [rest, setRest] = useState(100);
  const [settled, setSettled] = useState({ augustRain: 100, headShare: 100, rest: 100 });
  const request = useMemo(() => {
    const rain = Array.from({ length: 12 }, (_, m) =>
      m === dryMonth - 1 ? settled.augustRain / 100 : (onFarm.choices.rainShareByMonth?.[m] ?? 1),
    );
    return {
      ...onFarm,
      tables,
      herds: onFarm.herds.map((herd) => ({
        ...herd,
        groups: herd.groups.map((group) => ({
          ...group,
          head: Math.max(1, Math.round((group.head * settled.headShare) / 100)),
        })),
      })),
      choices: {
        ...onFarm.choices,
        rainShareByMonth: rain,
        restFactor: ((onFarm.choices.restFactor ?? 1) * settled.rest) / 100,
      },
    };
  }, [onFarm, tables, settled, dryMonth]);
  const asIs = useMemo(() => ({ ...onFarm, tables }), [onFarm, tables]);
  const isWhatIf = settled.augustRain !== 100 || settled.headShare !== 100 || settled.rest !== 100;
  const base = usePasturePlan(asIs);
  const whatIf = usePasturePlan(isWhatIf ? request : undefined);
  const { problems, failed, isWorking } = isWhatIf ? whatIf : base;
  // The plan as it is stays on the page until the first what-if is worked out.
  const plan = isWhatIf ? (whatIf.plan ?? base.plan) : base.plan;
  if (problems) {
    return (
      <Alert color="red" title="This pasture cannot be planned">
        {problems.map((p) => (
          <div key={p.field}>{describeForForm(p, () => p.field, farm)}</div>
        ))}
      </Alert>
    );
  }
  if (failed) return <Alert color="red">{failed}</Alert>;
  if (!plan) return <Working label="Planning the season" />;
  const last = daysBetween(plan.from, plan.to);
  const turnOut = plan.turning.herds.find((h) => h.turnOut)?.turnOut?.value;
  const start = plan.today < plan.from && turnOut !== undefined ? String(turnOut) : plan.today;
  const shownDay = Math.min(last, Math.max(0, day ?? daysBetween(plan.from, start)));
  const settle = (part: Partial<typeof settled>) => setSettled({ ...settled, ...part });
  return (
    <>
      <Group justify="space-between">
        <Text>
          {formatDate(plan.from)} to {formatDate(plan.to)}. Weather:{' '}
          {plan.weather.label.toLowerCase()}
          {plan.weather.hasRain ? '' : ', without rain'}.
        </Text>
        <Button component={Link} href={`/farm/${farm.id}/pasture/print`} variant="default">
          Move sheet to print
        </Button>
      </Group>
      <Issues plan={plan} />
      <Section title="Where the herds are">
        <SeasonStrip plan={plan} />
      </Section>
      <Section title="What if">
        <Group grow align="start" wrap="wrap" preventGrowOverflow={false}>
          <WhatIf
            label="Rain in August"
            value={augustRain}
            max={200}
            isOff={!plan.weather.hasRain}
            onChange={setAugustRain}
            onEnd={(v) => settle({ augustRain: v })}
          />
          <WhatIf
            label="Head of cattle"
            value={headShare}
            max={200}
            onChange={setHeadShare}
            onEnd={(v) => settle({ headShare: v })}
          />
          <WhatIf
            label="Rest of each paddock"
            value={rest}
            max={200}
            min={50}
            onChange={setRest}
            onEnd={(v) => settle({ rest: v })}
          />
        </Group>
        <Text size="sm" aria-live="polite" mih="1.5em">
          {isWorking
            ? 'Working it out …'
            : isWhatIf && base.plan
              ? difference(base.plan, plan, farm)
              : ''}
        </Text>
        {isWhatIf && (
          <Button
            variant="subtle"
            onClick={() => {
              setAugustRain(100);
              setHeadShare(100);
              setRest(100);
              setSettled({ augustRain: 100, headShare: 100, rest: 100 });
            }}
          >
            Back to the plan as it is
          </Button>
        )}
      </Section>
      <Section title="Does the grass last?">
        <Facts>
          <Fact of={plan.hay.inSeason} />
          <Fact of={plan.hay.outside} />
          <Fact of={plan.hay.all} />
          <Fact of={plan.hay.toStore} />
          <Fact of={plan.hay.bales} />
          <Fact of={plan.hay.fixedRotation} note="to compare with all feed. " />
          <Fact of={plan.hay.least} />
          <Fact of={plan.farmFactor} />
          <Fact
            of={plan.weather.dry?.growthLeft}
            note={plan.weather.dry && `on ${formatShortDate(plan.weather.dry.worstOn)}. `}
          />
        </Facts>
        <Text size="sm" mt="xs">
          Counted to {formatDate(plan.to)}: what is fed after that comes on top.
        </Text>
        {0 < plan.surplus.length && (
          <Stack gap={4} mt="sm">
            <Text fw={600}>Grass to mow for hay</Text>
            {plan.surplus.map((cut) => (
              <Text key={cut.paddockId}>
                {paddockName(plan, cut.paddockId)}: shut from {formatShortDate(cut.shutFrom)}, mow
                about {formatShortDate(cut.cutOn)}, <Num of={cut.hay} />, <Num of={cut.bales} />
              </Text>
            ))}
          </Stack>
        )}
      </Section>
      <Section title="Turning points">
        <Facts>
          <Fact of={plan.turning.ready} />
          {plan.turning.herds.map((herd) => (
            <HerdFacts key={herd.herdId} plan={plan} herd={herd} />
          ))}
          <Fact of={plan.turning.stockpile?.shutFrom} />
          <Fact of={plan.turning.stockpile?.standing} />
        </Facts>
        {plan.turning.stockpile && (
          <Text size="sm">
            To keep grass for autumn, give{' '}
            {plan.turning.stockpile.paddockIds.map((id) => paddockName(plan, id)).join(', ')} closed
            days from then on: the moves above do not spare them yet.
          </Text>
        )}
      </Section>
      <Section title="Grass against need">
        <Suspense fallback={<Text>Drawing the chart …</Text>}>
          <MassChart plan={plan} units={farm.units} day={shownDay} onDay={setDay} />
        </Suspense>
      </Section>
      <Section title="Paddocks by what stands">
        <StandingBars plan={plan} day={shownDay} onDay={setDay} />
      </Section>
      <PastureMap plan={plan} paddocks={onFarm.paddocks} date={addDays(plan.from, shownDay)} />
      <Section title="Moves">
        <MoveList plan={plan} farmId={farm.id} />
      </Section>
      {0 < plan.birds.length && (
        <Section title="Birds behind the cattle">
          <Text size="sm">
            {plan.birds.length} moves of {plan.birds[0]!.name}, the first on{' '}
            {formatShortDate(plan.birds[0]!.from)} into{' '}
            {paddockName(plan, plan.birds[0]!.paddockId)}. They walk on a day at a time within it.
            Each is listed under Moves.
          </Text>
        </Section>
      )}
      <Cautions keys={plan.cautions} of={plan.cautions} tables={tables} />
    </>
  );
}

function HerdFacts({
  plan,
  herd,
}: {
  plan: PasturePlan;
  herd: PasturePlan['turning']['herds'][number];
}) {
  const name = plan.herds.find((h) => h.id === herd.herdId)?.name ?? '';
  const label = (what: string): string => (1 < plan.herds.length ? `${name}: ${what}` : what);
  return (
    <>
      <Fact of={herd.turnOut} label={label('Turn-out')} />
      <Fact of={herd.magnesiumFrom} label={label('Magnesium mineral from')} />
      <Fact of={herd.hayBesideUntil} label={label('Hay beside grass until')} />
      {herd.calvings.map((c) => (
        <Fact
          key={String(c.due.value)}
          of={c.due}
          label={label('Calving due')}
          note={`${formatShortDate(c.early)} to ${formatShortDate(c.late)} holds about 95 %. `}
        />
      ))}
      {herd.arrivals.map((a) => (
        <div key={a.on}>
          <dt>{label('Out of quarantine')}</dt>
          <dd>{formatDate(a.out)}</dd>
        </div>
      ))}
      <Fact of={herd.lastGrazing} label={label('Last day on grass')} />
    </>
  );
}

function WhatIf({
  label,
  value,
  min = 0,
  max,
  isOff = false,
  onChange,
  onEnd,
}: {
  label: string;
  value: number;
  min?: number;
  max: number;
  isOff?: boolean;
  onChange: (value: number) => void;
  onEnd: (value: number) => void;
}) {
  return (
    <div style={{ minWidth: '14rem', padding: '0 0.75rem' }}>
      <Text size="sm" fw={600}>
        {label}: {value} %
      </Text>
      <Slider
        value={value}
        min={min}
        max={max}
        step={5}
        size="lg"
        disabled={isOff}
        label={(v) => `${v} %`}
        thumbLabel={label}
        onChange={onChange}
        onChangeEnd={onEnd}
        my="sm"
      />
      {isOff && <Text size="sm">Type the monthly rain under Farm first.</Text>}
    </div>
  );
}

/** What a what-if changed, in words. */
function difference(base: PasturePlan, plan: PasturePlan, reader: Reader): string {
  const kg = plan.hay.all.value - base.hay.all.value;
  const before = new Set(base.moves.map((m) => `${m.herdId}${m.paddockId}${m.from}`));
  const changed = plan.moves.filter((m) => !before.has(`${m.herdId}${m.paddockId}${m.from}`));
  const first = changed[0];
  const feed =
    Math.abs(kg) < 1
      ? 'No more and no less feed'
      : `${formatValue(Math.abs(kg), 'kg', reader)} of dry matter ${0 < kg ? 'more' : 'less'} to feed in all`;
  const why = dryText(base, plan);
  return first
    ? `${why}${feed}. ${changed.length} of ${plan.moves.length} stays change, the first on ${formatShortDate(first.from)} (${paddockName(plan, first.paddockId)}).`
    : `${why}${feed}. No move changes.`;
}

/** What dry soil has to do with it, in words; nothing when it changes nothing. */
function dryText(base: PasturePlan, plan: PasturePlan): string {
  const [before, now] = [base.weather.dry, plan.weather.dry];
  if (before?.growthLeft.value === now?.growthLeft.value) return '';
  if (!now) return 'The soil stays moist, so nothing slows the grass. ';
  return `The soil slows the grass from ${formatShortDate(now.from)} and leaves ${Math.round(100 * now.growthLeft.value)} % of its growth on ${formatShortDate(now.worstOn)}${before ? ` (${Math.round(100 * before.growthLeft.value)} % before)` : ''}. `;
}

const COLOURS = { stop: 'red', act: 'orange', note: 'gray' } as const;
const TITLES = { stop: 'Must be put right', act: 'Needs doing', note: 'Good to know' } as const;

function Issues({ plan }: { plan: PasturePlan }) {
  return (['stop', 'act', 'note'] as const).map((level) => {
    const own = plan.issues.filter((i) => i.level === level);
    return own.length === 0 ? null : (
      <Alert key={level} color={COLOURS[level]} title={TITLES[level]}>
        {own.map((i) => (
          <div key={i.code + i.text}>{i.text}</div>
        ))}
      </Alert>
    );
  });
}

import { Stack, Text } from '@mantine/core';
import { Fragment, type ReactNode } from 'react';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import { mowingLaid, type DaysOfMowing } from '../../../../shared/plan/pasture/mowing-laid.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import type { Surplus } from '../../../../shared/plan/pasture/surplus.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { inOwnUnits } from '../../../../shared/units/own-units.js';
import type { SavedFarm } from '../../api/queries.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Folded } from '../../shell/folded.js';
import { Section } from '../../shell/section.js';
import { HayChoices } from './hay-choices.js';
import { paddockName } from './season-strip.js';
import {
  BalesToBuy,
  HayToBuy,
  SureBales,
  SureHay,
  YearsOfGrass,
  YearsWaiting,
  type Played,
} from './years-of-grass.js';

/** What hay to buy, and whether what is there lasts. */
export function HaySection({
  plan,
  played,
  farm,
  tables,
  picture,
}: {
  plan: PasturePlan;
  played: Played;
  farm: SavedFarm;
  tables: Tables;
  picture: FarmPicture;
}) {
  const { hay } = plan;
  return (
    <Section title="Hay">
      <YearsWaiting played={played} />
      <Facts>
        <SureBales played={played} />
        <BalesToBuy of={hay} />
        <Fact of={hay.balesUnmade} />
        <Fact of={hay.inStore} />
        <Fact of={hay.runsOut} />
      </Facts>
      <HayChoices farm={farm} tables={tables} choices={picture.pastureChoices} today={plan.today} />
    </Section>
  );
}

/** All that the hay to buy is made of. */
export function AllHay({ plan, played }: { plan: PasturePlan; played: Played }) {
  const sayDate = useSayDate();
  const { hay, weather } = plan;
  return (
    <Folded id="all-hay" title="What the hay comes to" answer={hayInShort(plan)}>
      <Facts>
        <SureHay played={played} />
        <HayToBuy of={hay} />
        <Fact of={hay.toBuyUnmade} />
        <Fact of={hay.untilPlan} />
        <Fact of={hay.bales} />
        <Fact of={hay.toStore} />
        <Fact of={hay.inSeason} />
        <Fact of={hay.outside} />
        <Fact of={hay.all} />
        <Fact of={hay.baled} />
        <Fact of={hay.taken} />
        <Fact of={hay.own} />
        <Fact of={hay.nextWinter} />
        <Fact of={hay.saved} />
        <Fact of={plan.farmFactor} />
        <Fact
          of={weather.dry?.growthLeft}
          note={weather.dry && `on ${sayDate(weather.dry.worstOn)}. `}
        />
      </Facts>
      <Text size="sm" mt="xs">
        What is fed and made is counted to {sayDate(plan.to)}; from then to grass again stands
        beside it, and what to buy is of both.
      </Text>
      <YearsOfGrass played={played} />
    </Folded>
  );
}

const spareGrass = ({ issues }: PasturePlan) => issues.find(({ code }) => code === 'spare-grass');

const hayInShort = (plan: PasturePlan): string =>
  plan.surplus.length === 0
    ? spareGrass(plan)
      ? 'Fed and in store; grass is left over, and no hay is planned'
      : 'Fed, made and in store; no grass is left over to mow'
    : 'Fed, made and in store, and through many years of weather';

/** Days that stand on the page; the rest of a long summer of hay is a touch deeper. */
const FIRST_DAYS = 3;

/** Paddocks to close for hay from a day on, and when to mow them: those of one day in one line. */
export function ToShut({ plan, mowing }: { plan: PasturePlan; mowing: DaysOfMowing | undefined }) {
  const sayDate = useSayDate();
  const { units } = useOpener().reader;
  const ahead = plan.surplus.filter(({ cutOn }) => plan.today <= cutOn);
  if (ahead.length === 0) {
    const spare = inOwnUnits(spareGrass(plan)?.text ?? '', units);
    return <Text>No paddock is closed for hay. {spare}</Text>;
  }
  const mowOn = (cut: Surplus): string => {
    const laid = mowingLaid(plan, mowing, cut);
    return laid === undefined
      ? `from ${sayDate(cut.mowFrom)} on`
      : `on ${sayDate(laid)}, the day Work has for it${laid === cut.mowFrom ? '' : ` (ready from ${sayDate(cut.mowFrom)})`}`;
  };
  const days = byDays(ahead);
  const line = (cuts: readonly Surplus[]): ReactNode => (
    <Text key={cuts[0]!.paddockId}>
      From <b>{sayDate(cuts[0]!.shutFrom)}</b>, to mow {mowOn(cuts[0]!)}:{' '}
      {cuts.map((cut, k) => (
        <Fragment key={cut.paddockId}>
          {0 < k && ', '}
          <span className="whole">
            {paddockName(plan, cut.paddockId)} (<Num of={cut.bales} />)
          </span>
        </Fragment>
      ))}
    </Text>
  );
  // Of one line more nobody wants to be told that it is there.
  const first = days.length <= FIRST_DAYS + 1 ? days : days.slice(0, FIRST_DAYS);
  const later = days.slice(first.length);
  return (
    <Stack gap="xs">
      {first.map(line)}
      {0 < later.length && (
        <Folded
          id="shut-later"
          title="Later"
          level={3}
          answer={later
            .flat()
            .map(({ paddockId }) => paddockName(plan, paddockId))
            .join(', ')}
        >
          <Stack gap="xs">{later.map(line)}</Stack>
        </Folded>
      )}
      <Text size="sm">
        Work picks the dry days; bales are counted as of the first day that the grass is ready. What
        is shut stays shut until it is mown, and days to come are what it looks like today: each is
        decided on a walk.
      </Text>
    </Stack>
  );
}

function byDays(cuts: readonly Surplus[]): (readonly Surplus[])[] {
  const days = new Map<string, Surplus[]>();
  for (const cut of cuts) {
    const key = `${cut.shutFrom} ${cut.mowFrom}`;
    days.set(key, [...(days.get(key) ?? []), cut]);
  }
  return [...days].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, group]) => group);
}

import { Text, Title } from '@mantine/core';
import type { HeatPart } from '../../../../shared/plan/heat.js';
import {
  SPOT_UNDER_HEAT,
  type HeatInstruction,
} from '../../../../shared/plan/heat-instructions.js';
import { formatValue, type Reader } from '../../../../shared/units/format.js';
import { useSayDate } from '../../explain/say-date.js';
import { HeatWeekTable } from './heat-week-table.js';

/** The brooder card's second half: what is on when, how high the lamps hang, bedding, hot weather. */
export function LampWeeks({ heat, farm }: { heat: HeatPart; farm: Reader }) {
  const sayDate = useSayDate();
  const { clearance, closeOff } = heat;
  const hasSpot = heat.weeks.some(({ night, day, noon }) =>
    [night, day, noon].some(({ underHeat }) => underHeat),
  );
  const hot = heat.weeks.find((week) => week.hot);
  return (
    <>
      <Title order={2} size="h3" mt="md">
        Heat, week by week
      </Title>
      <HeatWeekTable
        weeks={heat.weeks}
        label="Heat, week by week"
        table={{
          fz: 'md',
          my: 'xs',
          verticalSpacing: 2,
          withTableBorder: true,
          withColumnBorders: true,
        }}
        cell={(week, when) => (
          <>
            <Setting of={week[when]} farm={farm} />
            {when === 'night' &&
              week.lampHeight &&
              `, hung at ${formatValue(week.lampHeight.value, 'cm', farm)}`}
            {raisedText(week[when], farm)}
          </>
        )}
        {...(hasSpot ? { spot: (week, when) => spotText(week[when], farm) } : {})}
      />
      <Text size="sm">
        The temperature in each box is that of the air around the brooder: go by it, not by the
        clock. {hasSpot && SPOT_UNDER_HEAT} {ifLeftText(heat, farm)}
      </Text>
      {closeOff?.done &&
        closeOff.weeks.map((week) => (
          <Text key={week.from}>
            {sayDate(week.from)} to {sayDate(week.to)}: board at{' '}
            {formatValue(week.length.value, 'm', farm)}.
          </Text>
        ))}
      {clearance && (
        <Text fw={700} mt="xs">
          Lamp to bedding at least {formatValue(clearance.least.value, 'cm', farm)}: measure after
          every top-up.
          {clearance.tooCloseOn &&
            ` Unless they are raised with the bedding, lamps are too close from ${sayDate(String(clearance.tooCloseOn.value))}.`}
        </Text>
      )}
      {hot && (
        <Text mt="xs" size="sm">
          <b>From {sayDate(hot.from)}.</b> {hot.hot}
        </Text>
      )}
    </>
  );
}

const spotText = ({ underHeat }: HeatInstruction, farm: Reader): string =>
  underHeat ? formatValue(underHeat.value, 'degC', farm) : '–';

const raisedText = ({ raisedTo }: HeatInstruction, farm: Reader): string =>
  raisedTo ? `, raised to ${formatValue(raisedTo.value, 'cm', farm)}` : '';

function Setting({ of, farm }: { of: HeatInstruction; farm: Reader }) {
  return (
    <>
      {formatValue(of.around.value, 'degC', farm)}: <b>{of.words}</b>
    </>
  );
}

/** The worst that comes of leaving the night's heat on. */
function ifLeftText({ weeks }: HeatPart, farm: Reader): string {
  const left = weeks.flatMap(({ ifLeft }) => ifLeft?.value ?? []);
  return left.length === 0
    ? ''
    : `With the night’s heat and lid left as they are, the air of the whole brooder comes to as much as ${formatValue(Math.max(...left), 'degC', farm)} at a hot noon.`;
}

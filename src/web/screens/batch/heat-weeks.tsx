import { Stack, Table, Text } from '@mantine/core';
import type { HeatPart } from '../../../../shared/plan/heat.js';
import {
  SPOT_AND_AIR,
  type HeatInstruction,
  type HeatWeekPart,
} from '../../../../shared/plan/heat-instructions.js';
import { Caution } from '../../explain/caution.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';

/** How the heaters are set on cold nights, usual days and hot noons, week by week. */
export function HeatWeeks({ heat }: { heat: HeatPart }) {
  const sayDate = useSayDate();
  const hot = heat.weeks.find((week) => week.hot);
  // A plate warms what touches it: there is no spot to measure, and no column of dashes.
  const hasSpot = heat.weeks.some(({ night, day, noon }) =>
    [night, day, noon].some(({ underHeat }) => underHeat),
  );
  return (
    <Stack gap="sm">
      <Text size="sm">{SPOT_AND_AIR}</Text>
      <Text size="sm">
        Each block is for a whole week: its coldest night to expect, a day in its middle, its
        hottest noon. Today goes by its own day and night.
      </Text>
      <WideTable label="Heat week by week">
        <Table verticalSpacing="xs" className="stacks heat-weeks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>When</Table.Th>
              <Table.Th>Around the brooder</Table.Th>
              <Table.Th>What to do</Table.Th>
              <Table.Th>Air of the whole brooder</Table.Th>
              {hasSpot && <Table.Th>Spot under the heat</Table.Th>}
            </Table.Tr>
          </Table.Thead>
          {heat.weeks.map((week) => (
            <Table.Tbody key={week.from} className="avoid-break">
              <Table.Tr>
                <Table.Th scope="rowgroup" colSpan={hasSpot ? 5 : 4}>
                  {sayDate(week.from)} to {sayDate(week.to)}, {week.fromAgeDays} to {week.toAgeDays}{' '}
                  days old
                </Table.Th>
              </Table.Tr>
              <HourRow
                name="Coldest night"
                of={week.night}
                lampHeight={week.lampHeight}
                hasSpot={hasSpot}
              />
              <HourRow name="Day in its middle" of={week.day} hasSpot={hasSpot} />
              <HourRow name="Hottest noon" of={week.noon} ifLeft={week.ifLeft} hasSpot={hasSpot} />
            </Table.Tbody>
          ))}
        </Table>
      </WideTable>
      {hot && <Caution line={`Hot weather, from ${sayDate(hot.from)}`}>{hot.hot}</Caution>}
    </Stack>
  );
}

interface HourProps {
  readonly name: string;
  readonly of: HeatInstruction;
  readonly lampHeight?: HeatWeekPart['lampHeight'];
  readonly ifLeft?: HeatWeekPart['ifLeft'];
  readonly hasSpot: boolean;
}

function HourRow({ name, of, lampHeight, ifLeft, hasSpot }: HourProps) {
  return (
    <Table.Tr>
      <Table.Td className="whole-line heat-when">{name}</Table.Td>
      <Table.Td data-label="Around the brooder">
        <Num of={of.around} />
      </Table.Td>
      <Table.Td className="whole-line">
        <b>{of.words}</b>
        {lampHeight && (
          <>
            , hung <Num of={lampHeight} /> above the bedding
          </>
        )}
        {of.raisedTo && (
          <>
            , raised to <Num of={of.raisedTo} />
          </>
        )}
      </Table.Td>
      <Table.Td data-label="Air of the whole brooder">
        <Num of={of.air} />
        {ifLeft && (
          <Text size="sm">
            left as at night: <Num of={ifLeft} />
          </Text>
        )}
      </Table.Td>
      {hasSpot && (
        <Table.Td data-label="Spot under the heat">
          {of.underHeat ? <Num of={of.underHeat} /> : '–'}
        </Table.Td>
      )}
    </Table.Tr>
  );
}

/** What others print about heaters and chicks, beside what this brooder asks for. */
export function HeatRulesTable({ rules }: { rules: HeatPart['rules'] }) {
  if (rules.others.length === 0 && !rules.lampRule) return null;
  return (
    <>
      <Text size="sm" mt="sm">
        What others print, in heaters like yours. They count heaters over chicks in a room they do
        not describe; the figure above counts what your brooder loses.
      </Text>
      <Table my="xs">
        <Table.Tbody>
          {rules.lampRule && (
            <Table.Tr>
              <Table.Td>The common rule: 75 chicks a 250 W lamp, fewer in the cold</Table.Td>
              <Table.Td>
                <Num of={rules.lampRule} />
              </Table.Td>
            </Table.Tr>
          )}
          {rules.others.map(({ name, needed }) => (
            <Table.Tr key={name}>
              <Table.Td>{name}</Table.Td>
              <Table.Td>
                <Num of={needed} />
              </Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </>
  );
}

/** A board across the brooder: how much floor to leave, and what it saves. */
export function CloseOffFacts({ closeOff }: { closeOff: NonNullable<HeatPart['closeOff']> }) {
  const sayDate = useSayDate();
  return (
    <>
      <Text size="sm" mt="sm">
        {closeOff.done
          ? 'A part is closed off; heat and energy are of the part in use.'
          : 'A board across it would do while the birds need less floor. Say under Buildings and gear if you do that.'}
      </Text>
      {closeOff.weeks.map((week) => (
        <Facts key={week.from}>
          <Fact of={week.floor} label={`Floor, ${sayDate(week.from)} to ${sayDate(week.to)}`} />
          <Fact of={week.length} />
        </Facts>
      ))}
      {closeOff.energySaved.value < 1 ? (
        <Text size="sm">
          As many heaters burn either way: it saves no power, and keeps the birds nearer to heat,
          feed and water.
        </Text>
      ) : (
        <Facts>
          <Fact of={closeOff.energySaved} />
          <Fact of={closeOff.moneySaved} label="Which is" />
        </Facts>
      )}
    </>
  );
}

import { Alert, Stack, Table, Text } from '@mantine/core';
import type { HeatPart } from '../../../../shared/plan/heat.js';
import type { HeatInstruction } from '../../../../shared/plan/heat-instructions.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { HeatWeekTable } from './heat-week-table.js';

/** How the heaters are set on cold nights, usual days and hot noons, week by week. */
export function HeatWeeks({ heat }: { heat: HeatPart }) {
  const sayDate = useSayDate();
  const hot = heat.weeks.find((week) => week.hot);
  return (
    <Stack gap="sm">
      <HeatWeekTable
        weeks={heat.weeks}
        label="Heat week by week"
        minWidth={600}
        table={{ verticalSpacing: 'xs' }}
        cell={(week, when) => (
          <>
            <Setting of={week[when]} />
            {when === 'night' && week.lampHeight && (
              <Text size="sm">
                <Num of={week.lampHeight} /> above the bedding
              </Text>
            )}
            <Raised to={week[when].raisedTo} />
            {when === 'noon' && week.ifLeft && (
              <Text size="sm">
                all left on: <Num of={week.ifLeft} />
              </Text>
            )}
          </>
        )}
      />
      {hot && (
        <Alert color="warn" title={`Hot weather, from ${sayDate(hot.from)}`}>
          {hot.hot}
        </Alert>
      )}
    </Stack>
  );
}

function Raised({ to }: { to: HeatInstruction['raisedTo'] }) {
  if (!to) return null;
  return (
    <Text size="sm">
      raised to <Num of={to} />
    </Text>
  );
}

function Setting({ of }: { of: HeatInstruction }) {
  return (
    <>
      <Text size="sm" fw={600}>
        {of.words}
      </Text>
      <Text size="sm">
        <Num of={of.around} /> around it, <Num of={of.air} /> inside
        {of.underHeat && (
          <>
            , <Num of={of.underHeat} /> straight under the heat
          </>
        )}
      </Text>
    </>
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

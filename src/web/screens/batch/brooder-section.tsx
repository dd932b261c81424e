import { Alert, List, Stack, Table, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { BroodingPart } from '../../../../shared/plan/brooding.js';
import { Fact, Facts, Num, Range } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';
import { Section } from '../../shell/section.js';
import { CloseOffFacts, HeatRulesTable, HeatWeeks } from './heat-weeks.js';
import { RefillFacts } from './refill-facts.js';
import { StockingTable } from './stocking-table.js';

export function BrooderSection({ plan, brooding }: { plan: BatchPlan; brooding: BroodingPart }) {
  const sayDate = useSayDate();
  const { heat, space } = plan;
  return (
    <Stack>
      <Section level={3} title="Temperature, step by step">
        <Text size="sm" mb="xs">
          {brooding.scheduleName}. Measured at {brooding.measuredAt}.
        </Text>
        <WideTable label="Temperature, step by step">
          <Table className="stacks">
            <Table.Thead>
              <Table.Tr>
                <Table.Th>Dates</Table.Th>
                <Table.Th>Age, days</Table.Th>
                <Table.Th>Under the heat</Table.Th>
                <Table.Th>All sources</Table.Th>
                <Table.Th>Floor there</Table.Th>
                <Table.Th>Cool end</Table.Th>
                <Table.Th>Room, if all is heated</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {brooding.steps.map((step) => (
                <Table.Tr key={step.from}>
                  <Table.Td className="whole-line">
                    <span className="whole">{sayDate(step.from)}</span> to{' '}
                    <span className="whole">{sayDate(step.to)}</span>
                  </Table.Td>
                  <Table.Td data-label="Age, days">
                    {step.fromAgeDays === step.toAgeDays
                      ? step.toAgeDays
                      : `${step.fromAgeDays}–${step.toAgeDays}`}
                  </Table.Td>
                  <Table.Td data-label="Under the heat">
                    <Num of={step.underHeater} />
                  </Table.Td>
                  <Table.Td data-label="All sources">
                    <Range of={step.underHeater} />
                  </Table.Td>
                  <Table.Td data-label="Floor there">
                    <Num of={step.floor} />
                  </Table.Td>
                  <Table.Td data-label="Cool end">
                    <Num of={step.coolEnd} />
                    {step.hotNoon && (
                      <>
                        ; at a hot noon <Num of={step.hotNoon} />
                      </>
                    )}
                  </Table.Td>
                  <Table.Td data-label="Room, if all is heated">
                    <Num of={step.room} />
                  </Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
          </Table>
        </WideTable>
        <List mt="sm" size="sm">
          {brooding.lookFor.map((line) => (
            <List.Item key={line}>{line}</List.Item>
          ))}
        </List>
      </Section>
      {heat && 0 < heat.weeks.length && (
        <Section level={3} title="Heat, week by week">
          <HeatWeeks heat={heat} />
        </Section>
      )}
      {heat && (
        <Section level={3} title={`Heat in ${heat.brooderName}`}>
          <Facts>
            <Fact of={heat.need} />
            <Fact of={heat.installed} />
            <Fact of={heat.heatersNeeded} />
            <Fact of={heat.coldestNight} />
            <Fact of={heat.coldestNightLow} />
            <Fact of={heat.conduction} />
            <Fact of={heat.openTop} />
            <Fact of={heat.lastHeatDay} />
            <Fact of={heat.energyPerDay} />
            <Fact of={heat.energyTotal} />
            <Fact of={heat.gasPerDay} />
            <Fact of={heat.gasLiters} />
            <Fact of={heat.cost} />
            <Fact of={heat.circuit?.capacity} />
            <Fact of={heat.circuit?.load} />
            <Fact of={heat.clearance?.least} />
            <Fact of={heat.clearance?.tooCloseOn} />
          </Facts>
          {heat.gasNeeds && (
            <Text size="sm" mt="sm">
              {heat.gasNeeds}
            </Text>
          )}
          <Alert
            mt="sm"
            color={heat.enough ? 'accent' : 'stop'}
            title={heat.enough ? 'The heat source can do it' : 'The heat source is too weak'}
          >
            {heat.circuit &&
              (heat.circuit.carries
                ? `${heat.circuit.name} carries it.`
                : `${heat.circuit.name} cannot carry it.`)}
          </Alert>
          <HeatRulesTable rules={heat.rules} />
          {heat.closeOff && <CloseOffFacts closeOff={heat.closeOff} />}
        </Section>
      )}
      <Section level={3} title={`Room: ${space.standard.toLowerCase()}`}>
        <WideTable label="Room">
          <Table className="stacks">
            <Table.Thead>
              <Table.Tr>
                <Table.Th> </Table.Th>
                <Table.Th>Peak need</Table.Th>
                <Table.Th>Have</Table.Th>
                <Table.Th>Outgrown on</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {space.needs.map((need) => (
                <Table.Tr key={need.name}>
                  <Table.Th scope="row" fw={400}>
                    {need.name}
                  </Table.Th>
                  <Table.Td data-label="Peak need">
                    <Num of={need.most} />
                  </Table.Td>
                  <Table.Td data-label="Have">
                    {need.have ? <Num of={need.have} /> : 'not given'}
                  </Table.Td>
                  <Table.Td data-label="Outgrown on">
                    {need.runsOut ? <Num of={need.runsOut} /> : need.have ? 'no day' : '–'}
                  </Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
          </Table>
        </WideTable>
        <StockingTable rows={space.stocking.filter(({ isBrooder }) => isBrooder)} />
        <RefillFacts plan={plan} isBrooder />
        {space.litter && (
          <Facts>
            <Fact of={space.litter.start} />
            <Fact of={space.litter.topUp} />
            <Fact of={space.litter.total} />
            <Fact of={space.litter.bags} />
            <Fact of={space.litter.cleanOut} />
          </Facts>
        )}
      </Section>
    </Stack>
  );
}

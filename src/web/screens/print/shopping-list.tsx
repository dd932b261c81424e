import { Table, Text, Title } from '@mantine/core';
import { GETS_BROODER } from '../../../../shared/plan/batch-events.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { capital } from '../../../../shared/plan/bird-words.js';
import { orderOf } from '../../../../shared/plan/story/life-line.js';
import { edgesToAdd, gearToGet } from '../../../../shared/plan/gear-to-get.js';
import type { Task } from '../../../../shared/plan/tasks/task.js';
import { sayPrice } from '../../../../shared/money/unit-price.js';
import { formatLongDate } from '../../../../shared/units/dates.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useSayDate } from '../../explain/say-date.js';
import { useTaskDay } from '../../tick/fitted-tasks.js';
import { WideTable } from '../../shell/wide-table.js';
import type { SheetProps } from './sheets.js';

/** Something to buy. */
interface Row {
  readonly by: string;
  readonly what: string;
  readonly amount: string;
  readonly price: string | undefined;
  /** The work of getting it, where it is work of its own. */
  readonly task?: Task | undefined;
  /** Feed, which a trip for all that eat brings. */
  readonly isFetched?: true;
}

/** What to buy, by the date to buy it. */
export function ShoppingList({ plan, asked: { farm, batch, tables, picture } }: SheetProps) {
  const sayDate = useSayDate();
  const { facilities } = picture;
  const { feed, space, heat, bill, leaving } = plan;
  const price = (label: string) => {
    const line = bill.lines.find((each) => each.label === label);
    return line?.price && sayPrice(line.price, line.amount.unit, farm);
  };
  const dayOf = useTaskDay('batch');
  const order = orderOf(plan);
  const rows: Row[] = [
    ...(plan.hatching || order === undefined || batch.orderDate !== undefined
      ? []
      : [
          {
            by: dayOf(order).dueBy,
            task: order,
            what: `${capital(plan.words.young)}, ${plan.strain}`,
            amount: formatValue(plan.birds.chicksPlaced.value, 'count', farm),
            price: price(capital(plan.words.young)),
          },
        ]),
    ...edgesToAdd(plan, { batch, facilities }).map(({ by, kind, needCm, haveCm }) => ({
      by,
      what: `More ${kind}`,
      amount: `${formatValue(needCm, 'cm', farm)} of edge (have ${formatValue(haveCm, 'cm', farm)})`,
      price: undefined,
    })),
    ...gearToGet(plan, { batch, tables, facilities }).map(({ by, what, amounts }) => ({
      by,
      what,
      amount: amounts
        .map(({ value, unit, of }) => {
          const said = formatValue(value, unit, farm);
          return of === 'hold' ? `${said} in all` : of === 'edge' ? `${said} of edge` : said;
        })
        .join(', ')
        .concat(' (assumed)'),
      price: undefined,
    })),
    ...feed.phases.flatMap((phase) =>
      phase.deliveries.map((d) => ({
        by: String(d.buyBy.value),
        isFetched: true as const,
        what: `${phase.name} feed, ${phase.protein}`,
        amount: `${d.bags.value} × ${formatValue(phase.bagKg, 'kg', farm)}`,
        price: price(`${phase.name} feed`),
      })),
    ),
    ...(space.litter
      ? [
          {
            by: earlier(plan, 'bed-brooder', 'brooder-clean'),
            what: 'Shavings',
            amount: formatValue(space.litter.bags.value, 'bags', farm),
            price: price('Bedding'),
          },
        ]
      : []),
    ...(heat?.gasLiters
      ? [
          {
            by: plan.arrivalDate,
            what: 'Propane for the brooder',
            amount: formatValue(heat.gasLiters.value, 'L', farm),
            price: sayPrice(farm.gasPricePerL, 'L', farm),
          },
        ]
      : []),
    ...(leaving?.scaldGas
      ? [
          {
            by: leaving.processingDays[0]!.on,
            what: 'Propane to scald',
            amount: formatValue(leaving.scaldGas.value, 'L', farm),
            price: sayPrice(farm.gasPricePerL, 'L', farm),
          },
        ]
      : []),
    ...plan.tasks.tasks
      .filter(({ event, templateId }) => event === 'heaters-short' || GETS_BROODER.has(templateId))
      .map(({ start, name }) => ({ by: start, what: name, amount: '', price: undefined })),
    ...(leaving
      ? leaving.iceDays.map(({ on, bags, kg }) => ({
          by: on,
          what: 'Bags of ice',
          amount: `${bags} (${formatValue(kg, 'kg', farm)})`,
          price: price('Ice'),
        }))
      : []),
    ...(leaving?.freezerBags
      ? [
          {
            by: leaving.processingDays[0]!.on,
            what: 'Freezer bags',
            amount: String(leaving.freezerBags.value),
            price: price('Freezer bags'),
          },
        ]
      : []),
  ].sort((a, b) => (a.by < b.by ? -1 : 1));
  return (
    <>
      <Title order={1}>Shopping list: {plan.name}</Title>
      <Text>
        {plan.birds.chicksPlaced.value} birds {plan.hatching ? 'hatch' : 'arrive'}{' '}
        {formatLongDate(plan.arrivalDate, farm)}. Prices are for one, in {farm.currency}.
      </Text>
      <WideTable label="Shopping list">
        <Table className="stacks" my="sm" verticalSpacing={4} withTableBorder>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Planned for</Table.Th>
              <Table.Th>Due by</Table.Th>
              <Table.Th>What</Table.Th>
              <Table.Th>How much</Table.Th>
              <Table.Th>Price</Table.Th>
              <Table.Th>Got</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {rows.map((row) => (
              <Table.Tr key={row.by + row.what}>
                <Table.Td style={{ whiteSpace: 'nowrap' }}>
                  <Planned row={row} />
                </Table.Td>
                <Table.Td data-label="Due by" style={{ whiteSpace: 'nowrap' }}>
                  {sayDate(row.by)}
                </Table.Td>
                <Table.Td className="whole-line">{row.what}</Table.Td>
                <Table.Td>{row.amount}</Table.Td>
                <Table.Td>{row.price ?? ''}</Table.Td>
                <Table.Td>☐</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      <Text>
        What is assumed nobody has said to be there: where you have it, say so under Buildings and
        gear, or with the batch. The feed is what these birds eat, and by when. It is fetched on
        trips for all that eat of it, in other amounts: “Feed to buy” lists them by day.
      </Text>
      <Text>
        In all {formatValue(feed.total.value, 'kg', farm)} of feed.{' '}
        {bill.lines.some(({ cost }) => cost === undefined)
          ? // A sum without the dearest things would be read as what it all costs.
            `No sum yet, ${bill.leftOut.join(', ')}.`
          : `The bill comes to ${formatValue(bill.total.value, 'money', farm)}${
              bill.leftOut.length === 0 ? '' : `, ${bill.leftOut.join(', ')}`
            }.`}
      </Text>
    </>
  );
}

/** The day on which it is fetched, where the plan of the work knows one. */
function Planned({ row: { task, isFetched } }: { row: Row }) {
  const sayDate = useSayDate();
  const dayOf = useTaskDay('batch');
  if (isFetched) return 'on the trips';
  const day = task && dayOf(task);
  return day?.isFitted ? sayDate(day.on) : null;
}

/** Date of the task that beds the brooder, else the arrival. */
function earlier(plan: BatchPlan, ...parts: string[]): string {
  return (
    plan.tasks.tasks.find((t) => parts.some((p) => t.id.includes(p)))?.start ?? plan.arrivalDate
  );
}

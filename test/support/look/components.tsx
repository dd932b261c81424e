import '@mantine/core/styles.css';
import '../../../src/web/look/tokens.css';
import '../../../src/web/look/font.css';
import '../../../src/web/look/base.css';
import './components.css';
import {
  Accordion,
  ActionIcon,
  Alert,
  Button,
  Checkbox,
  Fieldset,
  Group,
  MantineProvider,
  Radio,
  SegmentedControl,
  Slider,
  Stack,
  Switch,
  Table,
  Tabs,
  Text,
  Textarea,
  TextInput,
  Title,
} from '@mantine/core';
import { IconTrash } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import { createRoot } from 'react-dom/client';
import { Caution } from '../../../src/web/explain/caution.js';
import { ExplainProvider } from '../../../src/web/explain/explain-panel.js';
import { IssueList } from '../../../src/web/explain/issue-list.js';
import { MarkBadge } from '../../../src/web/explain/mark-badge.js';
import { Facts } from '../../../src/web/explain/number.js';
import { Select } from '../../../src/web/fields/select.js';
import { series, type SeriesNumber } from '../../../src/web/look/series.js';
import { variables } from '../../../src/web/look/library-variables.js';
import { theme } from '../../../src/web/look/theme.js';
import { Empty } from '../../../src/web/shell/empty.js';
import { PartNav } from '../../../src/web/shell/part-nav.js';
import { Section } from '../../../src/web/shell/section.js';
import { Problems } from '../../../src/web/shell/states.js';

const issues = [
  { code: 'a', level: 'stop', text: 'The lamp hangs 10 in above dry bedding. Raise it to 18 in.' },
  {
    code: 'b',
    level: 'act',
    text: 'The floor is outgrown on May 18. Move them out sooner, or give them more room.',
    mark: 'second-hand',
    sources: ['BOOK'],
  },
  { code: 'c', level: 'note', text: 'The first eggs come in August.' },
] as const;
const sources = { BOOK: { title: 'A book on brooding' } } as never;

/** Every component the page is made of, for the tests to look at; no part of what is built. */
function Components() {
  return (
    <Stack component="main" p="md" maw={900}>
      <Title order={1}>Components</Title>
      <PartNav
        base=""
        label="Parts"
        parts={[
          { path: location.pathname, label: 'Here' },
          { path: '/there', label: 'Elsewhere' },
        ]}
      />
      <Section title="Cautions">
        <Caution line="Chicks carry salmonella">Wash your hands with soap straight after.</Caution>
        <Caution level="note" line="One line, and no more to it" />
        <IssueList issues={issues} tables={{ sources }} />
      </Section>
      <Section title="Numbers">
        <Facts>
          <Number label="Under the lamps" note="84 °F to 86 °F">
            85 °F
          </Number>
          <Number label="Feed today" note="Grower">
            13 lb
          </Number>
        </Facts>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Paddock</Table.Th>
              <Table.Th ta="right">Grass</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            <Table.Tr>
              <Table.Td>Oak</Table.Td>
              <Table.Td ta="right">1,240 lb</Table.Td>
            </Table.Tr>
          </Table.Tbody>
        </Table>
        <Group>
          {['own-record', 'published', 'computed', 'second-hand', 'from-memory', 'assumed'].map(
            (mark) => (
              <MarkBadge key={mark} mark={mark} />
            ),
          )}
        </Group>
      </Section>
      <Section title="Buttons">
        <Group>
          <Button>Save</Button>
          <Button variant="light">Add</Button>
          <Button variant="default">Preview</Button>
          <Button variant="subtle">Back</Button>
          <Button color="stop">Delete</Button>
          <Button disabled>Saved</Button>
          <ActionIcon color="stop" aria-label="Delete this">
            <IconTrash aria-hidden />
          </ActionIcon>
        </Group>
      </Section>
      <Inputs />
      <Section title="Messages">
        <Alert color="accent" title="Saved">
          The plan starts from these heights.
        </Alert>
        <Problems texts={['Length is 800 ft, but must be from 0.66 ft to 196 ft.']} />
        <Empty text="No batch yet. All it needs is a breed, how many, and a date.">
          <Button>Plan the first batch</Button>
        </Empty>
      </Section>
      <Section title="Series and grades">
        {([1, 2, 3, 4, 5, 6] as SeriesNumber[]).map((n) => (
          <svg key={n} className="look-line" viewBox="0 0 100 8" aria-hidden>
            <line
              x1={0}
              x2={100}
              y1={4}
              y2={4}
              stroke={series(n).color}
              strokeDasharray={series(n).strokeDasharray}
            />
          </svg>
        ))}
        <div className="look-grades">
          {[0, 1, 2, 3, 4].map((grade) => (
            <span key={grade} style={{ background: `var(--grade-${grade})` }}>
              {20 * grade}
            </span>
          ))}
        </div>
      </Section>
    </Stack>
  );
}

function Inputs() {
  return (
    <Section title="Fields">
      <Fieldset legend="Size">
        <TextInput label="Name" description="As you call it" placeholder="Shed brooder" />
        <TextInput label="Length, ft" defaultValue="800" error="Must be from 0.66 ft to 196 ft." />
        <Select
          label="Soil"
          value="loam"
          onChange={() => undefined}
          options={[{ id: 'loam', name: 'Loam' }]}
        />
        <Textarea label="Notes" />
      </Fieldset>
      <Group mt="md">
        <Checkbox label="Dry ground" defaultChecked />
        <Checkbox label="No rain" />
        <Radio label="Keep theirs" name="whose" defaultChecked />
        <Radio label="Keep mine" name="whose" />
        <Switch label="On a thermostat" defaultChecked />
        <Switch label="Fetch weather" />
      </Group>
      <SegmentedControl mt="md" data={['For meat', 'For eggs']} />
      <Slider mt="md" defaultValue={40} thumbLabel="Move the arrival" label={null} />
      <Tabs mt="md" defaultValue="a">
        <Tabs.List>
          <Tabs.Tab value="a">At a glance</Tabs.Tab>
          <Tabs.Tab value="b">The bill</Tabs.Tab>
        </Tabs.List>
        <Tabs.Panel value="a">
          <Text c="dimmed">Small words beside</Text>
        </Tabs.Panel>
        <Tabs.Panel value="b">none</Tabs.Panel>
      </Tabs>
      <Accordion mt="md" variant="contained">
        <Accordion.Item value="more">
          <Accordion.Control>More choices</Accordion.Control>
          <Accordion.Panel>none</Accordion.Panel>
        </Accordion.Item>
      </Accordion>
    </Section>
  );
}

const Number = ({
  label,
  note,
  children,
}: {
  label: string;
  note: string;
  children: ReactNode;
}) => (
  <div>
    <dt>{label}</dt>
    <dd>
      <button type="button" className="open-number">
        {children}
      </button>
      <small>{note}</small>
    </dd>
  </div>
);

createRoot(document.getElementById('root')!).render(
  <MantineProvider
    theme={theme}
    cssVariablesResolver={variables}
    defaultColorScheme="auto"
    deduplicateCssVariables={false}
  >
    <ExplainProvider
      tables={undefined}
      farm={{ units: 'us', currency: 'USD', timeZone: 'America/New_York' }}
    >
      <Components />
    </ExplainProvider>
  </MantineProvider>,
);

import { Alert, Anchor, Button, Code, Container, List, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { getJson } from '../../api/client.js';
import { browserUnits } from '../../api/browser-units.js';
import { formatLongDate } from '../../../../shared/units/dates.js';
import { useAll } from '../../shell/states.js';

interface TrustView {
  readonly authority?: {
    readonly name: string;
    readonly fingerprint: string;
    readonly endsOn: string;
  };
}

/** How a phone comes to trust this computer, and what does not work before it does. */
export default function TrustScreen() {
  const all = useAll(
    useQuery({ queryKey: ['trust'], queryFn: () => getJson<TrustView>('/trust') }),
  );
  if ('waiting' in all) return all.waiting;
  const [{ authority }] = all.data;
  return (
    <Container component="main" size="md" py="xl">
      <Stack gap="lg">
        <Title order={1}>Use it on a phone</Title>
        <HowItIsNow />
        {authority ? <Download authority={authority} /> : <NoneYet />}
        {authority && DEVICES.map((device) => <Device key={device.name} {...device} />)}
        <Text>
          Trust only the certificate of your own household, and only on your own phones. Its key
          stays on this computer, in the folder of the data: whoever has that key can pass for any
          site on a phone that trusts it.
        </Text>
        <Anchor component={Link} href="/" py="xs">
          All farms
        </Anchor>
      </Stack>
    </Container>
  );
}

/** Over plain http all but a few things work; a browser says which it is. */
function HowItIsNow() {
  if (window.isSecureContext) {
    return (
      <Alert color="accent" title="Everything works here">
        This browser trusts the address it has open, so the phone’s position can be used.
      </Alert>
    );
  }
  return (
    <Alert color="warn" title="Two things do not work here">
      This page is open over plain http. Everybody on the network could read along, so a browser
      does not give such a page your position (“Mark this corner”), nor lets it go on working
      without signal. All the rest works. With https, set up below, these do too.
    </Alert>
  );
}

function NoneYet() {
  return (
    <Stack gap="xs" component="section">
      <Title order={2} size="h3">
        First, on the computer that Broodfold runs on
      </Title>
      <List type="ordered">
        <List.Item>
          Stop Broodfold, and make the certificates once: <Code>npm run certificate</Code>
        </List.Item>
        <List.Item>
          Start it open to your network: <Code>HOST=0.0.0.0 npm start</Code>
        </List.Item>
        <List.Item>
          Open the address with https that was printed, with <Code>/trust</Code> behind it, on the
          phone. It warns once; go on, and this page then says what to do.
        </List.Item>
      </List>
    </Stack>
  );
}

function Download({ authority }: { authority: NonNullable<TrustView['authority']> }) {
  return (
    <Stack gap="xs" component="section">
      <Title order={2} size="h3">
        The certificate
      </Title>
      <Button component="a" href="/api/trust/authority.crt" style={{ alignSelf: 'start' }}>
        Download the certificate
      </Button>
      <Text>
        It is called “{authority.name}” and ends on{' '}
        {formatLongDate(authority.endsOn, { units: browserUnits() })}. A phone may show these
        letters and digits (SHA-256) before it trusts; they must be the same:
      </Text>
      <Code block style={{ whiteSpace: 'pre-wrap', overflowWrap: 'anywhere' }}>
        {authority.fingerprint}
      </Code>
    </Stack>
  );
}

interface DeviceSteps {
  readonly name: string;
  readonly steps: readonly ReactNode[];
}

function Device({ name, steps }: DeviceSteps) {
  return (
    <Stack gap="xs" component="section">
      <Title order={2} size="h3">
        {name}
      </Title>
      <List type="ordered">
        {steps.map((step, k) => (
          <List.Item key={k}>{step}</List.Item>
        ))}
      </List>
    </Stack>
  );
}

const THEN_OPEN = 'Close the browser, open it again, and open Broodfold: it no longer warns.';
const DEVICES: readonly DeviceSteps[] = [
  {
    name: 'iPhone and iPad',
    steps: [
      'Download the certificate with Safari, and allow the download of a profile.',
      'Settings, Profile Downloaded: Install, and type your code.',
      'Settings, General, About, Certificate Trust Settings: switch it on. Without this step it is not trusted.',
      THEN_OPEN,
    ],
  },
  {
    name: 'Android',
    steps: [
      'Download the certificate.',
      'Settings, search for “CA certificate” (Security, Encryption and credentials, Install a certificate): choose CA certificate, Install anyway, and the file from Downloads.',
      'The phone needs a screen lock, and says from then on that the network may be watched: that is this certificate.',
      THEN_OPEN,
    ],
  },
  {
    name: 'Windows',
    steps: [
      'Download the certificate and open it: Install Certificate, Current User.',
      'Place it in “Trusted Root Certification Authorities”, and confirm.',
      THEN_OPEN,
    ],
  },
  {
    name: 'Mac',
    steps: [
      'Download the certificate and open it: it goes into Keychain Access, under login.',
      'Open it there, and under Trust choose “Always Trust”.',
      THEN_OPEN,
    ],
  },
  {
    name: 'Linux, and Firefox anywhere',
    steps: [
      'Firefox: Settings, search for “certificates”, View Certificates, Authorities, Import, and trust it for websites.',
      'Chromium on Linux: Settings, search for “certificates”, Manage, import it under Authorities.',
      THEN_OPEN,
    ],
  },
];

import './mishap.css';
import { Button, Group, Text } from '@mantine/core';
import type { ReactNode } from 'react';
import type { Mishap, WayOn } from '../../../shared/plan/mishap/way-on.js';
import { Caution } from '../explain/caution.js';
import { Num } from '../explain/number.js';

/** What is so, a line each. */
export function Follows({ lines, label }: { lines: readonly string[]; label: string }) {
  return (
    <ul className="mishap-follows" aria-label={label}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

/** A batch or brooder with what follows for it and the ways on, those that do first. */
export function MishapCard({
  mishap: { name, follows, numbers, ways },
  onKeep,
}: {
  mishap: Mishap;
  /** Keeps a batch as a way has it; left out where nothing can be kept. */
  onKeep?: (way: WayOn) => void;
}) {
  return (
    <section className="mishap-card" aria-label={name}>
      <h3>{name}</h3>
      <Follows lines={follows} label={`What follows for ${name}`} />
      <Numbers of={numbers} />
      <Ways of={ways} label={`What can be done for ${name}`} {...(onKeep ? { onKeep } : {})} />
    </section>
  );
}

/** Ways on, each with what follows from it. */
export function Ways({
  of,
  label,
  isOff = false,
  onKeep,
}: {
  of: readonly WayOn[];
  label: string;
  isOff?: boolean;
  /** Keeps a batch as a way has it; left out where nothing can be kept. */
  onKeep?: (way: WayOn) => void;
}) {
  if (of.length === 0) return null;
  return (
    <ul className="mishap-ways" aria-label={label}>
      {of.map((way) => (
        <li key={way.id}>
          <Text fw={700}>
            {way.words}
            {way.isEnough !== undefined && ` · ${way.isEnough ? 'enough' : 'not enough'}`}
          </Text>
          {way.follows.map((line) => (
            <Text key={line}>{line}</Text>
          ))}
          <Numbers of={way.numbers ?? []} />
          {way.batch && onKeep && (
            <Button variant="default" mt="xs" disabled={isOff} onClick={() => onKeep(way)}>
              Keep this
            </Button>
          )}
        </li>
      ))}
    </ul>
  );
}

function Numbers({ of }: { of: Mishap['numbers'] }) {
  if (of.length === 0) return null;
  return (
    <p className="mishap-numbers">
      {of.map((each) => (
        <span key={each.label}>
          {each.label} <Num of={each} />
        </span>
      ))}
    </p>
  );
}

/** What can hurt somebody, once for all of them. */
export function Cautions({ of }: { of: readonly Mishap[] }) {
  const all = new Map(of.flatMap(({ cautions }) => cautions.map((each) => [each.title, each])));
  return [...all.values()].map((each) => <CautionSaid key={each.title} of={each} />);
}

/** A caution with who says so. */
export const CautionSaid = ({ of: { title, text, from } }: { of: Mishap['cautions'][number] }) => (
  <Caution line={title}>
    {text}
    {0 < from.length && <Text size="sm">{from.join('; ')}</Text>}
  </Caution>
);

/** Keep what was tried, or leave all as it was. */
export function KeepOrLeave({
  keep,
  isOff = false,
  isKeeping,
  onKeep,
  onBack,
  children,
}: {
  /** Left out where there is nothing to keep. */
  keep?: string;
  isOff?: boolean;
  isKeeping?: boolean;
  onKeep?: () => void;
  onBack: () => void;
  children?: ReactNode;
}) {
  return (
    <Group>
      {keep !== undefined && (
        <Button
          size="md"
          disabled={isOff}
          loading={isKeeping ?? false}
          {...(onKeep ? { onClick: onKeep } : {})}
        >
          {keep}
        </Button>
      )}
      {children}
      <Button variant="subtle" onClick={onBack}>
        {keep === undefined ? 'Back' : 'Leave it as it was'}
      </Button>
    </Group>
  );
}

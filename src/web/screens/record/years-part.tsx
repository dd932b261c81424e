import type { ReactNode } from 'react';
import { Folded } from '../../shell/folded.js';
import { Section } from '../../shell/section.js';

/** Several years of something: long on a phone, so that the record has it a touch deeper. */
export function YearsPart({
  isFolded = false,
  children,
  ...head
}: {
  id: string;
  title: string;
  answer: string;
  /** In the binder it stands open. */
  isFolded?: boolean | undefined;
  children: ReactNode;
}) {
  return isFolded ? (
    <Folded {...head}>{children}</Folded>
  ) : (
    <Section title={head.title}>{children}</Section>
  );
}

import './story.css';
import { Suspense, useState, type ReactNode } from 'react';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import type { StoryPart } from '../../../../shared/plan/story/story-part.js';
import { Num } from '../../explain/number.js';
import { useUnfolding } from '../../shell/folded.js';

interface Props {
  readonly part: StoryPart | 'now' | 'record' | 'days' | 'paper';
  readonly title: string;
  /** Its time is over: it stands shut, to be opened. */
  readonly isPast?: boolean;
  readonly children: ReactNode;
}

/** One question that is asked of a batch, and its answer. */
export function StorySection({ part, title, isPast = false, children }: Props) {
  const { isOpen, setOpen, inside } = useUnfolding<HTMLElement>(part);
  return (
    <section id={part} ref={inside} aria-labelledby={`${part}-title`} className="story-part">
      <h2 id={`${part}-title`}>{title}</h2>
      {isPast ? (
        <Deeper title="This is past" isOpen={isOpen} onOpen={setOpen}>
          {children}
        </Deeper>
      ) : (
        children
      )}
    </section>
  );
}

/** The one number of a part, with what it is beside it. */
export function Lead({ of, children }: { of: Quantity | undefined; children?: ReactNode }) {
  return (
    <div className="story-lead">
      {of && (
        <p className="story-number">
          <Num of={of} />
          <small>{of.label}</small>
        </p>
      )}
      <div>{children}</div>
    </div>
  );
}

/** The one picture of a part; its place is kept while it is drawn. */
export function Picture({ title, children }: { title: string; children: ReactNode }) {
  return (
    <figure className="story-picture">
      <figcaption>{title}</figcaption>
      <Suspense fallback={<div className="story-drawing">Drawing …</div>}>{children}</Suspense>
    </figure>
  );
}

/** One touch deeper: made when it is opened. */
export function More({ title, children }: { title: string; children: ReactNode }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <Deeper title={title} isOpen={isOpen} onOpen={setOpen}>
      {children}
    </Deeper>
  );
}

function Deeper({
  title,
  isOpen,
  onOpen,
  children,
}: {
  title: string;
  isOpen: boolean;
  onOpen: (isOpen: boolean) => void;
  children: ReactNode;
}) {
  return (
    <details
      className="story-more no-print"
      open={isOpen}
      onToggle={(e) => onOpen(e.currentTarget.open)}
    >
      <summary>{title}</summary>
      {isOpen && <div className="story-inside">{children}</div>}
    </details>
  );
}

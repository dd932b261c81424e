import './story.css';
import { IconChevronDown } from '@tabler/icons-react';
import { Suspense, useState, type ReactNode } from 'react';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import type { StoryPart } from '../../../../shared/plan/story/story-part.js';
import { Num } from '../../explain/number.js';
import { useUnfolding } from '../../shell/folded.js';

interface Props {
  readonly part: StoryPart | 'now' | 'soon' | 'record' | 'days' | 'paper';
  readonly title: string;
  readonly children: ReactNode;
}

/** One question that is asked of a batch, and its answer. */
export function StorySection({ part, title, children }: Props) {
  return (
    <section id={part} aria-labelledby={`${part}-title`} className="story-part">
      <h2 id={`${part}-title`}>{title}</h2>
      {children}
    </section>
  );
}

interface FoldProps extends Props {
  /** What is inside in one line, while it is shut. */
  readonly answer?: ReactNode;
  /** Its time is over. */
  readonly isPast?: boolean;
  /** Has nothing for paper: it is made when it is opened. */
  readonly isForScreen?: boolean;
}

/**
 * A question that is not for now: its heading and its answer stand, the rest is one touch deeper.
 * What is for paper is laid out while it is shut, so that its pictures are there when it is printed.
 */
export function StoryFold({
  part,
  title,
  answer,
  isPast = false,
  isForScreen = false,
  children,
}: FoldProps) {
  const { isOpen, setOpen, inside } = useUnfolding<HTMLElement>(part);
  return (
    <section
      id={part}
      ref={inside}
      aria-labelledby={`${part}-title`}
      className={isForScreen ? 'story-fold no-print' : 'story-fold'}
    >
      <details open={isOpen} onToggle={(e) => setOpen(e.currentTarget.open)}>
        <summary>
          <span>
            <h2 id={`${part}-title`}>{title}</h2>
            {!isOpen && <span className="story-answer">{isPast ? 'This is past' : answer}</span>}
          </span>
          <IconChevronDown aria-hidden className="no-print" />
        </summary>
        <div className="story-folded">{(isOpen || !isForScreen) && children}</div>
      </details>
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
    <details
      className="story-more no-print"
      open={isOpen}
      onToggle={(e) => setOpen(e.currentTarget.open)}
    >
      <summary>{title}</summary>
      {isOpen && <div className="story-inside">{children}</div>}
    </details>
  );
}

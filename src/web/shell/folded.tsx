import './folded.css';
import { IconChevronDown } from '@tabler/icons-react';
import { useEffect, useRef, useState, type ReactNode } from 'react';

interface Props {
  /** A link to it in the address opens it. */
  readonly id: string;
  readonly title: string;
  /** What is inside in one line, so that it tells its number while it is shut. */
  readonly answer?: ReactNode;
  /** Level of its heading: 3 within a part that has one. */
  readonly level?: 2 | 3;
  readonly isOpenFirst?: boolean;
  /** Has nothing for paper: it is made when it is opened, and not printed. */
  readonly isForScreen?: boolean;
  readonly children: ReactNode;
}

/** A part of a screen that is one touch deeper: its heading and its answer stand, the rest opens. */
export function Folded({
  id,
  title,
  answer,
  level = 2,
  isOpenFirst = false,
  isForScreen = false,
  children,
}: Props) {
  const { isOpen, setOpen, inside } = useUnfolding(id, isOpenFirst);
  const Heading = `h${level}` as const;
  return (
    <details
      className={isForScreen ? 'folded no-print' : 'folded'}
      open={isOpen}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <span className="folded-head">
          <Heading>{title}</Heading>
          {answer !== undefined && !isOpen && <span className="folded-answer">{answer}</span>}
        </span>
        <IconChevronDown aria-hidden className="no-print" />
      </summary>
      {/* Named here, within what is hidden: browsers open what a link leads into. */}
      <div id={id} ref={inside} className="folded-inside">
        {(isOpen || !isForScreen) && children}
      </div>
    </details>
  );
}

/** Open or shut, and opened by an address that ends in its name. */
export function useUnfolding<Inside extends HTMLElement = HTMLDivElement>(
  id: string,
  isOpenFirst = false,
) {
  const [isOpen, setOpen] = useState(isOpenFirst);
  const inside = useRef<Inside>(null);
  useEffect(() => {
    const look = (): void => {
      if (window.location.hash !== `#${id}`) return;
      setOpen(true);
      requestAnimationFrame(() => inside.current?.scrollIntoView());
    };
    look();
    // The browser tells of a touched link, the router of a change of place.
    const tidings = ['hashchange', 'pushState'];
    for (const name of tidings) window.addEventListener(name, look);
    // Nobody tells of a link to where the address is already.
    const touched = ({ target }: MouseEvent): void => {
      if (target instanceof Element && target.closest('a')?.hash === `#${id}`)
        requestAnimationFrame(look);
    };
    document.addEventListener('click', touched);
    return () => {
      for (const name of tidings) window.removeEventListener(name, look);
      document.removeEventListener('click', touched);
    };
  }, [id]);
  return { isOpen, setOpen, inside };
}

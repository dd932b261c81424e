import './wide-table.css';
import { Text } from '@mantine/core';
import { useEffect, useRef, useState, type ReactNode } from 'react';

/** A table that may be wider than its screen: it then says so, and can be slid by keyboard too. */
export function WideTable({
  label,
  minWidth,
  maxHeight,
  children,
}: {
  label: string;
  minWidth?: number;
  maxHeight?: number;
  children: ReactNode;
}) {
  const ref = useRef<HTMLDivElement>(null);
  const [isCut, setCut] = useState(false);
  useEffect(() => {
    const box = ref.current!;
    const measure = () => setCut(box.clientWidth + 1 < box.scrollWidth);
    const observer = new ResizeObserver(measure);
    observer.observe(box);
    observer.observe(box.firstElementChild!);
    return () => observer.disconnect();
  }, []);
  return (
    <>
      {isCut && (
        <Text size="sm" c="dimmed" className="no-print">
          Slide the table sideways to see all of it →
        </Text>
      )}
      <div
        ref={ref}
        className="scroll-x"
        role="region"
        aria-label={label}
        tabIndex={0}
        style={maxHeight === undefined ? undefined : { maxHeight, overflowY: 'auto' }}
      >
        <div style={{ minWidth }}>{children}</div>
      </div>
    </>
  );
}

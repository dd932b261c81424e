import { useState } from 'react';

/** Whoever did what was ticked off: taken as it was laid, and changed with one touch. */
export function DoneBy({
  name,
  names,
  by: known,
  onChange,
}: {
  /** Of the work. */
  name: string;
  /** Everybody who can have done it. */
  names: readonly string[];
  by: string | undefined;
  onChange: (by: string) => void;
}) {
  const [said, say] = useState<string>();
  const by = said ?? known;
  const others = names.filter((each) => each !== by);
  if (names.length < 2) return null;
  return (
    <div className="today-by">
      <span>{by === undefined ? 'Who did it?' : `By ${by}. Or:`}</span>
      {others.map((each) => (
        <button
          key={each}
          type="button"
          className="today-button"
          aria-label={`Done by ${each}: ${name}`}
          onClick={() => {
            say(each);
            onChange(each);
          }}
        >
          {each}
        </button>
      ))}
    </div>
  );
}

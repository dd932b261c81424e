import type { ReactNode } from 'react';
import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { AnimalLine } from '../../../../shared/plan/today/animal-lines.js';
import type { TodayWeather } from '../../../../shared/plan/today/today-weather.js';
import { useSayDate } from '../../explain/say-date.js';
import { AnimalRow } from './animal-row.js';

/** What comes later than this is nothing to think of today. */
const NEAR_DAYS = 42;
/** So many of those stand open all the same: a line that is folded is no shorter. */
const MOST_OPEN = 1;

interface Props {
  readonly farmId: string;
  readonly today: PlainDate;
  readonly animals: readonly AnimalLine[];
  readonly weather: TodayWeather;
  readonly ask: (line: AnimalLine) => void;
  readonly saidOf: (id: string) => ReactNode;
}

/** Every batch and herd in one line. Batches of months ahead are folded: the day's work comes first. */
export function AnimalList({ animals, ...shown }: Props) {
  // What was just told of one, with its undo, is in sight.
  const far = animals.filter((line) => isFar(line) && shown.saidOf(line.id) === undefined);
  const folded = far.length <= MOST_OPEN ? [] : far;
  return (
    <>
      <ul>
        {animals
          .filter((line) => !folded.includes(line))
          .map((line) => (
            <Line key={line.id} line={line} {...shown} />
          ))}
      </ul>
      {0 < folded.length && (
        <details className="today-later">
          <summary>
            <Later lines={folded} />
          </summary>
          <ul>
            {folded.map((line) => (
              <Line key={line.id} line={line} {...shown} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

const isFar = (line: AnimalLine): boolean =>
  line.kind === 'batch' &&
  line.stage === 'coming' &&
  line.next !== undefined &&
  NEAR_DAYS < line.next.days.value;

const Line = ({
  line,
  farmId,
  today,
  weather,
  ask,
  saidOf,
}: Omit<Props, 'animals'> & { line: AnimalLine }) => (
  <AnimalRow
    line={line}
    farmId={farmId}
    today={today}
    weather={weather}
    onTell={() => ask(line)}
    said={saidOf(line.id)}
  />
);

function Later({ lines: [first, ...others] }: { lines: readonly AnimalLine[] }) {
  const sayDate = useSayDate();
  return (
    <>
      Still to come: {first!.name}, {sayDate(first!.next!.on)}, and {others.length} more
    </>
  );
}

import './paddock-map.css';
import { SegmentedControl, Slider, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { Mowing } from '../../../../shared/farm/mowing.js';
import type { Paddock } from '../../../../shared/farm/paddock.js';
import type { PaddockPart } from '../../../../shared/plan/pasture/paddock-part.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { restOn, type RestOn } from '../../../../shared/plan/pasture/rest-on.js';
import { heightOn } from '../../../../shared/plan/pasture/standing.js';
import type { NumberQuantity } from '../../../../shared/explain/quantity.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Folded } from '../../shell/folded.js';
import { fits, LETTERS, middle, projected } from './outlines-drawn.js';
import { STANDING_COLOURS, STANDING_WORDS, standingOf } from './season-strip.js';

type By = 'height' | 'rest';

/** What is shown of a paddock: its color, its number and the same in words. */
interface Shown {
  readonly paddock: Paddock;
  readonly fill: string;
  /** As the map writes it, without its unit. */
  readonly number: string;
  readonly words: string;
  readonly of?: NumberQuantity;
  /** What its color says, where its number does not. */
  readonly state?: string;
}

/** Weeks of rest by which paddocks are colored; the first that is not reached. */
const RESTS = [
  { under: 14, fill: 'var(--grade-1)', words: 'under 2 weeks' },
  { under: 28, fill: 'var(--grade-2)', words: '2 to 4 weeks' },
  { under: 42, fill: 'var(--grade-3)', words: '4 to 6 weeks' },
  { under: Infinity, fill: 'var(--grade-4)', words: '6 weeks and more' },
] as const;
const GRAZED = { fill: 'var(--series-2)', words: 'grazed that day' };
const UNKNOWN = { fill: 'var(--shade)', words: 'not known' };

/** The paddocks as they lie, or side by side where nobody drew them, by height or by days of rest. */
export function PaddockMap({
  plan,
  paddocks,
  mowings,
  day,
  onDay,
}: {
  plan: PasturePlan;
  paddocks: readonly Paddock[];
  mowings: readonly Mowing[] | undefined;
  day: number;
  onDay: (day: number) => void;
}) {
  const sayDate = useSayDate();
  const { reader } = useOpener();
  const [by, setBy] = useState<By>('height');
  const date = addDays(plan.from, day);
  const say = (of: NumberQuantity): string => formatValue(of.value, of.unit, reader);
  const shown = paddocks.flatMap((paddock): Shown[] => {
    const part = plan.paddocks.find(({ id }) => id === paddock.id);
    if (!part) return [];
    return [
      {
        paddock,
        ...(by === 'height'
          ? byHeight(plan, part, day, say)
          : byRest(restOn(plan, paddock, day, mowings), say)),
      },
    ];
  });
  const drawn = projected(shown.map(({ paddock }) => paddock));
  const title = drawn ? 'Map' : 'Paddock by paddock';
  return (
    <Folded
      id="map"
      title={`${title} on ${sayDate(date)}`}
      answer="Each paddock by its height, or by its days of rest"
    >
      <Stack gap="sm">
        <SegmentedControl
          aria-label="Show paddocks by"
          value={by}
          onChange={(chosen) => setBy(chosen as By)}
          data={[
            { value: 'height', label: 'Height' },
            { value: 'rest', label: 'Days of rest' },
          ]}
        />
        <Slider
          value={day}
          onChange={onDay}
          min={0}
          max={daysBetween(plan.from, plan.to)}
          label={(value) => sayDate(addDays(plan.from, value))}
          thumbLabel="Day of the map"
          size="lg"
          mx="sm"
        />
        {drawn && (
          <svg
            className="paddock-map"
            viewBox={`0 0 ${drawn.width} ${drawn.height}`}
            role="img"
            aria-label="Map of the paddocks, north at the top; the same is listed below"
          >
            {drawn.shapes.map(({ paddock, points }) => {
              const { fill, number, words } = shown.find((each) => each.paddock.id === paddock.id)!;
              const [x, y] = middle(points);
              const hasName = fits(points, paddock.name);
              return (
                <g key={paddock.id}>
                  <polygon points={points.map((p) => p.join(',')).join(' ')} fill={fill}>
                    <title>{`${paddock.name}: ${words}`}</title>
                  </polygon>
                  {hasName && (
                    <text x={x} y={y - LETTERS / 4} fontSize={LETTERS}>
                      {paddock.name}
                    </text>
                  )}
                  <text
                    x={x}
                    y={y + LETTERS * (hasName ? 0.85 : 0.35)}
                    fontSize={LETTERS}
                    className="paddock-map-number"
                  >
                    {number}
                  </text>
                </g>
              );
            })}
          </svg>
        )}
        <ul className="paddock-tiles">
          {shown.map(({ paddock, fill, of, state, words }) => (
            <li key={paddock.id} style={{ borderLeftColor: fill }}>
              <span>
                {paddock.name}
                {state && <small>{state}</small>}
              </span>
              {of ? <Num of={of} /> : words}
            </li>
          ))}
        </ul>
        <ul className="season-key">
          {keyOf(by).map(({ fill, words }) => (
            <li key={words}>
              <i style={{ background: fill }} /> {words}
            </li>
          ))}
        </ul>
        <Text size="sm">
          {by === 'height'
            ? 'The height in the evening of that day.'
            : 'Days since they were last grazed or mown.'}
          {drawn &&
            ` North is at the top; numbers on the map are ${by === 'height' ? (reader.units === 'us' ? 'inches' : 'centimeters') : 'days'}.`}
        </Text>
      </Stack>
    </Folded>
  );
}

const keyOf = (by: By): readonly { readonly fill: string; readonly words: string }[] =>
  by === 'rest'
    ? [GRAZED, ...RESTS, UNKNOWN]
    : (Object.keys(STANDING_WORDS) as (keyof typeof STANDING_WORDS)[]).map((kind) => ({
        fill: STANDING_COLOURS[kind],
        words: STANDING_WORDS[kind],
      }));

type Said = Omit<Shown, 'paddock'>;

function byHeight(
  plan: PasturePlan,
  part: PaddockPart,
  day: number,
  say: (of: NumberQuantity) => string,
): Said {
  const of = heightOn(plan, part, day);
  const kind = standingOf(part, part.massByDay[day] ?? 0, addDays(plan.from, day));
  return {
    of,
    fill: STANDING_COLOURS[kind],
    state: STANDING_WORDS[kind],
    number: say(of).split(/\s/)[0]!,
    words: `${say(of)}, ${STANDING_WORDS[kind]}`,
  };
}

function byRest(rest: RestOn | undefined, say: (of: NumberQuantity) => string): Said {
  if (!rest) return { ...UNKNOWN, number: '?', words: 'rest not known' };
  if (rest.is === 'grazed') return { ...GRAZED, number: '0' };
  const { fill } = RESTS.find(({ under }) => rest.of.value < under)!;
  return { of: rest.of, fill, number: String(rest.of.value), words: `${say(rest.of)} of rest` };
}

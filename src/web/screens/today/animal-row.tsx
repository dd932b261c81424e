import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import { OFF_IT } from '../../../../shared/plan/pasture/nothing-to-graze.js';
import { ageSaid } from '../../../../shared/plan/age-said.js';
import type { AnimalLine } from '../../../../shared/plan/today/animal-lines.js';
import type { BatchLine } from '../../../../shared/plan/today/batch-line.js';
import type { NextDate } from '../../../../shared/plan/today/days-to-go.js';
import type { HerdLine } from '../../../../shared/plan/today/herd-line.js';
import type { TodayWeather } from '../../../../shared/plan/today/today-weather.js';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { BigNumber } from './big-number.js';
import { HeatOutLine } from './heat-out-line.js';
import { AsPlanned, StillThere } from './moved-as-planned.js';

interface Shown {
  readonly farmId: string;
  readonly today: PlainDate;
  readonly weather: TodayWeather;
  /** Asks what happened to them. */
  readonly onTell: () => void;
  /** What was told of them last. */
  readonly said: ReactNode;
}

/** One batch or herd as it is today. */
export function AnimalRow({ line, ...shown }: Shown & { line: AnimalLine }) {
  if (line.kind === 'herd') return <HerdRow line={line} {...shown} />;
  const isThere = line.stage === 'brooder' || line.stage === 'out';
  return isThere ? <BatchRow line={line} {...shown} /> : <ComingRow line={line} {...shown} />;
}

function Row({
  line: { name },
  href,
  who,
  numbers,
  onTell,
  said,
  children,
}: {
  line: AnimalLine;
  href: string;
  /** Left out while there is nothing to tell. */
  onTell: (() => void) | undefined;
  said: ReactNode;
  who: ReactNode;
  numbers?: ReactNode;
  children?: ReactNode;
}) {
  return (
    <li className={numbers ? 'today-animal' : 'today-animal today-animal-brief'}>
      <div className="today-who">
        <p>
          <Link href={href}>{name}</Link> <span>{who}</span>
        </p>
        {onTell && (
          <button
            type="button"
            className="today-button"
            aria-label={`Tell what happened: ${name}`}
            onClick={onTell}
          >
            Tell
          </button>
        )}
      </div>
      {said}
      {numbers && <div className="today-numbers">{numbers}</div>}
      {children && <div className="today-lines">{children}</div>}
    </li>
  );
}

function BatchRow({ line, farmId, today, weather, onTell, said }: Shown & { line: BatchLine }) {
  const { age, head, awaited, awaitedSaid, where, heat, feed, water, eggs } = line;
  const sayDate = useSayDate();
  return (
    <Row
      line={line}
      onTell={onTell}
      said={said}
      href={`/farm/${farmId}/batches/${line.id}`}
      who={
        <>
          {awaited && awaitedSaid !== undefined ? (
            <>
              <Num of={awaited} said={String(awaited.value)} /> {awaitedSaid}
            </>
          ) : (
            <>
              {age && <Num of={age} said={ageSaid(age.value)} />} · <Num of={head} /> alive
            </>
          )}
          {where && <span className="today-where"> · {where}</span>}
        </>
      }
      numbers={
        <>
          {heat?.tooCold && <BigNumber of={heat.tooCold} what={tooColdWords(heat)} />}
          {heat && (
            <BigNumber
              of={heat.wanted}
              what={`${heat.tooCold || heat.isToBuild ? 'wanted ' : ''}under the heat`}
            />
          )}
          {heat && <BigNumber of={weather.tonight} what="low tonight" />}
          {eggs && <BigNumber of={eggs} what="to expect" />}
          {feed && <BigNumber of={feed.amount} what={`${feed.phase.toLowerCase()} feed`} />}
          {water && <BigNumber of={water} what="water" />}
        </>
      }
    >
      {line.beforeBox !== undefined && <p>{line.beforeBox}</p>}
      {heat?.out && <HeatOutLine farmId={farmId} batchId={line.id} today={today} out={heat.out} />}
      {heat && <HeatLines heat={heat} />}
      <MedicineLines line={line} />
      <LampLine line={line} />
      {line.wasToLeave !== undefined && (
        <p>
          <b>They were to leave on {sayDate(line.wasToLeave)}.</b> Nobody has told that they did.
        </p>
      )}
      {line.refills.map((said) => (
        <p key={said}>{said}</p>
      ))}
      <NextLine next={line.next} />
      {0 < line.cautions.length && (
        <details className="today-why today-caution">
          <summary>{line.cautions.map(({ title }) => title).join(' · ')}</summary>
          {line.cautions.map(({ title, text }) => (
            <p key={title}>
              {1 < line.cautions.length && <b>{title}. </b>}
              {text}
            </p>
          ))}
        </details>
      )}
    </Row>
  );
}

/** What of them is not to be eaten yet. */
const MedicineLines = ({ line: { medicines = [] } }: { line: AnimalLine }) =>
  medicines.map(({ said }) => (
    <p key={said}>
      <b>{said}</b>
    </p>
  ));

/** Never the warmth they want as if they had it. */
const tooColdWords = ({ night }: NonNullable<BatchLine['heat']>): string =>
  night?.on.value === 0 ? 'all they have tonight' : 'under the heat tonight, too cold';

function HeatLines({ heat }: { heat: NonNullable<BatchLine['heat']> }) {
  const { day, night, lampHeight, hot, isToBuild } = heat;
  if (!day || !night) return null;
  const isSame = day.words === night.words && !day.raisedTo;
  return (
    <>
      {isToBuild && (
        <p>
          Until the brooder is built: a big box in a warm room, <Num of={heat.wanted} /> under heat
          at one end of it. In the brooder then:
        </p>
      )}
      {!isSame && (
        <p>
          By day, at <Num of={day.around} /> around it, <Opened of={day.on} words={day.words} />
          {day.raisedTo && (
            <>
              , raised to <Num of={day.raisedTo} />
            </>
          )}
        </p>
      )}
      <p>
        {isSame ? 'Day and night' : 'Tonight'}, down to <Num of={night.around} /> around it,{' '}
        <Opened of={night.on} words={night.words} />
        {lampHeight && (
          <>
            , <Num of={lampHeight} /> above the bedding
          </>
        )}
      </p>
      {hot && (
        <details className="today-why">
          <summary>Warm for them at noon</summary>
          <p>{hot}</p>
        </details>
      )}
    </>
  );
}

/** Opens by its first few words, so that the others run on in their line. */
function Opened({ of, words }: { of: Quantity; words: string }) {
  const [first = '', ...others] = words.split(', ');
  return (
    <>
      <Num of={of} said={first.charAt(0).toLowerCase() + first.slice(1)} />
      {others.map((each) => `, ${each}`)}
    </>
  );
}

/** The lamp of the coop. */
function LampLine({ line: { lamp } }: { line: BatchLine }) {
  const sayDate = useSayDate();
  if (!lamp) return null;
  const isOn = 0 < lamp.hours.value;
  return (
    <p>
      Light {isOn ? <Num of={lamp.hours} /> : <Num of={lamp.hours} said="off" />}
      {isOn && ' from the lamp'}
      {lamp.changesOn && ` till ${sayDate(lamp.changesOn)}`}
    </p>
  );
}

/** Days before which nobody has anything to tell of birds that are still to come. */
const SOON_DAYS = 21;

function ComingRow({
  line,
  farmId,
  onTell,
  said,
}: Omit<Shown, 'weather' | 'today'> & { line: BatchLine }) {
  const { head, next, stage, wasToCome } = line;
  const sayDate = useSayDate();
  const isSoon = next !== undefined && next.days.value <= SOON_DAYS;
  return (
    <Row
      line={line}
      onTell={isSoon || stage === 'eggs' || wasToCome !== undefined ? onTell : undefined}
      said={said}
      href={`/farm/${farmId}/batches/${line.id}`}
      who={
        <>
          <Num of={head} said={stage === 'eggs' ? `${head.value} eggs set` : `${head.value}`} />
          {next && (
            <>
              {' '}
              · {next.words} <When next={next} />
            </>
          )}
          {wasToCome !== undefined &&
            ` · were to come ${sayDate(wasToCome)}, and nobody has told that they did`}
        </>
      }
    />
  );
}

function HerdRow({
  line,
  farmId,
  today,
  onTell,
  said,
}: Omit<Shown, 'weather'> & { line: HerdLine }) {
  const sayDate = useSayDate();
  const { head, on, here, hay, water } = line;
  return (
    <Row
      line={line}
      onTell={onTell}
      said={said}
      href={`/farm/${farmId}/pasture`}
      who={
        <>
          <Num of={head} said={`${head.value} head`} /> ·{' '}
          {on && !on.isToCome
            ? `in ${on.paddock} since ${sayDate(on.since)}`
            : [whereNow(line, sayDate), whereTo(line, today)].filter(Boolean).join(', ')}
          {line.isAssumed && ' (as planned: nobody told)'}
        </>
      }
      numbers={
        <>
          {hay && <BigNumber of={hay.weight} what={`hay: ${hay.said}`} />}
          <BigNumber of={water} what="water" />
        </>
      }
    >
      {line.unsaid && !line.unsaid.isAlarm && (
        <p>
          <AsPlanned farmId={farmId} moves={line.unsaid.moves} />{' '}
          <StillThere farmId={farmId} today={today} of={line.unsaid.stillIn}>
            No, still in
          </StillThere>
        </p>
      )}
      <MedicineLines line={line} />
      {line.calving?.map((words) => (
        <p key={words}>{words}</p>
      ))}
      {on && whereTo(line, today) !== undefined && <p>There until {sayDate(on.until)}</p>}
      {line.offUntil && (
        <p>
          Nothing to graze there now. {OFF_IT} until {sayDate(line.offUntil)}.
        </p>
      )}
      {!on && here && hay && !line.offUntil && (
        <p>Counted as on hay: outside its season the plan reckons with no grass.</p>
      )}
      <NextLine next={line.next} />
      {line.isHeightAssumed && (
        <p>
          The height of the farm is assumed: higher up it is later.{' '}
          <Link href={`/farm/${farmId}/place`}>Give the height</Link>
        </p>
      )}
    </Row>
  );
}

function whereNow({ here, offSince }: HerdLine, sayDate: (date: string) => string) {
  if (here) return `in ${here.paddock}`;
  return offSince === undefined ? undefined : `off grass since ${sayDate(offSince)}`;
}

/** On the day they came off nobody sends them back. */
function whereTo({ on, here, offSince }: HerdLine, today: PlainDate): string | undefined {
  if (!on) return 'on hay';
  return !here && offSince === today ? undefined : `into ${on.paddock} today`;
}

function NextLine({ next }: { next: NextDate | undefined }) {
  if (!next) return null;
  return (
    <p>
      {next.words.charAt(0).toUpperCase() + next.words.slice(1)} <When next={next} />
    </p>
  );
}

/** “In 9 days, Sat, Mar 27”, tomorrow, today; no line begins with the comma. */
function When({ next: { days, on } }: { next: NextDate }) {
  const sayDate = useSayDate();
  const n = days.value;
  return (
    <>
      <span className="today-together">
        <Num of={days} said={n === 0 ? 'today' : n === 1 ? 'tomorrow' : `in ${n} days`} />,
      </span>{' '}
      <span className="today-together">{sayDate(on)}</span>
    </>
  );
}

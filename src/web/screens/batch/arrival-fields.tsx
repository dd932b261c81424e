import { Button, Slider, Switch, Text } from '@mantine/core';
import { useEffect, useEffectEvent, useState } from 'react';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import { capital } from '../../../../shared/plan/bird-words.js';
import { besideInWords } from '../../explain/weeks-beside.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { useAfterDrawn } from '../../shell/use-after-drawn.js';
import { WhyThen } from '../../explain/why-then.js';
import { firstArrival, todayOf, type BestWeek } from './best-week.js';
import { FIELDS, OrderNumber, type FormProps } from './form-fields.js';

/** Days either side of the start that the slider reaches. */
const SLIDE_DAYS = 42;

interface Props {
  readonly form: FormProps;
  readonly isOwn: boolean;
  /** What the young are called. */
  readonly young: string;
  /** Arrival date around which the slider slides. */
  readonly slideFrom: string;
  /** The week that a new batch was first set to. */
  readonly best: BestWeek | undefined;
  /** The household said that they are here. */
  readonly isHere: boolean;
  /** Not saved yet: those that are here are told as counted with it. */
  readonly isNew: boolean;
  readonly onHere: (isHere: boolean) => void;
}

/** When they come, or that they are here already: what is past is then past. */
export function ArrivalFields({
  form,
  isOwn,
  young,
  slideFrom,
  best,
  isHere: saidHere,
  isNew,
  onHere,
}: Props) {
  const { setting, draft, errors, onChange } = form;
  const today = todayOf(setting);
  const { arrivalDate } = draft;
  const isHere = saidHere && arrivalDate !== undefined && arrivalDate <= today;
  const isAsked = !saidHere && arrivalDate !== undefined && arrivalDate < today;
  // Of a week that nobody chose, a batch says why it has it for as long as it does.
  const given = setting.picture.batches.find(
    (each) =>
      each.id === draft.id &&
      each.arrivalDate === arrivalDate &&
      each.assumed?.includes('arrivalDate'),
  );
  const comingOn = best?.arrivalDate ?? firstArrival(setting);
  return (
    <>
      <Switch
        size="md"
        label="They are here already"
        checked={isHere}
        onChange={({ currentTarget: { checked } }) => {
          onHere(checked);
          if (!isAsked) onChange({ arrivalDate: checked ? today : comingOn });
        }}
      />
      <DateField
        label={isOwn ? 'Hatch' : isHere ? 'They came on' : FIELDS.arrivalDate.label}
        value={draft.arrivalDate}
        error={errors['arrivalDate']}
        onChange={(date) => onChange({ arrivalDate: date })}
      />
      {isAsked && (
        <Button variant="light" onClick={() => onHere(true)}>
          Yes, they are here
        </Button>
      )}
      {isHere && (
        <OrderNumber
          form={form}
          field="orderedBirds"
          label={isNew ? 'How many there are now' : `${capital(young)} that came`}
        />
      )}
      {best && best.arrivalDate === draft.arrivalDate && <WhyBest best={best} />}
      {given && <WhyThen {...setting} batch={given} />}
      {!isHere && (
        <ArrivalSlider
          from={slideFrom}
          value={draft.arrivalDate}
          onChange={(arrivalDate) => onChange({ arrivalDate })}
        />
      )}
    </>
  );
}

function WhyBest({ best }: { best: BestWeek }) {
  const sayDate = useSayDate();
  const against = best.reasons.filter(({ points }) => 0 < points);
  return (
    <Text size="sm" component="div">
      {sayDate(best.arrivalDate)} is in the best week of the year ahead:{' '}
      {against.length === 0
        ? 'nothing speaks against it.'
        : `least speaks against it. ${against.map(({ text }) => text).join(' ')}`}
      {0 < best.beside.length && (
        <details>
          <summary>Why not earlier or later?</summary>
          {besideInWords(best.beside, best.arrivalDate, sayDate)}
        </details>
      )}
    </Text>
  );
}

/** A touch beside the mark, on the words above it or while the page is pushed, is no other date. */
const ONLY_ITS_MARK = {
  root: { pointerEvents: 'none' },
  thumb: { pointerEvents: 'auto' },
} as const;

/** Its mark goes with the hand at once; the form and the plan follow as fast as they can. */
function ArrivalSlider({
  from,
  value,
  onChange,
}: {
  from: string;
  value: string | undefined;
  onChange: (date: string) => void;
}) {
  const sayDate = useSayDate();
  const [hand, setHand] = useState<string>();
  const told = useAfterDrawn(hand);
  const [before, setBefore] = useState(value);
  if (value !== before) {
    setBefore(value);
    // Chosen elsewhere in the form.
    if (value !== told) setHand(undefined);
  }
  const onTold = useEffectEvent(onChange);
  useEffect(() => {
    if (told !== undefined) onTold(told);
  }, [told]);
  const shown = hand ?? value;
  const offset = shown === undefined ? 0 : daysBetween(from, shown);
  return (
    <div>
      <Text size="sm">Move the arrival</Text>
      <Slider
        min={-SLIDE_DAYS}
        max={SLIDE_DAYS}
        value={Math.max(-SLIDE_DAYS, Math.min(SLIDE_DAYS, offset))}
        onChange={(days) => setHand(addDays(from, days))}
        label={(days) => sayDate(addDays(from, days))}
        thumbLabel="Arrival date"
        thumbSize={26}
        marks={[{ value: 0 }]}
        styles={ONLY_ITS_MARK}
      />
    </div>
  );
}

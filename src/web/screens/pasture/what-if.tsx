import './pasture.css';
import { Button, CloseButton, Group, Slider, Text } from '@mantine/core';
import { useState } from 'react';
import { cowsWithHead } from '../../../../shared/farm/cow.js';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { formatDate } from '../../../../shared/units/dates.js';
import { formatValue, type Reader } from '../../../../shared/units/format.js';
import { Select } from '../../fields/select.js';
import { paddockName } from './season-strip.js';

/** What is changed to see what would happen; nothing of it is saved. */
export interface Changes {
  /** Rain in percent of the usual by month, 0 for January; only months that are changed. */
  readonly rainPercentByMonth: Readonly<Record<number, number>>;
  readonly headPercent: number;
  readonly restPercent: number;
}

export const AS_IS: Changes = { rainPercentByMonth: {}, headPercent: 100, restPercent: 100 };

export const isWhatIf = ({ rainPercentByMonth, headPercent, restPercent }: Changes): boolean =>
  0 < Object.keys(rainPercentByMonth).length || headPercent !== 100 || restPercent !== 100;

/** The farm with the changes made. */
export function pictureIf(picture: FarmPicture, changes: Changes): FarmPicture {
  const { pastureChoices: choices } = picture;
  const herds = picture.herds.map((herd) => ({
    ...herd,
    groups: herd.groups.map((group) => ({
      ...group,
      head: Math.max(1, Math.round((group.head * changes.headPercent) / 100)),
    })),
  }));
  return {
    ...picture,
    herds,
    cows: cowsWithHead(herds, picture.cows),
    pastureChoices: {
      ...choices,
      rainShareByMonth: MONTHS.map(
        (_, month) => percentOf(month, choices.rainShareByMonth, changes) / 100,
      ),
      restFactor: ((choices.restFactor ?? 1) * changes.restPercent) / 100,
    },
  };
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
const AUGUST = 7;

type RainShares = readonly number[] | undefined;

const usualPercent = (month: number, shares: RainShares): number =>
  Math.round(100 * (shares?.[month] ?? 1));

const percentOf = (month: number, shares: RainShares, { rainPercentByMonth }: Changes): number =>
  rainPercentByMonth[month] ?? usualPercent(month, shares);

/** Sliders for rain by month, head and rest, and what they lead to. */
export function WhatIfs({
  usualRainShares,
  hasRain,
  changes,
  onChange,
  outcome,
}: {
  /** Rain that the plan already reckons with, as shares of the usual. */
  usualRainShares: RainShares;
  hasRain: boolean;
  changes: Changes;
  onChange: (changes: Changes) => void;
  outcome: string;
}) {
  const [month, setMonth] = useState(AUGUST);
  const { rainPercentByMonth } = changes;
  const setRain = (changed: number, percent: number) => {
    const { [changed]: _before, ...others } = rainPercentByMonth;
    const isUsual = percent === usualPercent(changed, usualRainShares);
    onChange({
      ...changes,
      rainPercentByMonth: isUsual ? others : { ...others, [changed]: percent },
    });
  };
  return (
    <>
      <Group grow align="start" wrap="wrap" preventGrowOverflow={false}>
        <div className="what-if">
          <Share
            key={month}
            label={`Rain in ${MONTHS[month]}`}
            percent={percentOf(month, usualRainShares, changes)}
            max={Math.max(200, usualPercent(month, usualRainShares))}
            isOff={!hasRain}
            onEnd={(percent) => setRain(month, percent)}
          />
          <Select
            label="Month"
            disabled={!hasRain}
            value={String(month)}
            options={MONTHS.map((name, m) => ({ id: String(m), name }))}
            onChange={(chosen) => setMonth(Number(chosen ?? AUGUST))}
          />
        </div>
        <div className="what-if">
          <Share
            label="Head of cattle"
            percent={changes.headPercent}
            onEnd={(headPercent) => onChange({ ...changes, headPercent })}
          />
        </div>
        <div className="what-if">
          <Share
            label="Rest of each paddock"
            percent={changes.restPercent}
            min={50}
            onEnd={(restPercent) => onChange({ ...changes, restPercent })}
          />
        </div>
      </Group>
      {0 < Object.keys(rainPercentByMonth).length && (
        <ul className="chips" aria-label="Months with changed rain">
          {MONTHS.map((name, m) => {
            const percent = rainPercentByMonth[m];
            return percent === undefined ? null : (
              <li key={name}>
                {name}: {percent} % rain
                <CloseButton
                  size={40}
                  aria-label={`${name} as it was`}
                  onClick={() => setRain(m, usualPercent(m, usualRainShares))}
                />
              </li>
            );
          })}
        </ul>
      )}
      <Text size="sm" aria-live="polite" mih="1.5em">
        {outcome}
      </Text>
      {isWhatIf(changes) && (
        <Button variant="subtle" onClick={() => onChange(AS_IS)}>
          Back to the plan as it is
        </Button>
      )}
    </>
  );
}

/** A slider that shows where it is dragged and hands on where it is let go. */
function Share({
  label,
  percent,
  min = 0,
  max = 200,
  isOff = false,
  onEnd,
}: {
  label: string;
  percent: number;
  min?: number;
  max?: number;
  isOff?: boolean;
  onEnd: (percent: number) => void;
}) {
  const [dragged, setDragged] = useState<number>();
  const shown = dragged ?? percent;
  return (
    <>
      <Text size="sm" fw={600}>
        {label}: {shown} %
      </Text>
      <Slider
        value={shown}
        min={min}
        max={max}
        step={5}
        size="lg"
        disabled={isOff}
        label={(v) => `${v} %`}
        thumbLabel={label}
        onChange={setDragged}
        onChangeEnd={(value) => {
          setDragged(undefined);
          onEnd(value);
        }}
        my="sm"
      />
      {isOff && <Text size="sm">Type the monthly rain under Your place first.</Text>}
    </>
  );
}

/** What a what-if changed, in words. */
export function difference(base: PasturePlan, plan: PasturePlan, reader: Reader): string {
  const kg = plan.hay.all.value - base.hay.all.value;
  const before = new Set(base.moves.map((m) => `${m.herdId}${m.paddockId}${m.from}`));
  const changed = plan.moves.filter((m) => !before.has(`${m.herdId}${m.paddockId}${m.from}`));
  const first = changed[0];
  const feed =
    Math.abs(kg) < 1
      ? 'No more and no less feed'
      : `${formatValue(Math.abs(kg), 'kg', reader)} of dry matter ${0 < kg ? 'more' : 'less'} to feed in all`;
  // What is eaten standing of what was shut is no hay: less is made of it, and more is bought.
  const buyKg = plan.hay.toBuy.value - base.hay.toBuy.value;
  const buys =
    Math.abs(buyKg) < 1
      ? ''
      : `, and ${formatValue(Math.abs(buyKg), 'kg', reader)} ${0 < buyKg ? 'more' : 'less'} hay to buy`;
  const why = dryText(base, plan, reader);
  return first
    ? `${why}${feed}${buys}. ${changed.length} of ${plan.moves.length} stays change, the first on ${formatDate(first.from, reader)} (${paddockName(plan, first.paddockId)}).`
    : `${why}${feed}${buys}. No move changes.`;
}

/** What dry soil has to do with it, in words; nothing when it changes nothing. */
function dryText(base: PasturePlan, plan: PasturePlan, reader: Reader): string {
  const [before, now] = [base.weather.dry, plan.weather.dry];
  if (before?.growthLeft.value === now?.growthLeft.value) return '';
  if (!now) return 'The soil stays moist, so nothing slows the grass. ';
  return `The soil slows the grass from ${formatDate(now.from, reader)} and leaves ${Math.round(100 * now.growthLeft.value)} % of its growth on ${formatDate(now.worstOn, reader)}${before ? ` (${Math.round(100 * before.growthLeft.value)} % before)` : ''}. `;
}

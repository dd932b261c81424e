import { Button } from '@mantine/core';
import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import { startFields } from '../../../../shared/farm/start.js';
import { useEstimate, useStartFarm, useStartUsual } from '../../api/start-queries.js';
import { draftKey, dropDraft, readDraft, writeDraft } from '../../fields/kept-draft.js';
import { wordsOfRow } from '../../fields/field-words.js';
import type { SavedFarm } from '../../api/queries.js';
import { useWhenIdle } from '../../api/when-idle.js';
import { Failure, Working } from '../../shell/states.js';
import { ClimateNote, ClimateTyped } from './climate-block.js';
import { ComingBlock } from './coming-block.js';
import { EMPTY_START, startOf, unitsOf, type StartDraft } from './start-draft.js';
import { WhereBlock } from './where-block.js';
import { WhoBlock } from './who-block.js';
import './start.css';

/** It plans, which is much to read on a weak line: the form is there before it. */
const readStarted = () => import('./started.js');
const Started = lazy(readStarted);

const KEY = draftKey('start');

/** A farm in three answers: where, who, and what is coming. Everything else is assumed and marked. */
export default function StartScreen() {
  const [draft, setDraft] = useState<StartDraft>(() => ({
    ...EMPTY_START,
    ...readDraft<StartDraft>(KEY),
  }));
  const [farm, setFarm] = useState<SavedFarm>();
  const create = useStartFarm();
  const middlingM = useStartUsual().data?.elevationM;
  const { place } = draft;
  const usualM = place?.townElevationM ?? middlingM;
  const { elevationM = usualM } = draft;
  const estimate = useEstimate(
    place && elevationM !== undefined && Number.isFinite(elevationM)
      ? { latitudeDeg: place.latitudeDeg, longitudeDeg: place.longitudeDeg, elevationM }
      : undefined,
  );
  // An answer of the service may come long after it was asked for: it changes what stands by then.
  const latest = useRef(draft);
  const set = (part: Partial<StartDraft>): void => {
    latest.current = { ...latest.current, ...part };
    setDraft(latest.current);
    writeDraft(KEY, latest.current);
  };
  const isIdle = useWhenIdle();
  useEffect(() => {
    if (isIdle && place) readStarted().catch(() => undefined);
  }, [isIdle, place]);
  if (farm)
    return (
      <Suspense fallback={<Working label="Loading" />}>
        <Started farm={farm} isOnline={draft.isOnline} />
      </Suspense>
    );
  const start = startOf(draft);
  return (
    <main className="start">
      <h1>Say three things</h1>
      <p className="start-lead">Where, who, and what is coming. The plan stands in a minute.</p>
      <div className="start-blocks" inert={create.isPending}>
        <WhereBlock draft={draft} set={set} usualM={usualM} />
        {place && estimate.data?.estimate && (
          <ClimateNote {...{ draft, set, place }} estimate={estimate.data.estimate} />
        )}
        {place && estimate.data?.because && (
          <ClimateTyped {...{ draft, set, place }} because={estimate.data.because} />
        )}
        <WhoBlock draft={draft} set={set} />
        <ComingBlock draft={draft} set={set} />
      </div>
      <Failure
        error={create.error ?? estimate.error}
        words={wordsOfRow(startFields, {
          units: unitsOf(draft),
          currency: place?.currency ?? 'USD',
          today: '',
        })}
      />
      <div className="start-actions">
        <Button
          disabled={start === undefined}
          loading={create.isPending}
          onClick={() => {
            // What is wrong stands at its field, which may be far above. What cannot be read is not
            // left out in silence.
            const wrong = firstWrong();
            if (wrong) return wrong.focus();
            if (start)
              create.mutate(start, {
                onSuccess: (made) => {
                  dropDraft(KEY);
                  setFarm(made);
                },
              });
          }}
        >
          Make my plan
        </Button>
        <Button component={Link} href="/" variant="subtle">
          Back
        </Button>
      </div>
      {start === undefined && <p className="start-small">Say where the farm is first.</p>}
    </main>
  );
}

const firstWrong = () => document.querySelector<HTMLElement>('.start [aria-invalid="true"]');

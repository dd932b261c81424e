import { lazy, Suspense, useState, type ReactNode } from 'react';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import { sayFact } from '../../../shared/farm/say-fact.js';
import type { NamedBatch } from '../../../shared/farm/picture.js';
import type { ToldFact } from '../../../shared/farm/told-fact.js';
import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import type { SavedFarm } from '../api/queries.js';
import { seenName } from '../api/seen-rows.js';
import { useTakeBack } from '../api/told-queries.js';
import { useOpener } from '../explain/explain-panel.js';
import type { FirstTold } from '../mishap/mishap-props.js';
import { Failure } from '../shell/states.js';
import { WhatChanged } from './what-changed.js';

const TellDialog = lazy(() => import('./tell-dialog.js'));
const OtherwiseSaid = lazy(() => import('./otherwise-said.js'));

export interface Telling {
  /** Asks what happened to a batch or herd, or its numbers where that is known; without one, on the place. */
  readonly ask: (line?: AnimalLine, first?: FirstTold) => void;
  /** Asks the numbers of what happened to one of the animals, by its id. */
  readonly askOf: (id: string, first: FirstTold) => void;
  /** Something was told with one touch: it stands at its batch or herd, with its undo. */
  readonly wasTold: (id: string, fact: ToldFact) => void;
  /** What was told last of a batch or herd, with its undo; of the place where it is named so. */
  readonly saidOf: (id: string) => ReactNode;
  /** The dialog, while it is open. */
  readonly dialog: ReactNode;
}

/**
 * Tells what happened of animals as they stand now: a screen shows what it read last before it knows.
 * What was told last stands there until the screen is left, to be undone.
 */
export function useTelling(
  farm: SavedFarm,
  today: PlainDate,
  animals: readonly AnimalLine[],
): Telling {
  const [asked, setAsked] = useState<{
    readonly line: AnimalLine | undefined;
    readonly first: FirstTold | undefined;
  }>();
  const [told, setTold] = useState<{ readonly fact: ToldFact; readonly of: string }>();
  const [otherwise, setOtherwise] = useState<{
    readonly words: string;
    readonly was: NamedBatch;
  }>();
  /** Of what the last thing told was taken back. */
  const [back, setBack] = useState<string>();
  const undo = useTakeBack(farm.id);
  const { reader } = useOpener();
  const said = told && (
    <div className="tell-said">
      <p role="status">{capital(sayFact(told.fact, reader, seenName)).replace(/\.$/, '')}. Told.</p>
      <button
        type="button"
        className="today-button"
        disabled={undo.isPending}
        onClick={() =>
          undo.mutate(told.fact.id, {
            onSuccess: () => {
              // What was told while it went back keeps its own Undo.
              setTold((now) => (now === told ? undefined : now));
              setBack(told.of);
            },
          })
        }
      >
        Undo
      </button>
      <WhatChanged farm={farm} fact={told.fact} />
      <Failure error={undo.error} />
    </div>
  );
  /** The last of them went: what was told of them can be undone all the same. */
  const isGone = (of: string | undefined): boolean =>
    of !== undefined && of !== THE_PLACE && !animals.some(({ id }) => id === of);
  const ask: Telling['ask'] = (line, first) => {
    setBack(undefined);
    setAsked({ line, first });
  };
  return {
    ask,
    askOf: (id, first) =>
      ask(
        animals.find((each) => each.id === id),
        first,
      ),
    wasTold: (of, fact) => {
      setBack(undefined);
      setOtherwise(undefined);
      setTold({ fact, of });
    },
    saidOf: (id) => {
      if (otherwise?.was.id === id)
        return (
          <Suspense>
            <OtherwiseSaid
              farm={farm}
              {...otherwise}
              onUndone={() => {
                setOtherwise(undefined);
                setBack(id);
              }}
            />
          </Suspense>
        );
      const isOf = (of: string | undefined): boolean =>
        of === id || (id === THE_PLACE && isGone(of));
      return isOf(told?.of) ? said : isOf(back) ? <TakenBack /> : undefined;
    },
    dialog: asked && (
      <Suspense>
        <TellDialog
          farm={farm}
          today={today}
          line={animals.find(({ id }) => id === asked.line?.id) ?? asked.line}
          first={asked.first}
          onTold={(fact) => {
            setTold({ fact, of: asked.line?.id ?? THE_PLACE });
            setOtherwise(undefined);
            setAsked(undefined);
          }}
          onOtherwise={(words, was) => {
            setOtherwise({ words, was });
            setAsked(undefined);
          }}
          onClose={() => setAsked(undefined)}
        />
      </Suspense>
    ),
  };
}

/** The button that was pressed is gone: whoever pressed it goes on from here. */
const TakenBack = () => (
  <p className="tell-said" role="status" tabIndex={-1} ref={focused}>
    Taken back.
  </p>
);

const focused = (line: HTMLElement | null): void => line?.focus();

/** Instead of an id, of what is told of the place. */
export const THE_PLACE = 'place';

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

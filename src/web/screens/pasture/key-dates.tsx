import type { FarmPicture } from '../../../../shared/farm/picture.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import type { SavedFarm } from '../../api/queries.js';
import { Fact, Facts } from '../../explain/number.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { AssumedHeight } from '../../fields/assumed-height.js';
import { Folded } from '../../shell/folded.js';
import { AutumnGrass } from './autumn-grass.js';

/** The days of the season that others go by, shut to the next of them. */
export function KeyDates({
  plan,
  farm,
  picture,
}: {
  plan: PasturePlan;
  farm: SavedFarm;
  picture: FarmPicture;
}) {
  const sayDate = useSayDate();
  const { keyDates } = plan;
  return (
    <Folded id="key-dates" title="Key dates" answer={nextKeyDate(plan, sayDate)}>
      <AssumedHeight farm={farm} what="Grass and turn-out are reckoned" />
      <Facts>
        <Fact of={keyDates.ready} />
        {keyDates.herds.map((herd) => (
          <HerdFacts key={herd.herdId} plan={plan} herd={herd} />
        ))}
        <Fact of={keyDates.stockpile?.shutFrom} />
        <Fact of={keyDates.stockpile?.forageOnHand} />
      </Facts>
      <AutumnGrass plan={plan} farm={farm} choices={picture.pastureChoices} />
    </Folded>
  );
}

function nextKeyDate(plan: PasturePlan, sayDate: SayDate): string {
  const { ready, herds, stockpile } = plan.keyDates;
  const days = [
    ready,
    stockpile?.shutFrom,
    ...herds.flatMap((h) => [
      ...[h.turnOut, h.magnesiumFrom, h.hayBesideUntil, h.lastGrazing],
      ...h.calvings.map(({ due }) => due),
    ]),
  ].flatMap((of) =>
    of && typeof of.value === 'string' && plan.today <= of.value
      ? [{ label: of.label, on: of.value }]
      : [],
  );
  const [next] = days.sort((a, b) => (a.on < b.on ? -1 : 1));
  return next ? `Next: ${next.label} ${sayDate(next.on)}` : 'None ahead';
}

function HerdFacts({
  plan,
  herd,
}: {
  plan: PasturePlan;
  herd: PasturePlan['keyDates']['herds'][number];
}) {
  const sayDate = useSayDate();
  const name = plan.herds.find((h) => h.id === herd.herdId)?.name ?? '';
  const label = (what: string): string => (1 < plan.herds.length ? `${name}: ${what}` : what);
  return (
    <>
      <Fact of={herd.turnOut} label={label('Turn-out')} />
      <Fact of={herd.magnesiumFrom} label={label(herd.magnesiumFrom?.label ?? '')} />
      <Fact of={herd.hayBesideUntil} label={label('Feed hay too until')} />
      {herd.calvings.map((c) => (
        <Fact
          key={c.cow?.id ?? c.number}
          of={c.due}
          label={label(c.due.label)}
          note={`${sayDate(c.early)} to ${sayDate(c.late)} in about 19 of 20 calvings. `}
        />
      ))}
      {herd.calvings.map((c) => (
        <Fact
          key={c.cow?.id ?? c.number}
          of={c.weaned}
          label={label(c.weaned?.label ?? '')}
          note="Calves that you keep then go in as a group of their own. "
        />
      ))}
      {herd.arrivals.map(
        ({ on, out, apartIn }) =>
          out !== undefined && (
            <div key={on}>
              <dt>{label('Out of quarantine')}</dt>
              <dd>
                {sayDate(out)}, apart from {sayDate(on)}
                {apartIn === undefined ? '' : ` in ${apartIn}`}
              </dd>
            </div>
          ),
      )}
      <Fact of={herd.lastGrazing} label={label('Last day on grass')} />
    </>
  );
}

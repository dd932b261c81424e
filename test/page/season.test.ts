import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page, Route } from 'playwright-core';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { ToldFact } from '../../shared/farm/told-fact.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { HowItWent } from '../../shared/plan/record/how-it-went.js';
import type { YearCounts } from '../../shared/plan/record/year-counts.js';
import { newBrooder, newFarm } from '../support/factories.js';
import { House, isKept, seriousFindings, until } from '../support/page.js';
import { newHerd, newPaddock } from '../support/pasture-factories.js';
import type { PhoneFact } from '../support/season-house.js';
import * as story from '../support/season-story.js';

/** SEASON_PAGES=whole plays every day by the page, from the call that the box is late. */
const IS_WHOLE = process.env['SEASON_PAGES'] === 'whole';
const FIRST_DAY = IS_WHOLE ? 0 : 47;
const NO_SIGNAL = IS_WHOLE ? story.NO_SIGNAL : { from: 47, to: 50 };
/** On this day both phones tell what was drunk, one of them without signal. */
const CLASH_DAY = NO_SIGNAL.from + 1;

/**
 * So often the program is killed while a phone tells something; each fifth time the page of that phone
 * is closed as well, as soon as it shows it as told.
 */
const KILLS = Number(process.env['SEASON_PAGE_KILLS'] ?? 0);
const CLOSED_EACH = 5;

jest.setTimeout((IS_WHOLE ? 3_000_000 : 240_000) + KILLS * 30_000);

let house: House;
const folder = mkdtempSync(join(tmpdir(), 'broodfold-days-'));
const clockFile = join(folder, 'shift');
let shiftMs = 0;
/** It is noon of a day. Written aside first: nobody reads half a number. */
function setDay(date: string): void {
  shiftMs = Date.parse(`${date}T16:00:00Z`) - Date.now();
  writeFileSync(`${clockFile}.new`, String(shiftMs));
  renameSync(`${clockFile}.new`, clockFile);
}
/** The same, and the program has noticed. */
async function dayIs(date: string): Promise<void> {
  setDay(date);
  for (;;) {
    const { headers } = await fetch(`${house.url}/api/farms`);
    if (headers.get('asked-at')?.startsWith(date)) return;
  }
}
beforeAll(async () => {
  setDay(addDays(story.PLANNED, -3));
  house = await House.open(clockFile);
});
afterAll(async () => {
  await house.close();
  rmSync(folder, { recursive: true });
});

interface Told {
  readonly facts: readonly ToldFact[];
  readonly total: number;
}
const get = async <T>(path: string): Promise<T> =>
  (await fetch(`${house.url}/api${path}`)).json() as Promise<T>;
const row = <T extends { id?: unknown }>({ id: _id, ...rest }: T): object => rest;
const waiting = (page: Page, words: string | RegExp) => page.getByRole('button', { name: words });

/** A phone on Today of a farm, that has all it needs without signal; its days go by as they are set. */
async function phoneOf(farm: string): Promise<Page> {
  const { page } = await house.page('phone', { isKept: true });
  await page
    .context()
    .addInitScript(
      `{ const now = Date.now; Date.now = () => now() + Number(localStorage.getItem('ahead') ?? ${shiftMs}); }`,
    );
  await page.goto(`${farm}/today`);
  await page.getByRole('heading', { name: 'Animals' }).waitFor();
  await isKept(page);
  return page;
}

async function nextDay(page: Page): Promise<void> {
  await page.evaluate(`localStorage.setItem('ahead', '${shiftMs}')`);
  await page.goto(page.url().replace(/(\/farm\/[^/]+).*/, '$1/today'));
  await page.locator('.today-animals li', { hasText: 'Meat' }).waitFor();
}

const tagOf = (box: Locator): Promise<string> =>
  box.evaluate((each) => (each as unknown as { nodeName: string }).nodeName);

type Boxes = Readonly<Record<string, string>>;

/** What is pressed for a fact, and the boxes that are typed or chosen in. */
function boxesOf({ kind, details }: PhoneFact): readonly [of: RegExp, what: string, boxes: Boxes] {
  const of = details as Record<string, string | number>;
  const typed = (names: Boxes): Boxes =>
    Object.fromEntries(
      Object.entries(names).flatMap(([name, label]) =>
        of[name] === undefined ? [] : [[label, String(of[name])]],
      ),
    );
  switch (kind) {
    case 'arrived':
      return [
        MEAT,
        'They came',
        typed({ birds: 'Birds in the box', dead: 'Dead in the box' }),
      ] as const;
    case 'died':
      return [MEAT, 'Some died', typed({ birds: 'Birds that died', cause: 'What it was' })];
    case 'bought':
      return [
        PLACE,
        'Something was bought',
        typed({
          what: 'What',
          amount: 'How many',
          eachKg: 'One of them',
          money: 'What it cost, all together',
        }),
      ];
    case 'water-drunk':
      return [MEAT, 'Water they drank', typed({ liters: 'Water drunk' })];
    case 'weighed':
      return [MEAT, 'Weighed some', typed({ birds: 'Birds weighed', averageKg: 'Average weight' })];
    case 'gone':
      return [
        MEAT,
        'Birds sold or given',
        typed({ birds: 'Birds that went', how: 'How', money: 'What they brought, all together' }),
      ];
    case 'processed':
      return [
        MEAT,
        'Processed',
        typed({
          birds: 'Birds processed',
          liveKg: 'Live weight, all together',
          dressedKg: 'Dressed weight, all together',
        }),
      ];
    default:
      return [MEAT, 'A note', typed({ text: 'Note' })];
  }
}

const MEAT = /^Tell what happened: Meat/;
const PLACE = /^Rain, shopping, note/;

/** Kills that fall on what is told as the n-th of all: they lie evenly. */
const killsAt = (n: number, all: number): number =>
  Math.floor(((n + 1) * KILLS) / all) - Math.floor((n * KILLS) / all);

/** What was killed, and on which phones the page was closed. */
const killed = { programs: 0, pages: 0 };

/**
 * Tells a fact and kills the program while it is kept, sent and stored, and while it is sent again: at
 * another moment each time. The page that the phone shows from then on.
 */
async function tellUnderKills(page: Page, fact: PhoneFact, kills: number): Promise<Page> {
  if (kills === 0) {
    await tell(page, fact);
    return page;
  }
  let shown = page;
  let starting: Promise<void> | undefined;
  const killNow = async (): Promise<void> => {
    await shown.waitForTimeout((killed.programs * 7) % 60);
    starting = house.kill();
    killed.programs += 1;
  };
  await tell(page, fact, killNow);
  for (let kill = 1; kill <= kills; kill++) {
    if (killed.programs % CLOSED_EACH === 0) shown = await closedAndOpened(shown);
    const again = shown
      .waitForRequest(/\/told$/, { timeout: SENT_AGAIN_MS })
      .catch(() => undefined);
    await starting;
    if (kill === kills) continue;
    await again;
    await killNow();
  }
  return shown;
}

/** What waits is sent again within so long, unless it was stored before the program was killed. */
const SENT_AGAIN_MS = 3000;

/** The longest wait between two tries is a minute. */
const ALL_SENT_MS = 120_000;

/** Waits until the service has answered for all that a phone was told. */
const allSent = (page: Page): Promise<void> =>
  until(
    page,
    `(async () => {
    const open = indexedDB.open('broodfold-outbox');
    const db = await new Promise((done) => { open.onsuccess = () => done(open.result); });
    const all = db.transaction('entries').objectStore('entries').getAll();
    const entries = await new Promise((done) => { all.onsuccess = () => done(all.result); });
    db.close();
    const isWritten = Object.keys(localStorage).every((key) => !key.startsWith('broodfold-jotted-'));
    return isWritten && entries.every(({ state }) => state === 'sent');
  })()`,
    ALL_SENT_MS,
  );

/**
 * The page is gone in the middle of whatever it does, and the phone opens the day again. The cows stand
 * there on all days: the batch leaves it as soon as what was told last, that all are processed, is read
 * back, which is before it is closed or after.
 */
async function closedAndOpened(page: Page): Promise<Page> {
  const [url, context] = [page.url(), page.context()];
  await page.close();
  killed.pages += 1;
  const shown = await context.newPage();
  await shown.goto(url);
  await shown.locator('.today-animals li', { hasText: 'Cows' }).waitFor();
  return shown;
}

async function tell(
  page: Page,
  fact: PhoneFact,
  pressed: () => Promise<void> = async () => undefined,
): Promise<void> {
  const [of, what, boxes] = boxesOf(fact);
  await page.getByRole('button', { name: of }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: what, exact: true }).click();
  for (const [label, value] of Object.entries(boxes)) {
    const box = dialog.getByLabel(label).first();
    const isChoice = (await tagOf(box)) === 'SELECT';
    if (isChoice) await box.selectOption(value);
    else await box.fill(value);
  }
  await dialog.getByRole('button', { name: 'Tell it' }).click();
  await pressed();
  await dialog.waitFor({ state: 'detached' });
}

/** Tells that the cows went into a paddock. */
async function lead(page: Page, paddockId: string): Promise<void> {
  await page.getByRole('button', { name: /^Tell what happened: Cows/ }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'They were moved' }).click();
  await dialog.getByLabel('Into which paddock').selectOption(paddockId);
  await dialog.getByRole('button', { name: 'Tell it' }).click();
  await dialog.waitFor({ state: 'detached' });
}

/** Opens what can go wrong, says what it is, and keeps what is proposed. */
async function wentWrong(page: Page, what: string, keep: string, boxes: Boxes = {}): Promise<void> {
  await page.getByRole('button', { name: 'Something went wrong' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: what }).click();
  for (const [label, value] of Object.entries(boxes)) {
    await dialog.getByLabel(label).first().waitFor();
    const box = dialog.getByLabel(label).first();
    const isChoice = (await tagOf(box)) === 'SELECT';
    if (isChoice) await box.selectOption(value);
    else await box.fill(value);
  }
  await dialog.getByRole('button', { name: keep, exact: true }).click();
  await dialog.waitFor({ state: 'detached' });
}

/** The first answer to what a phone sends is lost on its way back. */
async function loseOneAnswer(page: Page): Promise<void> {
  const lose = async (route: Route): Promise<void> => {
    await route.fetch();
    await route.abort('connectionreset');
    await page.unroute('**/told', lose);
  };
  await page.route('**/told', lose);
}

describe('a season by the page, on two phones', () => {
  it('ends with the record right to the bird and the cent', async () => {
    const { id } = await house.post<{ id: string }>('/farms', newFarm());
    const farm = `${house.url}/farm/${id}`;
    const make = async (what: string, body: object): Promise<string> =>
      (await house.post<{ id: string }>(`/farms/${id}/${what}`, body)).id;
    for (const name of ['Maren', 'Tobias']) await make('people', { name, away: [] });
    const brooderId = await make('facilities', row(newBrooder()));
    const batchId = await make('batches', { ...row(story.orderIn(brooderId)), name: 'Meat' });
    const paddockIds: string[] = [];
    for (const name of ['Oak', 'Pond', 'Hill', 'Lane'])
      paddockIds.push(await make('paddocks', row(newPaddock({ name }))));
    await make('herds', { ...row(newHerd()), name: 'Cows' });
    const planOf = () => get<BatchPlan>(`/farms/${id}/batches/${batchId}/plan`);
    const tellAtOnce = (facts: readonly object[]) => house.post(`/farms/${id}/told`, { facts });
    const asOrdered = await planOf();
    const keys: string[] = [];
    let half: BatchPlan | undefined;

    const arrival = async (): Promise<Page> => {
      await dayIs(story.PLANNED);
      const page = await phoneOf(farm);
      await page.getByRole('button', { name: MEAT }).click();
      const dialog = page.getByRole('dialog');
      await dialog.getByRole('button', { name: 'They come on another day' }).click();
      await dialog.getByLabel('Arrival').fill(story.CAME);
      await dialog.getByRole('button', { name: 'Keep it' }).click();
      await dialog.waitFor({ state: 'detached' });
      return page;
    };
    const before = async (): Promise<void> => {
      const saved = await get<object>(`/farms/${id}/batches/${batchId}`);
      await fetch(`${house.url}/api/farms/${id}/batches/${batchId}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ ...row(saved), arrivalDate: story.CAME }),
      });
      for (let day = 0; day < FIRST_DAY; day++) {
        await dayIs(story.on(day));
        const facts = story.factsOf(batchId, day).map(({ fact }) => fact);
        keys.push(...facts.map(({ key }) => key));
        if (0 < facts.length) await tellAtOnce(facts);
        if (day === story.HALF) half = await planOf();
      }
      await dayIs(story.on(FIRST_DAY));
    };
    let one: Page;
    if (IS_WHOLE) one = await arrival();
    else {
      await before();
      one = await phoneOf(farm);
    }
    expect((await planOf()).arrivalDate).toBe(story.CAME);
    let other = await phoneOf(farm);
    const inStory = Array.from({ length: story.DAYS + 1 }, (_, day) => story.factsOf(batchId, day));
    const told = inStory.slice(FIRST_DAY).flat().length;

    let sent = 0;
    let n = 0;
    const clash = { kind: 'water-drunk', about: batchId, on: story.on(CLASH_DAY) };
    for (let day = FIRST_DAY; day <= story.DAYS; day++) {
      await dayIs(story.on(day));
      if (day === NO_SIGNAL.from) await other.context().setOffline(true);
      for (const page of [one, other]) await nextDay(page);
      for (const { who, fact } of story.factsOf(batchId, day)) {
        const shown = await tellUnderKills(who === 'a' ? one : other, fact, killsAt(n++, told));
        if (who === 'a') one = shown;
        else other = shown;
        if (who === 'b' && NO_SIGNAL.from <= day && day < NO_SIGNAL.to) sent += 1;
      }
      if (0 < KILLS)
        await Promise.all(
          (NO_SIGNAL.from <= day && day < NO_SIGNAL.to ? [one] : [one, other]).map(allSent),
        );
      if (day === CLASH_DAY) {
        await tell(one, { ...clash, key: '', details: { liters: 15 } });
        await tell(other, { ...clash, key: '', details: { liters: 12 } });
        sent += 1;
      }
      if (day === NO_SIGNAL.to - 1) {
        await waiting(other, `${sent} waiting to be sent`).waitFor();
        await loseOneAnswer(other);
        await other.context().setOffline(false);
        await waiting(other, '1 question: which holds?').click();
        const dialog = other.getByRole('dialog', { name: 'Told on this phone' });
        await dialog.getByRole('radio', { name: /^You: / }).check();
        await dialog.getByRole('button', { name: 'Save' }).click();
        await dialog.getByText('All of it is sent.').waitFor();
      }
      if (day === 22) await lead(one, paddockIds[0]!);
      if (day === 24) await wentWrong(one, 'A paddock is lost', 'Keep it');
      if (day === 33)
        await wentWrong(one, 'Cold nights are coming', 'Keep it as forecast', {
          'Lowest at night': '-1',
        });
      if (day === story.HALF) half = await planOf();
    }

    const all = await get<Told>(`/farms/${id}/told?history=true&ticks=false&take=1000`);
    // Nothing is lost and nothing twice. Beside the story: two of the day they clash, changes of rows, and
    // where the whole is played the move.
    const isBeside = ({ kind }: { kind: string }): boolean =>
      kind === 'herd-move' || kind === 'row-changed';
    const said = ({ kind, on }: { kind: string; on: string }): string => `${on} ${kind}`;
    expect(
      all.facts
        .filter((fact) => !isBeside(fact))
        .map(said)
        .sort(),
    ).toEqual([...inStory.flat().map(({ fact }) => fact), clash, clash].map(said).sort());
    expect(new Set(all.facts.map(({ key }) => key)).size).toBe(all.total);
    expect(killed).toEqual({ programs: KILLS, pages: Math.floor(KILLS / CLOSED_EACH) });
    const went = await get<HowItWent>(`/farms/${id}/record/batches/${batchId}`);
    const actual = (line: string) => went.lines.find((each) => each.id === line)?.actual;
    expect(went.isOver).toBe(true);
    expect(['came', 'lost', 'processed', 'sold', 'given'].map(actual)).toEqual([
      ...[story.IN_BOX - story.DEAD_IN_BOX, story.DIED, story.PROCESSED],
      ...[story.SOLD, story.GIVEN],
    ]);
    const counts = await get<YearCounts>(`/farms/${id}/record/years/2027`);
    expect(counts.money).toEqual({ taken: story.SOLD_CENTS, spent: story.SPENT_CENTS });
    const drunk = await get<Told>(
      `/farms/${id}/told?kind=water-drunk&from=${clash.on}&to=${clash.on}`,
    );
    expect(drunk.facts.map(({ details }) => details)).toEqual([{ liters: 12 }]);
    if (IS_WHOLE) {
      const oak = await get<Paddock>(`/farms/${id}/paddocks/${paddockIds[0]}`);
      expect(oak.closedDays).toMatchObject([{ from: story.on(24), why: 'wet' }]);
    }
    process.stdout.write(story.beside(asOrdered, half!, went));
    // What is over is on Today no more, and Today opens all the same.
    await one.locator('.today-animals li', { hasText: 'Meat' }).waitFor({ state: 'detached' });
    one = await closedAndOpened(one);
    await one.goto(`${farm}/record`);
    const over = one.getByRole('region', { name: 'How batches went' });
    await over.getByText('Meat', { exact: true }).waitFor();
    expect(await seriousFindings(one)).toEqual([]);
  });
});

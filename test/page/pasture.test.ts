import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { inDays } from '../support/orders.js';
import { House, seriousFindings, unfold, walkTo, wrongAtBothSizes } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

/** Address of a fresh sample farm's pasture. */
async function openPasture(page: Page): Promise<string> {
  const base = `${await house.sampleFarm()}/pasture`;
  await page.goto(base);
  await planned(page);
  return base;
}

/** The season is there, worked out in the browser. */
const planned = (page: Page): Promise<void> =>
  page.getByRole('heading', { name: 'Where the herds are' }).waitFor({ timeout: 30_000 });

describe('grass and cattle, on a phone and at a desk', () => {
  it('has no serious or critical accessibility finding, no error, and no sideways scroll', async () => {
    const { page, errors } = await house.page('phone');
    const base = await openPasture(page);
    const look = (): Promise<string[]> => wrongAtBothSizes(page);
    await page.locator('.recharts-surface').first().waitFor();
    const found: Record<string, string[]> = { season: await look() };
    for (const shut of await page.locator('details.folded > summary').all()) await shut.click();
    found['season, all of it open'] = await look();
    for (const [path, heading] of [
      ['walk', 'Pasture walk'],
      ['land', 'Paddocks and herds'],
      ['sizes', 'Paddock by paddock'],
      ['../work/herds', 'Herd tasks'],
      ['print', 'Moves, Thistledown (sample)'],
    ] as const) {
      await walkTo(page, new URL(path, `${base}/`).pathname);
      await page.getByRole('heading', { name: heading }).waitFor({ timeout: 30_000 });
      found[path] = await look();
    }
    await walkTo(page, `${base}/land`);
    await page.getByRole('button', { name: 'Change Pond' }).click();
    await page.getByRole('dialog').waitFor();
    found['paddock form'] = await look();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Change Cows' }).click();
    await page.getByRole('dialog').waitFor();
    found['herd form'] = await look();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Change Clover' }).click();
    await page.getByRole('dialog').waitFor();
    await page.getByRole('button', { name: 'Work the weight out with a tape' }).click();
    found['cow form'] = await look();
    expect(Object.entries(found).filter(([, list]) => 0 < list.length)).toEqual([]);
    expect(errors).toEqual([]);
  });
});

describe('the season', () => {
  it('says where the herd is and its next three moves, and folds the rest', async () => {
    const { page } = await house.page('phone');
    await openPasture(page);
    await page.getByText(/^Cows: .*(until|first)/).waitFor();
    const sure = page.getByText(/^Bales to buy.*for 8 of 10 years$/).first();
    await sure.waitFor({ timeout: 60_000 });
    const moves = page.locator('section', { has: page.getByRole('heading', { name: 'Moves' }) });
    expect([3, 4]).toContain(await moves.locator('.mantine-Card-root').count());
    expect(await page.evaluate('document.documentElement.scrollHeight')).toBeLessThan(3900);
    // On paper all of it is open.
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByText(/^Last day on grass$/).isVisible()).toBe(true);
  });

  it('runs from turn-out to a last move, and opens its numbers', async () => {
    const { page } = await house.page('desktop');
    await openPasture(page);
    await unfold(page, 'Key dates');
    await page.getByText(/^Turn-out$/).waitFor();
    await page.getByText(/^Last day on grass$/).waitFor();
    await page.getByRole('button', { name: /^All \d+ entries$/ }).click();
    expect(
      await page.getByRole('button', { name: 'Numbers of this stay' }).count(),
    ).toBeGreaterThan(30);
    await page.getByRole('button', { name: 'Numbers of this stay' }).first().click();
    await page.getByRole('button', { name: /^Stocking density/ }).click();
    await page.getByRole('dialog').getByText('live weight ÷ paddock area').waitFor();
  });

  it('opens what stands, what is needed, and why a move falls on its day', async () => {
    const { page } = await house.page('phone');
    const base = await openPasture(page);
    const drawer = page.getByRole('dialog');
    const openAndRead = async (name: RegExp, texts: readonly string[]): Promise<void> => {
      await page.getByRole('button', { name }).first().click();
      for (const text of texts) await drawer.getByText(text).first().waitFor();
      await page.keyboard.press('Escape');
      await drawer.waitFor({ state: 'detached' });
    };
    await unfold(page, 'Grass in each paddock');
    await openAndRead(/^Grass on hand in Pond:/, [
      'W = W₀ + grown − eaten − trampled − mown − died off',
      'Grown since',
    ]);
    await openAndRead(/^Height in Pond:/, ['h = W ÷ m', 'Forage per unit of height']);
    await openAndRead(/^Average grass on hand:/, ['W_mean = Σ W·A ÷ Σ A']);
    await openAndRead(/^Need of the 21 days from then:/, ['F = Σ need of a day']);
    await openAndRead(/^Cows: need of the day:/, ['F = Σ head·DMI']);
    await openAndRead(/^Grass on hand in all paddocks:/, ['M = Σ W·A', 'Pond']);
    await openAndRead(/^In on:/, ['Why then', 'turn-out: the first day the rules allow']);
    await openAndRead(/^Exit height:/, ['h = W ÷ m', 'Residual']);
    await unfold(page, 'Key dates');
    await openAndRead(/^Turn-out:/, ['Ground drained and grass growing from']);
    await page.goto(`${base}/print`);
    await page.getByText('Cows on hay').first().waitFor({ timeout: 30_000 });
    await openAndRead(/^Days of stay:/, ['Why they leave']);
  });

  it('says what hay does in eight of ten years, and takes what was mown', async () => {
    const { page } = await house.page('phone');
    await openPasture(page);
    const sure = page.getByText(/^Bales to buy.*for 8 of 10 years$/).first();
    await sure.waitFor({ timeout: 60_000 });
    await page
      .getByText(/^Bales to buy.*usual weather$/)
      .first()
      .waitFor();
    await unfold(page, 'What was mown');
    await page.getByLabel('Made of it, bales').fill('7');
    await page.getByRole('button', { name: 'It was mown' }).click();
    await page.getByText(/: 7 bales/).waitFor();
    await page.getByRole('button', { name: /^Delete the mowing of/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Delete' }).click();
    await page.getByText(/: 7 bales/).waitFor({ state: 'detached' });
  });

  it('moves its dates with the rain of August, and says what changed', async () => {
    const { page } = await house.page('desktop');
    await openPasture(page);
    await unfold(page, 'What if');
    await page.getByRole('slider', { name: 'Rain in August' }).focus();
    for (const key of ['Home', 'ArrowRight', 'ArrowRight']) await page.keyboard.press(key);
    await page.getByText('Rain in August: 10 %').waitFor();
    const change = page.getByText(
      /feed.*, and .* (more|less) hay to buy\. \d+ of \d+ stays change/,
    );
    await change.waitFor({ timeout: 30_000 });
    expect(await change.textContent()).toMatch(/The soil slows the grass from .*more hay to buy/);
    expect(await change.textContent()).toMatch(
      /You would see it from .* To answer it from that day: /,
    );
    // A second month beside the first.
    const augustAlone = await change.textContent();
    await page.getByLabel('Month', { exact: true }).selectOption('July');
    await page.getByRole('slider', { name: 'Rain in July' }).focus();
    for (const key of ['Home', ...Array<string>(4).fill('ArrowRight')])
      await page.keyboard.press(key);
    await page.getByText('Rain in July: 20 %').waitFor();
    await page.getByText('July: 20 % rain').waitFor();
    await page.getByText('August: 10 % rain').waitFor();
    await page.getByText('Working it out').waitFor({ state: 'detached' });
    await change.waitFor({ timeout: 30_000 });
    expect(await change.textContent()).not.toBe(augustAlone);
    expect(await change.textContent()).toMatch(/The soil slows the grass from .*more hay to buy/);
    expect(await seriousFindings(page, '.chips')).toEqual([]);
    await page.getByRole('button', { name: 'August as it was' }).click();
    await page.getByText('August: 10 % rain').waitFor({ state: 'detached' });
    await page.getByText('July: 20 % rain').waitFor();
    await page.getByRole('button', { name: 'Back to the plan as it is' }).click();
    await change.waitFor({ state: 'detached' });
    await page.getByText('July: 20 % rain').waitFor({ state: 'detached' });
  });

  it('shows hay fed and made with the grass, and each paddock by height or by days of rest', async () => {
    const { page } = await house.page('phone');
    await openPasture(page);
    for (const words of ['Grass above the residuals', 'Of it, fed as hay', 'Hay made that day'])
      await page.locator('.mass-chart').getByText(words, { exact: true }).waitFor();
    await page
      .locator('summary')
      .filter({ hasText: /^Map on/ })
      .click();
    const map = page.getByRole('img', { name: /^Map of the paddocks, north at the top/ });
    await map.waitFor();
    const tiles = page.locator('.paddock-tiles li');
    expect(await tiles.count()).toBe(12);
    await page
      .getByRole('button', { name: /^Height in Pond:/ })
      .first()
      .waitFor();
    await page.getByRole('slider', { name: 'Day of the map' }).focus();
    for (let day = 0; day < 30; day++) await page.keyboard.press('ArrowRight');
    await page.getByText('Days of rest', { exact: true }).click();
    await page.getByText('Days since they were last grazed or mown.').waitFor();
    await page
      .getByRole('button', { name: /^Rest of [A-Z][a-z]+: [0-9]+ days?/ })
      .first()
      .click();
    await page.getByRole('dialog').getByText('Left or mown on').waitFor();
    await page.keyboard.press('Escape');
    expect(await wrongAtBothSizes(page)).toEqual([]);
  });

  it('starts from the heights that are typed on a phone', async () => {
    const { page } = await house.page('phone');
    const base = await openPasture(page);
    await page.goto(`${base}/walk`);
    const pond = page.getByRole('textbox', { name: /^Pond/ });
    const save = page.getByRole('button', { name: /^Save 1 height/ });
    // A slip is asked about before it moves the season.
    await pond.fill('40');
    const isRight = page.getByRole('checkbox', { name: /was expected.*40 in is right/ });
    await isRight.waitFor({ timeout: 30_000 });
    expect(await save.isDisabled()).toBe(true);
    await isRight.check();
    expect(await save.isEnabled()).toBe(true);
    await pond.fill('');
    await pond.pressSequentially('9.5'); // its point was lost between two keys
    await page.getByRole('button', { name: 'Barn: higher' }).click();
    // Another height is another question: in winter that one is far from what stands as well.
    const asksAgain = page.getByRole('checkbox', { name: /was expected.*9\.5 in is right/ });
    if (await asksAgain.isVisible()) await asksAgain.check();
    await page.getByRole('button', { name: /^Save 2 heights/ }).click();
    await page.getByText('Saved', { exact: true }).waitFor({ timeout: 30_000 });
    // What it changed is said at once, as soon as the plan is made anew.
    await page.getByText(/^Hay to buy in the usual weather/).waitFor({ timeout: 30_000 });
    await page.goto(`${base}/sizes`);
    const row = page.getByRole('row', { name: /^Pond/ });
    // Before the season a part dies off over winter, so that the reading is looked for, not its height then.
    await row.getByRole('button', { name: /^Height on/ }).click({ timeout: 30_000 });
    await page.getByRole('dialog').getByText('9.5 in', { exact: true }).waitFor();
  });

  it('says beside its field, once, what is wrong, and takes the eye there', async () => {
    const { page } = await house.page('phone');
    const base = await openPasture(page);
    await page.goto(`${base}/land`);
    await page.getByRole('button', { name: 'Add a paddock' }).click();
    const form = page.getByRole('dialog');
    await form.getByLabel('Name').fill('Newfield');
    const area = form.getByLabel(/^Area/);
    await area.fill('abc');
    await form.getByRole('button', { name: 'Save' }).click();
    await form.getByText('“abc” is not a number: write it such as 2.5 or 2.5 acres.').waitFor();
    expect(await form.getByText(/missing/).count()).toBe(0);
    expect(await form.getByRole('alert').count()).toBe(0);
    await page.waitForFunction("document.activeElement?.value === 'abc'");
    await area.fill('');
    await form.getByRole('button', { name: 'Save' }).click();
    await form.getByText(/^Area is missing/).waitFor();
    expect(await form.getByText(/^Area is missing/).count()).toBe(1);
    expect(await form.getByRole('alert').count()).toBe(0);
    // A height that could not be read used to be left out in silence.
    await area.fill('2');
    await form.getByLabel(/^Ready height/).fill('tall');
    await form.getByRole('button', { name: 'Save' }).click();
    await form.getByText('“tall” is not a number', { exact: false }).waitFor();
    await form.getByLabel(/^Ready height/).fill('10');
    await form.getByRole('button', { name: 'Save' }).click();
    await page.getByLabel(/^Newfield 2 acres/).waitFor();
  });

  it('adds a paddock from its corners, splits it, and refuses one whose sides cross', async () => {
    const { page } = await house.page('desktop');
    const base = await openPasture(page);
    await page.goto(`${base}/land`);
    await page.getByRole('button', { name: 'Add a paddock' }).click();
    const form = page.getByRole('dialog');
    await form.getByLabel('Name').fill('Newfield');
    const corners = form.getByLabel('Corners');
    await corners.fill('42.91, -75.3\n42.911, -75.299\n42.911, -75.3\n42.91, -75.299');
    await form.getByRole('button', { name: 'Save' }).click();
    await form.getByText(/cross each other/).waitFor();
    expect(await form.getByText(/cross each other/).count()).toBe(1);
    await corners.fill('42.91, -75.3\n42.91, -75.299\n42.911, -75.299\n42.911, -75.3');
    await form.getByRole('button', { name: 'Save' }).click();
    // 81.7 m by 111.1 m on the ellipsoid are 2.24 acres.
    await page.getByLabel(/^Newfield 2\.24 acres/).check();
    await page.getByRole('button', { name: 'Split into 2 strips' }).click();
    await page.getByLabel(/^Newfield 1 1\.12 acres/).waitFor();
    await page.getByLabel(/^Newfield 2 1\.12 acres/).waitFor();
    // The strips have outlines, from which the joined paddock's is drawn.
    await page.getByRole('button', { name: 'Change Newfield 2' }).click();
    expect(await form.getByLabel('Corners').inputValue()).toMatch(/^42\.9\d+, -75\.\d+\n/);
    await page.keyboard.press('Escape');
    await form.waitFor({ state: 'detached' });
    await page.getByLabel(/^Newfield 1 1\.12 acres/).check();
    await page.getByLabel(/^Newfield 2 1\.12 acres/).check();
    await page.getByLabel('Name of the joined paddock').fill('Oldfield');
    await page.getByRole('button', { name: 'Join 2' }).click();
    await page.getByLabel(/^Oldfield 2\.24 acres/).waitFor();
    // Paddocks that do not touch have no outline together.
    await page.getByLabel(/^Oldfield/).check();
    await page.getByLabel(/^Pond/).check();
    await page.getByLabel('Name of the joined paddock').fill('Bigfield');
    await page.getByRole('button', { name: 'Join 2' }).click();
    await page.getByLabel(/^Bigfield/).waitFor();
    await page.getByText(/^Bigfield has no outline now, because the outlines lie apart/).waitFor();
  });

  it('names a cow, says why one is too many, and shows her calving and her tasks', async () => {
    const { page } = await house.page('phone');
    const base = await openPasture(page);
    await page.goto(`${base}/land`);
    const form = page.getByRole('dialog');
    // The milk cow has a name already.
    await page.getByRole('button', { name: 'Add a named cow to Cows' }).click();
    await form.getByLabel('Name').fill('Poppy');
    await form.getByLabel('Class').selectOption('Milk cow');
    await form.getByRole('button', { name: 'Save' }).click();
    await form.getByText(/^Herd is 2, but must be at most 1\. All 1 head of the class/).waitFor();
    await form.getByLabel('Class').selectOption('Beef cow, in calf');
    await form.getByLabel('Ear tag').fill('A 21');
    // A tape of 60 and 53 inches says 636 pounds.
    await form.getByRole('button', { name: 'Work the weight out with a tape' }).click();
    await form.getByLabel('Girth, in').fill('60');
    await form.getByLabel('Length, in').fill('53');
    await form.getByRole('button', { name: 'Take 636 lb' }).click();
    expect(await form.getByLabel('Weight, lb').inputValue()).toBe('636');
    await form.getByLabel('Bred on').fill(inDays(-240));
    await form.getByRole('button', { name: 'Save' }).click();
    await form.waitFor({ state: 'detached' });
    await page.getByText(/^Poppy, beef cow, in calf, ear tag A 21, 636 lb, bred /).waitFor();
    await page.goto(`${base}/../work/herds`);
    await page.getByRole('heading', { name: /^[0-9]+ later$/ }).click({ timeout: 30_000 });
    await page.getByRole('heading', { name: 'Poppy: navel, tag, record' }).waitFor({
      timeout: 30_000,
    });
    // A link into what is shut opens it.
    await page.goto(`${base}#key-dates`);
    await page.getByText('Poppy: calving due', { exact: true }).waitFor({ timeout: 30_000 });
    await page.goto(`${base}/land`);
    await page.getByRole('button', { name: 'Delete Cows' }).click();
    await page.getByText('Delete Cows, Bluebell, Clover, Poppy?').waitFor();
  });

  it('shows what a file of outlines holds, asks what grows there, and only then saves', async () => {
    const { page } = await house.page('phone');
    const base = await openPasture(page);
    await page.goto(`${base}/land`);
    const ring = [
      [-75.3, 42.91],
      [-75.299, 42.91],
      [-75.299, 42.911],
      [-75.3, 42.911],
      [-75.3, 42.91],
    ];
    const feature = (properties: object, corners: unknown): object => ({
      type: 'Feature',
      properties,
      geometry: { type: 'Polygon', coordinates: [corners] },
    });
    const load = async (...features: object[]): Promise<void> => {
      await page.locator('input[type=file]').setInputFiles({
        name: 'land.geojson',
        mimeType: 'application/geo+json',
        buffer: Buffer.from(JSON.stringify({ type: 'FeatureCollection', features })),
      });
    };
    await load(feature({ name: 'Hill' }, ring), feature({ name: 'Dot' }, ring.slice(0, 1)));
    await page.getByText(/^Feature 2 of the file is 1, but must be from 3 to 500/).waitFor();
    await load(feature({ name: 'Hill', soil: 'clay' }, ring), feature({ name: 'Dale' }, ring));
    const dialog = page.getByRole('dialog');
    await dialog.getByText('2 paddocks in land.geojson').waitFor();
    await dialog.getByText(/2\.24 acres; from the file: clay/i).waitFor();
    expect(await wrongAtBothSizes(page)).toEqual([]);
    await dialog.getByLabel('Soil').selectOption('sand');
    await dialog.getByLabel('Water in them').uncheck();
    await dialog.getByRole('button', { name: 'Add 2 paddocks' }).click();
    await page.getByText('2 paddocks added.').waitFor();
    await page.getByRole('button', { name: 'Change Dale' }).click();
    expect(await dialog.getByLabel('Soil').inputValue()).toBe('sand');
    expect(await dialog.getByLabel('Water in it').isChecked()).toBe(false);
  });
});

it('keeps grass for fall in the plan once it is asked to, and stops when asked again', async () => {
  const { page } = await house.page('desktop');
  await openPasture(page);
  await unfold(page, 'Key dates');
  await page.getByRole('button', { name: 'Keep them for fall' }).click();
  await page.getByText('closed for fall in this plan').waitFor({ timeout: 30_000 });
  await page.getByRole('button', { name: 'Graze them as the others' }).click();
  await page.getByRole('button', { name: 'Keep them for fall' }).waitFor({ timeout: 30_000 });
});

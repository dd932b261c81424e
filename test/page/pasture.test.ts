import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import { House } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

/** Address of a fresh sample farm's pasture. */
async function openPasture(page: Page): Promise<string> {
  await page.goto(`${house.url}/`);
  await page.getByRole('button', { name: 'Open the sample farm' }).click();
  await page.getByRole('heading', { name: 'Batches' }).waitFor();
  const base = page.url().replace(/\/batches$/, '/pasture');
  await page.goto(base);
  await planned(page);
  return base;
}

/** The season is there, worked out in the browser. */
const planned = (page: Page): Promise<void> =>
  page.getByRole('heading', { name: 'Where the herds are' }).waitFor({ timeout: 30_000 });

async function findings(page: Page): Promise<string[]> {
  await page.waitForTimeout(250);
  const { violations } = await new AxeBuilder({ page }).analyze();
  const tooWide = await page.evaluate(
    'document.documentElement.scrollWidth > window.innerWidth + 1',
  );
  return [
    ...(tooWide ? ['the page scrolls sideways'] : []),
    ...violations
      .filter((v) => v.impact === 'serious' || v.impact === 'critical')
      .flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.target.join(' ')}`)),
  ];
}

describe.each(['desktop', 'phone'] as const)('grass and cattle, %s', (size) => {
  it('has no serious or critical accessibility finding, no error, and no sideways scroll', async () => {
    const { page, errors } = await house.page(size);
    const base = await openPasture(page);
    await page.locator('.recharts-surface').first().waitFor();
    const found: Record<string, string[]> = { season: await findings(page) };
    for (const [path, heading] of [
      ['walk', 'Walk the field'],
      ['land', 'Paddocks and herds'],
      ['sizes', 'Paddock by paddock'],
      ['work', 'Work with the herds'],
      ['print', 'Moves, Thistledown (sample)'],
    ] as const) {
      await page.goto(`${base}/${path}`);
      await page.getByRole('heading', { name: heading }).waitFor({ timeout: 30_000 });
      found[path] = await findings(page);
    }
    await page.goto(`${base}/land`);
    await page.getByRole('button', { name: 'Change Pond' }).click();
    await page.getByRole('dialog').waitFor();
    found['paddock form'] = await findings(page);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Change Cows' }).click();
    await page.getByRole('dialog').waitFor();
    found['herd form'] = await findings(page);
    expect(Object.entries(found).filter(([, list]) => 0 < list.length)).toEqual([]);
    expect(errors).toEqual([]);
  });
});

describe('the season', () => {
  it('runs from turn-out to a last move, and opens its numbers', async () => {
    const { page } = await house.page('desktop');
    await openPasture(page);
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
    await openAndRead(/^Standing in Pond:/, [
      'W = W₀ + grown − eaten − trampled − mown − died off',
      'Grown since',
    ]);
    await openAndRead(/^Height in Pond:/, ['h = W ÷ m', 'Dry matter in a centimetre']);
    await openAndRead(/^Standing on average:/, ['W_mean = Σ W·A ÷ Σ A']);
    await openAndRead(/^Need of the 21 days from then:/, ['F = Σ need of a day']);
    await openAndRead(/^Cows: need of the day:/, ['F = Σ head·DMI']);
    await openAndRead(/^Standing in all paddocks:/, ['M = Σ W·A', 'Pond']);
    await openAndRead(/^In on:/, ['Why then', 'turn-out: the first day the rules allow']);
    await openAndRead(/^Leave at:/, ['h = W ÷ m', 'Residual']);
    await openAndRead(/^Turn-out:/, ['Ground drained and grass growing from']);
    await page.goto(`${base}/print`);
    await page.getByText('Cows on hay').first().waitFor({ timeout: 30_000 });
    await openAndRead(/^Days of stay:/, ['Why they leave']);
  });

  it('moves its dates with the rain of August, and says what changed', async () => {
    const { page } = await house.page('desktop');
    await openPasture(page);
    await page.getByRole('slider', { name: 'Rain in August' }).focus();
    for (let step = 0; step < 18; step++) await page.keyboard.press('ArrowLeft');
    await page.getByText('Rain in August: 10 %').waitFor();
    const change = page.getByText(
      /of dry matter (more|less) to feed in all\. \d+ of \d+ stays change/,
    );
    await change.waitFor({ timeout: 30_000 });
    expect(await change.textContent()).toMatch(/The soil slows the grass from .*more to feed/);
    await page.getByRole('button', { name: 'Back to the plan as it is' }).click();
    await change.waitFor({ state: 'detached' });
  });

  it('starts from the heights that are typed on a phone', async () => {
    const { page } = await house.page('phone');
    const base = await openPasture(page);
    await page.goto(`${base}/walk`);
    await page.getByRole('textbox', { name: /^Pond/ }).fill('9');
    await page.getByRole('button', { name: 'Barn: higher' }).click();
    await page.getByRole('button', { name: /^Keep 2 heights/ }).click();
    await page.getByText('Kept').waitFor({ timeout: 30_000 });
    await page.goto(`${base}/sizes`);
    const row = page.getByRole('row', { name: /^Pond/ });
    // Before the season a part dies off over winter, so that the reading is looked for, not its height then.
    await row.getByRole('button', { name: /^Height on/ }).click({ timeout: 30_000 });
    await page.getByRole('dialog').getByText('9 in', { exact: true }).waitFor();
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
    await form
      .getByText(/cross each other/)
      .first()
      .waitFor();
    await corners.fill('42.91, -75.3\n42.91, -75.299\n42.911, -75.299\n42.911, -75.3');
    await form.getByRole('button', { name: 'Save' }).click();
    // 81.7 m by 111.1 m on the ellipsoid are 2.24 acres.
    await page.getByLabel(/^Newfield 2\.24 acres/).check();
    await page.getByRole('button', { name: 'Split into 2 strips' }).click();
    await page.getByLabel(/^Newfield 1 1\.12 acres/).waitFor();
    await page.getByLabel(/^Newfield 2 1\.12 acres/).waitFor();
  });
});

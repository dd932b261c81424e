import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Locator, Page } from 'playwright-core';
import { addDays } from '../../shared/calendar/plain-date.js';
import { House, seriousFindings, type SIZES } from '../support/page.js';

jest.setTimeout(180_000);

let house: House;
let farmId: string;
beforeAll(async () => {
  house = await House.open();
  const { page } = await house.page('desktop');
  const answer = await page.request.post(`${house.url}/api/farms/sample`);
  ({ id: farmId } = (await answer.json()) as { id: string });
});
afterAll(() => house.close());

/** The year of the sample farm. */
async function openYear(size: keyof typeof SIZES): Promise<{ page: Page; errors: string[] }> {
  const opened = await house.page(size);
  await opened.page.goto(`${house.url}/farm/${farmId}/year`);
  await opened.page.getByRole('heading', { name: 'The year' }).waitFor({ timeout: 60_000 });
  return opened;
}

/** The batch whose arrival stands last, so that there is room to move it either way. */
async function lastBatch(page: Page): Promise<{ id: string; name: string; arrivalDate: string }> {
  const answer = await page.request.get(`${house.url}/api/farms/${farmId}/batches`);
  const batches = (await answer.json()) as { id: string; name: string; arrivalDate: string }[];
  return batches.sort((a, b) => (a.arrivalDate < b.arrivalDate ? -1 : 1)).at(-1)!;
}

const handleOf = (page: Page, name: string): Locator =>
  page.getByRole('slider', { name: `Arrival of ${name}` });
/** Days of an arrival from today, as the handle tells them. */
const daysOf = async (handle: Locator): Promise<number> =>
  Number(await handle.getAttribute('aria-valuenow'));

const hasFocus = (of: Locator): Promise<boolean> =>
  of.evaluate((element) => element.matches(':focus'));

/** Drags a handle some pixels to the right. */
async function drag(page: Page, handle: Locator, px: number): Promise<void> {
  await handle.scrollIntoViewIfNeeded();
  const box = (await handle.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + px / 2, y, { steps: 4 });
  await page.mouse.move(x + px, y, { steps: 4 });
  await page.mouse.up();
}

describe.each(['desktop', 'phone'] as const)('the year, %s', (size) => {
  it('shows everything without a serious finding, an error or sideways scroll of the page', async () => {
    const { page, errors } = await openYear(size);
    const { name } = await lastBatch(page);
    await page.getByRole('link', { name }).first().waitFor();
    // It begins at today, however wide the strip is.
    const today = (await page.locator('.year-strip .year-today').boundingBox())!;
    const names = (await page.locator('.year-strip .year-name').first().boundingBox())!;
    expect(today.x).toBeGreaterThanOrEqual(names.x + names.width - 2);
    if (size === 'phone') expect(today.x).toBeLessThan(names.x + names.width + 40);
    expect(await seriousFindings(page)).toEqual([]);
    expect(
      await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth + 1'),
    ).toBe(true);
    // Keys are told of only where there is a keyboard: not to a thumb.
    const keys = page.getByText('arrow keys');
    expect(await keys.isVisible()).toBe(true);
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Emulation.setTouchEmulationEnabled', { enabled: true });
    await keys.waitFor({ state: 'hidden' });
    expect(errors).toEqual([]);
  });

  it('says what dragging an arrival would do, and leaves it', async () => {
    const { page } = await openYear(size);
    const { name, arrivalDate } = await lastBatch(page);
    const handle = handleOf(page, name);
    const before = await daysOf(handle);
    await drag(page, handle, 60);
    const panel = page.getByRole('region', { name: 'What moving the arrival would do' });
    await panel.getByText('Dates that move').waitFor();
    expect(await daysOf(handle)).toBeGreaterThan(before + 5);
    await panel.getByText('out of the brooder:').waitFor();
    // Hours are compared as far as work is planned; beyond that they are said not to be.
    const work = (await (
      await page.request.get(`${house.url}/api/farms/${farmId}/work`)
    ).json()) as { today: string; to: string };
    const isPlanned = addDays(work.today, await daysOf(handle)) <= work.to;
    const said = isPlanned
      ? /You would have time|You would no longer|More work due/
      : /Hours are planned until/;
    await panel.getByText(said).first().waitFor({ timeout: 60_000 });
    await panel.getByRole('button', { name: 'Leave' }).click();
    await panel.waitFor({ state: 'detached' });
    expect(await daysOf(handle)).toBe(before);
    expect((await lastBatch(page)).arrivalDate).toBe(arrivalDate);
  });
});

describe('an arrival', () => {
  it('is moved by keys, a day and a week at a time, and kept', async () => {
    const { page } = await openYear('desktop');
    const { name, arrivalDate } = await lastBatch(page);
    const handle = handleOf(page, name);
    await handle.focus();
    const before = await daysOf(handle);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('ArrowLeft');
    expect(await daysOf(handle)).toBe(before + 7);
    expect(await handle.getAttribute('aria-valuetext')).toContain('in place of');
    await page.keyboard.press('Escape');
    expect(await daysOf(handle)).toBe(before);
    await page.keyboard.press('Shift+ArrowLeft');
    const keep = page.getByRole('button', { name: 'Keep' });
    await keep.waitFor();
    await page.keyboard.press('Enter');
    expect(await hasFocus(keep)).toBe(true);
    await page.keyboard.press('Enter');
    await keep.waitFor({ state: 'detached', timeout: 60_000 });
    expect((await lastBatch(page)).arrivalDate).toBe(addDays(arrivalDate, -7));
    expect(await daysOf(handle)).toBe(before - 7);
    // Where the hand was, it can go on.
    expect(await hasFocus(handle)).toBe(true);
  });
});

describe('the year on paper', () => {
  it.each(['Letter', 'A4'] as const)('is one sheet of %s on its side', async (format) => {
    const { page, errors } = await house.page('desktop');
    await page.goto(`${house.url}/farm/${farmId}/year/print`);
    await page.getByText('As planned on').waitFor({ timeout: 60_000 });
    await page.getByText('calving due').first().waitFor();
    // Some readers of PDF leave patterns of a background out: lines are drawn.
    const backgrounds = (await page.evaluate(`[...document.querySelectorAll('.year-page *')]
      .map((each) => getComputedStyle(each).backgroundImage)
      .filter((image) => image !== 'none')`)) as string[];
    expect(backgrounds).toEqual([]);
    expect(await page.locator('.year-page .year-fill line').count()).toBeGreaterThan(20);
    // Letters of 9 points at least: it hangs on a wall.
    const sizes = (await page.evaluate(`(() => {
      const sheet = document.querySelector('.year-page');
      return [...sheet.querySelectorAll('*')]
        .filter((each) => [...each.childNodes].some(({ nodeType }) => nodeType === 3))
        .filter((each) => each.checkVisibility())
        .map((each) => parseFloat(getComputedStyle(each).fontSize) * Number(sheet.style.zoom));
    })()`)) as number[];
    expect((Math.min(...sizes) * 72) / 96).toBeGreaterThanOrEqual(9);
    const pdf = (await page.pdf({ format, landscape: true })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
    const [, width, height] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!;
    expect(Number(height)).toBeLessThan(Number(width));
    expect(errors).toEqual([]);
  });
});

import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Locator, Page } from 'playwright-core';
import { inDays } from '../support/orders.js';
import { House, openMore, seriousFindings, walkTo, wrongAtBothSizes } from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

/** The work of a fresh sample farm. */
async function openWork(page: Page): Promise<void> {
  await page.goto(`${await house.sampleFarm()}/work`);
  await page.getByRole('heading', { name: 'Work', exact: true }).waitFor({ timeout: 60_000 });
}

/** Parts of the section, by their link, and a heading that stands in each. */
const PARTS = [
  [/^(Work plan|Plan)/, 'Hours by week'],
  [/^(Will it get done|In time)/, 'Probably not in time'],
  [/^Other/, 'Ready-made sets'],
  [/^(While you’re away|Away)/, 'In your calendar'],
  [/^(Next days|Days)/, 'Today and the next three days'],
] as const;
const openPart = (page: Page, part: string): Promise<void> =>
  walkTo(page, page.url().replace(/\/work.*$/, `/work${part}`));

async function addJob(page: Page, name: string, hours: string): Promise<void> {
  await openPart(page, '/own');
  await page.getByRole('button', { name: 'Add a job' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill(name);
  await page.getByRole('textbox', { name: 'Hours of each who takes part' }).fill(hours);
  await page.getByRole('button', { name: 'Save' }).click();
}

describe('the work, on a phone and at a desk', () => {
  it('shows every part without a serious finding, an error or sideways scroll', async () => {
    const { page, errors } = await house.page('phone');
    await openWork(page);
    for (const [part, heading] of PARTS) {
      await page
        .getByRole('navigation', { name: 'Work' })
        .getByRole('link', { name: part })
        .click();
      await page.getByRole('heading', { name: heading, exact: true }).waitFor({ timeout: 60_000 });
      expect(await wrongAtBothSizes(page)).toEqual([]);
      // A table that does not fit says so and is slid: on a phone none of the work is.
      expect(await page.getByText('Slide the table sideways').count()).toBe(0);
    }
    expect(errors).toEqual([]);
  });
});

describe('today, on a phone', () => {
  const open = async (page: Page): Promise<void> => {
    await openWork(page);
    await addJob(page, 'Mend the gate', '1');
    await page.getByRole('button', { name: 'Change Mend the gate' }).waitFor();
    await walkTo(page, page.url().replace(/\/work.*$/, '/today'));
    await page.getByRole('heading', { name: 'Animals' }).waitFor({ timeout: 30_000 });
  };
  /** Where it is in the document, however far that is scrolled. */
  const placeOf = (of: Locator): Promise<{ x: number; y: number; width: number; height: number }> =>
    of.evaluate((each) => {
      const { x, y, width, height } = each.getBoundingClientRect();
      return { x, y: Math.round(y + each.ownerDocument.defaultView!.scrollY), width, height };
    });

  it('is read without a serious finding or sideways scroll, and its numbers open', async () => {
    const { page, errors } = await house.page('phone');
    await open(page);
    expect(await seriousFindings(page)).toEqual([]);
    expect(
      await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth + 1'),
    ).toBe(true);
    const animals = page.getByRole('region', { name: 'Animals' });
    expect((await placeOf(animals.getByRole('listitem').first())).y).toBeLessThan(844 / 2);
    await animals
      .getByRole('button', { name: /^[\d.]+ gal water/ })
      .first()
      .click();
    await page.getByText('Where this number comes from').waitFor();
    expect(errors).toEqual([]);
  });

  it('ticks a job and a chore off, and undoes both where they were touched', async () => {
    const { page, errors } = await house.page('phone');
    await open(page);
    // The cows are on grass or on hay on any day of the year, and have their round.
    const chore = page.getByRole('button', { name: /^Done: .+, Cows$/ }).first();
    const ofChore = (await chore.getAttribute('aria-label'))!.replace('Done: ', '');
    for (const name of ['Mend the gate', ofChore]) {
      const done = page.getByRole('button', { name: `Done: ${name}`, exact: true });
      const undo = page.getByRole('button', { name: `Undo: ${name}`, exact: true });
      const { x, y, width, height } = await placeOf(done);
      expect(Math.min(width, height)).toBeGreaterThanOrEqual(48);
      await done.click();
      await undo.waitFor();
      expect(await placeOf(undo)).toMatchObject({ x, y });
      await page.waitForLoadState('networkidle');
      await page.reload();
      await undo.waitFor();
      if (name === 'Mend the gate') await tellHours(page, '1.5');
      await undo.click();
      await done.waitFor();
      await page.waitForLoadState('networkidle');
      await page.reload();
      await done.waitFor();
    }
    expect(errors).toEqual([]);
  });

  it('shows work that was put off as that, and not as done', async () => {
    const { page } = await house.page('phone');
    await open(page);
    const markOf = (name: string) =>
      page.getByRole('button', { name }).locator('path').getAttribute('d');
    const job = page.getByRole('listitem').filter({ hasText: 'Mend the gate' });
    await page.getByRole('button', { name: 'Done: Mend the gate' }).click();
    const done = await markOf('Undo: Mend the gate');
    await page.getByRole('button', { name: 'Undo: Mend the gate' }).click();
    await page.getByRole('button', { name: 'Done: Mend the gate' }).waitFor();
    await job.locator('summary').first().click();
    await page.getByRole('button', { name: 'Put off to tomorrow: Mend the gate' }).click();
    await job.getByText(/^Put off to/).waitFor();
    expect(await markOf('Undo: Mend the gate')).not.toBe(done);
    await page.getByRole('button', { name: 'Undo: Mend the gate' }).click();
    await page.getByRole('button', { name: 'Done: Mend the gate' }).waitFor();
  });

  /** Hours are kept when their box is left. */
  async function tellHours(page: Page, hours: string): Promise<void> {
    const took = page.getByLabel('Hours it took: Mend the gate');
    await took.fill(hours);
    const told = page.waitForResponse((answer) => answer.request().method() === 'PUT');
    await took.blur();
    await told;
    await page.waitForLoadState('networkidle');
    await page.reload();
    await took.waitFor();
    expect(await took.inputValue()).toBe(hours);
  }
});

describe('the household’s own work', () => {
  it('is planned at once, says why, and is ticked off', async () => {
    const { page } = await house.page('phone');
    await openWork(page);
    await addJob(page, 'Mend the gate', '1');
    await page.getByRole('button', { name: 'Change Mend the gate' }).waitFor();
    await openPart(page, '');
    await page.getByRole('button', { name: 'Done: Mend the gate' }).first().waitFor();
    const today = page.getByRole('region', { name: /./ }).filter({ hasText: 'Today, ' });
    const gate = today.locator('.day-work', { hasText: 'Mend the gate' });
    await gate.locator('summary').first().click();
    await gate.getByText('Why now: The first day there is time for it').waitFor();
    await page.getByRole('button', { name: 'Done: Mend the gate' }).first().click();
    await page
      .getByRole('button', { name: 'Done: Mend the gate' })
      .first()
      .waitFor({ state: 'detached', timeout: 30_000 });
    await page.getByRole('button', { name: 'Undo: Mend the gate' }).click();
    await page
      .getByRole('button', { name: 'Done: Mend the gate' })
      .first()
      .waitFor({ timeout: 30_000 });
    // Other hours are planned with, and seen in the row where they were typed.
    const row = page.locator('.day-work').filter({ hasText: 'Mend the gate' });
    await row.getByText('Change', { exact: true }).click();
    await row.getByLabel('Hours to plan: Mend the gate').fill('0.5');
    await row.getByRole('button', { name: 'Save the change: Mend the gate' }).click();
    await row.getByText('Planned with 30 min.').waitFor({ timeout: 30_000 });
    await row.getByText(/^(\S+, )?30 min$/).waitFor({ timeout: 30_000 });
  });

  it('stands in one line of the plan when it comes every week, with its days behind a touch', async () => {
    const { page } = await house.page('phone');
    const farm = await house.sampleFarm();
    const answer = await fetch(farm.replace('/farm/', '/api/farms/') + '/jobs', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        ...{ name: 'Scrub the troughs', hours: 0.5, dueOn: inDays(2), priority: 'should' },
        ...{ conditions: {}, canBeSpread: false, repeats: { every: 'days', everyDays: 7 } },
      }),
    });
    expect(answer.status).toBe(201);
    await page.goto(`${farm}/work/own`);
    await page.getByText(/^30 min, every week, next on /).waitFor();
    await openPart(page, '/plan');
    const lines = page.getByRole('rowheader', { name: /^Scrub the troughs/ });
    await lines.first().waitFor({ timeout: 30_000 });
    expect(await lines.count()).toBe(1);
    const count = Number(/\d+/.exec((await lines.first().textContent())!)![0]);
    await lines.first().getByRole('button').click();
    expect(await lines.count()).toBe(1 + count);
  });

  it('begins when somebody says that their hours begin', async () => {
    const { page } = await house.page('phone');
    await openWork(page);
    await page.goto(page.url().replace(/\/work.*$/, '/place'));
    const change = page.getByRole('button', { name: 'Change Maren' });
    await change.click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Hours on Mon').fill('5');
    await dialog.getByLabel('Begin on weekdays at').fill('09:30');
    // One save for all that was typed, and leaving it asks first.
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Keep typing' }).click();
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.waitFor({ state: 'detached' });
    await page.reload();
    await change.click();
    expect(await dialog.getByLabel('Hours on Mon').inputValue()).toBe('5');
    expect(await dialog.getByLabel('Begin on weekdays at').inputValue()).toBe('09:30');
    expect(await dialog.getByLabel('at the weekend at').inputValue()).toBe('08:00');
  });

  it('is listed with what would make it fit when it does not', async () => {
    const { page } = await house.page('desktop');
    await openWork(page);
    await addJob(page, 'Build the whole barn', '30');
    await page.getByRole('button', { name: 'Change Build the whole barn' }).waitFor();
    await page.getByRole('button', { name: 'Change Build the whole barn' }).click();
    await openMore(page, 'More about it');
    await page.getByRole('checkbox', { name: 'May be spread over several days' }).uncheck();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await openPart(page, '');
    await page.getByRole('heading', { name: 'No time for these' }).waitFor({ timeout: 30_000 });
    await page.getByText('30 h, due by').waitFor();
    await page.getByText('Let it be spread over several days').first().waitFor();
  });
});

describe('what changes a plan', () => {
  it('is a look at the ground, which can be taken back', async () => {
    const { page } = await house.page('phone');
    await openWork(page);
    await page.getByRole('button', { name: 'Dry enough' }).click();
    await page
      .getByText('You found the ground dry enough to work today.')
      .waitFor({ timeout: 30_000 });
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await page.getByRole('button', { name: 'Too wet', exact: true }).waitFor({ timeout: 30_000 });
  });

  it('is a forecast that is typed', async () => {
    const { page } = await house.page('phone');
    await openWork(page);
    await page.getByText('Forecast', { exact: true }).click();
    await page
      .getByLabel(/^Low on/)
      .first()
      .fill('35');
    await page
      .getByLabel(/^High on/)
      .first()
      .fill('48');
    await page
      .getByLabel(/^Rain on/)
      .first()
      .fill('0.3');
    await page.getByRole('button', { name: 'Plan with this forecast' }).click();
    await page.getByText(/^Forecast: rain/).waitFor({ timeout: 30_000 });
    await page.getByText(/1 days? of forecast, then/).waitFor();
  });

  it('is a ready-made set, taken and left', async () => {
    const { page } = await house.page('desktop');
    await openWork(page);
    await openPart(page, '/own');
    await page.getByRole('heading', { name: 'Ready-made sets' }).click();
    await page.getByRole('button', { name: 'Add these jobs: Berries' }).click();
    // It says where its jobs went, and leads there, shut as that is.
    const berries = page.getByRole('region', { name: 'Berries' });
    await berries.getByText(/of its jobs are among yours/).waitFor({ timeout: 30_000 });
    await berries.getByRole('link', { name: 'See the first' }).click();
    await page
      .getByText(/^Cut out old canes/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Remove them: Berries' }).click();
    await page.getByRole('button', { name: 'Delete', exact: true }).click();
    await page
      .getByRole('button', { name: 'Add these jobs: Berries' })
      .waitFor({ timeout: 30_000 });
  });

  it('is asked about before an arrival moves: what that would free or break', async () => {
    const { page } = await house.page('desktop');
    await openWork(page);
    await openPart(page, '/plan');
    await page.getByRole('heading', { name: 'If an arrival moved' }).click();
    await page.getByRole('button', { name: 'Preview' }).click();
    await page.getByText(/^Work done late:/).waitFor({ timeout: 30_000 });
    await page.getByText('moved from', { exact: false }).first().waitFor();
  });
});

describe('handing days over', () => {
  it('is not asked of who only says to be away', async () => {
    const { page } = await house.page('phone');
    await openWork(page);
    await openPart(page, '/away');
    const sheets = page.getByRole('link', { name: 'Sitter’s sheet' });
    await sheets.first().waitFor();
    const before = await sheets.count();
    await page.getByRole('button', { name: 'Add days away' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('checkbox', { name: 'Maren' }).check();
    await dialog.getByLabel('First day').fill(inDays(90));
    await dialog.getByLabel('Last day').fill(inDays(91));
    await dialog.getByRole('button', { name: 'Save' }).click();
    await dialog.waitFor({ state: 'hidden' });
    await page.getByText(/^Maren away, .*Tobias stays/).waitFor({ timeout: 30_000 });
    // What it moves is said at once, and the days can be taken back.
    await page
      .getByText(/No work has to move|moved from|no time for it any more/)
      .first()
      .waitFor();
    expect(await sheets.count()).toBe(before);
    const told = page.getByText(/^Maren away, .*Tobias stays/);
    const days = await told.count();
    await page
      .getByRole('button', { name: /^Remove the days away from/ })
      .last()
      .click();
    await page.getByRole('button', { name: 'Delete' }).click();
    await told.nth(days - 1).waitFor({ state: 'detached', timeout: 30_000 });
  });

  it('shows what it moves, is saved, and prints on one page a day', async () => {
    const { page } = await house.page('desktop');
    await openWork(page);
    await openPart(page, '/away');
    await page.getByRole('button', { name: 'Make a sheet for a sitter' }).click();
    const dialog = page.getByRole('dialog');
    // Who is away comes first; of those who stay no child can be left in charge.
    const charge = dialog.getByLabel('Who is in charge');
    const maren = charge.locator('option', { hasText: 'Maren' });
    expect(await maren.count()).toBe(1);
    await dialog.getByRole('checkbox', { name: 'Maren' }).check();
    await dialog.getByRole('checkbox', { name: 'Tobias' }).check();
    expect(await maren.count()).toBe(0);
    await charge.selectOption({ label: 'Farm sitter' });
    await dialog.getByLabel('Name of who comes in').fill('Neighbor');
    // Later than the days away that the sample has handed over already.
    await dialog.getByLabel('First day').fill(inDays(75));
    await dialog.getByLabel('Last day').fill(inDays(78));
    await dialog.getByRole('button', { name: 'Add a row' }).first().click();
    await dialog.getByLabel('Phone numbers, who 1').fill('Vet');
    await dialog.getByLabel('Phone numbers, number 1').fill('555 0100');
    await dialog.getByRole('button', { name: 'Preview' }).click();
    await dialog
      .getByText(/of work for|no hours for|Every day fits/)
      .first()
      .waitFor({ timeout: 30_000 });
    await dialog.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('link', { name: 'Sitter’s sheet' }).last().click();
    await page.getByText('Vet 555 0100').first().waitFor({ timeout: 30_000 });
    const pdf = (await page.pdf({ format: 'Letter' })).toString('latin1');
    // ISO 32000-1, 7.7.3.3: every page is an object of the type Page. Four days, and one for all of them.
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(5);
    await page
      .getByRole('button', { name: /^Feed of the flock in the day/ })
      .first()
      .click();
    await page.getByText('Where this number comes from').waitFor();
  });
});

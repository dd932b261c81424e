import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import type { Page } from 'playwright-core';
import {
  House,
  openMore,
  openParts,
  seriousFindings,
  walkTo,
  wrongAtBothSizes,
} from '../support/page.js';

jest.setTimeout(240_000);

let house: House;
beforeAll(async () => {
  house = await House.open();
});
afterAll(() => house.close());

/** What stands behind a touch in the story of meat birds. */
const DEEPER = [
  'Good to know',
  'Check that freezer, room and money are enough for so many birds',
  'Another week?',
  'Temperatures, lamps and room',
  'Bags by the day to buy them',
  'Nights, room and ground',
  'Weights, the day itself, and the freezer',
  'The bill, line by line',
];

/** Screens whose frame differs most. */
const AT_A_DESK = ['today', 'plan'];

async function openSample(page: Page): Promise<string> {
  const farm = await house.sampleFarm();
  await page.goto(`${farm}/batches`);
  await page.getByRole('heading', { name: 'Batches' }).waitFor();
  return farm;
}

describe('every screen, on a phone and at a desk', () => {
  it('has no serious or critical accessibility finding, no error, and no sideways scroll', async () => {
    const { page, errors } = await house.page('phone');
    const findings: Record<string, string[]> = {};
    const look = async (name: string): Promise<void> => {
      const found = await wrongAtBothSizes(page, { isOwnAtADesk: AT_A_DESK.includes(name) });
      if (0 < found.length) findings[name] = found;
    };
    await page.goto(`${house.url}/`);
    await page.getByRole('heading', { name: 'Broodfold' }).waitFor();
    await look('first run');
    await page.getByRole('link', { name: 'Start with three things' }).click();
    await page.getByRole('heading', { name: 'Say three things' }).waitFor();
    await look('start');
    await page.goto(`${house.url}/`);
    await page.getByRole('button', { name: 'Open the sample farm' }).click();
    await page.waitForURL(/\/farm\/[^/]+\/today$/);
    const farm = page.url().replace(/\/today$/, '');
    await page.getByRole('heading', { name: 'Animals' }).waitFor();
    await look('today');
    await walkTo(page, `${farm}/batches`);
    await page.getByRole('heading', { name: 'Batches' }).waitFor();
    await look('batches');
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await page.getByRole('navigation', { name: 'Life of the batch' }).waitFor();
    const batch = page.url();
    await look('plan');
    await openParts(page);
    await page.locator('.recharts-surface').first().waitFor();
    for (const words of DEEPER) await openMore(page, words);
    await look('plan, all of it open');
    await page
      .getByRole('button', { name: /Heat needed on the coldest/ })
      .first()
      .click();
    await page.getByRole('dialog').waitFor();
    await look('explanation');
    for (const sheet of ['brooder', 'shopping', 'tasks']) {
      await page.goto(`${batch}/print/${sheet}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await look(`sheet: ${sheet}`);
    }
    await walkTo(page, `${farm}/facilities`);
    await page.getByRole('heading', { name: 'Buildings and gear' }).waitFor();
    await look('facilities');
    await page.getByRole('button', { name: 'Change Shed brooder' }).click();
    await page.getByRole('dialog').waitFor();
    await look('brooder form');
    await walkTo(page, `${farm}/place`);
    await page.getByRole('heading', { name: 'Your place' }).waitFor();
    await look('farm');
    await walkTo(page, `${farm}/sources`);
    await page.getByRole('heading', { name: 'Sources' }).waitFor();
    await look('sources');
    await walkTo(page, `${farm}/batches`);
    await page.getByRole('link', { name: 'Open the plan of Spring pullets' }).click();
    await openParts(page);
    await openMore(page, 'Months, years and light');
    await look('eggs and light');
    await page.goto(`${farm}/batches/new`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await look('new batch');
    expect(findings).toEqual({});
    expect(errors).toEqual([]);
  });
});

/** Counts what a person types or chooses: a press that opens or sends something is none. */
function counting() {
  let values = 0;
  return {
    count: () => values,
    say: async (value: Promise<unknown>): Promise<void> => {
      values += 1;
      await value;
    },
  };
}

/** A height that is not known says what is taken for it, and leads to its box. */
async function heightIsAsked(page: Page): Promise<void> {
  const height = page.getByLabel(/^Height above sea level/);
  await height.fill('');
  await page
    .getByText(
      /About 5\d0 ft, as high as the town, is taken\. .* 1,000 ft higher, the nights are about \d/,
    )
    .waitFor();
  await page.getByRole('button', { name: 'Type the height' }).click();
  expect(await height.evaluate((box) => box.matches(':focus'))).toBe(true);
  await height.fill('525 ft');
}

/** The place found in the stead of another has the keys, also where one was known at first. */
async function anotherPlace(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Another place' }).click();
  await page.getByLabel('Town or village').fill('montpelier, vt');
  await page.getByRole('button', { name: 'Find' }).click();
  await page.getByRole('button', { name: 'Montpelier VT, United States' }).click();
  await page.locator('.start-found:focus').waitFor();
  await page.getByLabel(/^Height above sea level/).fill('525 ft');
}

/** Days away that end before they begin are said at their field, with the keys there, and not sent. */
async function swappedAway(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Somebody will be away' }).click();
  await page.getByLabel('From', { exact: true }).fill('2030-05-08');
  const last = page.getByLabel('To', { exact: true });
  await last.fill('2030-05-03');
  await page.getByText('Adult 1: the last day is before the first. Swap the two dates.').waitFor();
  await page.getByRole('button', { name: 'Make my plan' }).click();
  expect(await last.evaluate((box) => box.matches(':focus'))).toBe(true);
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
}

describe('a newcomer', () => {
  it('has a plan for 75 meat birds, 20 pullets and 5 cows on a phone after at most 12 values', async () => {
    const { page, errors } = await house.page('phone');
    const { say, count } = counting();
    await page.goto(`${house.url}/`);
    await page.getByRole('link', { name: 'Start with three things' }).click();
    await say(page.getByLabel('Town or village').fill('montpelier, vt'));
    await page.getByRole('button', { name: 'Find' }).click();
    await say(page.getByRole('button', { name: 'Montpelier VT, United States' }).click());
    await say(page.getByLabel(/^Height above sea level/).fill('525 ft'));
    await page.getByText(/in, give or take 9 %/).waitFor();
    await heightIsAsked(page);
    await say(page.getByRole('button', { name: 'More children' }).click());
    const first = page.getByRole('group', { name: 'Adult 1 has time', exact: true });
    await say(first.getByText('Around a job').click());
    await page.getByText('Mon–Fri 2 h, Sat 5 h, Sun 3 h').waitFor();
    await say(page.getByText('both', { exact: true }).click());
    await say(page.getByLabel('Meat birds', { exact: true }).fill('75'));
    await say(page.getByLabel('Meat birds: when').selectOption({ index: 5 }));
    await say(page.getByLabel('Meat birds: day').selectOption({ index: 3 }));
    await say(page.getByLabel('Layers', { exact: true }).fill('20'));
    await say(page.getByLabel('Cattle', { exact: true }).fill('5'));
    expect(await seriousFindings(page)).toEqual([]);
    // What was typed is still there after a reload.
    await page.reload();
    expect(await page.getByLabel('Meat birds', { exact: true }).inputValue()).toBe('75');
    await anotherPlace(page);
    await swappedAway(page);
    await page.getByRole('button', { name: 'Make my plan' }).click();
    await page.getByRole('heading', { name: 'Your plan is made' }).waitFor();
    expect(count()).toBeLessThanOrEqual(12);
    await page.getByText(/^75 at the end, as day-old chicks arriving/).waitFor();
    await page.getByText(/^20 at the end, as day-old pullets arriving/).waitFor();
    // All that was said or assumed is named, each with the way to it.
    for (const [name, to] of [
      [/^Adult 1 about 25 h a week/, 'place'],
      [/^Child 1 no work is given/, 'place'],
      [/^Brooder for meat birds/, 'facilities#facility-[^/]+'],
      [/^Herd 5 × beef cow with calf, here/, 'pasture/land'],
      [/^Paddocks 12 of .+ acres each assumed/, 'pasture/land'],
    ] as const)
      expect(await page.getByRole('link', { name }).getAttribute('href')).toMatch(
        new RegExp(`/${to}(#person-.+)?$`),
      );
    await page.getByRole('button', { name: 'Fetch thirty years of days' }).waitFor();
    expect(await seriousFindings(page)).toEqual([]);

    // Whoever touches somebody is at that one's hours.
    await page.getByRole('link', { name: /^Adult 1 / }).click();
    await page.getByRole('dialog', { name: 'Adult 1' }).waitFor();
    await page.keyboard.press('Escape');
    await page.goto(page.url().replace(/\/place.*$/, '/today'));
    await page.waitForURL(/\/farm\/[^/]+\/(today|batches)$/);
    const farm = page.url().replace(/\/\w+$/, '');
    await page.goto(`${farm}/batches`);
    await page.getByRole('link', { name: 'Open the plan of Meat birds' }).click();
    await page.getByRole('button', { name: /^Birds to order/ }).waitFor();

    // Rain is in sight on a phone, and marked as the estimate it is until it is typed.
    await page.goto(`${farm}/place`);
    const rain = page.getByLabel(/^January rain/);
    const box = (await rain.boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(390);
    expect(Number(await rain.inputValue())).toBeGreaterThan(0);
    await page.getByRole('columnheader', { name: /^Rain.*estimate$/ }).waitFor();
    // A column copied from a sheet goes down the months from the box it is pasted into.
    await rain.focus();
    await page.evaluate(`(() => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text', 'Month\\tRain\\nJan\\t3\\nFeb\\t2,5');
      document.activeElement.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
      );
    })()`);
    expect(await page.getByLabel(/^February rain/).inputValue()).toBe('2.5');
    await page.getByRole('columnheader', { name: /^Rain, in$/ }).waitFor();
    await page.getByRole('button', { name: 'Save the farm' }).click();
    await page.getByText('Saved.').waitFor();
    const saved = (await (await fetch(farm.replace('/farm/', '/api/farms/'))).json()) as {
      estimated: string[];
    };
    expect(saved.estimated).toEqual(['monthlyMinC', 'monthlyMaxC', 'lastFrost', 'firstFrost']);
    expect(errors).toEqual([]);
  });

  it('has started pullets without a brooder, on the order and from the start', async () => {
    const { page, errors } = await house.page('phone');
    await page.goto(`${house.url}/start`);
    await page.getByLabel('Town or village').fill('montpelier, vt');
    await page.getByRole('button', { name: 'Find' }).click();
    await page.getByRole('button', { name: 'Montpelier VT, United States' }).click();
    await page.getByLabel('Layers', { exact: true }).fill('12');
    await page.getByLabel('Layers: they come as').selectOption('16');
    await page.getByRole('button', { name: 'Make my plan' }).click();
    await page.getByText(/^12 at the end, as started pullets 16 weeks old arriving/).waitFor();
    expect(await page.getByText(/Brooder/).count()).toBe(0);
    await page.getByRole('link', { name: /^Layers 12 at the end/ }).click();
    await page.getByRole('link', { name: /^Arrive .+ 16 weeks old$/ }).waitFor();
    expect(await page.getByRole('heading', { name: 'The brooder' }).count()).toBe(0);
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Change the order' }).click();
    await page.getByLabel('Weeks old when they come').fill('4');
    await page
      .getByText(/younger ones still need a brooder/)
      .first()
      .waitFor();
    await page.getByLabel('Weeks old when they come').fill('12');
    await page.getByRole('button', { name: 'See the plan' }).click();
    await page.getByRole('link', { name: /^Arrive .+ 12 weeks old$/ }).waitFor();
    expect(errors).toEqual([]);
  });

  it('takes the position of the phone, and changes what was assumed', async () => {
    const { page, errors } = await house.page('phone');
    await page.context().grantPermissions(['geolocation']);
    await page.context().setGeolocation({ latitude: 52.1, longitude: -8.4 });
    await page.goto(`${house.url}/start`);
    await page.getByRole('button', { name: 'I am on the farm now' }).click();
    await page.getByText(/8.4° west, near /).waitFor();
    await page.getByText(/metric · EUR/).waitFor();
    await page.getByLabel('Meat birds', { exact: true }).fill('30');
    await page.getByRole('button', { name: 'Make my plan' }).click();
    await page.getByRole('heading', { name: 'Your plan is made' }).waitFor();
    await page.getByRole('link', { name: 'Go to my farm' }).click();
    await page.waitForURL(/\/farm\//);
    await page.goto(page.url().replace(/\/\w+$/, '/facilities'));
    await page.getByRole('button', { name: 'Change Brooder for meat birds' }).click();
    const length = page.getByLabel('Length, m assumed', { exact: true });
    await length.fill('4');
    await page.getByLabel('Length, m', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
    await page.getByRole('button', { name: 'Change Brooder for meat birds' }).click();
    await page.getByLabel('Length, m', { exact: true }).waitFor();
    await page.getByLabel('Width, m assumed', { exact: true }).waitFor();
    expect(errors).toEqual([]);
  });
});

describe('a saved batch', () => {
  it('opens five numbers to formula and source, by keyboard, and closes with Escape', async () => {
    const { page } = await house.page('desktop');
    await openSample(page);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await openParts(page);
    for (const label of [
      'Birds to order',
      'Lamps needed',
      'Out of the brooder',
      'Dressed weight, all birds',
      'Freezer room needed',
    ]) {
      const number = page.getByRole('button', { name: new RegExp(`^${label}:`) }).first();
      await number.focus();
      await page.keyboard.press('Enter');
      const dialog = page.getByRole('dialog');
      await dialog.getByRole('heading', { name: /^Sources?$/ }).waitFor();
      expect(await dialog.innerText()).toContain('How sure is this?');
      // Of lamps the rules differ by more than a colder night changes.
      await dialog
        .getByText(label === 'Lamps needed' ? /^The range of/ : /^If .+: .+\.$/)
        .waitFor();
      expect(await dialog.innerText()).toMatch(/When it is known better\s+\S/);
      await page.keyboard.press('Escape');
      await dialog.waitFor({ state: 'hidden' });
    }
  });

  it('keeps ways to go out that are not chosen behind one touch on a phone', async () => {
    const { page } = await house.page('phone');
    await openSample(page);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await openParts(page);
    const ways = page.getByRole('region', { name: 'When they go out' });
    const others = page.getByRole('button', { name: /^\d other ways to go out$/ });
    await others.waitFor();
    expect(await ways.getByText('Chosen', { exact: true }).count()).toBe(1);
    expect(await ways.getByRole('button', { name: /^Choose: / }).count()).toBe(0);
    const count = Number.parseInt(await others.innerText(), 10);
    await others.click();
    expect(await ways.getByRole('button', { name: /^Choose: / }).count()).toBe(count);
    await page.getByRole('button', { name: 'Only the chosen way' }).click();
    expect(await ways.getByRole('button', { name: /^Choose: / }).count()).toBe(0);
  });

  it('keeps what is not for now folded, and prints all of it', async () => {
    const { page } = await house.page('phone');
    await openSample(page);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await page.getByRole('heading', { name: 'The next two weeks' }).waitFor();
    const heads = page.locator('.story-fold h2');
    expect(await heads.allInnerTexts()).toEqual([
      ...['Before they come', 'The brooder', 'Feed and water', 'Going out'],
      ...['The last day', 'What it costs', 'Day by day'],
    ]);
    const lamps = page.getByRole('button', { name: /^Lamps needed:/ });
    expect(await lamps.count()).toBe(0);
    expect(await page.evaluate('document.documentElement.scrollHeight')).toBeLessThan(4000);
    // A date of the life leads into its part and opens it.
    await page.getByRole('link', { name: /^Heat off/ }).click();
    await lamps.waitFor();
    await page.locator('.recharts-surface').first().waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.getByText('Where it goes').waitFor();
    await page.getByText('Live weight', { exact: true }).waitFor();
    expect(await page.locator('.recharts-surface:visible').count()).toBeGreaterThanOrEqual(4);
  });

  it('shows what the service computes: birds to order, feed, and the bill', async () => {
    const { page } = await house.page('desktop');
    const farm = await openSample(page);
    const farmId = farm.split('/farm/')[1]!;
    const batches = (await (await fetch(`${house.url}/api/farms/${farmId}/batches`)).json()) as {
      id: string;
      name: string;
    }[];
    const id = batches.find((b) => b.name === 'Spring meat birds')!.id;
    const plan = (await (
      await fetch(`${house.url}/api/farms/${farmId}/batches/${id}/plan`)
    ).json()) as {
      birds: { toOrder: { value: number } };
      feed: { total: { value: number } };
      bill: { total: { value: number } };
    };
    await page.goto(`${farm}/batches/${id}`);
    const shown = async (label: string): Promise<string> =>
      (await page.getByRole('button', { name: new RegExp(`^${label}:`) }).innerText()).replace(
        /,/g,
        '',
      );
    expect(await shown('Birds to order')).toBe(String(plan.birds.toOrder.value));
    expect(parseFloat(await shown('Feed for the whole batch'))).toBeCloseTo(
      plan.feed.total.value / 0.45359237,
      -1,
    );
    expect(await shown('The bill')).toBe(`$${(plan.bill.total.value / 100).toFixed(2)}`);
  });

  it('recomputes as the arrival is typed, and says which tasks moved', async () => {
    const { page } = await house.page('desktop');
    await openSample(page);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    const processing = page.getByRole('button', { name: /^Processing(, at the latest)?:/ });
    const before = await processing.innerText();
    const arrival = page.getByLabel('Arrival', { exact: true });
    const year = (await arrival.inputValue()).slice(0, 4);
    await arrival.fill(`${year}-06-02`);
    await processing.filter({ hasNotText: before }).waitFor();
    await page.getByText(/tasks moved with the arrival/).waitFor();
    // A press beside the mark of the slider under it puts no other date there.
    await page.getByText('Move the arrival', { exact: true }).click({ position: { x: 20, y: 16 } });
    const track = (await page.getByRole('slider', { name: 'Arrival date' }).boundingBox())!;
    await page.mouse.click(track.x - 60, track.y + track.height / 2);
    expect(await arrival.inputValue()).toBe(`${year}-06-02`);
    // A way to go out is taken up by one touch, and the one it was becomes the one to choose.
    await openParts(page);
    await page.getByRole('button', { name: 'Choose: any night, with heat out there' }).click();
    await page.getByRole('button', { name: 'Choose: about 8 nights in 10' }).waitFor();
  });

  it('keeps what is stored when the farm switches its units', async () => {
    const { page } = await house.page('desktop');
    const farm = await openSample(page);
    const farmId = farm.split('/farm/')[1]!;
    const stored = async (): Promise<string> =>
      (await fetch(`${house.url}/api/farms/${farmId}/facilities`)).text();
    const before = await stored();
    await page.goto(`${farm}/place`);
    await page.getByText('Metric', { exact: true }).click();
    await page.getByRole('button', { name: 'Save the farm' }).click();
    await page.getByText('Saved.').waitFor();
    expect(await stored()).toBe(before);
    await page.goto(`${farm}/facilities`);
    await page
      .getByText(/length 2\.44 m/)
      .first()
      .waitFor();
  });

  it('answers "why not this week" and plans for a week that is picked', async () => {
    const { page } = await house.page('phone');
    await openSample(page);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await openParts(page);
    await openMore(page, 'Another week?');
    const weeks = page.locator('.week');
    await weeks.first().waitFor();
    expect(await weeks.count()).toBeGreaterThan(50);
    await weeks.nth(3).click();
    await page.getByText('Why not this week?').waitFor();
    await page.getByRole('button', { name: /^Plan for/ }).click();
    await page.getByRole('button', { name: 'This is the planned date' }).waitFor();
  });

  it('prints the brooder card on one page', async () => {
    const { page } = await house.page('desktop');
    await openSample(page);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await page.getByRole('link', { name: 'Brooder card' }).click();
    await page.getByRole('heading', { name: /^Brooder card/ }).waitFor();
    await page.getByRole('columnheader', { name: 'Spot under the heat' }).first().waitFor();
    const card = page.getByRole('region', { name: 'Brooder card' });
    for (const format of ['Letter', 'A4'] as const) {
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      const pages = pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length;
      expect([format, pages]).toEqual([format, 1]);
    }
    // As large as it goes: no less than nine tenths of the page is used.
    const fit = await card.evaluate((each) => Number(each.style.getPropertyValue('--fit')));
    expect(fit).toBeGreaterThan(0.7);
  });

  it('shows an impossible number as an error beside its field, and cannot be saved', async () => {
    const { page } = await house.page('desktop');
    await openSample(page);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await page.getByLabel('Birds wanted in the freezer').fill('1000000');
    await page.getByText('No plan yet: first put this right').waitFor();
    expect(await page.getByRole('button', { name: 'Save the batch' }).isDisabled()).toBe(true);
  });
});

describe('what is typed', () => {
  it('is never changed in silence: units, signs and letters are understood or refused', async () => {
    const { page, errors } = await house.page('phone');
    const farm = await openSample(page);
    await page.goto(`${farm}/facilities`);
    await page.getByRole('button', { name: 'Change Shed brooder' }).click();
    await page.getByLabel(/^Length/).fill('800');
    await page.getByText('Length is 800 ft, but must be from 0.66 ft to 196 ft.').waitFor();
    await page.getByLabel(/^Height/).fill('-2');
    await page.getByText('Height is -2 ft, but must not be negative').waitFor();
    await page.getByLabel(/^Width/).fill('2.4 m');
    await page.getByText('Read as 7.874 ft.').waitFor();
    await page
      .getByLabel(/^Thickness/)
      .first()
      .fill('abc');
    await page.getByText('“abc” is not a number').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    expect(await page.getByRole('dialog').isVisible()).toBe(true);

    // Esc asks first; and after a reload it is all still there until it is thrown away.
    await page.keyboard.press('Escape');
    await page.getByRole('dialog', { name: 'Leave without saving?' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog', { name: 'Leave without saving?' }).waitFor({ state: 'hidden' });
    expect(await page.getByLabel(/^Length/).inputValue()).toBe('800');
    await page.reload();
    await page.getByRole('button', { name: 'Change Shed brooder' }).click();
    await page.getByText('Unsaved changes, kept from before').waitFor();
    expect(await page.getByLabel(/^Length/).inputValue()).toBe('800');
    await page.getByRole('button', { name: 'Discard changes' }).click();
    expect(await page.getByLabel(/^Length/).inputValue()).not.toBe('800');
    await page.getByRole('button', { name: 'Back' }).click();

    await page.getByRole('button', { name: 'Add a freezer' }).click();
    await page.getByLabel(/^Capacity, ft³/).fill('15');
    await page.getByLabel(/^Already taken/).fill('20');
    await page.getByLabel('Name').fill('Small one');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('Already taken 20 ft³ is above Capacity 15 ft³.').waitFor();

    await page.goto(`${farm}/place`);
    await page.getByLabel(/^Longitude/).fill('75W');
    await page.getByText('Read as 75° west.').waitFor();
    await page.getByLabel('March average low, °F').fill('60');
    await page.getByText(/^March low 60 °F is above March high/).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    expect(errors).toEqual([]);
  });

  it('stays until it is saved or discarded, whatever is opened in between', async () => {
    const { page } = await house.page('desktop');
    await openSample(page);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    const wanted = page.getByLabel('Birds wanted in the freezer');
    await wanted.fill('60');
    await page.getByRole('link', { name: 'Buildings and gear' }).click();
    await page.getByRole('heading', { name: 'Buildings and gear' }).waitFor();
    await page.getByRole('link', { name: 'Batches', exact: true }).click();
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await page.getByText('Unsaved changes, kept from before').waitFor();
    expect(await wanted.inputValue()).toBe('60');
    await page.getByRole('button', { name: 'Discard changes' }).click();
    await page.getByRole('button', { name: 'Saved' }).waitFor();
    expect(await wanted.inputValue()).toBe('75');
  });

  it('follows the purpose: a laying strain and a name for eggs, and back', async () => {
    const { page } = await house.page('desktop');
    const farm = await openSample(page);
    await page.goto(`${farm}/batches/new`);
    const chosen = async (): Promise<string[]> => [
      await page.getByLabel('Name').inputValue(),
      await page.getByLabel('Breed or cross').inputValue(),
    ];
    await page.getByText('For eggs', { exact: true }).click();
    expect(await chosen()).toEqual(['Layers', 'brown-layer']);
    await page.getByText('For meat', { exact: true }).click();
    expect(await chosen()).toEqual(['Meat birds', 'fast-meat']);
  });

  it('says why it begins with that week, and takes up birds that are here already', async () => {
    const { page } = await house.page('desktop');
    const farm = await openSample(page);
    await page.goto(`${farm}/batches/new`);
    await page.getByText(/is in the best week of the year ahead/).waitFor();
    await page.getByRole('heading', { name: 'Before they come' }).waitFor();
    // A day that is past is asked about, not taken as that of birds that are here.
    const arrival = page.getByLabel('Arrival', { exact: true });
    const planned = await arrival.inputValue();
    const yesterday = new Date(Date.now() - 2 * 86_400_000).toISOString().slice(0, 10);
    await arrival.fill(yesterday);
    await page.getByText('That day is past. Are they here already?').first().waitFor();
    expect(await page.getByRole('button', { name: 'Save the batch' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Yes, they are here' }).click();
    expect(await page.getByLabel('They came on').inputValue()).toBe(yesterday);
    await page.getByRole('switch', { name: 'They are here already' }).click();
    await arrival.fill(planned);
    await page.getByRole('switch', { name: 'They are here already' }).click();
    const came = page.getByLabel('They came on');
    const [year, month, day] = (await came.inputValue()).split('-').map(Number);
    const sooner = new Date(Date.UTC(year!, month! - 1, day! - 16)).toISOString().slice(0, 10);
    await came.fill(sooner);
    await page.getByText('17 days old').waitFor();
    // Who is counted today is there: usual losses are taken off those that are ordered.
    await page.getByLabel('How many there are now').fill('41');
    const alive = page
      .locator('.story-part', { hasText: 'That many should be alive' })
      .filter({ hasText: /41\s*Birds alive/ });
    await alive.waitFor();
    const parts = await page.locator('.story-part > h2, .story-fold h2').allInnerTexts();
    expect(parts[0]).toBe('Now');
    expect(parts.indexOf('The brooder')).toBeLessThan(parts.indexOf('Before they came'));
    expect(await page.locator('.story-today').innerText()).toContain('Today');
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByLabel('Name').fill('Hens of the barn');
    await page.getByRole('button', { name: 'Save the batch' }).click();
    await page.getByRole('heading', { name: 'Hens of the barn' }).waitFor();
    await alive.waitFor();
  });
});

describe('a phone', () => {
  it('has numbers a thumb can press and badges that are whole', async () => {
    const { page } = await house.page('phone');
    await openSample(page);
    await page.getByRole('link', { name: 'Open the plan of Spring meat birds' }).click();
    await openParts(page);
    await openMore(page, 'Order chicks');
    // One day to act on: that of the plan of the work, as Today and the year say it.
    await page
      .getByText(/planned for .*, due by/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: /other ways to go out$/ }).click();
    const heights = await page
      .locator('.open-number')
      .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(40);
    const cut = await page
      .locator('.mantine-Badge-label')
      .evaluateAll((all) => all.filter((each) => each.clientWidth < each.scrollWidth).length);
    expect(cut).toBe(0);
    await page.getByRole('button', { name: 'Delete this batch' }).click();
    await page.getByRole('button', { name: 'Delete', exact: true }).click();
    await page.getByText('Spring meat birds is deleted.').waitFor();
    await page.getByRole('heading', { name: 'Batches' }).waitFor();
    expect(await page.getByRole('alert').count()).toBe(0);
  });
});

describe('the sample farm', () => {
  it('can be deleted', async () => {
    const { page } = await house.page('phone');
    const farm = await openSample(page);
    await page.goto(`${farm}/place`);
    await page.getByRole('button', { name: /^Delete Thistledown/ }).click();
    await page.getByRole('button', { name: /^Yes, delete/ }).click();
    await page.getByRole('heading', { name: 'Your own farm' }).waitFor();
    expect((await fetch(`${house.url}/api/farms/${farm.split('/farm/')[1]}`)).status).toBe(404);
  });
});

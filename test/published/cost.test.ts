import { describe, expect, it } from '@jest/globals';
import { costMinor } from '../../shared/money/money.js';

const cents = (prices: readonly string[]): number =>
  prices.reduce((sum, price) => sum + costMinor(price, 1, 'USD'), 0);

describe('costMinor', () => {
  it('makes a pastured bird cost $23.10, $6.42 a pound sold (North Carolina extension budget)', () => {
    // Chick, feed, labor, farm, transport, processing, marketing; 3.6 lb sold.
    const total = cents(['1.20', '3.20', '6.00', '4.20', '0.50', '5.00', '3.00']);
    expect(total).toBe(2310);
    expect(Math.round(total / 3.6)).toBe(642);
  });

  it('makes the same bird on organic feed cost $26.85, $7.46 a pound (same budget)', () => {
    const total = cents(['1.20', '6.95', '6.00', '4.20', '0.50', '5.00', '3.00']);
    expect(total).toBe(2685);
    expect(Math.round(total / 3.6)).toBe(746);
  });

  it('adds an itemised bird up to $22.22, printed as 22 (forum, second-hand)', () => {
    const total = cents(['1.60', '9.60', '7.00', '1.20', '1.50', '0.20', '0.65', '0.12', '0.35']);
    expect(total).toBe(2222);
    expect(Math.abs(total / 100 - 22)).toBeLessThanOrEqual(0.25);
  });

  it('brings in $24.49 for 4.71 lb at $5.20, printed as 24.51 (PNW extension 665)', () => {
    expect(costMinor('5.20', 4.71, 'USD')).toBe(2449);
    expect(Math.abs(costMinor('5.20', 4.71, 'USD') - 2451)).toBeLessThanOrEqual(5); // rounding in print
  });

  it('brings in $27.55 for 3.50 lb at $7.87 (PNW extension 665)', () => {
    expect(costMinor('7.87', 3.5, 'USD')).toBe(2755); // 27.545, half up
  });

  it('makes a pullet cost $3.48 to 20 weeks: 1.10 and 2.38 (Maine growers, no year)', () => {
    expect(cents(['1.10', '2.38'])).toBe(348);
  });

  it('makes feed for 150 birds cost $758.68 within 50 cents (forum, second-hand)', () => {
    // 3.024 lb of starter at $14.99 and 14.836 lb of finisher at $13.99 a bag of 50 lb, each bird.
    const starterBags = (150 * 3.024) / 50;
    const finisherBags = (150 * (17.86 - 3.024)) / 50;
    expect(Math.abs(starterBags + finisherBags - 53.58)).toBeLessThan(0.005);
    const total = costMinor('14.99', starterBags, 'USD') + costMinor('13.99', finisherBags, 'USD');
    expect(Math.abs(total - 75868)).toBeLessThanOrEqual(50);
  });

  it('buys 15 bags of 50 lb a month for 100 hens at 0.25 lb a day (extension guide)', () => {
    expect((100 * 0.25 * 30) / 50).toBe(15);
    expect(costMinor('20.00', 15, 'USD')).toBe(30000);
  });

  it('makes a lamp of 250 W burn 6 kWh a day', () => {
    expect(costMinor('0.20', (250 * 24) / 1000, 'USD')).toBe(120);
  });
});

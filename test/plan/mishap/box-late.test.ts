import { describe, expect, it } from '@jest/globals';
import { boxLate } from '../../../shared/plan/mishap/box-late.js';

const units = 'us';
const was = { arrivalDate: '2027-05-05', hatchToArrivalDays: 2 };
const words = (more: Partial<typeof was> & { to: string; today: string }): string => {
  const { to, today, ...batch } = more;
  return boxLate({ was: { ...was, ...batch }, to, today }, { units }).join(' ');
};

describe('a box of chicks that comes later than planned', () => {
  it('names the end of the 72 hours from hatch that the post is held to', () => {
    // Source: US Postal Service, Publication 52, 526: deliverable within 72 hours of hatch.
    const said = words({ to: '2027-05-06', today: '2027-05-05' });
    expect(said).toContain('hatched on Mon, May 3, they live on their yolk until Thu, May 6');
    expect(said).toContain('Ask the post office early on Thu, May 6');
    expect(said).not.toContain('too late');
  });

  it('is looked for at once where it would come after them', () => {
    expect(words({ to: '2027-05-07', today: '2027-05-05' })).toContain(
      'Fri, May 7 is too late. Have the post office look for the box now',
    );
  });

  it('is nothing to act on before they hatch, where they come sooner, or are fetched', () => {
    expect(words({ to: '2027-05-12', today: '2027-05-02' })).toBe('');
    expect(words({ to: '2027-05-04', today: '2027-05-04' })).toBe('');
    expect(words({ to: '2027-05-07', today: '2027-05-05', hatchToArrivalDays: 0 })).toBe('');
  });
});

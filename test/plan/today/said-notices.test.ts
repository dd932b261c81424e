import { describe, expect, it } from '@jest/globals';
import type { Attention } from '../../../shared/plan/today/looked-at.js';
import { noticeOf, withLying } from '../../../src/web/notices/said-notices.js';

const alarm = (key: string, more: Partial<Attention> = {}): Attention => ({
  ...{ key, isAlarm: true, level: 'act', words: `${key} is wrong`, of: 'Chicks', text: 'Look.' },
  ...{ place: { kind: 'work' } },
  ...more,
});

describe('notices', () => {
  it('say alarms that nobody was told of, and nothing else', () => {
    const cold = alarm('cold', { level: 'stop' });
    const { isAlarm: _alarm, ...quiet } = alarm('quiet');
    expect(noticeOf([cold, quiet, alarm('told')], new Set(['told']))).toEqual({
      keys: ['cold'],
      notice: { title: 'Chicks: cold is wrong', body: 'Look.', isQuiet: false },
    });
    expect(noticeOf([cold], new Set(['cold']))).toEqual({ keys: [] });
    expect(noticeOf([alarm('feed'), alarm('water')], new Set()).notice).toEqual({
      ...{ title: 'Chicks: feed is wrong', body: 'Look.\nChicks: water is wrong', isQuiet: true },
    });
  });

  it('name what the one before said, which they take the place of unread', () => {
    const said = { title: 'Feed is out', body: 'Look.', isQuiet: true };
    expect(withLying(said, [])).toEqual({ notice: said, titles: ['Feed is out'] });
    const next = withLying(said, ['Too cold', 'Losses', '3', '4', '5']);
    expect(next.notice.body).toBe('Look.\nAnd before:\nToo cold\nLosses\n3\n4');
    expect(next.titles).toEqual(['Feed is out', 'Too cold', 'Losses', '3', '4']);
  });
});

import type { Attention } from '../../../shared/plan/today/looked-at.js';

/** A notice of the page: of one alarm, or of several that came together. */
export interface Notice {
  readonly title: string;
  readonly body: string;
  /** Without sound, but for what cannot wait. */
  readonly isQuiet: boolean;
}

/**
 * What to say of alarms that nobody was told of on this device; nothing where there are none. Several
 * at once are one notice.
 *
 * @param told keys of alarms that were said or seen before
 */
export function noticeOf(
  attention: readonly Attention[],
  told: ReadonlySet<string>,
): { readonly notice?: Notice; readonly keys: readonly string[] } {
  const alarms = attention.filter(({ key, isAlarm }) => isAlarm === true && !told.has(key));
  const [first, ...more] = alarms;
  if (!first) return { keys: [] };
  const others = more.map(({ of, words }) => [of, words].filter(Boolean).join(': '));
  return {
    keys: alarms.map(({ key }) => key),
    notice: {
      title: [first.of, first.words].filter(Boolean).join(': '),
      body: [first.text, ...others].filter(Boolean).join('\n'),
      isQuiet: alarms.every(({ level }) => level !== 'stop'),
    },
  };
}

/** Alarms of earlier notices that are said along with a new one. */
const MOST_BEFORE = 4;

/**
 * A notice that takes the place of one that still lies there unread, and names what that one said.
 * `titles` is what it says of, the newest first, for the next one.
 */
export function withLying(
  notice: Notice,
  lying: readonly string[],
): { readonly notice: Notice; readonly titles: readonly string[] } {
  const before = lying.slice(0, MOST_BEFORE);
  const body = [notice.body, 'And before:', ...before].join('\n');
  return {
    notice: before.length === 0 ? notice : { ...notice, body },
    titles: [notice.title, ...before],
  };
}

/** The chore of moving a herd to fresh grass. */
export const movesKey = (herdId: string): string => `herd/${herdId}/moves`;

/** Whether a key is of that chore: its tick may have told a move. */
export const isMovesKey = (key: string): boolean => /^herd\/[^/]+\/moves$/.test(key);

/** The work of letting a herd out on grass. */
export const TURN_OUT = 'turn-out.feed-hay-first-then-turn-out-in';
/** Whether a key of work is of letting a herd out on grass. */
export const isTurnOutWork = (key: string): boolean =>
  key.startsWith('herd/') && key.endsWith(`.${TURN_OUT}`);

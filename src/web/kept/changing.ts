/** A value that whoever shows it hears of when it changes. */
export interface Changing<T> {
  readonly get: () => T;
  readonly set: (value: T) => void;
  readonly subscribe: (changed: () => void) => () => void;
}

export function changing<T>(first: T): Changing<T> {
  let value = first;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    set: (next) => {
      if (Object.is(next, value)) return;
      value = next;
      for (const each of [...listeners]) each();
    },
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
  };
}

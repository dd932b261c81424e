/** As people number things: Paddock 2 comes before Paddock 10, and Ä beside A. */
const names = new Intl.Collator('en', { numeric: true });

/** Compares rows by some of their columns in turn, the same on every database. */
export const inOrderOf =
  <Row>(columns: readonly (keyof Row)[]) =>
  (a: Row, b: Row): number => {
    for (const column of columns) {
      const order = names.compare(String(a[column]), String(b[column]));
      if (order !== 0) return order;
    }
    return 0;
  };

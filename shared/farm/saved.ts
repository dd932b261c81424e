/** A row as it is saved: with its id, and a version that goes up with every change of it. */
export type Saved<Row> = Row & { readonly id: string; readonly version: number };

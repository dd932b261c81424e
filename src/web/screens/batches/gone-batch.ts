/** What leads back to the list when a batch is not there any more: its name, empty when never seen. */
export interface GoneBatch {
  readonly gone: string;
}

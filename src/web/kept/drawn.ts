/** The page has been drawn as it is now; held back no longer than this: hidden it draws nothing. */
export const drawn = (latestMs: number): Promise<void> =>
  new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, latestMs);
  });

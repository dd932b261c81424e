/** Why a device does not say where it is, and what to do: by the code that browsers give. */
export const noPosition = (code: number): string =>
  code === GeolocationPositionError.PERMISSION_DENIED
    ? 'This page was not allowed to see the position: allow it in the browser, beside the address.'
    : 'The position was not found: try again under the open sky.';

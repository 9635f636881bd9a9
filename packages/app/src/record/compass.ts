// Which way the device looks, where the browser tells: asked for on a press, since some ask the person.

/** Where the compass is. `none`: the browser has none, or may not tell. */
export type CompassState = 'off' | 'asked' | 'on' | 'none';

interface Orientation {
  readonly alpha: number | null;
  readonly webkitCompassHeading?: number;
}

/** The heading of an orientation, degrees clockwise; null where it has none. Only differences of it are
 * used, so it need not count from north. */
export function headingOf({ alpha, webkitCompassHeading }: Orientation): number | null {
  if (webkitCompassHeading !== undefined) return webkitCompassHeading;
  return alpha === null ? null : (360 - alpha) % 360;
}

/** The smallest turn from one heading to another, degrees clockwise, −180 to 180. */
export const turnFrom = (from: number, to: number): number =>
  ((((to - from) % 360) + 540) % 360) - 180;

/** Nothing heard for so long: there is no compass, milliseconds. */
const SILENCE = 2500;

/** Follows the heading until stopped. `onState` tells where it is. Call it out of a press. */
export function followCompass(
  onHeading: (degrees: number) => void,
  onState: (state: CompassState) => void,
): () => void {
  const stop = new AbortController();
  const asks = (
    globalThis as { DeviceOrientationEvent?: { requestPermission?: () => Promise<string> } }
  ).DeviceOrientationEvent;
  if (asks === undefined) {
    onState('none');
    return () => undefined;
  }
  onState('asked');
  let timer: ReturnType<typeof setTimeout> | undefined;
  const hear = (event: Event): void => {
    const heading = headingOf(event as unknown as Orientation);
    if (heading === null || stop.signal.aborted) return;
    clearTimeout(timer);
    onState('on');
    onHeading(heading);
  };
  const begin = (): void => {
    if (stop.signal.aborted) return;
    timer = setTimeout(() => onState('none'), SILENCE);
    addEventListener('deviceorientation', hear, { signal: stop.signal });
  };
  if (asks.requestPermission)
    asks.requestPermission().then(
      (answer) => (answer === 'granted' ? begin() : onState('none')),
      () => onState('none'),
    );
  else begin();
  return () => {
    clearTimeout(timer);
    stop.abort();
  };
}

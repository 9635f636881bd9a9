// Moments by this device's clock, as they are written down.

const two = (n: number): string => String(n).padStart(2, '0');

/** The day of a moment (milliseconds since 1970), as 2026-06-12. */
export function dayOf(at: number): string {
  const date = new Date(at);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** Its time of day, as 09:30. */
export function timeOf(at: number): string {
  const date = new Date(at);
  return `${two(date.getHours())}:${two(date.getMinutes())}`;
}

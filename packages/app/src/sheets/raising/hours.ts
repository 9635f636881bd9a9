// Times of work as hours and minutes.

/** Hours and whole minutes of so many seconds, at least a minute of any. */
export function hoursOf(seconds: number): { readonly hours: number; readonly minutes: number } {
  const all = seconds > 0 ? Math.max(1, Math.round(seconds / 60)) : 0;
  return { hours: Math.floor(all / 60), minutes: all % 60 };
}

/** Times over an hour to five minutes: no estimate is finer. */
export function roundedHours(seconds: number): ReturnType<typeof hoursOf> {
  return seconds > 3600 ? hoursOf(Math.round(seconds / 300) * 300) : hoursOf(seconds);
}

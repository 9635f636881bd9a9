// Keys as written for a person, and whether one was pressed.

/** Whether a key press is that of a command. */
export function isPressed(keys: string, event: KeyboardEvent): boolean {
  const parts = keys.split('+');
  const key = parts.at(-1)?.toLowerCase();
  return (
    keys !== '' &&
    (event.key.toLowerCase() === key ||
      event.code.toLowerCase() === `digit${key}` ||
      event.code.toLowerCase() === `key${key}`) &&
    parts.includes('Ctrl') === (event.ctrlKey || event.metaKey) &&
    parts.includes('Alt') === event.altKey &&
    parts.includes('Shift') === event.shiftKey
  );
}

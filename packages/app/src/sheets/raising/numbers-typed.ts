// Numbers of places as they are typed: with commas or blanks between, runs with "to": 1-07 to 1-09.

/** The numbers; null where a word is neither a number that stands nor a run of one course. */
export function numbersTyped(
  text: string,
  stands: (number: string) => boolean,
): readonly string[] | null {
  const words = text
    .replaceAll('\u2060', '')
    .split(/[\s,;]+|\band\b/)
    .filter((word) => word !== '');
  const found: string[] = [];
  for (let i = 0; i < words.length; i++) {
    const word = words[i] as string;
    if (word !== 'to') {
      found.push(word);
      continue;
    }
    const run = runFrom(found.at(-1), words[++i]);
    if (run === null) return null;
    found.push(...run);
  }
  return found.every(stands) && new Set(found).size === found.length ? found : null;
}

/** Numbers after the first up to the last of a run in one course. */
function runFrom(first: string | undefined, last: string | undefined): string[] | null {
  const [a, b] = [partsOf(first), partsOf(last)];
  if (a === null || b === null || a.course !== b.course || b.at <= a.at || b.at - a.at > 400)
    return null;
  return Array.from(
    { length: b.at - a.at },
    (_, i) => `${a.course}-${String(a.at + i + 1).padStart(a.width, '0')}`,
  );
}

function partsOf(number: string | undefined) {
  const found = /^(\d+)-(\d+)$/.exec(number ?? '');
  return found === null
    ? null
    : { course: found[1] as string, at: Number(found[2]), width: (found[2] as string).length };
}
